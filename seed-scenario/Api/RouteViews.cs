namespace Traceability.SeedScenario.Api;

/// <summary>A list as the contract gives it.</summary>
internal sealed record ListOf<T>(IReadOnlyList<T> Items);

/// <summary>As much of a route in force as the scenario needs.</summary>
internal sealed record RouteView(string Model, string Kind, IReadOnlyList<StageView> Stages);

/// <summary>A stage of a route.</summary>
internal sealed record StageView(
    string Code,
    string Title,
    IReadOnlyList<SlotView> Slots,
    IReadOnlyList<CharacteristicView> Characteristics,
    IReadOnlyList<EvidenceView> Evidence,
    IReadOnlyList<string> InstrumentKinds,
    ParametersView Parameters
);

/// <summary>A slot and what it accepts.</summary>
internal sealed record SlotView(string Position, AcceptsView Accepts);

/// <summary>One of the two is given.</summary>
internal sealed record AcceptsView(string? LotKind, string? PartKind);

/// <summary>A characteristic with its limits.</summary>
internal sealed record CharacteristicView(
    string Name,
    string Unit,
    decimal? Nominal,
    decimal? Lower,
    decimal? Upper,
    decimal? Resolution,
    bool Entered
);

/// <summary>A file that a stage wants.</summary>
internal sealed record EvidenceView(string Name, string Kind, bool Required);

/// <summary>What the stage's method reads.</summary>
internal sealed record ParametersView(IReadOnlyList<PhaseView>? Phases);

/// <summary>A phase of a soak.</summary>
internal sealed record PhaseView(string Name, double TemperatureC, double? HumidityPct, int MinDwellMinutes);

/// <summary>The routes in force, by model and kind.</summary>
internal sealed class RouteBook(IReadOnlyList<RouteView> routes)
{
    public StageView Stage(string model, string kind, string code) =>
        routes.Single(r => r.Model == model && r.Kind == kind).Stages.FirstOrDefault(s => s.Code == code)
        ?? throw new SeedException($"the route of {model}/{kind} has no stage '{code}'");

    /// <summary>True when <paramref name="stage"/> comes after <paramref name="last"/> on that route.</summary>
    public bool IsAfter(string model, string kind, string stage, string last)
    {
        var codes = routes.Single(r => r.Model == model && r.Kind == kind).Stages.Select(s => s.Code).ToList();
        return codes.IndexOf(stage) > codes.IndexOf(last);
    }
}
