using Traceability.SeedScenario.Api;
using Traceability.SeedScenario.History;

namespace Traceability.SeedScenario.Foundation;

/// <summary>Makes the empty store a workshop: people, stations, instruments, routes, lots; nothing is built yet.</summary>
internal sealed class SetUpWorkshop(WorkshopApi api, ScenarioCalendar calendar, IProgress<SeedProgress>? progress)
{
    private const string Lead = "LEAD1";
    private const string FormerQuality = "HIST5";

    private static readonly string[] EveryQualification =
    [
        "diaphragm",
        "capsule",
        "climate",
        "insulation-test",
        "acoustic-test",
        "electronics",
        "assembly",
        "final-test",
        "final-inspection",
    ];

    private readonly StepCounter steps = new(
        progress,
        WorkshopFiles.People.Count
            + WorkshopFiles.Stations.Count
            + WorkshopFiles.Instruments.Count
            + WorkshopFiles.Routes.Count()
            + WorkshopFiles.Lots.Count
            + 1
    );

    public async Task RunAsync(CancellationToken cancellation)
    {
        await SayWhoWeAreAsync(cancellation);
        // Side by side what needs nothing of each other: a service that has just started compiles each kind of request at its first one.
        await Task.WhenAll(
            // Each sets the own PIN, and its hash is slow on purpose: not one after the other.
            Task.WhenAll(WorkshopFiles.People.Select(p => AddPersonAsync(p, cancellation))),
            EachAsync(WorkshopFiles.Stations, AddStationAsync, cancellation),
            EachAsync(WorkshopFiles.Instruments, AddInstrumentAsync, cancellation)
        );
        // Film lots travel a route of their own; the other routes name kinds of lots, and come into force when something of each kind was
        // received.
        await Task.WhenAll(WorkshopFiles.Routes.Where(r => IsOfFilm(r.File)).Select(r => LoadRouteAsync(r.File, r.Text, cancellation)));
        await Task.WhenAll([
            .. WorkshopFiles.Lots.Select(l => ReceiveAsync(l, cancellation)),
            new DailyChecks(api, steps).NowAsync(cancellation),
        ]);
        await Task.WhenAll(WorkshopFiles.Routes.Where(r => !IsOfFilm(r.File)).Select(r => LoadRouteAsync(r.File, r.Text, cancellation)));

        static bool IsOfFilm(string file) => file.EndsWith("-film-lot.yaml", StringComparison.Ordinal);
    }

    /// <summary>
    /// The demonstration shows on its certificates all that a workshop may show, in the time zone that the service works in.
    /// </summary>
    private async Task SayWhoWeAreAsync(CancellationToken cancellation)
    {
        var now = await api.GetAsync<WorkshopView>(Lead, "workshop", cancellation);
        await api.PostAsync(
            Lead,
            "workshop",
            new
            {
                name = "Fernlaw Microphone Bench (invented)",
                address = "Old Ropewalk 3\nFernlaw",
                contact = "bench@fernlaw.example",
                timeZone = now.TimeZone,
                language = "en",
                certificateSections = new
                {
                    suppliers = true,
                    lotNumbers = true,
                    reworks = true,
                },
                warrantyTerms = "Five years on material and work for the first owner; an invented promise of an invented workshop.",
            },
            cancellation
        );
    }

    private static async Task EachAsync<T>(IEnumerable<T> entries, Func<T, CancellationToken, Task> enter, CancellationToken cancellation)
    {
        foreach (var entry in entries)
        {
            await enter(entry, cancellation);
        }
    }

    private async Task AddPersonAsync(PersonEntry p, CancellationToken cancellation)
    {
        var qualifications = p.Qualifications.Contains("all") ? EveryQualification : [.. p.Qualifications];
        var added = await api.PostAsync(
            Lead,
            "people",
            new
            {
                p.Badge,
                p.Name,
                p.Roles,
                qualifications,
            },
            cancellation
        );
        await api.TakeUpAsync(p.Badge, added.GetProperty("code").GetString()!, cancellation);
        steps.Step("people");
    }

    private async Task AddStationAsync(StationEntry s, CancellationToken cancellation)
    {
        await api.PostAsync(Lead, "stations", new { s.Code, s.Title }, cancellation);
        steps.Step("stations");
    }

    private async Task AddInstrumentAsync(InstrumentEntry i, CancellationToken cancellation)
    {
        await api.PostAsync(
            Lead,
            "instruments",
            new
            {
                i.Code,
                i.Kind,
                i.Title,
                i.CheckNominal,
                i.CheckTolerance,
                i.CheckUnit,
            },
            cancellation
        );
        var calibratedOn = calendar.Today.AddDays(-i.CalibratedDaysAgo);
        await api.PostAsync(
            Lead,
            $"instruments/{i.Code}/calibrations",
            new
            {
                calibratedOn,
                dueOn = calibratedOn.AddYears(2),
                i.Reference,
                passed = true,
                i.Constants,
            },
            cancellation
        );
        steps.Step("instruments");
    }

    private async Task LoadRouteAsync(string file, string text, CancellationToken cancellation)
    {
        var loaded = await api.PostTextAsync(Lead, "routes", "text/yaml", text, cancellation);
        var approver = WorkshopFiles.ApproverOf(text);
        var (model, kind, revision) = (loaded.GetProperty("model"), loaded.GetProperty("kind"), loaded.GetProperty("revision"));
        var route = $"routes/{model.GetString()}/{kind.GetString()}/{revision.GetInt32()}";
        await api.PostAsync(
            approver,
            $"{route}/approval",
            new { reason = "tried on the first pieces and read line by line", pin = api.PinOf(approver) },
            cancellation
        );
        steps.Step(file);
    }

    private async Task ReceiveAsync(LotEntry l, CancellationToken cancellation)
    {
        var receivedAt = calendar.At(l.FromWeek ?? 16, -12, 9 * 60);
        var expiresAt = l.Kind is "film" or "adhesive" ? ScenarioCalendar.Midnight(calendar.Today.AddYears(1)) : (DateTimeOffset?)null;
        await api.PostAsync(
            FormerQuality,
            "lots",
            new
            {
                l.Number,
                l.Kind,
                l.Supplier,
                l.SupplierLot,
                l.Quantity,
                l.Unit,
                receivedAt,
                expiresAt,
                l.Film,
                occurredAt = receivedAt,
            },
            cancellation
        );
        if (l.Stays is null)
        {
            await api.PostAsync(
                FormerQuality,
                $"lots/{l.Number}/release",
                new { reason = "papers complete, sample looked at", occurredAt = receivedAt.AddHours(3) },
                cancellation
            );
        }

        steps.Step("lots");
    }
}
