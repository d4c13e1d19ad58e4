namespace Traceability.Domain.Certificates;

/// <summary>Who stands for a piece of work.</summary>
/// <param name="PartSerial">The part that was worked on.</param>
/// <param name="StageTitle">Title of the stage.</param>
/// <param name="Name">Name of the person.</param>
/// <param name="Role">The roles that the person held when it was recorded.</param>
/// <param name="At">When the work was closed.</param>
public sealed record StageSignature(string PartSerial, string StageTitle, string Name, string Role, DateTimeOffset At);
