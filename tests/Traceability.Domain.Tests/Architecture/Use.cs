namespace Traceability.Domain.Tests.Architecture;

/// <summary>One type, or one source file, that uses another; namespaces are told from the root of the domain on.</summary>
/// <param name="By">The type or file that uses.</param>
/// <param name="From">Its namespace: "Routes.Files".</param>
/// <param name="Of">The type or namespace that is used.</param>
/// <param name="To">Its namespace.</param>
internal sealed record Use(string By, string From, string Of, string To)
{
    public string FromRoom => From.Split('.')[0];

    public string ToRoom => To.Split('.')[0];

    public override string ToString() => $"{From} -> {To}: {By} uses {Of}";
}
