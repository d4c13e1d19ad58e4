namespace Traceability.Web.Features.Shared;

/// <summary>
/// Where a kind is chosen from the workshop's list, with a place at hand for one that is not in it yet. The form sends what was chosen
/// under the name, what was typed anew under the name with <c>New</c>, and whether that is meant under the name with <c>Sure</c>.
/// </summary>
public sealed record KindField(
    DeskPage Page,
    string Form,
    string Name,
    string Label,
    IReadOnlyList<(string Value, string Words)> Options,
    string? Hint = null
)
{
    /// <summary>True when it may be left out.</summary>
    public bool Optional { get; init; }

    /// <summary>The choice, with the empty one in front.</summary>
    public IReadOnlyList<(string Value, string Words)> Choices(string choose) => [("", choose), .. Options];

    /// <summary>True when what was typed anew has to be confirmed, or was refused.</summary>
    public bool Asks =>
        Page.RefusedIn(Form)?.Errors.Keys.Any(k => string.Equals(k, Name + "New", StringComparison.OrdinalIgnoreCase)) == true;

    /// <summary>What a form said: the kind, and whether the person is sure of one typed anew.</summary>
    public static (string Code, string Field, bool Sure) Read(IFormCollection form, string name)
    {
        var typed = form[name + "New"].ToString().Trim();
        return typed.Length > 0 ? (typed, name + "New", form[name + "Sure"] == "true") : (form[name].ToString().Trim(), name, true);
    }
}
