namespace Traceability.Domain.Routes;

/// <summary>
/// One immutable revision of the way that a kind of part of a model takes through the workshop. A part keeps the revision it
/// started under. <c>Hash</c> is the SHA-256 (lower-case hex) of the text it was read from.
/// </summary>
public sealed record Route(
    string Model,
    string Kind,
    int Revision,
    string Title,
    string SerialPrefix,
    string Author,
    string ApprovedBy,
    DateOnly EffectiveFrom,
    IReadOnlyList<Stage> Stages,
    string Text,
    string Hash
)
{
    /// <summary>Why this revision was made, in its author's words; "" when the file does not say.</summary>
    public string Reason { get; init; } = "";

    /// <summary>The stage of that code, or null.</summary>
    public Stage? Find(string code) => Stages.FirstOrDefault(s => s.Code == code);

    /// <summary>The place of a stage in the route, from 0; -1 when the route has no such stage.</summary>
    public int IndexOf(string code)
    {
        for (var i = 0; i < Stages.Count; i++)
        {
            if (Stages[i].Code == code)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>True when the stage comes at or after <paramref name="from"/> on this route.</summary>
    public bool IsAtOrAfter(string stage, string from) => IndexOf(stage) >= IndexOf(from);
}
