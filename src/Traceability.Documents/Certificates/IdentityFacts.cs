using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>The labelled facts of the first page, two to a row.</summary>
internal static class IdentityFacts
{
    public static IEnumerable<(string Label, string Text)> Of(CertificateDocument certificate)
    {
        var identity = certificate.Identity;
        yield return ("Certificate", certificate.CertificateId);
        yield return ("Issued", InZone(certificate.IssuedAt));
        yield return ("Revision", $"{certificate.Revision}");
        yield return ("Takes the place of", certificate.Supersedes ?? "nothing: first certificate");
        yield return ("Work begun", InZone(identity.StartedAt));
        yield return ("Finished", InZone(identity.FinishedAt));
        yield return (certificate.ReleasedBy.StageTitle, CertificateWords.NameAndRole(certificate.ReleasedBy));
        if (identity.Grade is { } grade)
            yield return ("Grade", grade);
        if (identity.RegradeNote is { } note)
            yield return ("Regraded", note);
        if (identity.Routes.Count > 0)
            yield return (
                "Built and judged by",
                string.Join("\n", identity.Routes.Select(route => CertificateWords.Routes(route, identity.Model)))
            );

        string InZone(DateTimeOffset at) =>
            certificate.TimeZone is { } zone and not "UTC" ? $"{CertificateWords.Moment(at)} ({zone})" : CertificateWords.Moment(at);
    }
}
