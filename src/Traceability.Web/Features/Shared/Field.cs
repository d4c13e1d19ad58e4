namespace Traceability.Web.Features.Shared;

/// <summary>One line of a form: its label, its hint, what was typed, and what was wrong with it.</summary>
public sealed record Field(DeskPage Page, string Form, string Name, string Label, string? Hint = null, string? Otherwise = null)
{
    public bool Required { get; init; }

    public string Type { get; init; } = "text";

    public int MaxLength { get; init; } = 4000;

    /// <summary>More than one makes it a text area.</summary>
    public int Lines { get; init; } = 1;

    public string? InputMode { get; init; }

    /// <summary>What may be chosen, with its words; makes it a choice.</summary>
    public IReadOnlyList<(string Value, string Words)>? Options { get; init; }

    /// <summary>What is proposed while typing.</summary>
    public IReadOnlyList<string>? Proposals { get; init; }

    /// <summary>The id that ties label, field and hint together.</summary>
    public string Id => $"{Form}-{Name}";

    /// <summary>What stands in the field. A PIN is never shown again.</summary>
    public string? Value => Type == "password" ? null : Page.Typed(Form, Name, Otherwise);

    /// <summary>What was wrong with it.</summary>
    public string? Problem =>
        Page.RefusedIn(Form)?.Errors.FirstOrDefault(e => string.Equals(e.Key, Name, StringComparison.OrdinalIgnoreCase)).Value
            is { } problems
            ? string.Join(" ", problems)
            : null;

    /// <summary>The ids of what describes it.</summary>
    public string? DescribedBy
    {
        get
        {
            string?[] ids = [Hint is null ? null : $"{Id}-hint", Problem is null ? null : $"{Id}-problem"];
            return string.Join(' ', ids.OfType<string>()) is { Length: > 0 } some ? some : null;
        }
    }
}

/// <summary>What every form begins with: its refusal, its key and its name.</summary>
public sealed record FormStart(DeskPage Page, string Form);
