namespace Traceability.SeedScenario;

/// <summary>The service answered something that the scenario did not expect; the message says where and what.</summary>
public sealed class SeedException(string message, int? status = null) : Exception(message)
{
    /// <summary>The HTTP status of the answer, when it was one that refuses.</summary>
    public int? Status => status;
}
