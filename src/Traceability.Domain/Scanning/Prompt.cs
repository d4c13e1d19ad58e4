using System.Text.Json.Serialization;

namespace Traceability.Domain.Scanning;

/// <summary>How a prompt is to be taken; each has its own word, shape, colour and sound on the page.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<Severity>))]
public enum Severity
{
    /// <summary>Done, and in order.</summary>
    Ok,

    /// <summary>Under way, or time must pass.</summary>
    Wait,

    /// <summary>Not done.</summary>
    Refused,

    /// <summary>Something is asked.</summary>
    Ask,

    /// <summary>Done and kept, but outside its limits.</summary>
    Outside,
}

/// <summary>What the station says after a scan: one line, and more for whoever wants it.</summary>
public sealed record Prompt(Severity Severity, string Line, string? Detail = null);
