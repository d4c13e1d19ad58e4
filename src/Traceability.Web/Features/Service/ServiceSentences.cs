using Traceability.Domain.Values;

namespace Traceability.Web.Features.Service;

/// <summary>What the service desk is told by pages and programs alike. Their words are in <c>ServiceSentences.resx</c>.</summary>
internal static class ServiceSentences
{
    private static readonly TextFile Words = new(typeof(ServiceSentences));

    internal static string ThereIsNoReturn(Guid id) => Words.Say([id]);

    internal static string SayHowItCameOut => Words.Say();

    internal static string ThereIsNoPart(string serial) => Words.Say([serial]);

    internal static string SayWhatToLookFor(int longest) => Words.Say([longest]);

    internal static string CodeWasMisread => Words.Say();

    internal static string CertificateOf(int revision, string model, string serial, string day) =>
        Words.Say([revision, model, serial, day]);

    internal static string LotOfSupplier(string kind, string supplier, string supplierLot) => Words.Say([kind, supplier, supplierLot]);
}
