using System.Globalization;
using Traceability.Domain.Records;

namespace Traceability.Domain.Certificates;

/// <summary>How a certificate calls a person: as the workshop sets it, so that no more of anybody leaves the house.</summary>
internal static class PersonOnCertificate
{
    /// <summary>
    /// The name, its first letters, or the roles that the person held when the fact was recorded.
    /// </summary>
    public static string Called(string name, Fact by, NamesOnCertificates how, IEnumerable<RoleGrant> grants) =>
        how switch
        {
            NamesOnCertificates.Initials => Initials(name),
            NamesOnCertificates.Role => SignaturesOfUnit.RolesOf(by.By, by.RecordedAt, grants),
            _ => name,
        };

    /// <summary>"Ada van Holm" is "A. v. H."; letters of any script, with the marks that belong to them.</summary>
    public static string Initials(string name) =>
        string.Join(
            ' ',
            name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .Select(word => StringInfo.GetNextTextElement(word) + ".")
        );
}
