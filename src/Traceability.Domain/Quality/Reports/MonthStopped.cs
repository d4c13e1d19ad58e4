namespace Traceability.Domain.Quality.Reports;

/// <summary>What waits and what is stopped at the end of the month, and what came back in it.</summary>
internal static class MonthStopped
{
    /// More names than this do not help a reader; the list of holds has them all.
    private const int MostNames = 12;

    public static WaitingSection WaitingOf(MonthlyReportFacts facts, MonthWords words) =>
        new(
            [
                .. facts
                    .Waiting.OrderBy(w => w.RaisedAt)
                    .ThenBy(w => w.Serial, StringComparer.Ordinal)
                    .ThenBy(w => w.Code, StringComparer.Ordinal)
                    .Select(w => new WaitingLine(
                        words.DaysSince(w.RaisedAt),
                        w.Serial,
                        w.Model,
                        words.TitleOf(w.Model, w.Kind, w.Stage),
                        w.Code,
                        w.Description,
                        words.Local(w.RaisedAt)
                    )),
            ],
            facts.Waiting.Count == 0 ? $"No nonconformity waited for a decision {words.AtTheEnd}." : null,
            "Every nonconformity that had been raised and had neither a decision nor a corrected reading that answers it"
                + $" {words.AtTheEnd}; age in whole days until then."
        );

    public static HoldSection HoldsOf(MonthlyReportFacts facts, MonthWords words) =>
        new(
            facts.Holds.Count,
            [
                .. facts
                    .Holds.GroupBy(h => (h.HeldAt, h.Reason, h.HeldBy))
                    .OrderBy(g => g.Key.HeldAt)
                    .ThenBy(g => g.Key.Reason, StringComparer.Ordinal)
                    .ThenBy(g => g.Key.HeldBy, StringComparer.Ordinal)
                    .Select(g => LineOf([.. g.OrderBy(h => h.Code, StringComparer.Ordinal)], words)),
            ],
            facts.Holds.Count == 0 ? $"No hold was in force {words.AtTheEnd}." : null,
            $"Every hold that had been put and not lifted {words.AtTheEnd}; those put at one moment for one reason stand together. Age"
                + " in whole days until then."
        );

    public static ReturnSection ReturnsOf(MonthlyReportFacts facts, MonthWords words) =>
        new(
            [
                .. facts
                    .Returns.OrderBy(r => r.ReturnedAt)
                    .ThenBy(r => r.Serial, StringComparer.Ordinal)
                    .Select(r => new ReturnLine(
                        r.Serial,
                        r.Model,
                        words.Local(r.ReturnedAt),
                        r.Complaint,
                        r.Findings.Count == 0 ? "nothing recorded yet" : string.Join("; ", r.Findings),
                        r.Action ?? "still open"
                    )),
            ],
            facts.Returns.Count == 0 ? $"No unit came back {words.InTheMonth}." : null,
            "Every return received in the month, with what was found and done until the report was drawn up."
        );

    private static HoldLine LineOf(IReadOnlyList<StandingHold> together, MonthWords words)
    {
        var first = together[0];
        int lots = Count("lot"),
            parts = Count("part"),
            instruments = Count("instrument");
        var counted = new[] { (lots, "lot"), (parts, "part"), (instruments, "instrument") }
            .Where(c => c.Item1 > 0)
            .Select(c => MonthWords.Counted(c.Item1, c.Item2));
        var names =
            string.Join(", ", together.Take(MostNames).Select(h => h.Code))
            + (together.Count > MostNames ? $" and {together.Count - MostNames} more" : "");
        return new(
            words.DaysSince(first.HeldAt),
            lots,
            parts,
            instruments,
            $"{string.Join(", ", counted)}: {names}",
            first.Reason,
            words.Local(first.HeldAt),
            first.HeldBy
        );

        int Count(string subject) => together.Count(h => h.Subject == subject);
    }
}
