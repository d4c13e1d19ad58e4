using System.Text.RegularExpressions;

namespace Traceability.Domain.Routes.Files;

/// <summary>Reads one stage of a route file.</summary>
internal static partial class StageText
{
    /// <summary>Reads a stage that comes after these; without <paramref name="methods"/> what its method asks of it is not asked.</summary>
    public static Stage Read(YamlMap map, IReadOnlyCollection<Stage> earlier, IReadOnlyDictionary<string, MethodRequirements>? methods)
    {
        var stage = new Stage(map.Text("code"), map.Text("title"), map.Text("method"))
        {
            Instructions = map.Texts("instructions"),
            Cautions = map.Texts("cautions"),
            Slots = map.Distinct("slots", RouteTexts.ASlot, StageItems.ReadSlot, s => s.Position, RouteTexts.PositionIsThereTwice),
            Characteristics = map.Distinct(
                "characteristics",
                RouteTexts.ACharacteristic,
                StageItems.ReadCharacteristic,
                c => c.Name,
                RouteTexts.CharacteristicIsThereTwice
            ),
            Evidence = map.Distinct(
                "evidence",
                RouteTexts.APieceOfEvidence,
                StageItems.ReadEvidence,
                e => e.Name,
                RouteTexts.EvidenceIsThereTwice
            ),
            MinimumOpenMinutes = map.OptionalWhole("minimumOpenMinutes"),
            Waits =
            [
                .. map.Maps("waits", RouteTexts.AWait)
                    .Select(w => w.Close(new Wait(Earlier(w, "afterStage", earlier), w.Whole("minimumMinutes")))),
            ],
            Windows =
            [
                .. map.Maps("windows", RouteTexts.AWindow)
                    .Select(w => w.Close(new Window(Earlier(w, "afterStage", earlier), w.Whole("maximumMinutes")))),
            ],
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
            Parameters = map.OptionalMap("parameters") is { } parameters
                ? ParametersText.Read(parameters, methods?.GetValueOrDefault(map.OptionalText("method") ?? ""))
                : StageParameters.None,
        };
        map.NothingElse();
        CheckNames(stage, map, earlier);
        CheckTimes(stage, map);
        CheckMatch(stage, map);
        if (methods is not null)
        {
            CheckMethod(stage, map, methods);
        }

        return stage;
    }

    private static string Earlier(YamlMap map, string key, IReadOnlyCollection<Stage> earlier)
    {
        var name = map.Text(key);
        if (name != "" && earlier.All(s => s.Code != name))
        {
            map.ProblemAt(key, RouteTexts.RefersToNoEarlierStage(name));
        }

        return name;
    }

    private static void CheckNames(Stage stage, YamlMap map, IReadOnlyCollection<Stage> earlier)
    {
        map.MustMatch("code", CodePattern(), RouteTexts.SmallLettersDigitsAndHyphens);
        if (earlier.Any(s => s.Code == stage.Code))
        {
            map.ProblemAt("code", RouteTexts.StageIsThereTwice(stage.Code));
        }

        foreach (var caution in stage.Cautions.Where(c => !Cautions.Texts.ContainsKey(c)))
        {
            map.ProblemAt("cautions", RouteTexts.NoSuchCaution(caution, string.Join(", ", Cautions.Texts.Keys)));
        }

        foreach (var name in stage.NotByBuilderOf.Where(n => earlier.All(s => s.Code != n)))
        {
            map.ProblemAt("notByBuilderOf", RouteTexts.RefersToNoEarlierStage(name));
        }

        if (stage.ReworkReturnsTo is { } back && back != stage.Code && earlier.All(s => s.Code != back))
        {
            map.ProblemAt("reworkReturnsTo", RouteTexts.ReworkReturnsToNoEarlierStage(back));
        }
    }

    private static void CheckTimes(Stage stage, YamlMap map)
    {
        foreach (
            var (wait, window) in stage.Waits.SelectMany(w =>
                stage.Windows.Where(x => x.AfterStage == w.AfterStage && x.MaximumMinutes < w.MinimumMinutes).Select(x => (w, x))
            )
        )
        {
            map.ProblemAt("waits", RouteTexts.WaitIsLongerThanTheWindow(wait.MinimumMinutes, wait.AfterStage, window.MaximumMinutes));
        }
    }

    private static void CheckMatch(Stage stage, YamlMap map)
    {
        foreach (var position in stage.Match?.Positions.Where(p => stage.Slot(p)?.PartKind is null) ?? [])
        {
            map.ProblemAt("match", RouteTexts.MatchNamesNoSlotForAPart(position));
        }

        if (stage.Match?.Positions.Distinct().Count() < 2)
        {
            map.ProblemAt("match", RouteTexts.MatchComparesTwoOrMore);
        }
    }

    private static void CheckMethod(Stage stage, YamlMap map, IReadOnlyDictionary<string, MethodRequirements> methods)
    {
        if (stage.Method == "")
        {
            return;
        }

        foreach (
            var problem in methods.GetValueOrDefault(stage.Method)?.ProblemsWith(stage)
                ?? [RouteTexts.NoSuchMethod(stage.Method, string.Join(", ", methods.Keys.Order()))]
        )
        {
            map.ProblemAt("method", problem);
        }
    }

    [GeneratedRegex(@"^[a-z0-9][a-z0-9-]{0,39}\z")]
    private static partial Regex CodePattern();
}
