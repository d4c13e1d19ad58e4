using System.Globalization;
using System.Text;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Tests.Routes;

/// <summary>A part built from a route's own numbers, stage after stage, with finished parts of the same kind inside it.</summary>
internal static class NominalBuild
{
    private static readonly DateTimeOffset Opened = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    private static readonly Lot Film = new(
        Guid.NewGuid(),
        "F-1",
        Lot.FilmKind,
        "invented",
        "1",
        1,
        "m",
        Opened,
        null,
        null,
        null,
        6,
        50,
        1,
        Guid.Empty,
        Opened,
        Opened
    );

    /// <summary>What the stage's method says when everything before it was nominal too.</summary>
    public static StageOutcome OfStage(Route route, Stage stage) => Judge(route, stage, ValuesBefore(route, stage));

    /// <summary>What the stage's method is given then.</summary>
    public static StageInput InputOf(string model, string kind, string stage)
    {
        var route = DemoRoutes.Of(model, kind);
        return InputOf(route, route.Find(stage)!, ValuesBefore(route, route.Find(stage)));
    }

    private static Dictionary<string, decimal> ValuesBefore(Route route, Stage? until)
    {
        var values = new Dictionary<string, decimal>();
        foreach (var stage in route.Stages.TakeWhile(s => s != until))
        {
            var outcome = Judge(route, stage, values);
            foreach (
                var (name, value) in Entered(stage)
                    .Select(e => (e.Key, e.Value))
                    .Concat(outcome.Computed.Select(c => (c.Characteristic, c.Value)))
            )
            {
                values[name] = value;
            }
        }

        return values;
    }

    private static StageOutcome Judge(Route route, Stage stage, Dictionary<string, decimal> before) =>
        StageMethods.Get(stage.Method).Judge(InputOf(route, stage, before));

    private static StageInput InputOf(Route route, Stage stage, Dictionary<string, decimal> before)
    {
        var files = stage
            .Evidence.Where(e => e.Required)
            .Select(e => new EvidenceFile(
                Guid.Empty,
                e.Name,
                e.Kind,
                Encoding.UTF8.GetBytes(e.Kind == "climate-log" ? Log(stage) : Response(stage, DownAt(stage, e.Name))),
                null
            ))
            .ToList();
        return new(stage, Entered(stage), files, Opened, Opened.AddHours(4), name => before.TryGetValue(name, out var value) ? value : null)
        {
            Inside = Inside(route),
        };
    }

    private static Dictionary<string, decimal> Entered(Stage stage) =>
        stage.Characteristics.Where(c => c.Entered).ToDictionary(c => c.Name, c => c.Nominal!.Value);

    private static Dictionary<string, FittedThing> Inside(Route route) =>
        route
            .Stages.SelectMany(s => s.Slots)
            .Where(s => s.LotKind == Lot.FilmKind || s.PartKind == PartKinds.Diaphragm)
            .ToDictionary(
                s => s.Position,
                s => s.LotKind is null ? Diaphragm(route.Model, s.Position) : (FittedThing)new FittedLot(s.Position, Film)
            );

    private static FittedPart Diaphragm(string model, string position) =>
        new(position, ValuesBefore(DemoRoutes.Of(model, PartKinds.Diaphragm), null), Film.Id);

    private static string Log(Stage stage)
    {
        var csv = new StringBuilder("time,temperature_c,humidity_pct\n");
        var at = Opened;
        foreach (var phase in stage.Parameters.Phases!)
        {
            for (var minute = 0; minute <= phase.MinDwellMinutes; minute += 10)
            {
                csv.Append(
                    CultureInfo.InvariantCulture,
                    $"{at.AddMinutes(minute):yyyy-MM-ddTHH:mm:ssZ},{phase.TemperatureC},{phase.HumidityPct}\n"
                );
            }

            at = at.AddMinutes(phase.MinDwellMinutes + 10);
        }

        return csv.ToString();
    }

    /// <summary>Sound from behind is as much weaker as the route asks for.</summary>
    private static decimal DownAt(Stage stage, string file) =>
        file == "rear" && stage.Characteristic("frontToBackDb") is { } asked ? (asked.Lower!.Value + asked.Upper!.Value) / 2 : 0;

    private static string Response(Stage stage, decimal downDb)
    {
        var csv = new StringBuilder("frequency_hz,level_db\n");
        foreach (var corner in stage.Parameters.Mask!)
        {
            csv.Append(CultureInfo.InvariantCulture, $"{corner.FrequencyHz},{(corner.LowerDb + corner.UpperDb) / 2 - downDb}\n");
        }

        return csv.ToString();
    }
}
