using System.Text.Json;
using CsCheck;
using Traceability.Domain.Routes;
using Traceability.Domain.Routes.Comparison;
using static Traceability.Domain.Tests.Routes.Comparison.ComparedRoutes;

namespace Traceability.Domain.Tests.Routes.Comparison;

/// <summary>The comparison looks the same from both sides and sees a difference exactly when there is one.</summary>
public class RouteComparisonProperties
{
    private static readonly Gen<Stage> AnyStage = Gen.Select(
        Gen.Bool.Select(b => b ? "Mount" : "Mount it"),
        Gen.Int[0, 2],
        Gen.Int[0, 3],
        Gen.Int[0, 2],
        Gen.Bool,
        Gen.Int[0, 2].Select(i => i == 0 ? null : (decimal?)i),
        (title, slots, limits, cautions, flag, upper) =>
            new Stage("", title, "entered-limits")
            {
                Slots = [.. Enumerable.Range(0, slots).Select(i => new Slot($"p{(flag ? i : slots - i)}", "Place", "film", null, flag))],
                Characteristics =
                [
                    .. Enumerable
                        .Range(0, limits)
                        .Select(i => new Characteristic($"c{i}Hz", "Resonance", "Hz", null, null, upper, null, true, flag)),
                ],
                Cautions = [.. new[] { "solvent", "esd" }.Take(cautions)],
                Qualification = flag ? "stacking" : null,
                MinimumOpenMinutes = upper is null ? null : 60,
                InstrumentKinds = flag ? ["bench"] : [],
                Parameters = upper is null
                    ? StageParameters.None
                    : new() { Numbers = new Dictionary<string, decimal> { ["radiusMm"] = upper.Value } },
            }
    );

    private static readonly Gen<Route> AnyRoute = Gen.Select(
        Gen.Shuffle(new[] { "a", "b", "c", "d", "e" }),
        Gen.Int[0, 5],
        AnyStage.Array[5],
        (codes, count, stages) =>
            RouteOf([
                .. codes
                    .Take(count)
                    .Select(
                        (c, i) =>
                            new Stage(c, stages[i].Title, stages[i].Method)
                            {
                                Slots = stages[i].Slots,
                                Characteristics = stages[i].Characteristics,
                                Cautions = stages[i].Cautions,
                                Qualification = stages[i].Qualification,
                                MinimumOpenMinutes = stages[i].MinimumOpenMinutes,
                                InstrumentKinds = stages[i].InstrumentKinds,
                                Parameters = stages[i].Parameters,
                            }
                    ),
            ])
    );

    [Fact]
    public void A_revision_compared_with_itself_has_no_difference() =>
        AnyRoute.Sample(route => Assert.False(RouteComparison.Of(route, route).Differs));

    [Fact]
    public void Turning_the_sides_round_turns_added_into_removed_and_nothing_else() =>
        Gen.Select(AnyRoute, AnyRoute)
            .Sample(
                (left, right) =>
                    Assert.Equal(Seen(RouteComparison.Of(left, right), turned: false), Seen(RouteComparison.Of(right, left), turned: true))
            );

    [Fact]
    public void There_is_a_difference_exactly_when_the_stages_are_not_the_same() =>
        Gen.Select(AnyRoute, AnyRoute)
            .Sample(
                (left, right) =>
                    Assert.Equal(
                        JsonSerializer.Serialize(left.Stages) != JsonSerializer.Serialize(right.Stages),
                        RouteComparison.Of(left, right).Differs
                    )
            );

    /// <summary>
    /// Everything there is to see, as it looks from the other side when <paramref name="turned"/>, whatever the order in which it stands.
    /// </summary>
    private static string[] Seen(RouteComparison c, bool turned)
    {
        return
        [
            .. c
                .Head.Select(Line)
                .Concat(
                    c.Stages.SelectMany(s =>
                        s.Lines.Select(l => $"{s.Code} {Line(l)}")
                            .Append($"{s.Code} {Word(s.Difference)} {s.Moved} {Pair(s.LeftAfter, s.RightAfter)}")
                    )
                )
                .Order(StringComparer.Ordinal),
        ];

        string Line(ComparedLine l) => $"{l.Aspect} {l.Item} {l.Field} {Pair(l.Left, l.Right)} {Word(l.Difference)}";

        string Pair(string? left, string? right) => turned ? $"{right}|{left}" : $"{left}|{right}";

        Difference Word(Difference d) =>
            (turned, d) switch
            {
                (true, Difference.Added) => Difference.Removed,
                (true, Difference.Removed) => Difference.Added,
                _ => d,
            };
    }
}
