namespace Traceability.Domain.Work;

/// <summary>Several parts in one command: what was refused is said part by part, and one refusal refuses all.</summary>
internal static class PartsRefused
{
    /// <summary>One refusal that names every part refused; null when none was.</summary>
    public static Refusal? From(IEnumerable<(string Serial, Refusal? Refusal)> outcomes, string consequence)
    {
        var refused = outcomes.Where(o => o.Refusal is not null).Select(o => (o.Serial, Refusal: o.Refusal!)).ToList();
        return refused.Count == 0
            ? null
            : new(
                refused.Select(r => r.Refusal.Kind).Min(),
                RefusalTexts.NotForAllBecauseOfThese(
                    string.Join(" ", refused.Select(r => $"{r.Serial}: {r.Refusal.Message}")),
                    consequence
                ),
                [
                    .. refused.SelectMany(r =>
                        r.Refusal.Checks.Where(c => !c.Met).Select(c => c with { Because = $"{r.Serial}: {c.Because}" })
                    ),
                ],
                refused.ToDictionary(r => r.Serial, r => Reasons(r.Refusal))
            );
    }

    private static string[] Reasons(Refusal refusal) =>
        refusal.Checks.Any(c => !c.Met) ? [.. refusal.Checks.Where(c => !c.Met).Select(c => c.Because)] : [refusal.Message];
}
