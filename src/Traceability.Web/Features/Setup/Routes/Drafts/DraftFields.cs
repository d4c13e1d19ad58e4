using Traceability.Domain.Routes.Drafts;

namespace Traceability.Web.Features.Setup.Routes.Drafts;

/// <summary>Fields of the editor: those of a stage, or of one thing in it.</summary>
/// <param name="Page">The editor.</param>
/// <param name="Shape">The fields.</param>
/// <param name="Map">What stands in them.</param>
/// <param name="Path">Where they are in the stage: "" for its own, else with the point at the end.</param>
/// <param name="Keys">Only these, in this order; null for all.</param>
public sealed record DraftFields(EditPage Page, DraftField Shape, DraftMap Map, string Path, params IReadOnlyList<string>? Keys)
{
    /// <summary>The fields to show.</summary>
    public IEnumerable<DraftField> Shown => Keys is null ? Shape.Fields : Keys.Select(k => Shape.Fields.First(f => f.Key == k));

    /// <summary>The name of a field in the form.</summary>
    public string NameOf(DraftField field) => EditPage.Prefix + Path + field.Key;

    /// <summary>The id that ties a field to its label.</summary>
    public string IdOf(DraftField field) => NameOf(field).Replace('.', '-').Replace('[', '-').Replace("]", "", StringComparison.Ordinal);

    /// <summary>What is wrong with a field.</summary>
    public IReadOnlyList<string> ProblemsOf(DraftField field) => Page.ProblemsAt(Path + field.Key);
}
