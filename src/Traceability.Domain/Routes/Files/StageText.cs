using System.Text.RegularExpressions;
using Traceability.Domain.Stages;

namespace Traceability.Domain.Routes.Files;

/// <summary>Reads one stage of a route file.</summary>
internal static partial class StageText
{
    /// <summary>Reads a stage that comes after these; with <paramref name="kept"/> what its method asks of it is not asked again.</summary>
    public static Stage Read(YamlMap map, IReadOnlyCollection<Stage> earlier, bool kept)
    {
        var stage = new Stage(map.Text("code"), map.Text("title"), map.Text("method"))
        {
            Cautions = map.Texts("cautions"),
            Slots = map.Distinct("slots", "a slot", StageItems.ReadSlot, s => s.Position, "position '{0}' is there twice"),
            Characteristics = map.Distinct("characteristics", "a characteristic", StageItems.ReadCharacteristic, c => c.Name, "characteristic '{0}' is there twice"),
            Evidence = map.Distinct("evidence", "a piece of evidence", StageItems.ReadEvidence, e => e.Name, "evidence '{0}' is there twice"),
            MinimumOpenMinutes = map.OptionalWhole("minimumOpenMinutes"),
            Waits = [.. map.Maps("waits", "a wait").Select(w => w.Close(new Wait(Earlier(w, "afterStage", earlier), w.Whole("minimumMinutes"))))],
            Windows = [.. map.Maps("windows", "a window").Select(w => w.Close(new Window(Earlier(w, "afterStage", earlier), w.Whole("maximumMinutes"))))],
            InstrumentKinds = map.Texts("instrumentKinds"),
            CheckedToday = map.Flag("checkedToday", false),
            Qualification = map.OptionalText("qualification"),
            Loads = map.Flag("loads", false),
            AllowedAttempts = map.OptionalWhole("allowedAttempts", atLeast: 1),
            Repeatable = map.Flag("repeatable", false),
            ReworkReturnsTo = map.OptionalText("reworkReturnsTo"),
            NotByBuilderOf = map.Texts("notByBuilderOf"),
            FreesCarrier = map.Flag("freesCarrier", false),
            Match = map.OptionalMap("match") is { } match ? StageItems.ReadMatch(match) : null,
            Parameters = map.OptionalMap("parameters") is { } parameters ? ParametersText.Read(parameters, kept ? null : StageMethods.Find(map.OptionalText("method") ?? "")) : StageParameters.None,
        };
        map.NothingElse();
        CheckNames(stage, map, earlier);
        CheckTimes(stage, map);
        CheckMatch(stage, map);
        if (!kept)
        {
            CheckMethod(stage, map);
        }

        return stage;
    }

    private static string Earlier(YamlMap map, string key, IReadOnlyCollection<Stage> earlier)
    {
        var name = map.Text(key);
        if (name != "" && earlier.All(s => s.Code != name))
        {
            map.ProblemAt(key, $"refers to '{name}', which is not an earlier stage");
        }

        return name;
    }

    private static void CheckNames(Stage stage, YamlMap map, IReadOnlyCollection<Stage> earlier)
    {
        map.MustMatch("code", CodePattern(), "must be small letters, digits and hyphens");
        if (earlier.Any(s => s.Code == stage.Code))
        {
            map.ProblemAt("code", $"stage '{stage.Code}' is there twice");
        }

        foreach (var caution in stage.Cautions.Where(c => !Cautions.Texts.ContainsKey(c)))
        {
            map.ProblemAt("cautions", $"no caution '{caution}'; known: {string.Join(", ", Cautions.Texts.Keys)}");
        }

        foreach (var name in stage.NotByBuilderOf.Where(n => earlier.All(s => s.Code != n)))
        {
            map.ProblemAt("notByBuilderOf", $"refers to '{name}', which is not an earlier stage");
        }

        if (stage.ReworkReturnsTo is { } back && back != stage.Code && earlier.All(s => s.Code != back))
        {
            map.ProblemAt("reworkReturnsTo", $"rework returns to '{back}', which is not an earlier stage");
        }
    }

    private static void CheckTimes(Stage stage, YamlMap map)
    {
        foreach (var (wait, window) in stage.Waits.SelectMany(w => stage.Windows.Where(x => x.AfterStage == w.AfterStage && x.MaximumMinutes < w.MinimumMinutes).Select(x => (w, x))))
        {
            map.ProblemAt("waits", $"it must wait {wait.MinimumMinutes} min after '{wait.AfterStage}' but start within {window.MaximumMinutes} min of it");
        }
    }

    private static void CheckMatch(Stage stage, YamlMap map)
    {
        foreach (var position in stage.Match?.Positions.Where(p => stage.Slot(p)?.PartKind is null) ?? [])
        {
            map.ProblemAt("match", $"'match' names '{position}', which is not a slot for a part");
        }

        if (stage.Match?.Positions.Distinct().Count() < 2)
        {
            map.ProblemAt("match", "'match' compares two positions or more");
        }
    }

    private static void CheckMethod(Stage stage, YamlMap map)
    {
        if (stage.Method == "")
        {
            return;
        }

        foreach (var problem in StageMethods.Find(stage.Method)?.ProblemsWith(stage) ?? [$"there is no method '{stage.Method}'; known: {string.Join(", ", StageMethods.Names)}"])
        {
            map.ProblemAt("method", problem);
        }
    }

    [GeneratedRegex(@"^[a-z0-9][a-z0-9-]{0,39}\z")]
    private static partial Regex CodePattern();
}
