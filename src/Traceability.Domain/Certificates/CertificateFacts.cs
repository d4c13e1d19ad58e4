using Traceability.Domain.Evidence;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Work;

namespace Traceability.Domain.Certificates;

/// <summary>Everything that a certificate is made from: the facts of the unit and of all that is in it.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Inside">Every part now fitted in it, at any depth, by id.</param>
/// <param name="Lots">Every lot now in it, at any depth, by id.</param>
/// <param name="Instruments">The instruments used on any of them, with their calibrations.</param>
/// <param name="People">Names of the people who appear in the facts, by id.</param>
/// <param name="Files">Bytes of the files that are drawn, by the id of the evidence.</param>
public sealed record CertificateFacts(
    Dossier Unit,
    IReadOnlyDictionary<Guid, Dossier> Inside,
    IReadOnlyDictionary<Guid, Lot> Lots,
    IReadOnlyList<InstrumentStanding> Instruments,
    IReadOnlyDictionary<Guid, string> People,
    IReadOnlyDictionary<Guid, EvidenceFile> Files
)
{
    /// <summary>The roles that these people were given and lost, oldest first.</summary>
    public IReadOnlyList<RoleGrant> RoleGrants { get; init; } = [];

    /// <summary>Serials of the parts and numbers of the lots that are or were fitted, by id.</summary>
    public IReadOnlyDictionary<Guid, string> ItemNames { get; init; } = new Dictionary<Guid, string>();

    /// <summary>Every part in the order of the work: what goes into a part comes before it, the unit last.</summary>
    public IReadOnlyList<Dossier> InOrderOfWork() => [.. Before(Unit), Unit];

    /// <summary>What the customer is shown.</summary>
    public ShownSections Shown { get; init; } = ShownSections.None;

    /// <summary>How people are called.</summary>
    public NamesOnCertificates Names { get; init; }

    /// <summary>Who recorded a fact, as the workshop calls people on certificates.</summary>
    public string NameOf(Fact fact) =>
        People.TryGetValue(fact.By, out var name)
            ? PersonOnCertificate.Called(name, fact, Names, RoleGrants)
            : CertificateTexts.UnknownPerson;

    /// <summary>What is fitted in a part now, in the order of its route's slots.</summary>
    public static IEnumerable<(string Label, Fitting Fitting)> FittedIn(Dossier part)
    {
        var present = part.PresentFittings;
        return part
            .Route.Stages.SelectMany(s => s.Slots)
            .Where(s => present.ContainsKey(s.Position))
            .Select(s => (s.Label, present[s.Position]));
    }

    /// <summary>All files that will be drawn, responses and climate logs, of every counting pass of a part.</summary>
    public static IEnumerable<EvidenceRecord> DrawnFilesOf(Dossier part) => part.Route.Stages.SelectMany(s => DrawnFilesOf(part, s));

    /// <summary>The same of one stage.</summary>
    public static IEnumerable<EvidenceRecord> DrawnFilesOf(Dossier part, Stage stage) =>
        part.CountingPass(stage.Code)
            ?.Evidence.Where(e => e.Kind == EvidenceKind.FrequencyResponse.Code() || e.Kind == EvidenceKind.ClimateLog.Code())
            .GroupBy(e => e.Name)
            .Select(g => g.Last())
        ?? [];

    private IEnumerable<Dossier> Before(Dossier part) =>
        FittedIn(part)
            .Select(f => f.Fitting.ChildId)
            .OfType<Guid>()
            .Select(id => Inside[id])
            .SelectMany(child => Before(child).Append(child));
}

/// <summary>What is decided when a certificate is issued, beside the facts.</summary>
/// <param name="CertificateId">Its own id; cannot be guessed.</param>
/// <param name="Revision">Counts from 1 for each unit.</param>
/// <param name="Supersedes">Id of the revision before.</param>
/// <param name="IssuedAt">When.</param>
/// <param name="VerifyAddress">Where anybody can ask about it.</param>
/// <param name="Workshop">Who speaks, and what is shown.</param>
/// <param name="InventedDataNotice">Set when the store holds demonstration data.</param>
/// <param name="Calendar">The workshop's clock, in which times are written.</param>
public sealed record CertificateIssue(
    string CertificateId,
    int Revision,
    string? Supersedes,
    DateTimeOffset IssuedAt,
    string VerifyAddress,
    WorkshopOnCertificate Workshop,
    string? InventedDataNotice,
    Values.WorkshopCalendar Calendar
);
