using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>The routes in force, said fully enough that a client that knows nothing else can work by them.</summary>
public sealed class ReadRoutes : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/routes", ListAsync).Is(Subjects.Routes, "listRoutes", "The routes in force, said fully enough to work by.");
        api.MapGet("/routes/{model}/{kind}", OneAsync).Is(Subjects.Routes, "readRoute", "One route in force.");
    }

    public sealed record RouteAnswer(
        string Model,
        string Kind,
        int Revision,
        string Title,
        string Hash,
        string Author,
        string ApprovedBy,
        DateOnly EffectiveFrom,
        IReadOnlyList<StageAnswer> Stages
    );

    public sealed record StageAnswer(
        string Code,
        string Title,
        string Method,
        IReadOnlyList<string> Cautions,
        IReadOnlyList<SlotAnswer> Slots,
        IReadOnlyList<CharacteristicAnswer> Characteristics,
        IReadOnlyList<EvidenceNeed> Evidence,
        int? MinimumOpenMinutes,
        IReadOnlyList<Wait> Waits,
        IReadOnlyList<Window> Windows,
        IReadOnlyList<string> InstrumentKinds,
        bool CheckedToday,
        string? Qualification,
        bool Loads,
        int? AllowedAttempts,
        string? ReworkReturnsTo,
        IReadOnlyList<string> NotByBuilderOf,
        MatchRule? Match,
        ParametersAnswer Parameters
    );

    public sealed record AcceptsAnswer(string? LotKind, string? PartKind);

    public sealed record SlotAnswer(string Position, string Label, AcceptsAnswer Accepts, bool Required);

    public sealed record CharacteristicAnswer(
        string Name,
        string Label,
        string Unit,
        decimal? Nominal,
        decimal? Lower,
        decimal? Upper,
        decimal? Resolution,
        bool Entered,
        bool Required,
        decimal? ExpandedUncertainty,
        string? DecisionRule
    );

    public sealed record ParametersAnswer(
        string? ToleranceSource,
        IReadOnlyList<SoakPhaseParameters>? Phases,
        IReadOnlyList<MaskCorner>? Mask,
        IReadOnlyList<string>? MaskedEvidence,
        IReadOnlyDictionary<string, decimal>? Numbers,
        IReadOnlyList<CurvePoint>? ReferenceCurve,
        IReadOnlyList<TestConnection>? Terminals
    );

    public static async Task<Results<Ok<Page<RouteAnswer>>, Problem>> ListAsync(
        PageRequest page,
        RouteShelf routes,
        WorkshopContext db,
        WorkshopCalendar calendar,
        Writes writes,
        CancellationToken cancellation
    ) =>
        TypedResults.Ok(
            page.Part(
                [.. (await routes.AllInForceAsync(db, calendar.DayOf(writes.Now), cancellation)).Select(Of)],
                r => $"{r.Model}/{r.Kind}"
            )
        );

    public static async Task<Results<Ok<RouteAnswer>, Problem>> OneAsync(
        string model,
        string kind,
        RouteShelf routes,
        WorkshopContext db,
        WorkshopCalendar calendar,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await routes.InForceAsync(db, model, kind, calendar.DayOf(writes.Now), cancellation) is var (_, route)
            ? TypedResults.Ok(Of(route))
            : ProblemAnswers.From(
                Refusal.NotFound(
                    await RouteShelf.FirstDayAsync(db, model, kind, cancellation) is { } first
                        ? SetupSentences.RouteIsNotInForceYet(kind, model, WorkshopCalendar.Say(first))
                        : SetupSentences.ThereIsNoRouteForKind(kind, model)
                )
            );

    public static RouteAnswer Of(Domain.Routes.Route r) =>
        new(r.Model, r.Kind, r.Revision, r.Title, r.Hash, r.Author, r.ApprovedBy, r.EffectiveFrom, [.. r.Stages.Select(Of)]);

    private static StageAnswer Of(Stage s) =>
        new(
            s.Code,
            s.Title,
            s.Method,
            [.. s.Cautions.Select(c => Cautions.Texts[c])],
            [.. s.Slots.Select(x => new SlotAnswer(x.Position, x.Label, new(x.LotKind, x.PartKind), x.Required))],
            [
                .. s.Characteristics.Select(c => new CharacteristicAnswer(
                    c.Name,
                    c.Label,
                    c.Unit,
                    c.Nominal,
                    c.Lower,
                    c.Upper,
                    c.Resolution,
                    c.Entered,
                    c.Required,
                    c.ExpandedUncertainty,
                    c.ExpandedUncertainty is null ? null
                        : c.Guarded ? "guarded"
                        : "simple"
                )),
            ],
            s.Evidence,
            s.MinimumOpenMinutes,
            s.Waits,
            s.Windows,
            s.InstrumentKinds,
            s.CheckedToday,
            s.Qualification,
            s.Loads,
            s.AllowedAttempts,
            s.ReworkReturnsTo,
            s.NotByBuilderOf,
            s.Match,
            new(
                s.Parameters.ToleranceSource,
                s.Parameters.Phases,
                s.Parameters.Mask,
                s.Parameters.MaskedEvidence,
                s.Parameters.Numbers.Count == 0 ? null : s.Parameters.Numbers,
                s.Parameters.ReferenceCurve,
                s.Parameters.Terminals
            )
        );
}
