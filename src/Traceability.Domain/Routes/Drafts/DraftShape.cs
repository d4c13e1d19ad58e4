namespace Traceability.Domain.Routes.Drafts;

/// <summary>
/// Every key that a route file may have, in the order in which it is written and edited. What a key means is said where it is read
/// (<see cref="Files.RouteText"/>); that none is missing here is checked by <c>DraftShapeTests</c>.
/// </summary>
public static class DraftShape
{
    /// <summary>A position and what may be fitted there.</summary>
    public static readonly DraftField Slots = new(
        "slots",
        DraftSort.Items,
        Text("position"),
        Text("label"),
        Text("lotKind"),
        Text("partKind"),
        Needed
    );

    /// <summary>Files that belong to the record.</summary>
    public static readonly DraftField Evidence = new("evidence", DraftSort.Items, Text("name"), Text("kind"), Needed);

    /// <summary>What is measured or computed.</summary>
    public static readonly DraftField Characteristics = new(
        "characteristics",
        DraftSort.Items,
        Text("name"),
        Text("label"),
        Text("unit"),
        Number("nominal"),
        Number("lower"),
        Number("upper"),
        Number("resolution"),
        Number("expandedUncertainty"),
        Text("decisionRule"),
        new("entered", DraftSort.Flag) { Otherwise = true },
        Needed,
        Flag("onCertificate")
    );

    /// <summary>What must match.</summary>
    public static readonly DraftField Match = new(
        "match",
        DraftSort.Group,
        Words("positions"),
        Text("characteristic"),
        Number("maximumDifference"),
        new("further", DraftSort.Items, Text("characteristic"), Number("maximumDifference")),
        Flag("sameFilmLot")
    );

    /// <summary>What the method reads.</summary>
    public static readonly DraftField Parameters = new(
        "parameters",
        DraftSort.Group,
        Text("toleranceSource"),
        new("numbers", DraftSort.Numbers),
        new(
            "phases",
            DraftSort.Items,
            Text("name"),
            Number("temperatureC"),
            Number("temperatureToleranceK"),
            Number("humidityPct"),
            Number("humidityTolerancePct"),
            Number("minDwellMinutes"),
            Number("maxRampKPerMinute"),
            Number("rampWindowMinutes"),
            Number("maxGapMinutes"),
            Number("partTimeConstantMinutes"),
            Flag("excursionsAreSubtracted"),
            Flag("mustStayDry")
        ),
        Words("maskedEvidence"),
        new("mask", DraftSort.Items, Number("frequencyHz"), Number("lowerDb"), Number("upperDb")),
        new("referenceCurve", DraftSort.Items, Number("frequencyHz"), Number("levelDb")),
        new("terminals", DraftSort.Items, Text("voltage"), Words("tied"), Words("against"))
    );

    /// <summary>A stage.</summary>
    public static readonly DraftField Stages = new(
        "stages",
        DraftSort.Items,
        Text("code"),
        Text("title"),
        Text("method"),
        new("instructions", DraftSort.Sentences),
        Words("cautions"),
        Text("qualification"),
        Words("instrumentKinds"),
        Flag("checkedToday"),
        Flag("loads"),
        Number("minimumOpenMinutes"),
        Number("allowedAttempts"),
        Flag("repeatable"),
        Text("reworkReturnsTo"),
        Words("notByBuilderOf"),
        Flag("freesCarrier"),
        new("waits", DraftSort.Items, Text("afterStage"), Number("minimumMinutes")),
        new("windows", DraftSort.Items, Text("afterStage"), Number("maximumMinutes")),
        Slots,
        Evidence,
        Characteristics,
        Match,
        Parameters
    );

    /// <summary>The route without its stages.</summary>
    public static readonly DraftField Head = new(
        "route",
        DraftSort.Group,
        Text("model"),
        Text("kind"),
        Number("revision"),
        Text("title"),
        Text("serialPrefix"),
        Text("author"),
        Text("approvedBy"),
        Text("effectiveFrom"),
        Text("reason")
    );

    /// <summary>The whole route.</summary>
    public static readonly DraftField Route = new("route", DraftSort.Group, [.. Head.Fields, Stages]);

    private static DraftField Needed => new("required", DraftSort.Flag) { Otherwise = true };

    private static DraftField Text(string key) => new(key, DraftSort.Text);

    private static DraftField Number(string key) => new(key, DraftSort.Number);

    private static DraftField Words(string key) => new(key, DraftSort.Words);

    private static DraftField Flag(string key) => new(key, DraftSort.Flag);
}
