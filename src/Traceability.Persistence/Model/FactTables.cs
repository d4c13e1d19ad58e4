using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Traceability.Domain.Records;

namespace Traceability.Persistence.Model;

/// <summary>
/// The fact tables with their keys and indexes. Each is guarded by a trigger that refuses UPDATE and DELETE (see the migrations).
/// </summary>
public static class FactTables
{
    /// <summary>Every kind of fact with its table, in the order in which facts of one command are written.</summary>
    public static readonly IReadOnlyList<(Type Type, string Table)> All =
    [
        (typeof(Person), "people"),
        (typeof(RoleGrant), "role_grants"),
        (typeof(QualificationGrant), "qualification_grants"),
        (typeof(PinSetting), "pin_settings"),
        (typeof(PinCode), "pin_codes"),
        (typeof(Station), "stations"),
        (typeof(Carrier), "carriers"),
        (typeof(Instrument), "instruments"),
        (typeof(Calibration), "calibrations"),
        (typeof(InstrumentCheck), "instrument_checks"),
        (typeof(RouteRevision), "route_revisions"),
        (typeof(Lot), "lots"),
        (typeof(LotDecision), "lot_decisions"),
        (typeof(Part), "parts"),
        (typeof(CarrierPlacement), "carrier_placements"),
        (typeof(CarrierRelease), "carrier_releases"),
        (typeof(Load), "loads"),
        (typeof(Attempt), "attempts"),
        (typeof(InstrumentUse), "instrument_uses"),
        (typeof(Reading), "readings"),
        (typeof(Correction), "corrections"),
        (typeof(EvidenceRecord), "evidence"),
        (typeof(Fitting), "fittings"),
        (typeof(Removal), "removals"),
        (typeof(AttemptEnding), "attempt_endings"),
        (typeof(Nonconformity), "nonconformities"),
        (typeof(Disposition), "dispositions"),
        (typeof(Hold), "holds"),
        (typeof(HoldRelease), "hold_releases"),
        (typeof(Certificate), "certificates"),
        (typeof(Shipment), "shipments"),
        (typeof(UnitReturn), "unit_returns"),
        (typeof(ReturnFinding), "return_findings"),
        (typeof(ReturnOutcome), "return_outcomes"),
        (typeof(ReturnClosing), "return_closings"),
        (typeof(DoubtDecision), "doubt_decisions"),
        (typeof(InstrumentToken), "instrument_tokens"),
        (typeof(InstrumentTokenRevocation), "instrument_token_revocations"),
        (typeof(ConcessionPermit), "concession_permits"),
        (typeof(MeasurementStudy), "measurement_studies"),
        (typeof(MeasurementStudyReading), "measurement_study_readings"),
        (typeof(NoticeAcknowledgement), "notice_acknowledgements"),
        (typeof(RouteApproval), "route_approvals"),
        (typeof(RouteEnding), "route_endings"),
        (typeof(WorkshopRevision), "workshop_revisions"),
        (typeof(SecondSignIn), "second_sign_ins"),
        (typeof(SetupDecision), "setup_decisions"),
        (typeof(NameCorrection), "name_corrections"),
        (typeof(WorkshopKind), "workshop_kinds"),
    ];

    /// <summary>Maps every fact and its indexes.</summary>
    public static void Configure(ModelBuilder model)
    {
        foreach (var (type, table) in All)
        {
            var entity = model.Entity(type);
            entity.ToTable(table);
            entity.HasKey(nameof(Fact.Id));
            entity.Property(nameof(Fact.Id)).ValueGeneratedNever();
            if (type.GetProperty("PartId") is not null)
            {
                entity.HasIndex("PartId");
            }
        }

        // Facts never change: one and the same map, or another fact.
        model
            .Entity<Calibration>()
            .Property(c => c.Constants)
            .HasColumnType("jsonb")
            .HasConversion(
                c => JsonSerializer.Serialize(c, JsonSerializerOptions.Default),
                text => JsonSerializer.Deserialize<Dictionary<string, decimal>>(text, JsonSerializerOptions.Default),
                new ValueComparer<Dictionary<string, decimal>?>(
                    (one, other) => ReferenceEquals(one, other),
                    constants => constants == null ? 0 : constants.Count
                )
            );
        model.Entity<AttemptEnding>().Ignore(e => e.Abandoned);
        model.Entity<Fitting>().Ignore(f => f.ItemId);
        model.Entity<Hold>().Ignore(h => h.SubjectId);
        Unique(model);
        References(model);
        Lookups(model);
    }

    private static void Unique(ModelBuilder model)
    {
        model.Entity<Person>().HasIndex(p => p.Badge).IsUnique();
        model.Entity<Station>().HasIndex(s => s.Code).IsUnique();
        model.Entity<Carrier>().HasIndex(c => c.Code).IsUnique();
        model.Entity<Instrument>().HasIndex(i => i.Code).IsUnique();
        model
            .Entity<RouteRevision>()
            .HasIndex(r => new
            {
                r.Model,
                r.Kind,
                r.Revision,
            })
            .IsUnique();
        model.Entity<Lot>().HasIndex(l => l.Number).IsUnique();
        model.Entity<Part>().HasIndex(p => p.Serial).IsUnique();
        model
            .Entity<Attempt>()
            .HasIndex(a => new
            {
                a.PartId,
                a.Stage,
                a.Number,
            })
            .IsUnique();
        model.Entity<AttemptEnding>().HasIndex(e => e.AttemptId).IsUnique();
        model.Entity<Removal>().HasIndex(r => r.FittingId).IsUnique();
        model.Entity<Disposition>().HasIndex(d => d.NonconformityId).IsUnique();
        model.Entity<HoldRelease>().HasIndex(r => r.HoldId).IsUnique();
        model.Entity<Certificate>().HasIndex(c => new { c.PartId, c.Revision }).IsUnique();
        model.Entity<Certificate>().HasIndex(c => c.PublicId).IsUnique();
        model.Entity<ReturnClosing>().HasIndex(c => c.ReturnId).IsUnique();
        model.Entity<InstrumentToken>().HasIndex(t => t.Hash).IsUnique();
        model.Entity<InstrumentTokenRevocation>().HasIndex(r => r.TokenId).IsUnique();
        model.Entity<ConcessionPermit>().HasIndex(p => p.Number).IsUnique();
        model.Entity<MeasurementStudy>().HasIndex(s => s.Number).IsUnique();
        model.Entity<RouteApproval>().HasIndex(a => a.RouteId).IsUnique();
        model.Entity<RouteEnding>().HasIndex(e => e.RouteId).IsUnique();
        model.Entity<NoticeAcknowledgement>().HasIndex(a => a.Key).IsUnique();
        model.Entity<WorkshopRevision>().HasIndex(r => r.Revision).IsUnique();
        model.Entity<WorkshopKind>().HasIndex(k => new { k.Of, k.Code }).IsUnique();
        model.Entity<Calibration>().HasIndex(c => c.Replaces).IsUnique();
        model.Entity<InstrumentCheck>().HasIndex(c => c.Replaces).IsUnique();
    }

    private static void References(ModelBuilder model)
    {
        Refer<Part, RouteRevision>(model, nameof(Part.RouteId));
        Refer<RouteApproval, RouteRevision>(model, nameof(RouteApproval.RouteId));
        Refer<RouteEnding, RouteRevision>(model, nameof(RouteEnding.RouteId));
        Refer<Attempt, Part>(model, nameof(Attempt.PartId));
        Refer<Attempt, Load>(model, nameof(Attempt.LoadId));
        Refer<AttemptEnding, Attempt>(model, nameof(AttemptEnding.AttemptId));
        Refer<InstrumentUse, Attempt>(model, nameof(InstrumentUse.AttemptId));
        Refer<InstrumentUse, Instrument>(model, nameof(InstrumentUse.InstrumentId));
        Refer<Reading, Attempt>(model, nameof(Reading.AttemptId));
        Refer<Correction, Reading>(model, nameof(Correction.ReadingId));
        Refer<EvidenceRecord, Attempt>(model, nameof(EvidenceRecord.AttemptId));
        Refer<EvidenceRecord, Load>(model, nameof(EvidenceRecord.LoadId));
        Refer<Fitting, Attempt>(model, nameof(Fitting.AttemptId));
        Refer<Fitting, Part>(model, nameof(Fitting.ChildId));
        Refer<Fitting, Lot>(model, nameof(Fitting.LotId));
        Refer<Removal, Fitting>(model, nameof(Removal.FittingId));
        Refer<Nonconformity, Part>(model, nameof(Nonconformity.PartId));
        Refer<Disposition, Nonconformity>(model, nameof(Disposition.NonconformityId));
        Refer<HoldRelease, Hold>(model, nameof(HoldRelease.HoldId));
        Refer<LotDecision, Lot>(model, nameof(LotDecision.LotId));
        Refer<Calibration, Instrument>(model, nameof(Calibration.InstrumentId));
        Refer<InstrumentCheck, Instrument>(model, nameof(InstrumentCheck.InstrumentId));
        Refer<Calibration, Calibration>(model, nameof(Calibration.Replaces));
        Refer<InstrumentCheck, InstrumentCheck>(model, nameof(InstrumentCheck.Replaces));
        Refer<Certificate, Part>(model, nameof(Certificate.PartId));
        Refer<Shipment, Part>(model, nameof(Shipment.PartId));
        Refer<UnitReturn, Part>(model, nameof(UnitReturn.PartId));
        Refer<ReturnOutcome, UnitReturn>(model, nameof(ReturnOutcome.ReturnId));
        Refer<DoubtDecision, Instrument>(model, nameof(DoubtDecision.InstrumentId));
        Refer<InstrumentToken, Instrument>(model, nameof(InstrumentToken.InstrumentId));
        Refer<InstrumentTokenRevocation, InstrumentToken>(model, nameof(InstrumentTokenRevocation.TokenId));
        Refer<MeasurementStudyReading, MeasurementStudy>(model, nameof(MeasurementStudyReading.StudyId));
        Refer<MeasurementStudyReading, Instrument>(model, nameof(MeasurementStudyReading.InstrumentId));
        Refer<ConcessionPermit, Lot>(model, nameof(ConcessionPermit.LotId));
        Refer<Disposition, ConcessionPermit>(model, nameof(Disposition.PermitId));
        Refer<SecondSignIn, Part>(model, nameof(SecondSignIn.PartId));
    }

    private static void Lookups(ModelBuilder model)
    {
        model.Entity<Attempt>().HasIndex(a => new { a.Stage, a.OccurredAt });
        model.Entity<Hold>().HasIndex(h => h.LotId);
        model.Entity<Hold>().HasIndex(h => h.InstrumentId);
        model
            .Entity<AttemptEnding>()
            .HasIndex(e => e.OccurredAt)
            .HasFilter("verdict = 'Fail'")
            .HasDatabaseName("ix_attempt_endings_failed");
        model.Entity<InstrumentCheck>().HasIndex(c => new { c.InstrumentId, c.OccurredAt });
        model
            .Entity<InstrumentCheck>()
            .HasIndex(c => c.InstrumentId)
            .HasFilter("not passed")
            .HasDatabaseName("ix_instrument_checks_failed");
        model.Entity<RoleGrant>().HasIndex(g => g.PersonId);
        model.Entity<QualificationGrant>().HasIndex(g => g.PersonId);
        model.Entity<PinSetting>().HasIndex(g => g.PersonId);
        model.Entity<PinCode>().HasIndex(g => g.PersonId);
        model.Entity<Shipment>().HasIndex(s => s.CustomerReference);
        model.Entity<SetupDecision>().HasIndex(d => new { d.SubjectId, d.RecordedAt });
        model.Entity<NameCorrection>().HasIndex(c => new { c.SubjectId, c.RecordedAt });
    }

    private static void Refer<TFrom, TTo>(ModelBuilder model, string property)
        where TFrom : Fact
        where TTo : Fact => model.Entity<TFrom>().HasOne<TTo>().WithMany().HasForeignKey(property).OnDelete(DeleteBehavior.Restrict);
}
