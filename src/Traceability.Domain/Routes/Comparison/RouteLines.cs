using System.Globalization;

namespace Traceability.Domain.Routes.Comparison;

/// <summary>Says a stage line by line: everything that a route file can state, so that nothing escapes a comparison.</summary>
internal static class RouteLines
{
    /// <summary>
    /// The lines of the route itself. Author, approver, day and number of a revision always differ and are no part of it.
    /// </summary>
    public static IEnumerable<RouteLine> Of(Route route) =>
        [new(RouteAspect.Route, "", "title", route.Title), new(RouteAspect.Route, "", "serialPrefix", route.SerialPrefix)];

    /// <summary>The lines of a stage, in the order of the route file.</summary>
    public static IEnumerable<RouteLine> Of(Stage s) =>
        Some([
            Line(RouteAspect.Work, "", "title", s.Title),
            Line(RouteAspect.Work, "", "method", s.Method),
            Line(RouteAspect.Work, "", "loads", s.Loads),
            Line(RouteAspect.Work, "", "minimumOpenMinutes", s.MinimumOpenMinutes),
            Line(RouteAspect.Work, "", "allowedAttempts", s.AllowedAttempts),
            Line(RouteAspect.Work, "", "repeatable", s.Repeatable),
            Line(RouteAspect.Work, "", "reworkReturnsTo", s.ReworkReturnsTo),
            Line(RouteAspect.Work, "", "freesCarrier", s.FreesCarrier),
            .. s.Characteristics.SelectMany(Of),
            .. s.Slots.SelectMany(Of),
            .. s.Waits.Select(w => Line(RouteAspect.Wait, w.AfterStage, "minimumMinutes", w.MinimumMinutes)),
            .. s.Windows.Select(w => Line(RouteAspect.Window, w.AfterStage, "maximumMinutes", w.MaximumMinutes)),
            .. s.InstrumentKinds.Select(k => Line(RouteAspect.Instrument, k, "instrumentKind", k)),
            Line(RouteAspect.Instrument, "", "checkedToday", s.CheckedToday),
            Line(RouteAspect.People, "", "qualification", s.Qualification),
            .. s.NotByBuilderOf.Select(o => Line(RouteAspect.People, o, "notByBuilderOf", o)),
            .. s.Instructions.Select(i => Line(RouteAspect.Work, "", "instruction", i)),
            .. s.Cautions.Select(c => Line(RouteAspect.Caution, c, "caution", c)),
            .. s.Evidence.SelectMany(Of),
            .. Of(s.Match),
            .. Of(s.Parameters),
        ]);

    /// <summary>The lists whose order a route file states, by aspect and field.</summary>
    public static IEnumerable<(RouteAspect Aspect, string Field, IReadOnlyList<string> Items)> ListsOf(Stage s) =>
        [
            (RouteAspect.Characteristic, "order", [.. s.Characteristics.Select(c => c.Name)]),
            (RouteAspect.Slot, "order", [.. s.Slots.Select(x => x.Position)]),
            (RouteAspect.Instrument, "order", s.InstrumentKinds),
            (RouteAspect.People, "order", s.NotByBuilderOf),
            (RouteAspect.Caution, "order", s.Cautions),
            (RouteAspect.Evidence, "order", [.. s.Evidence.Select(e => e.Name)]),
            (RouteAspect.Parameter, "orderOfPhases", [.. (s.Parameters.Phases ?? []).Select(p => p.Name)]),
        ];

    private static IEnumerable<RouteLine?> Of(Characteristic c) =>
        [
            Line(RouteAspect.Characteristic, c.Name, "label", c.Label),
            Line(RouteAspect.Characteristic, c.Name, "unit", c.Unit),
            Line(RouteAspect.Characteristic, c.Name, "nominal", c.Nominal),
            Line(RouteAspect.Characteristic, c.Name, "lower", c.Lower),
            Line(RouteAspect.Characteristic, c.Name, "upper", c.Upper),
            Line(RouteAspect.Characteristic, c.Name, "resolution", c.Resolution),
            Line(RouteAspect.Characteristic, c.Name, "expandedUncertainty", c.ExpandedUncertainty),
            Line(RouteAspect.Characteristic, c.Name, "guarded", c.Guarded),
            Line(RouteAspect.Characteristic, c.Name, "entered", c.Entered),
            Line(RouteAspect.Characteristic, c.Name, "required", c.Required),
            Line(RouteAspect.Characteristic, c.Name, "onCertificate", c.OnCertificate),
        ];

    private static IEnumerable<RouteLine?> Of(Slot x) =>
        [
            Line(RouteAspect.Slot, x.Position, "label", x.Label),
            Line(RouteAspect.Slot, x.Position, "lotKind", x.LotKind),
            Line(RouteAspect.Slot, x.Position, "partKind", x.PartKind),
            Line(RouteAspect.Slot, x.Position, "required", x.Required),
        ];

    private static IEnumerable<RouteLine?> Of(EvidenceNeed e) =>
        [Line(RouteAspect.Evidence, e.Name, "kind", e.Kind), Line(RouteAspect.Evidence, e.Name, "required", e.Required)];

    private static IEnumerable<RouteLine?> Of(MatchRule? m) =>
        m is null
            ? []
            :
            [
                Line(RouteAspect.Match, "", "positions", string.Join(", ", m.Positions)),
                Line(RouteAspect.Match, m.Characteristic, "maximumDifference", m.MaximumDifference),
                .. m.Further.Select(f => Line(RouteAspect.Match, f.Characteristic, "furtherDifference", f.MaximumDifference)),
                Line(RouteAspect.Match, "", "sameFilmLot", m.SameFilmLot),
            ];

    private static IEnumerable<RouteLine?> Of(StageParameters p) =>
        [
            Line(RouteAspect.Parameter, "", "toleranceSource", p.ToleranceSource),
            .. (p.Phases ?? []).SelectMany(Of),
            .. (p.Mask ?? []).SelectMany(m =>
                new[]
                {
                    Line(RouteAspect.Parameter, $"{Plain(m.FrequencyHz)} Hz", "lowerDb", m.LowerDb),
                    Line(RouteAspect.Parameter, $"{Plain(m.FrequencyHz)} Hz", "upperDb", m.UpperDb),
                }
            ),
            .. (p.ReferenceCurve ?? []).Select(c => Line(RouteAspect.Parameter, $"{Plain(c.FrequencyHz)} Hz", "levelDb", c.LevelDb)),
            p.MaskedEvidence is { } masked ? Line(RouteAspect.Parameter, "", "maskedEvidence", string.Join(", ", masked)) : null,
            .. (p.Terminals ?? [])
                .GroupBy(t => t.Voltage)
                .Select(g =>
                    Line(
                        RouteAspect.Parameter,
                        g.Key,
                        "terminals",
                        string.Join("; ", g.Select(t => $"{string.Join(" + ", t.Tied)} / {string.Join(" + ", t.Against)}"))
                    )
                ),
            .. p.Numbers.OrderBy(n => n.Key, StringComparer.Ordinal).Select(n => Line(RouteAspect.Parameter, n.Key, "number", n.Value)),
        ];

    private static IEnumerable<RouteLine?> Of(SoakPhaseParameters p) =>
        [
            Line(RouteAspect.Parameter, p.Name, "temperatureC", p.TemperatureC),
            Line(RouteAspect.Parameter, p.Name, "temperatureToleranceK", p.TemperatureToleranceK),
            Line(RouteAspect.Parameter, p.Name, "humidityPct", p.HumidityPct),
            Line(RouteAspect.Parameter, p.Name, "humidityTolerancePct", p.HumidityTolerancePct),
            Line(RouteAspect.Parameter, p.Name, "minDwellMinutes", p.MinDwellMinutes),
            Line(RouteAspect.Parameter, p.Name, "maxRampKPerMinute", p.MaxRampKPerMinute),
            Line(RouteAspect.Parameter, p.Name, "maxGapMinutes", p.MaxGapMinutes),
            Line(RouteAspect.Parameter, p.Name, "partTimeConstantMinutes", p.PartTimeConstantMinutes),
            Line(RouteAspect.Parameter, p.Name, "rampWindowMinutes", p.RampWindowMinutes),
            Line(RouteAspect.Parameter, p.Name, "excursionsAreSubtracted", p.ExcursionsAreSubtracted),
            Line(RouteAspect.Parameter, p.Name, "mustStayDry", p.MustStayDry),
        ];

    private static IEnumerable<RouteLine> Some(IEnumerable<RouteLine?> lines) => lines.OfType<RouteLine>();

    private static RouteLine? Line(RouteAspect aspect, string item, string field, string? value) =>
        value is null ? null : new(aspect, item, field, value);

    private static RouteLine? Line(RouteAspect aspect, string item, string field, decimal? value) =>
        value is { } v ? new(aspect, item, field, Plain(v)) : null;

    private static RouteLine Line(RouteAspect aspect, string item, string field, bool value) =>
        new(aspect, item, field, value ? "true" : "false");

    /// <summary>Without trailing zeros and without an exponent.</summary>
    private static string Plain(decimal value) => value.ToString("0.############################", CultureInfo.InvariantCulture);
}
