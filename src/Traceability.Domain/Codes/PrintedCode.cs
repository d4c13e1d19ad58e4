namespace Traceability.Domain.Codes;

/// <summary>What our labels, badges, jig tags and the action sheet carry: <c>PT-D26-00017-K</c> is part D26-00017.</summary>
/// <remarks>
/// Two letters for the kind, the id and the check character of both, parted by hyphens. The id may itself hold hyphens, points and
/// underscores (<see cref="CodeText"/>); they are not checked, because people leave them out. Checked by <c>PrintedCodeTests</c>.
/// </remarks>
public sealed record PrintedCode
{
    private const int LettersOfKind = 2;

    private PrintedCode(CodeKind kind, string id) => (Kind, Id) = (kind, id);

    /// <summary>What it stands for.</summary>
    public CodeKind Kind { get; }

    /// <summary>Which one, in capitals.</summary>
    public string Id { get; }

    /// <summary>The check character over kind and id.</summary>
    public char Check => CheckOf(Kind, Id);

    /// <summary>The text to print.</summary>
    public string Text => $"{Kind.Letters()}-{Id}-{Check}";

    /// <summary>The code for an id.</summary>
    /// <exception cref="ArgumentException">The id breaks the rule of <see cref="CodeText"/>.</exception>
    public static PrintedCode For(CodeKind kind, string id) =>
        CodeText.TryRead(id, CodeTexts.PrintedId, out var code, out var problem)
            ? new(kind, code)
            : throw new ArgumentException(problem, nameof(id));

    /// <summary>Reads a scanned or typed text in either case.</summary>
    public static CodeReading Read(string? text)
    {
        var typed = (text ?? "").Trim().ToUpperInvariant();
        if (typed.Length < LettersOfKind + 4 || typed[LettersOfKind] != '-' || typed[^2] != '-' || !char.IsAsciiLetterOrDigit(typed[^1]))
            return new CodeReading.NotPrinted();
        if (CodeKinds.FromLetters(typed.AsSpan(0, LettersOfKind)) is not { } kind)
            return new CodeReading.NotPrinted();
        if (!CodeText.TryRead(typed[(LettersOfKind + 1)..^2], CodeTexts.PrintedId, out var id, out _))
            return new CodeReading.NotPrinted();

        var expected = CheckOf(kind, id);
        return typed[^1] == expected ? new CodeReading.Good(new(kind, id)) : new CodeReading.WrongCheck(kind, id, typed[^1], expected);
    }

    /// <inheritdoc/>
    public override string ToString() => Text;

    private static char CheckOf(CodeKind kind, string id) => CheckCharacter.For(kind.Letters() + id);
}
