namespace Traceability.Domain.Scanning;

/// <summary>
/// A PIN on its way from the scan box to the one check; it prints itself as stars and is never part of a session or prompt.
/// </summary>
public sealed class Pin(string typed)
{
    /// <summary>The PIN itself, for the check only.</summary>
    public string Reveal() => typed;

    /// <inheritdoc/>
    public override string ToString() => "****";
}
