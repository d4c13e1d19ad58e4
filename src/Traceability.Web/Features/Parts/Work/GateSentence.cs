namespace Traceability.Web.Features.Parts.Work;

/// <summary>Gate rules give their reasons and remedies as fragments, which pages show as sentences.</summary>
public static class GateSentence
{
    /// <summary>The fragment with a capital and a full stop; empty when it is empty.</summary>
    public static string Of(string fragment) =>
        fragment.Length == 0 ? "" : char.ToUpperInvariant(fragment[0]) + fragment[1..].TrimEnd('.') + ".";
}
