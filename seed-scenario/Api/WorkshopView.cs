namespace Traceability.SeedScenario.Api;

/// <summary>What the service says of the workshop, as far as the scenario needs it.</summary>
internal sealed record WorkshopView(string TimeZone);
