using Microsoft.AspNetCore.Authorization;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.MyBench;

/// <summary>A part on the list, and why it is stuck, if it is.</summary>
public sealed record BenchLine(BenchRow Row, string? Why = null);

/// <summary>Parts that go through a stage together.</summary>
public sealed record BenchRun(Guid LoadId, IReadOnlyList<BenchRow> Rows)
{
    public BenchRow First => Rows[0];
}

/// <summary>
/// What I have open, what waits for time, what is ready for me, oldest first. Each line leads to the station with the part taken up.
/// </summary>
[Authorize(Roles = $"{nameof(Role.Builder)},{nameof(Role.Quality)}")]
public sealed class BenchPage(BenchQuery query, DossierReader dossiers, GateContexts contexts, PartsNow now, Writes writes) : WorkshopPage
{
    /// <summary>How many gates are judged in full; beyond that the list is longer than a day's work.</summary>
    public const int MostReady = 60;

    private IReadOnlyDictionary<Guid, PartNow> standings = new Dictionary<Guid, PartNow>();

    public IReadOnlyList<BenchRow> Mine { get; private set; } = [];

    public IReadOnlyList<BenchRun> Runs { get; private set; } = [];

    public IReadOnlyList<BenchRow> Waiting { get; private set; } = [];

    public IReadOnlyList<BenchLine> Ready { get; private set; } = [];

    public IReadOnlyList<BenchLine> Stuck { get; private set; } = [];

    /// <summary>How many could be ready; only <see cref="MostReady"/> of them are looked at.</summary>
    public int ReadyInAll { get; private set; }

    public bool IsEmpty => Mine.Count + Runs.Count + Waiting.Count + Ready.Count + Stuck.Count == 0;

    public DateTimeOffset Now => writes.Now;

    public async Task OnGetAsync()
    {
        var rows = await query.RunAsync(HttpContext.RequestAborted);
        Mine = [.. rows.Where(r => r.IsOpen && r.LoadId is null && r.Opens is null && r.OpenBy == Actor.PersonId)];
        Runs =
        [
            .. rows.Where(r => r.LoadId is not null)
                .GroupBy(r => r.LoadId!.Value)
                .Select(g => new BenchRun(g.Key, [.. g.OrderBy(r => r.Serial, StringComparer.Ordinal)])),
        ];
        Waiting = [.. rows.Where(r => r.LoadId is null && (r.IsOpen ? r.Opens is not null : r.Opens > Now)).OrderBy(r => r.Opens)];
        standings = await now.OfAsync(
            [.. Mine.Concat(Runs.SelectMany(r => r.Rows)).Concat(Waiting).Select(r => r.PartId)],
            HttpContext.RequestAborted
        );
        var free = rows.Where(r => !r.IsOpen && !(r.Opens > Now)).ToList();
        ReadyInAll = free.Count;
        await JudgeAsync([.. free.OrderBy(r => r.Since).Take(MostReady)]);
    }

    /// <summary>What stands in the way of a part that is under way or waits, besides time; null when nothing does.</summary>
    public StandingAnswer? Stopped(BenchRow row) =>
        standings.GetValueOrDefault(row.PartId)?.Standing
            is { Code: StandingCode.Held or StandingCode.Quarantined or StandingCode.Blocked } standing
            ? StandingAnswer.Of(standing)
            : null;

    private async Task JudgeAsync(IReadOnlyList<BenchRow> rows)
    {
        var loaded = await dossiers.LoadAsync([.. rows.Select(r => r.PartId)], HttpContext.RequestAborted);
        var context = contexts.At(Now, Actor);
        var lines = rows.Where(r => loaded.ContainsKey(r.PartId)).Select(r => new BenchLine(r, Why(loaded[r.PartId], r, context))).ToList();
        Ready = [.. lines.Where(l => l.Why is null)];
        Stuck = [.. lines.Where(l => l.Why is not null)];
    }

    private static string? Why(Dossier dossier, BenchRow row, GateContext context) =>
        Gatekeeper.Evaluate(dossier, row.Stage, context).Unmet.FirstOrDefault() is { } first
            ? $"{GateSentence.Of(first.Because)} {GateSentence.Of(first.Remedy ?? "")}".TrimEnd()
            : null;
}
