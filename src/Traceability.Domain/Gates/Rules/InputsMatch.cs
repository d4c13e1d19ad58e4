using Traceability.Domain.Routes;
using static System.FormattableString;

namespace Traceability.Domain.Gates.Rules;

/// <summary>Front and rear belong together: a characteristic of theirs may differ only so much. The edge itself still matches.</summary>
public static class InputsMatch
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "match";

    /// <summary>Compares the parts in the positions that the route names.</summary>
    public static GateCheck? Check(GateQuestion q)
    {
        if (q.Stage.Match is not { } match || q.Context.Inputs is not { } inputs)
        {
            return null;
        }

        var parts = match.Positions.Select(p => inputs.GetValueOrDefault(p)).OfType<PartInput>().ToList();
        if (parts.Count < match.Positions.Count)
        {
            return null;
        }

        var without = parts.Find(p => !p.Values.ContainsKey(match.Characteristic));
        if (without is not null)
        {
            return new(Rule, false, HasNo(without.Serial, match.Characteristic), GateTexts.FitAnother);
        }

        if (match.SameFilmLot && parts.Select(p => p.FilmLotId).Distinct().Count() > 1)
        {
            return new(
                Rule,
                false,
                AreOfDifferentFilmLots(string.Join(GateTexts.JoinedByAnd, parts.Select(p => p.Serial))),
                FitAMateOfTheSameFilmLot
            );
        }

        var checks = match
            .Further.Where(f => parts.TrueForAll(p => p.Values.ContainsKey(f.Characteristic)))
            .Prepend(new(match.Characteristic, match.MaximumDifference))
            .Select(limit => Compare(parts, limit))
            .ToList();
        return checks.Find(c => !c.Met) ?? checks[0];
    }

    private static GateCheck Compare(List<PartInput> parts, MatchLimit limit)
    {
        var values = parts.ConvertAll(p => p.Values[limit.Characteristic]);
        var difference = values.Max() - values.Min();
        var pair = string.Join(GateTexts.JoinedByAnd, parts.Select(p => Invariant($"{p.Serial} ({p.Values[limit.Characteristic]})")));
        var because = DifferBy(limit.Characteristic, pair, difference, limit.MaximumDifference);
        return difference <= limit.MaximumDifference ? new(Rule, true, because) : new(Rule, false, because, FitACloserMate);
    }

    private static string HasNo(string serial, string characteristic) => GateTexts.Words.Say([serial, characteristic]);

    private static string AreOfDifferentFilmLots(string serials) => GateTexts.Words.Say([serials]);

    private static string FitAMateOfTheSameFilmLot => GateTexts.Words.Say();

    private static string DifferBy(string characteristic, string pair, decimal difference, decimal maximumDifference) =>
        GateTexts.Words.Say([characteristic, pair, difference, maximumDifference]);

    private static string FitACloserMate => GateTexts.Words.Say();
}
