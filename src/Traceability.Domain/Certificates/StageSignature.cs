namespace Traceability.Domain.Certificates;

/// <summary>Who stands for a piece of work.</summary>
/// <param name="PartSerial" example="CD-0071">The part that was worked on.</param>
/// <param name="StageTitle" example="Insulation">Title of the stage.</param>
/// <param name="Name" example="Builder 2">Name of the person.</param>
/// <param name="Role" example="Builder">The roles that the person held when it was recorded.</param>
/// <param name="At" example="2026-01-31T14:20:00+01:00">When the work was closed.</param>
public sealed record StageSignature(string PartSerial, string StageTitle, string Name, string Role, DateTimeOffset At);
