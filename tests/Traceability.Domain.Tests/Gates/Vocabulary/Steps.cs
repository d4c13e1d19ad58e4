using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work.Delivery;

namespace Traceability.Domain.Tests.Gates.Vocabulary;

/// <summary>Steps that a test takes for granted on its way to what it is about.</summary>
internal static class Steps
{
    public static APart Opened(this APart part, string stage)
    {
        part.TryOpen(stage).Accepted();
        return part;
    }

    /// <summary>Does these stages one after the other, with good values and every slot filled.</summary>
    public static APart Passed(this APart part, params string[] stages)
    {
        foreach (var stage in stages)
        {
            part.Opened(stage).Filled();
            part.TryRead([.. part.StageOf(stage).Characteristics.Where(c => c.Entered).Select(c => (c.Name, c.Good()))]).Accepted();
            part.Bench.Later(part.StageOf(stage).MinimumOpenMinutes ?? 0);
            Assert.Equal(Verdict.Pass, part.TryClose().Accepted().Verdict);
        }

        return part;
    }

    /// <summary>Does the stage with the first value that has a limit outside it.</summary>
    public static APart Failed(this APart part, string stage)
    {
        part.Opened(stage).Filled();
        var bad = part.StageOf(stage).Characteristics.First(c => c.Entered && (c.Lower ?? c.Upper) is not null);
        part.TryRead([.. part.StageOf(stage).Characteristics.Where(c => c.Entered).Select(c => (c.Name, c == bad ? c.Bad() : c.Good()))])
            .Accepted();
        Assert.Equal(Verdict.Fail, part.TryClose().Accepted().Verdict);
        return part;
    }

    public static APart Filled(this APart part)
    {
        var empty = part.StageOf(part.Dossier.OpenAttempt!.Stage)
            .Slots.Where(s => s.Required && !part.Dossier.PresentFittings.ContainsKey(s.Position));
        part.TryFit([
                .. empty.Select(s =>
                    s.LotKind is { } kind
                        ? (Input)Something.Lot(s.Position, kind)
                        : Something.Part(s.Position, s.PartKind!, $"D-{s.Position}")
                ),
            ])
            .Accepted();
        return part;
    }

    public static APart Decided(this APart part, DispositionKind kind, string? returnTo = null)
    {
        part.TryDecide(kind, returnTo).Accepted();
        return part;
    }

    public static APart Shipped(this APart part)
    {
        var stamp = part.Bench.Stamp(Somebody.QualityLead);
        part.Add(new Shipment(stamp.NewId(), part.Dossier.Part.Id, null, stamp.By, stamp.OccurredAt, stamp.RecordedAt));
        return part;
    }

    public static APart CameBack(this APart part)
    {
        var stamp = part.Bench.Stamp(Somebody.ServiceDesk);
        part.Add(new UnitReturn(stamp.NewId(), part.Dossier.Part.Id, "crackles", null, stamp.By, stamp.OccurredAt, stamp.RecordedAt));
        return part;
    }

    /// <summary>Something was found, it came out so, and the return is closed.</summary>
    public static APart CameOut(this APart part, ReturnOutcomeKind kind)
    {
        var back = part.Dossier.Of<UnitReturn>().Last().Id;
        part.Add([
            .. ReturnedUnit.Find(part.Dossier, back, "bad-contact", "a contact opens", part.Bench.Stamp(Somebody.ServiceDesk)).Facts,
        ]);
        part.Add([.. ReturnedUnit.ComeOut(part.Dossier, back, kind, "looked at it", part.Bench.Stamp(Somebody.ServiceDesk)).Facts]);
        part.Add([.. ReturnedUnit.Close(part.Dossier, back, "done", part.Bench.Stamp(Somebody.ServiceDesk)).Facts]);
        return part;
    }

    public static APart Certified(this APart part)
    {
        var stamp = part.Bench.Stamp(Somebody.QualityLead);
        part.Add(new Certificate(stamp.NewId(), part.Dossier.Part.Id, 1, "public", "", "", stamp.By, stamp.OccurredAt, stamp.RecordedAt));
        return part;
    }

    public static APart FittedIn(this APart part, string? serial)
    {
        part.Around = part.Dossier.Around with { FittedInSerial = serial };
        return part;
    }

    public static APart InDoubt(this APart part, string instrument = "RB-1")
    {
        part.Around = part.Dossier.Around with
        {
            InDoubt = [new(Guid.Empty, "D-7", "verify", instrument, $"D-7: Verify was measured with {instrument}, which failed its check")],
        };
        return part;
    }

    public static APart Holding(this APart part, InsideProblemKind kind, string subject = "L-7", string reason = "it peels")
    {
        part.Around = part.Dossier.Around with { Inside = [new(kind, subject, reason)] };
        return part;
    }
}
