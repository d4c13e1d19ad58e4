namespace Traceability.SeedScenario;

/// <summary>The service answered something that the scenario did not expect; the message says where and what.</summary>
public sealed class SeedException(string message) : Exception(message);
