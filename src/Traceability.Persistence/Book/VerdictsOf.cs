using Traceability.Domain.Gates;
using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Book;

/// <summary>Derives the verdicts of a part from its dossier; the same function serves every write and the rebuild.</summary>
public static class VerdictsOf
{
    /// <summary>One row for each attempt that was not abandoned. The first of a stage is the first that came to a verdict.</summary>
    public static IReadOnlyList<StageVerdict> All(Dossier dossier)
    {
        var part = dossier.Part;
        var judged = dossier.Attempts.Where(a => a.Closed).ToList();
        return
        [
            .. judged.Select(a => new StageVerdict(
                a.Id,
                part.Id,
                part.Serial,
                part.Kind,
                part.Model,
                a.Stage,
                a.Attempt.Number,
                FilmPlace.Of(part.Kind, a.Stage, a.Ending!.Method),
                a.Attempt.OccurredAt,
                a.Ending.OccurredAt,
                judged.TrueForAll(b => b.Stage != a.Stage || b.Attempt.Number >= a.Attempt.Number),
                a.Passed
            )),
        ];
    }

    /// <summary>Which of them some new facts have made, and which they may have changed.</summary>
    public static (IReadOnlyList<StageVerdict> Made, IReadOnlyList<StageVerdict> Changed) By(IReadOnlyList<Fact> facts, Dossier dossier)
    {
        var ended = facts.OfType<AttemptEnding>().Select(e => e.AttemptId).ToHashSet();
        var corrected = facts.OfType<Correction>().Select(c => c.ReadingId).ToHashSet();
        if (ended.Count + corrected.Count == 0)
        {
            return ([], []);
        }

        var about = dossier.Attempts.Where(a => a.Readings.Any(r => corrected.Contains(r.Reading.Id))).Select(a => a.Id).ToHashSet();
        var all = All(dossier);
        return (
            [.. all.Where(v => ended.Contains(v.AttemptId))],
            [.. all.Where(v => about.Contains(v.AttemptId) && !ended.Contains(v.AttemptId))]
        );
    }
}
