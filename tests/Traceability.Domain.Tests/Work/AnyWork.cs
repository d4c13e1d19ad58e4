using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Work;

/// <summary>A stage of a route that chance makes up: what it measures, takes and demands.</summary>
internal sealed record AnyStage(int Measures, bool TakesPart, bool TakesLot, int WaitMinutes, int? AllowedAttempts, bool TwoPeople)
{
    public static Route RouteOf(IReadOnlyList<AnyStage> stages) => ARoute.Of([.. stages.Select((s, i) => s.At(i))]);

    private Stage At(int index)
    {
        var stage = ARoute.Stage($"s{index}") with
        {
            AllowedAttempts = AllowedAttempts,
            Waits = WaitMinutes > 0 && index > 0 ? [new($"s{index - 1}", WaitMinutes)] : [],
            NotByBuilderOf = TwoPeople && index > 0 ? [$"s{index - 1}"] : [],
        };
        stage = Enumerable.Range(0, Measures).Aggregate(stage, (s, n) => s.Measuring($"value{index}{n}Hz", 10, 20));
        stage = TakesPart ? stage.Taking($"part{index}", partKind: ARoute.ChildKind) : stage;
        return TakesLot ? stage.Taking($"lot{index}", lotKind: "screws") : stage;
    }
}

/// <summary>One thing that somebody does to a part, sensible or not; numbers are taken modulo what there is.</summary>
internal sealed record AnyStep(int What, int Which, int Value, int Who)
{
    private static readonly Actor[] People = [Somebody.Builder, Somebody.OtherBuilder, Somebody.BuildingQualityLead, Somebody.ServiceDesk];

    public void DoTo(APart part)
    {
        part.Worker = People[Who % People.Length];
        var stages = part.Dossier.Route.Stages;
        var stage = stages[Which % stages.Count];
        switch (What % 12)
        {
            case 0:
                part.Bench.Later(20);
                part.TryOpen((part.Dossier.NextStage() ?? stage).Code);
                FillAndRead(part, stage, "15");
                part.TryClose();
                break;
            case 1:
                part.TryOpen((part.Dossier.NextStage() ?? stage).Code);
                break;
            case 2:
                part.TryOpen(stage.Code);
                break;
            case 3 or 4:
                FillAndRead(part, stage, Numbers.Text(Value));
                break;
            case 5 or 6:
                part.TryClose();
                break;
            case 7:
                part.TryAbandon();
                break;
            case 8 when part.Dossier.OpenNonconformities().Any():
                part.TryDecide((DispositionKind)(Value % 5), Who % 2 == 0 ? null : stage.Code, People[Who % People.Length]);
                break;
            case 9 when part.Dossier.Of<Reading>().Any():
                part.TryCorrect(
                    part.Dossier.Of<Reading>().ElementAt(Which % part.Dossier.Of<Reading>().Count()).Characteristic,
                    Numbers.Text(Value),
                    Who % 2 == 0 ? Somebody.QualityLead : part.Worker
                );
                break;
            case 10 when stage.Slots.Count > 0:
                part.TryRemove(stage.Slots[0].Position);
                break;
            case 11:
                Interrupt(part);
                break;
            default:
                part.Bench.Later(Value);
                break;
        }
    }

    private static void FillAndRead(APart part, Stage otherwise, string digits)
    {
        var open = part.Dossier.OpenAttempt is { } attempt ? part.StageOf(attempt.Stage) : otherwise;
        part.TryFit([
            .. open.Slots.Select(s =>
                s.LotKind is { } kind ? (Input)Something.Lot(s.Position, kind) : Something.Part(s.Position, s.PartKind!, $"D-{s.Position}")
            ),
        ]);
        part.TryRead([.. open.Characteristics.Select((c, i) => (c.Name, i == 0 ? digits : "15"))]);
    }

    private void Interrupt(APart part)
    {
        if (part.Dossier.OpenHolds().LastOrDefault() is { } hold)
        {
            part.Lift(hold);
        }
        else if (Value % 3 == 0)
        {
            part.Hold();
        }
        else if (Value % 3 == 1)
        {
            part.TryRaise();
        }
        else
        {
            part.FittedIn(part.Dossier.Around.FittedInSerial is null && part.Dossier.IsFinished() ? "U-1" : null);
        }
    }
}
