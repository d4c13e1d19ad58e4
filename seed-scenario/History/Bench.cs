using System.Globalization;
using System.Text.Json;
using Traceability.SeedScenario.Api;

namespace Traceability.SeedScenario.History;

/// <summary>Does stages on pieces over the public contract, with everything that the route asks for.</summary>
internal sealed class Bench(WorkshopApi api, RouteBook routes)
{
    private const string QualityLead = "HIST5";

    /// <summary>True when the piece gets as far as this stage.</summary>
    public bool Takes(Piece piece, string stage) =>
        !piece.Scrapped && !piece.Stopped && (piece.Last is not { } last || !routes.IsAfter(piece.Model, piece.Kind, stage, last));

    public Task RegisterAsync(Piece piece, DateTimeOffset at, CancellationToken cancellation, string? carrier = null) =>
        api.PostAsync(
            piece.Builder,
            "parts",
            new
            {
                piece.Kind,
                piece.Model,
                piece.Serial,
                carrier,
                occurredAt = at,
            },
            cancellation
        );

    /// <summary>
    /// One stage in one go; null when the piece does not get that far. The service answers others while the scenario is loaded: somebody
    /// may take a finished part before it is fitted here, and then the piece that wanted it stops.
    /// </summary>
    public async Task<Outcome?> DoAsync(
        Piece piece,
        string stage,
        DateTimeOffset at,
        CancellationToken cancellation,
        StageWork? work = null
    )
    {
        if (!Takes(piece, stage))
        {
            return null;
        }

        work ??= StageWork.Plain;
        var view = routes.Stage(piece.Model, piece.Kind, stage);
        object record = new
        {
            stage,
            station = Supplies.Station(stage, piece.Chance),
            instruments = Instruments(view, piece, work),
            readings = view
                .Characteristics.Where(c => c.Entered)
                .Select(c => new { characteristic = c.Name, value = ValueOf(c, piece, work) }),
            fittings = Fittings(view, piece, work),
            evidence = view
                .Evidence.Where(e => work.Responses.ContainsKey(e.Name))
                .Select(e => new
                {
                    e.Name,
                    mediaType = "text/csv",
                    text = work.Responses[e.Name],
                }),
            work.Note,
            occurredAt = at,
        };
        try
        {
            return OutcomeOf(
                await api.PostAsync(piece.Builder, $"parts/{piece.Serial}/records", record, cancellation),
                $"{piece.Serial} {stage}",
                work.Fails
            );
        }
        catch (SeedException refused) when (refused.Status == 409 && work.Children.Count > 0)
        {
            piece.Stopped = true;
            return null;
        }
    }

    /// <summary>One run for many pieces; with <paramref name="until"/> null they are still in it when the scenario ends.</summary>
    public async Task LoadAsync(
        string stage,
        IReadOnlyList<Piece> pieces,
        DateTimeOffset from,
        DateTimeOffset? until,
        CancellationToken cancellation
    )
    {
        if (pieces.Count == 0)
        {
            return;
        }

        var first = pieces[0];
        var view = routes.Stage(first.Model, first.Kind, stage);
        var load = await api.PostAsync(
            first.Builder,
            "loads",
            new
            {
                stage,
                station = Supplies.Station(stage, first.Chance),
                instruments = Instruments(view, first, StageWork.Plain),
                parts = pieces.Select(p => p.Serial),
                occurredAt = from,
            },
            cancellation
        );
        if (until is not { } end)
        {
            return;
        }

        var path = $"loads/{load.GetProperty("id").GetString()}";
        if (view.Parameters.Phases is { } phases)
        {
            await api.PostTextAsync(
                first.Builder,
                $"{path}/log?name=climate-log&occurredAt={end:yyyy-MM-ddTHH:mm:ssZ}",
                "text/csv",
                ClimateLog.Of(phases, from, end, first.Chance),
                cancellation
            );
        }

        var closed = await api.PostAsync(first.Builder, $"{path}/close", new { occurredAt = end }, cancellation);
        foreach (var part in closed.GetProperty("results").EnumerateArray())
        {
            OutcomeOf(part, $"{part.GetProperty("serial").GetString()} {stage}", false);
        }
    }

    public Task DecideAsync(
        Outcome failed,
        string kind,
        string reason,
        DateTimeOffset at,
        CancellationToken cancellation,
        string? limitedTo = null
    ) =>
        api.PostAsync(
            QualityLead,
            $"nonconformities/{failed.Nonconformity}/disposition",
            new
            {
                kind,
                reason,
                limitedTo,
                pin = api.PinOf(QualityLead),
                occurredAt = at,
            },
            cancellation
        );

    public Task CorrectAsync(
        Outcome wrong,
        string characteristic,
        decimal value,
        string reason,
        DateTimeOffset at,
        CancellationToken cancellation
    ) =>
        api.PostAsync(
            QualityLead,
            $"readings/{wrong.ReadingIds[characteristic]}/corrections",
            new
            {
                value,
                reason,
                occurredAt = at,
            },
            cancellation
        );

    public Task CertifyAsync(Piece unit, DateTimeOffset at, CancellationToken cancellation) =>
        api.PostAsync(QualityLead, $"parts/{unit.Serial}/certificates", new { occurredAt = at }, cancellation);

    public Task ShipAsync(Piece unit, DateTimeOffset at, CancellationToken cancellation) =>
        api.PostAsync(
            QualityLead,
            $"parts/{unit.Serial}/shipments",
            new { customerReference = $"order {new Chance("order " + unit.Serial).Between(4000, 4999):0} (invented)", occurredAt = at },
            cancellation
        );

    private static List<string> Instruments(StageView stage, Piece piece, StageWork work) =>
        [.. stage.InstrumentKinds.Select(k => work.Instruments.TryGetValue(k, out var code) ? code : Supplies.Instrument(k, piece.Chance))];

    private static IEnumerable<object> Fittings(StageView stage, Piece piece, StageWork work) =>
        work.SlotsAreFilled
            ? []
            : stage
                .Slots.Where(s => work.OnlySlot is null || s.Position == work.OnlySlot)
                .Select(s =>
                    s.Accepts.LotKind is { } kind
                        ? (object)new { s.Position, lot = Supplies.Lot(kind, piece.Week) }
                        : new { s.Position, child = work.Children[s.Position] }
                );

    private static decimal ValueOf(CharacteristicView c, Piece piece, StageWork work)
    {
        if (work.Values.TryGetValue(c.Name, out var settled))
        {
            return settled;
        }

        var nominal = c.Nominal ?? throw new SeedException($"{c.Name} has no nominal value and the scenario settles none");
        var room = Math.Min(c.Upper - nominal ?? nominal - c.Lower ?? 0, nominal - c.Lower ?? c.Upper - nominal ?? 0);
        var step = c.Resolution ?? 1;
        var spread = c.Unit == "count" ? 0 : (double)room / 5;
        return Math.Round((decimal)piece.Chance.Near((double)nominal, spread) / step) * step;
    }

    private static Outcome OutcomeOf(JsonElement closed, string what, bool fails)
    {
        var passed = closed.GetProperty("verdict").GetString() == "pass";
        var ids = closed
            .GetProperty("readings")
            .EnumerateArray()
            .ToDictionary(r => r.GetProperty("characteristic").GetString()!, r => r.GetProperty("id").GetString()!);
        return passed != fails
            ? new(
                passed,
                closed.TryGetProperty("nonconformity", out var n) && n.ValueKind == JsonValueKind.Object
                    ? n.GetProperty("id").GetString()
                    : null,
                ids
            )
            : throw new SeedException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{what}: the scenario wants it to {(fails ? "fail" : "pass")}, the service says otherwise:"
                        + $" {closed.GetProperty("findings")}"
                )
            );
    }
}
