namespace Traceability.Domain.Certificates;

/// <summary>
/// All that a birth certificate says, before anything is drawn. The PDF, the verify page and the JSON twin are three
/// views of one document, so none of them can say more or less than the others.
/// </summary>
/// <remarks>
/// Times carry the workshop's own offset and are shown as they stand; nothing downstream converts them.
/// Lists may be empty, never null: an empty list means that the facts hold nothing of that sort.
/// </remarks>
public sealed record CertificateDocument
{
    /// <summary>The certificate's own id, unique to this revision; the verify address ends in it.</summary>
    /// <example>7KQ2-M4XA-9PLT</example>
    public required string CertificateId { get; init; }

    /// <summary>Serial of the unit that the certificate belongs to.</summary>
    /// <example>US-0034</example>
    public required string Serial { get; init; }

    /// <summary>Revision of the unit's certificate, 1 for the one issued at birth.</summary>
    /// <example>2</example>
    public required int Revision { get; init; }

    /// <summary>When this revision was issued, with the workshop's offset.</summary>
    /// <example>2026-01-31T14:20:00+01:00</example>
    public required DateTimeOffset IssuedAt { get; init; }

    /// <summary>Id of the certificate that this one takes the place of; null for the first.</summary>
    /// <example>3DFR-8T2W-K6YN</example>
    public string? Supersedes { get; init; }

    /// <summary>Absolute address, printed as a QR code, where anyone can ask whether this certificate is genuine and current.</summary>
    /// <example>https://workshop.example/verify/7KQ2-M4XA-9PLT</example>
    public required string VerifyAddress { get; init; }

    /// <summary>The workshop that speaks in this certificate.</summary>
    /// <example>Workshop of the example</example>
    public required string WorkshopName { get; init; }

    /// <summary>The revision of the workshop's own page that held; null when nobody had filled it in.</summary>
    /// <example>3</example>
    public int? WorkshopRevision { get; init; }

    /// <summary>Where the workshop is, in lines.</summary>
    /// <example>Mill Lane 4, Lower Mill</example>
    public string? WorkshopAddress { get; init; }

    /// <summary>How it is reached, in lines.</summary>
    /// <example>bench@workshop.example</example>
    public string? WorkshopContact { get; init; }

    /// <summary>SHA-256 of the logo in the masthead, lower-case hex; null without one.</summary>
    /// <example>9f2c5a7d0b1e4c3a8d6f2b7e9a1c4d5e6f708192a3b4c5d6e7f8091a2b3c4d5e</example>
    public string? LogoSha256 { get; init; }

    /// <summary>
    /// The workshop's time zone, by its name in the IANA database; null in certificates that were issued before it was told.
    /// </summary>
    /// <example>Europe/Berlin</example>
    public string? TimeZone { get; init; }

    /// <summary>Set when the data are invented (demonstration): printed on every page, so that no copy can pass for a real one.</summary>
    /// <example>Invented data: no real microphone</example>
    public string? InventedDataNotice { get; init; }

    /// <summary>What the unit is.</summary>
    public required UnitIdentity Identity { get; init; }

    /// <summary>
    /// What was done since the certificate that this one takes the place of, in the order of recording; empty for the first one, and when
    /// nothing was.
    /// </summary>
    public IReadOnlyList<RevisionChange> Changes { get; init; } = [];

    /// <summary>What is inside, outermost first; <see cref="ContentRow.Depth"/> gives the tree.</summary>
    public IReadOnlyList<ContentRow> Contents { get; init; } = [];

    /// <summary>Measured values, grouped by part and stage in the order of the work.</summary>
    public IReadOnlyList<MeasuredStage> Measurements { get; init; } = [];

    /// <summary>Acoustic results of the finished unit, one entry for each directional pattern.</summary>
    public IReadOnlyList<PatternResult> Patterns { get; init; } = [];

    /// <summary>Frequency responses to be drawn.</summary>
    public IReadOnlyList<CertifiedCurve> Curves { get; init; } = [];

    /// <summary>Climate soaks to be drawn, in the order of the work.</summary>
    public IReadOnlyList<SoakRecord> Soaks { get; init; } = [];

    /// <summary>
    /// Every instrument whose readings stand in this certificate, with the calibration that was in force at the measurement.
    /// </summary>
    public IReadOnlyList<InstrumentRow> Instruments { get; init; } = [];

    /// <summary>Who carried out which stage.</summary>
    public IReadOnlyList<StageSignature> BuiltBy { get; init; } = [];

    /// <summary>Who released the unit.</summary>
    public required StageSignature ReleasedBy { get; init; }

    /// <summary>Nonconformities and what was decided about them: the unit carries its history openly.</summary>
    public IReadOnlyList<CarriedNonconformity> Nonconformities { get; init; } = [];

    /// <summary>Conditions and definitions under which the values hold, in the order in which they are to be read.</summary>
    public IReadOnlyList<Statement> Statements { get; init; } = [];

    /// <summary>How far the certificate speaks.</summary>
    /// <example>The certificate speaks of this unit at the time of its release.</example>
    public required string Scope { get; init; }

    /// <summary>The film lots found in <see cref="Contents"/>, each once, in the order of their first appearance.</summary>
    public IEnumerable<FilmData> FilmLots() => Contents.Select(row => row.Film).OfType<FilmData>().DistinctBy(film => film.LotNumber);
}
