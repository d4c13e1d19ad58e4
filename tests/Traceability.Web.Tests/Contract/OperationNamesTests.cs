using System.Reflection;
using System.Text.Json;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Traceability.Web.Tests.Contract;

/// <summary>One operation, one name: what the contract calls a call is what its class is called.</summary>
public sealed class OperationNamesTests(Workshop workshop) : IClassFixture<Workshop>
{
    /// <summary>Operations whose class still has another name, or holds several.</summary>
    private static readonly string[] Exceptions =
    [
        "decideAffected: DecideOnDoubts",
        "decideNonconformity: DecideOnNonconformity",
        "drawControlChart: DrawChart",
        "listAffected: TraceParts",
        "listCauseParts: RankCauses",
        "listCertificates: ReadCertificates",
        "listConcessions: GiveConcession",
        "listGaugeStudies: DesignGaugeStudy",
        "listTracedHolds: TracedHolds",
        "makeFirstAccount: FirstAccount",
        "readCertificate: ReadCertificates",
        "readCertificatePdf: ReadCertificates",
        "readEvidence: ReadAttempt",
        "readGates: ReadPart",
        "readGaugeStudy: DesignGaugeStudy",
        "readHistory: PartHistory",
        "readLatestCertificatePdf: ReadCertificates",
        "readMonthlyReportPdf: ReadMonthlyReport",
        "readTracedHold: TracedHolds",
        "releaseHold: LiftHold",
        "releaseTracedHold: LiftTracedHold",
        "signOut: SignIn",
        "takeStudyReadings: DesignGaugeStudy",
    ];

    [Fact]
    public void Every_operation_is_called_like_the_class_that_maps_it()
    {
        var named = workshop
            .Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.RoutePattern.RawText?.StartsWith("/api/", StringComparison.Ordinal) is true)
            .Select(e => (e.Metadata.GetMetadata<IEndpointNameMetadata>()?.EndpointName, Handler: e.Metadata.GetMetadata<MethodInfo>()))
            .ToList();
        Assert.True(named.Count > 90);
        Assert.Equal(
            Exceptions.Order(StringComparer.Ordinal),
            named
                .Where(n => n.EndpointName != JsonNamingPolicy.CamelCase.ConvertName(n.Handler!.DeclaringType!.Name))
                .Select(n => $"{n.EndpointName}: {n.Handler!.DeclaringType!.Name}")
                .Order(StringComparer.Ordinal)
        );
    }
}
