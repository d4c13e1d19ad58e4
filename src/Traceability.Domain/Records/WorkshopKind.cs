namespace Traceability.Domain.Records;

/// <summary>Which list of the workshop a kind stands in.</summary>
public enum KindOf
{
    /// <summary>Kinds of lots, as slots accept them.</summary>
    Lot,

    /// <summary>Kinds of parts, as routes make them.</summary>
    Part,

    /// <summary>Kinds of instruments, as stages ask for them.</summary>
    Instrument,

    /// <summary>What people are qualified for.</summary>
    Qualification,

    /// <summary>What customers complain of.</summary>
    Complaint,

    /// <summary>What is found wrong: with a returned unit, or at the bench.</summary>
    Finding,
}

/// <summary>A kind was entered in one of the workshop's lists, from which it is chosen from then on.</summary>
public sealed record WorkshopKind(
    Guid Id,
    KindOf Of,
    string Code,
    string Title,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt)
{
    /// <summary>What its decisions are kept under: they hold for the kind of that name, whether it was entered or came by use.</summary>
    public static Guid SubjectOf(KindOf of, string code) => NamedSubject.Of(SetupSort.Kind, NameOf(of, code));

    /// <summary>The list and the code in one: "lot:film".</summary>
    public static string NameOf(KindOf of, string code) => $"{of.ToString().ToLowerInvariant()}:{code}";
}
