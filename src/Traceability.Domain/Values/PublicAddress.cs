namespace Traceability.Domain.Values;

/// <summary>The address by which a workshop's service is reached from outside; printed on certificates for good.</summary>
public static class PublicAddress
{
    private static readonly string[] Everywhere = ["0.0.0.0", "[::]"];

    /// <summary>
    /// True for an absolute http(s) address that names another machine than the reader's own, without query and fragment. Whether
    /// anybody answers there is not asked.
    /// </summary>
    public static bool LeadsHereFromOutside(string? address) =>
        Uri.TryCreate(address?.Trim(), UriKind.Absolute, out var uri)
        && (uri.Scheme == Uri.UriSchemeHttps || uri.Scheme == Uri.UriSchemeHttp)
        && !uri.IsLoopback
        && !Everywhere.Contains(uri.Host)
        && uri.Query.Length == 0
        && uri.Fragment.Length == 0;
}
