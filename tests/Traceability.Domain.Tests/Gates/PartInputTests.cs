using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Gates;

public class PartInputTests
{
    private static APart Stacking =>
        new APart(ARoute.Of(ARoute.Stage("stack").Taking("front", partKind: ARoute.ChildKind))).Opened("stack");

    private static GateVerdict Fitting(APart part, params Input[]? inputs) =>
        Gatekeeper.EvaluateInputs(
            part.Dossier,
            part.StageOf("stack"),
            part.Context with
            {
                Inputs = inputs?.ToDictionary(i => i.Position),
            }
        );

    private static InDoubt[] Doubts(int count) =>
        [.. Enumerable.Range(1, count).Select(i => new InDoubt(Guid.Empty, $"D-{i}", "tune", "RB-1", $"doubt {i}"))];

    [Fact]
    public void A_part_as_an_input_names_the_film_lot_it_is_made_of_and_no_other_lot()
    {
        var film = Something.Lot("film", Lot.FilmKind);
        var part = new APart(ARoute.Of(ARoute.Stage("mount").Taking("ring", "ring").Taking("film", Lot.FilmKind))).Opened("mount");
        part.TryFit(Something.Lot("ring", "ring"), film).Accepted();

        Assert.Equal(film.Lot.Id, PartInput.Of("front", part.Dossier, fittedHere: false).FilmLotId);
        Assert.Null(PartInput.Of("front", new APart(part.Dossier.Route).Dossier, fittedHere: false).FilmLotId);
    }

    [Fact]
    public void A_part_as_it_was_judged_on_is_fitted_there_already()
    {
        var part = new APart(ARoute.Plain).Passed("mount");

        Assert.True(PartInput.AsJudgedOn("front", part.Dossier, part.Bench.Now.AddDays(1)).AlreadyFittedHere);
    }

    [Theory]
    [InlineData(-121, true)]
    [InlineData(-120, true)]
    [InlineData(-119, true)]
    [InlineData(0, true)]
    [InlineData(119, true)]
    [InlineData(120, true)]
    [InlineData(121, false)]
    public void A_part_is_not_fitted_before_it_was_free_give_or_take_two_minutes_of_clocks(int freeSecondsLater, bool fits)
    {
        var part = Stacking;
        var child = Something.Part("front") with { FreeSince = part.Bench.Now.AddSeconds(freeSecondsLater) };

        Assert.Equal(TimeSpan.FromSeconds(120), ClockSkew.Allowed);
        Assert.Equal(fits, Fitting(part, child).Open);
    }

    [Fact]
    public void Where_nothing_is_named_there_is_nothing_to_fit_and_nothing_in_doubt()
    {
        Assert.All(
            [Fitting(Stacking, []), Fitting(Stacking, null)],
            gate =>
            {
                Assert.True(gate.Open);
                Assert.Equal("nothing to fit", gate.Checks.Single(c => c.Rule == InputsFit.Rule).Because);
                Assert.DoesNotContain(gate.Checks, c => c.Rule == InstrumentInDoubt.Rule);
            }
        );
    }

    [Fact]
    public void What_fits_is_named() =>
        Assert.Equal("fits: D-1", Fitting(Stacking, Something.Part("front")).Checks.Single(c => c.Rule == InputsFit.Rule).Because);

    [Theory]
    [InlineData(1, "doubt 1", "more")]
    [InlineData(5, "doubt 1; doubt 2; doubt 3; doubt 4; doubt 5", "more")]
    [InlineData(6, "doubt 1; doubt 2; doubt 3; doubt 4; doubt 5; and 1 more", "doubt 6")]
    [InlineData(8, "doubt 1; doubt 2; doubt 3; doubt 4; doubt 5; and 3 more", "doubt 6")]
    public void At_most_five_doubts_are_named_and_the_others_counted(int count, string said, string notSaid)
    {
        var check = Fitting(Stacking, Something.Part("front") with { InDoubt = Doubts(count) })
            .Checks.Single(c => c.Rule == InstrumentInDoubt.Rule);

        check.IsNotMet(said);
        Assert.DoesNotContain(notSaid, check.Because, StringComparison.Ordinal);
    }
}
