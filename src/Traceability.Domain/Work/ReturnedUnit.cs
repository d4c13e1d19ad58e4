using System.Text.RegularExpressions;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work;

/// <summary>A unit that came back: the complaint, what was found, what was done. While it is here it can be worked on again.</summary>
public static partial class ReturnedUnit
{
    /// <summary>References are looked up by an index, which holds short texts only.</summary>
    public const int MaxReference = 100;

    /// <summary>Takes a shipped unit back in.</summary>
    public static Decision<UnitReturn> Open(Dossier dossier, string complaint, string? customerReference, Stamp stamp)
    {
        if (string.IsNullOrWhiteSpace(complaint))
        {
            return Refusal.Invalid("complaint", "say what the customer complains of");
        }

        if (customerReference?.Length > MaxReference)
        {
            return Refusal.Invalid("customerReference", $"a customer reference has at most {MaxReference} characters");
        }

        if (dossier.Shipped is not { } shipped)
        {
            return Refusal.Conflict($"{dossier.Part.Serial} is {Words.Of(dossier.State())} in the workshop; only what was shipped can come back");
        }

        if (stamp.OccurredAt < shipped.OccurredAt)
        {
            return Refusal.Conflict($"it cannot have come back at {stamp.OccurredAt:u}, before it was shipped at {shipped.OccurredAt:u}");
        }

        var opened = new UnitReturn(stamp.NewId(), dossier.Part.Id, complaint.Trim(), string.IsNullOrWhiteSpace(customerReference) ? null : customerReference.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        return Decision.Accept(opened, opened);
    }

    /// <summary>Notes something that was found on it.</summary>
    public static Decision<ReturnFinding> Find(Dossier dossier, Guid returnId, string code, string description, Stamp stamp)
    {
        if (!CodePattern().IsMatch(code))
        {
            return Refusal.Invalid("code", "a code is small letters, digits and hyphens, at most 40, such as 'crackle-in-humid-air'");
        }

        if (string.IsNullOrWhiteSpace(description))
        {
            return Refusal.Invalid("description", "say what was found");
        }

        if (NotOpen(dossier, returnId) is { } refusal)
        {
            return refusal;
        }

        var finding = new ReturnFinding(stamp.NewId(), dossier.Part.Id, returnId, code, description.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        return Decision.Accept(finding, finding);
    }

    /// <summary>Brings a return to its end with what was done.</summary>
    public static Decision<ReturnClosing> Close(Dossier dossier, Guid returnId, string action, Stamp stamp)
    {
        if (string.IsNullOrWhiteSpace(action))
        {
            return Refusal.Invalid("action", "say what was done");
        }

        if (NotOpen(dossier, returnId) is { } refusal)
        {
            return refusal;
        }

        var closing = new ReturnClosing(stamp.NewId(), dossier.Part.Id, returnId, action.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        return Decision.Accept(closing, closing);
    }

    private static Refusal? NotOpen(Dossier dossier, Guid returnId) =>
        dossier.Of<UnitReturn>().All(r => r.Id != returnId) ? Refusal.NotFound($"{dossier.Part.Serial} has no return {returnId}")
        : dossier.Of<ReturnClosing>().FirstOrDefault(c => c.ReturnId == returnId) is { } closed ? Refusal.Conflict($"this return was closed at {closed.OccurredAt:u}: {closed.Action}")
        : null;

    [GeneratedRegex("^[a-z0-9][a-z0-9-]{0,39}$")]
    private static partial Regex CodePattern();
}
