namespace Traceability.Domain.Codes;

/// <summary>What a printed code stands for.</summary>
public enum CodeKind
{
    /// <summary>A person's badge.</summary>
    Badge,

    /// <summary>A work station.</summary>
    Station,

    /// <summary>A part, by its serial.</summary>
    Part,

    /// <summary>A jig or tray that stands for the part in it.</summary>
    Carrier,

    /// <summary>A lot, by its number.</summary>
    Lot,

    /// <summary>An instrument.</summary>
    Instrument,

    /// <summary>A line of the printed action sheet.</summary>
    Action,

    /// <summary>A slot of a stack or an assembly.</summary>
    Position,
}

/// <summary>The two letters by which a printed code tells its kind.</summary>
public static class CodeKinds
{
    /// <summary>All kinds.</summary>
    public static IReadOnlyList<CodeKind> All { get; } = Enum.GetValues<CodeKind>();

    /// <summary>The two letters printed in front.</summary>
    public static string Letters(this CodeKind kind) =>
        kind switch
        {
            CodeKind.Badge => "BD",
            CodeKind.Station => "WS",
            CodeKind.Part => "PT",
            CodeKind.Carrier => "CR",
            CodeKind.Lot => "LT",
            CodeKind.Instrument => "IT",
            CodeKind.Action => "AC",
            CodeKind.Position => "PS",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of printed code."),
        };

    /// <summary>The kind with these two letters in either case, or <see langword="null"/>.</summary>
    public static CodeKind? FromLetters(ReadOnlySpan<char> letters)
    {
        foreach (var kind in All)
            if (letters.Equals(kind.Letters(), StringComparison.OrdinalIgnoreCase))
                return kind;
        return null;
    }
}
