using System.Globalization;
using Traceability.Domain.Gates;
using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Records;

namespace Traceability.Benchmarks;

/// <summary>One attempt at one stage, with who did it where, what was fitted and what was read.</summary>
internal sealed class StageStep
{
    private const string Method = "entered-limits";

    private readonly FilledWorkshop workshop;
    private readonly OrderedIds ids;
    private readonly Random random;
    private readonly PartFile file;
    private readonly FilledStage stage;
    private readonly DateTimeOffset at;
    private readonly Guid builder;
    private readonly List<Fact> facts = [];
    private readonly Attempt attempt;

    public StageStep(
        FilledWorkshop workshop,
        OrderedIds ids,
        Random random,
        PartFile file,
        FilledStage stage,
        int number,
        DateTimeOffset at
    )
    {
        (this.workshop, this.ids, this.random, this.file, this.stage, this.at) = (workshop, ids, random, file, stage, at);
        builder = workshop.Builders[random.Next(workshop.Builders.Count)];
        attempt = new(
            ids.Next(at),
            file.Part.Id,
            stage.Code,
            number,
            workshop.Stations[random.Next(workshop.Stations.Count)],
            null,
            builder,
            at,
            at
        );
        facts.Add(attempt);
    }

    /// <summary>The planted builder has twice the odds at the insulation test.</summary>
    public double OddsOfBuilder => stage.Code == "insulation" && builder == workshop.Builders[2] ? 2 : 1;

    /// <summary>Fills the slots of the stage; what the lots do to the odds of failing later.</summary>
    public double Fit(FilledLots lots, IReadOnlyList<PartFile> children, FillRows rows)
    {
        var odds = 1.0;
        foreach (var slot in stage.Slots)
        {
            var child = slot.PartKind is null ? null : children.First(c => c.Part.Kind == slot.PartKind);
            Lot? lot = null;
            if (slot.LotKind is { } kind)
            {
                (lot, var number) = lots.Take(kind, at, rows);
                odds *=
                    kind == Lot.FilmKind && number % 12 == 0 ? 5
                    : kind == "adhesive" && number % 15 == 0 ? 4
                    : 1;
            }

            var fitting = new Fitting(
                ids.Next(at),
                file.Part.Id,
                attempt.Id,
                slot.Position,
                child?.Part.Id,
                lot?.Id,
                null,
                builder,
                at,
                at
            );
            facts.Add(fitting);
            file.Holds(fitting, child);
        }

        return odds;
    }

    /// <summary>Records the attempt; the nonconformity when it failed.</summary>
    public Nonconformity? Record(bool fails, int readings)
    {
        var gauge = workshop.Instruments[random.Next(workshop.Instruments.Count)];
        facts.Add(new InstrumentUse(ids.Next(at), file.Part.Id, attempt.Id, gauge.Id, gauge.Code, gauge.Kind, null, builder, at, at));
        facts.AddRange(stage.Characteristics.Take(readings).Select((c, i) => Read(c, fails && i == 0)));
        string[] findings = fails ? [$"{stage.Characteristics[0].Name} is outside its limits"] : [];
        facts.Add(
            new AttemptEnding(
                ids.Next(at),
                file.Part.Id,
                attempt.Id,
                fails ? Verdict.Fail : Verdict.Pass,
                null,
                Method,
                1,
                findings,
                false,
                builder,
                at,
                at
            )
        );
        var nonconformity = fails
            ? new Nonconformity(
                ids.Next(at),
                file.Part.Id,
                attempt.Id,
                stage.Code,
                NonconformityCodes.StageFailed,
                $"{stage.Code} failed",
                builder,
                at,
                at
            )
            : null;
        file.Came(
            new(
                attempt.Id,
                file.Part.Id,
                file.Part.Serial,
                file.Part.Kind,
                file.Part.Model,
                stage.Code,
                attempt.Number,
                FilmPlace.Of(file.Part.Kind, stage.Code, Method),
                at,
                at,
                attempt.Number == 1,
                !fails
            )
        );
        file.Record("make-record", nonconformity is null ? facts : [.. facts, nonconformity]);
        return nonconformity;
    }

    /// <summary>Two hours later the quality lead decides: once more, or scrap.</summary>
    public void Dispose(Nonconformity nonconformity, bool scrap)
    {
        var then = at.AddHours(2);
        file.Record(
            "dispose",
            [
                new Disposition(
                    ids.Next(then),
                    file.Part.Id,
                    nonconformity.Id,
                    scrap ? DispositionKind.Scrap : DispositionKind.Rework,
                    scrap ? null : stage.Code,
                    null,
                    "invented",
                    workshop.Quality,
                    then,
                    then
                ),
            ]
        );
    }

    private Reading Read(FilledCharacteristic c, bool outside)
    {
        // Between -0.9 and 0.9 of the tolerance, most near the middle; outside it when the stage is to fail.
        var share = outside ? 1.2 : 0.9 * (random.NextDouble() + random.NextDouble() - 1);
        var value = c.Unit == "count" && !outside ? c.Nominal : Math.Round(c.Nominal + c.Tolerance * (decimal)share, 2);
        return new(
            ids.Next(at),
            file.Part.Id,
            attempt.Id,
            c.Name,
            value,
            value.ToString(CultureInfo.InvariantCulture),
            c.Unit,
            c.Nominal,
            c.Nominal - c.Tolerance,
            c.Nominal + c.Tolerance,
            !outside,
            ReadingSource.Entered,
            null,
            null,
            null,
            builder,
            at,
            at
        );
    }
}
