using Traceability.Domain.Records;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>
/// A way of a diaphragm's film through the workshop: what it was judged at, on the diaphragm and on everything it was inside at the time,
/// and where it failed. Times, serials and people are not part of it, so that thousands of films share one path.
/// </summary>
/// <param name="Through">It is in a unit that has passed its last stage, or left the workshop in one.</param>
/// <param name="Shipped">A unit left the workshop with it inside.</param>
/// <param name="Steps">Every stage at which there was a verdict, in any order.</param>
/// <param name="Faults">Every place and stage where it failed, in the order in which it first failed there.</param>
/// <param name="Reached">What it brought its lot into: parts that hold it or held it, but not those that another film of the lot was in
/// before.</param>
public sealed record FilmPath(
    bool Through,
    bool Shipped,
    IReadOnlyList<FilmStep> Steps,
    IReadOnlyList<FilmFault> Faults,
    IReadOnlyList<FilmReach> Reached
)
{
    /// <summary>The place of a return: failed after it had left the workshop.</summary>
    public const string Field = "field";

    /// <summary>
    /// The position in <see cref="Faults"/> of the first failure at the place or stage asked for (null: anywhere), or null when there was
    /// none.
    /// </summary>
    public int? FirstFault(string? asked)
    {
        for (int i = 0; i < Faults.Count; i++)
        {
            if (Faults[i].Is(asked))
            {
                return i;
            }
        }

        return null;
    }

    /// <summary>
    /// True when it got through what is asked for: without a question the last stage of its unit, else any verdict there that was a pass
    /// (for the field: it was shipped), and every failure there was followed by a pass at the same stage.
    /// </summary>
    public bool Passed(string? asked) => GotThrough(asked) && Faults.All(f => !f.Is(asked) || f.Healed);

    /// <summary>The steps at the place or stage asked for; all without a question.</summary>
    public IEnumerable<FilmStep> StepsAt(string? asked) => Steps.Where(s => asked is null || s.Place == asked || s.Stage == asked);

    /// <summary>
    /// True when it stands for what it went through there: for itself as a diaphragm, and for a capsule or unit that it was the first film
    /// of its lot in. The second diaphragm of a capsule went through the same verdicts, and is not counted a second time.
    /// </summary>
    public bool Stands(string? asked) =>
        asked switch
        {
            null => !Through || Reached.Any(r => r.Kind == PartKinds.Unit),
            Field => Reached.Any(r => r.Shipped),
            _ => StepsAt(asked).Any(s => s.Reached > 0),
        };

    /// <summary>True when it, or what it stands for, came to a verdict there.</summary>
    public bool IsJudged(string? asked) =>
        StepsAt(asked).Any(s => s.Reached > 0) || Faults.Any(f => f.Counted && f.Is(asked)) || (asked == Field && Stands(Field));

    private bool GotThrough(string? asked) => asked is null ? Through : StepsAt(asked).Any(s => s.Passed) || (asked == Field && Shipped);
}

/// <summary>One stage of one kind of part on the way of a film.</summary>
/// <param name="Kind">The kind of part that was judged.</param>
/// <param name="Place">Where in the life of a film the stage lies.</param>
/// <param name="Stage">The stage.</param>
/// <param name="Passed">True when any verdict there was a pass.</param>
/// <param name="Reached">
/// Parts that reached it with this film and count with it: 1, or more when the film was in several capsules or units one after the other; 0
/// for what counts with another film of the lot, which was in the part before it.
/// </param>
/// <param name="Failed">Those of them whose first verdict was no pass, or that were reported there by hand.</param>
public sealed record FilmStep(string Kind, string Place, string Stage, bool Passed, int Reached, int Failed);

/// <summary>A place and stage where a film failed.</summary>
/// <param name="Place">Where in the life of a film it failed.</param>
/// <param name="Stage">The stage; null when it came back from the field, or the nonconformity named none.</param>
/// <param name="Healed">True when each failure there was followed by a pass of the same part at the same stage.</param>
/// <param name="Counted">True when it counts with this film; false when another film of the lot was in the same part before it, and it
/// counts with that.</param>
public sealed record FilmFault(string Place, string? Stage, bool Healed, bool Counted)
{
    /// <summary>True when it is what was asked for; null asks for anything.</summary>
    public bool Is(string? asked) => asked is null || Place == asked || Stage == asked;
}

/// <summary>
/// A part that a lot is in or was in. It counts with the film of the lot that came into it first, so that a capsule with two films of the
/// lot counts once, and the counts of two periods add up to those of both together.
/// </summary>
/// <param name="Kind">The kind of part: a capsule, a unit.</param>
/// <param name="Shipped">It left the workshop with the lot inside.</param>
/// <param name="Returned">It came back with the lot inside.</param>
public sealed record FilmReach(string Kind, bool Shipped, bool Returned);
