using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>The labelled facts of the first page, two to a row.</summary>
internal static class IdentityFacts
{
    public static IEnumerable<(string Label, string Text)> Of(CertificateDocument certificate)
    {
        var identity = certificate.Identity;
        yield return ("Certificate", certificate.CertificateId);
        yield return ("Issued", CertificateWords.Moment(certificate.IssuedAt));
        yield return ("Revision", $"{certificate.Revision}");
        yield return ("Takes the place of", certificate.Supersedes ?? "nothing: first certificate");
        yield return ("Work begun", CertificateWords.Moment(identity.StartedAt));
        yield return ("Finished", CertificateWords.Moment(identity.FinishedAt));
        yield return (certificate.ReleasedBy.StageTitle, $"{certificate.ReleasedBy.Name}, {certificate.ReleasedBy.Role}");
        if (identity.Grade is { } grade)
            yield return ("Grade", grade);
        if (identity.RegradeNote is { } note)
            yield return ("Regraded", note);
        if (identity.Routes.Count > 0)
            yield return (
                "Built and judged by",
                string.Join("\n", identity.Routes.Select(route => CertificateWords.Routes(route, identity.Model)))
            );
    }
}
