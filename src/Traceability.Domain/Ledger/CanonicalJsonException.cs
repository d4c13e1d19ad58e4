namespace Traceability.Domain.Ledger;

/// <summary>
/// JSON that has no canonical form: not a finite number, a key given twice, half a surrogate pair, or nested beyond reason.
/// </summary>
public sealed class CanonicalJsonException : FormatException
{
    /// <summary>An exception without a message of its own.</summary>
    public CanonicalJsonException()
        : this("This JSON has no canonical form.") { }

    /// <summary>An exception that says what stands in the way.</summary>
    public CanonicalJsonException(string message)
        : base(message) { }

    /// <summary>An exception that says what stands in the way and what was first noticed.</summary>
    public CanonicalJsonException(string message, Exception innerException)
        : base(message, innerException) { }
}
