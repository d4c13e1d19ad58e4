using Serilog.Events;

namespace Traceability.Web.Hosting;

/// <summary>
/// The framework warns that the keys of cookies and forms are stored unencrypted. They lie in the database: the private cluster can be read
/// by its account alone, and the role that only reads (<c>traceability_reader</c>) has no right to them. Whoever reads them there reads
/// everything that they protect anyway, and a key to encrypt them with would lie beside them.
/// </summary>
public static class UnencryptedKeysWarning
{
    private const string Source = "Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager";
    private const int NoEncryptor = 35;

    /// <summary>True for that warning and for nothing else.</summary>
    public static bool IsTold(LogEvent line) =>
        line.Properties.GetValueOrDefault("SourceContext") is ScalarValue { Value: Source }
        && line.Properties.GetValueOrDefault("EventId") is StructureValue id
        && id.Properties.Any(p => p is { Name: "Id", Value: ScalarValue { Value: NoEncryptor } });
}
