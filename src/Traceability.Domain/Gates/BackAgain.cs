using Traceability.Domain.Records;

namespace Traceability.Domain.Gates;

/// <summary>A unit that came back and has not left again: its return, what was found, how it came out, and its end.</summary>
public sealed record BackAgain(UnitReturn Return, IReadOnlyList<ReturnFinding> Findings, ReturnOutcome? Outcome, ReturnClosing? Closing)
{
    /// <summary>The return with that id; null when the part has none.</summary>
    public static BackAgain? Of(Dossier dossier, Guid returnId) =>
        dossier.Of<UnitReturn>().FirstOrDefault(r => r.Id == returnId) is not { } back
            ? null
            : new(
                back,
                [.. dossier.Of<ReturnFinding>().Where(f => f.ReturnId == returnId)],
                dossier.Of<ReturnOutcome>().LastOrDefault(o => o.ReturnId == returnId),
                dossier.Of<ReturnClosing>().FirstOrDefault(c => c.ReturnId == returnId)
            );

    /// <summary>The return since which the unit has not left; null when it never came back, or went out again.</summary>
    public static BackAgain? Now(Dossier dossier) =>
        dossier.Shipped is null && dossier.Of<UnitReturn>().LastOrDefault() is { } last ? Of(dossier, last.Id) : null;
}
