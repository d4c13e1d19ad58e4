using Traceability.Domain.Records;

namespace Traceability.Domain.Work;

/// <summary>One field that two revisions of the workshop say differently; null where one says nothing.</summary>
public sealed record WorkshopFieldChange(string Field, string? Was, string? Now);

/// <summary>What a revision of the workshop changed.</summary>
public static class WorkshopChanges
{
    /// <summary>The fields that differ, by the names of the contract; of a first revision, those that say something.</summary>
    public static IReadOnlyList<WorkshopFieldChange> Between(WorkshopRevision? before, WorkshopRevision now) =>
        [
            .. Fields(now)
                .Zip(before is null ? Fields(now).Select(f => (f.Field, Value: (string?)null)) : Fields(before))
                .Where(pair => pair.First.Value != pair.Second.Value)
                .Select(pair => new WorkshopFieldChange(pair.First.Field, pair.Second.Value, pair.First.Value)),
        ];

    private static IEnumerable<(string Field, string? Value)> Fields(WorkshopRevision r) =>
        [
            ("name", r.Name),
            ("address", r.Address),
            ("contact", r.Contact),
            ("timeZone", r.TimeZone),
            ("publicUrl", r.PublicUrl),
            ("language", r.Language),
            ("warrantyTerms", r.WarrantyTerms),
            ("suppliers", YesNo(r.ShowsSuppliers)),
            ("lotNumbers", YesNo(r.ShowsLotNumbers)),
            ("reworks", YesNo(r.ShowsReworks)),
            ("namesOnCertificates", r.Names.ToString()),
            ("singleHanded", YesNo(r.SingleHanded)),
            ("logo", r.LogoSha256),
        ];

    /// <summary>Switches that are off say nothing.</summary>
    private static string? YesNo(bool value) => value ? "yes" : null;
}
