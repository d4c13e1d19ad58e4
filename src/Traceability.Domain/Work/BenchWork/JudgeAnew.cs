using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>
/// What an attempt that ended is judged anew on, besides its part's facts: its files, and what was inside the part, as it counts now.
/// </summary>
public sealed record JudgedOn(IReadOnlyList<EvidenceFile> Evidence, GateContext Context);

/// <summary>An attempt judged anew because something it was computed from was corrected.</summary>
/// <param name="Serial">The part.</param>
/// <param name="Attempt">The attempt, as it stands with the superseding values.</param>
/// <param name="Before">Its verdict before the correction.</param>
/// <param name="Values">The values that supersede computed ones; none when they came out the same.</param>
/// <param name="Nonconformity">Raised when the verdict turned.</param>
public sealed record JudgedAnew(
    string Serial,
    AttemptView Attempt,
    Verdict? Before,
    IReadOnlyList<Correction> Values,
    Nonconformity? Nonconformity
)
{
    /// <summary>Its verdict after the correction.</summary>
    public Verdict? After => Attempt.Verdict;
}

/// <summary>
/// Carries a corrected reading to everything that was computed from it: the later attempts of the same part, and those of the parts that it
/// is or was fitted in. Each is judged on what counted when it ended, with corrected values in the place of wrong ones. Computed values are
/// superseded, never changed; a verdict that turns raises a nonconformity. An attempt that did not use the reading is left alone.
/// </summary>
/// <param name="cause">What was corrected, in words for the reasons it gives.</param>
/// <param name="on">Files and circumstances of an attempt that <see cref="MayReach"/> names.</param>
/// <param name="stamp">Who corrected, and when.</param>
public sealed class JudgeAnew(string cause, Func<AttemptView, JudgedOn> on, Stamp stamp)
{
    /// <summary>Readings whose value is another now.</summary>
    private readonly HashSet<Guid> changed = [];

    /// <summary>Parts with a changed reading, as they stand now.</summary>
    private readonly Dictionary<Guid, Dossier> corrected = [];

    /// <summary>
    /// The attempts that a correction in this part, or in a part inside it, may reach: closed, by a method that looks at earlier stages or
    /// at fitted parts.
    /// </summary>
    public static IEnumerable<AttemptView> MayReach(Dossier dossier) =>
        dossier.Attempts.Where(a =>
            a.Closed && MethodOf(dossier, a) is { } m && (m.ReadsEarlier.Count > 0 || m.ReadsOfFittedParts.Count > 0)
        );

    /// <summary>
    /// Judges one attempt anew, whose own reading was corrected. <paramref name="dossier"/> holds the correction already.
    /// </summary>
    public Decision<JudgedAnew> Own(Dossier dossier, AttemptView attempt, Correction correction)
    {
        changed.Add(correction.ReadingId);
        corrected[dossier.Part.Id] = dossier;
        return Judge(dossier, attempt);
    }

    /// <summary>Judges every later attempt of a part that used something changed, oldest first.</summary>
    public Decision<IReadOnlyList<JudgedAnew>> Reached(Dossier dossier)
    {
        List<Fact> facts = [];
        List<JudgedAnew> judged = [];
        foreach (var attempt in MayReach(dossier).OrderBy(a => a.Ending!.RecordedAt).Where(a => Uses(dossier, a)))
        {
            var decision = Judge(dossier.With(facts), attempt);
            if (decision.Refusal is { } refusal)
            {
                return refusal;
            }

            facts.AddRange(decision.Facts);
            if (decision.Facts.Count > 0)
            {
                judged.Add(decision.Value!);
            }
        }

        corrected[dossier.Part.Id] = dossier.With(facts);
        return Decision.Accept<IReadOnlyList<JudgedAnew>>(judged, facts);
    }

    private bool Uses(Dossier dossier, AttemptView attempt)
    {
        var (method, moment) = (MethodOf(dossier, attempt)!, attempt.Ending!.RecordedAt);
        var fitted = dossier
            .AsOf(moment)
            .PresentFittings.Values.Select(f => f.ChildId is { } child ? corrected.GetValueOrDefault(child) : null)
            .OfType<Dossier>();
        return method.ReadsEarlier.Any(name => Changed(dossier, moment, name))
            || fitted.Any(child => method.ReadsOfFittedParts.Any(name => Changed(child, moment, name)));
    }

    private bool Changed(Dossier dossier, DateTimeOffset moment, string characteristic) =>
        changed.Count > 0 && dossier.ReadingThatCounted(moment, characteristic) is { } reading && changed.Contains(reading.Reading.Id);

    private Decision<JudgedAnew> Judge(Dossier dossier, AttemptView attempt)
    {
        var (stage, before) = (dossier.Route.Find(attempt.Stage)!, attempt.Verdict);
        var (method, judgedOn) = (StageMethods.Get(stage.Method), on(attempt));
        var outcome = method.Judge(StageInputs.Anew(dossier, attempt, stage, judgedOn.Evidence, judgedOn.Context));
        if (outcome.Unreadable is { } unreadable)
        {
            return Refusal.Conflict(
                RefusalTexts.CouldNotBeComputedAnyMore(stage.Title, dossier.Part.Serial, unreadable),
                RefusalCode.NotComputable
            );
        }

        List<Correction> values = [.. outcome.Computed.Select(v => Superseding(dossier, attempt, v, method)).OfType<Correction>()];
        changed.UnionWith(values.Select(v => v.ReadingId));
        var after = dossier.With(values).Attempts.First(a => a.Id == attempt.Id);
        var nonconformity = Turned(dossier, stage, attempt, after, outcome);
        return Decision.Accept(
            new JudgedAnew(dossier.Part.Serial, after, before, values, nonconformity),
            [.. values, .. nonconformity is null ? Array.Empty<Fact>() : [nonconformity]]
        );
    }

    private Correction? Superseding(Dossier dossier, AttemptView attempt, ComputedValue value, StageMethod method) =>
        dossier.Attempts.First(a => a.Id == attempt.Id).Reading(value.Characteristic) is { } old && old.Digits != value.Digits
            ? Readings.Supersede(old, value.Value, value.Digits, RefusalTexts.ComputedAnew(method.Name, method.Version, cause), stamp)
            : null;

    private Nonconformity? Turned(Dossier dossier, Stage stage, AttemptView before, AttemptView after, StageOutcome outcome)
    {
        var found = before.Ending!.FailedByFinding ? null : outcome.Findings.FirstOrDefault(f => f.Fails)?.Text;
        return found is not null
                ? Raise(NonconformityCodes.FindingAfterCorrection, RefusalTexts.FoundAfterCorrection(stage.Title, cause, found))
            : before.Passed && !after.Passed
                ? Raise(
                    NonconformityCodes.CorrectionTurnedVerdict,
                    RefusalTexts.CorrectionTurnedAPass(stage.Title, cause, Words.Of(after.Verdict!.Value), Unmet(after))
                )
            : null;

        Nonconformity Raise(string code, string description) =>
            new(stamp.NewId(), dossier.Part.Id, before.Id, before.Stage, code, description, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
    }

    private static string Unmet(AttemptView after)
    {
        var computed = after
            .Readings.Where(r => !r.Met && r.Reading.Source == ReadingSource.Computed)
            .Select(r => $"{r.Reading.Characteristic} {r.Digits} {r.Reading.Unit}")
            .ToList();
        return computed.Count == 0 ? "" : $" ({string.Join(", ", computed)})";
    }

    private static StageMethod? MethodOf(Dossier dossier, AttemptView attempt) =>
        dossier.Route.Find(attempt.Stage) is { } stage ? StageMethods.Find(stage.Method) : null;
}
