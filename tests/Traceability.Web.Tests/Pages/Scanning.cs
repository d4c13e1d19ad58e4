using Traceability.Domain.Codes;

namespace Traceability.Web.Tests.Pages;

/// <summary>Signing in by scans.</summary>
internal static class Scanning
{
    public static async Task<Visitor> SignedInByScansAsync(this Workshop workshop)
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(PrintedCode.For(CodeKind.Badge, Workshop.Builder).Text, Workshop.PinOf(Workshop.Builder));
        return visitor;
    }
}
