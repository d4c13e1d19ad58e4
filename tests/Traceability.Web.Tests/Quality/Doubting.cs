namespace Traceability.Web.Tests.Quality;

/// <summary>Parts measured on benches that turn out wrong, and decisions on them.</summary>
internal static class Doubting
{
    public const string Rule = "instrument-in-doubt";

    private static int benches;

    public static async Task<(string Unit, string Diaphragm, string Bench)> BuiltAsync(this Workshop workshop)
    {
        var (diaphragm, bench) = await workshop.MeasuredAsync();
        return (await workshop.UnitAsync(await workshop.CapsuleAsync(diaphragm)), diaphragm, bench);
    }

    /// <summary>A finished diaphragm, and the bench on which its resonance was measured.</summary>
    public static async Task<(string Diaphragm, string Bench)> MeasuredAsync(this Workshop workshop)
    {
        var (diaphragm, bench) = (await workshop.MountAsync(), await workshop.BenchAsync());
        await workshop.CureAsync(diaphragm);
        await workshop.CheckAsync(bench, 900.5m);
        await workshop.RecordAsync(
            diaphragm,
            "verify",
            new { instruments = new[] { bench }, readings = new[] { new { characteristic = "ringHz", value = 900 } } }
        );
        workshop.Clock.Pass(TimeSpan.FromMinutes(5));
        return (diaphragm, bench);
    }

    public static async Task<string> BenchAsync(this Workshop workshop)
    {
        var code = $"RB-D{Interlocked.Increment(ref benches)}";
        (
            await workshop.PostAsync(
                "instruments",
                new
                {
                    code,
                    kind = "resonance-bench",
                    title = "Bench",
                    checkNominal = 900,
                    checkTolerance = 2,
                    checkUnit = "Hz",
                },
                Workshop.Lead
            )
        ).Expect(201);
        await workshop.CalibrateAsync(code, 10, passed: true);
        return code;
    }

    public static async Task CalibrateAsync(this Workshop workshop, string code, int daysAgo, bool passed)
    {
        var on = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime).AddDays(-daysAgo);
        (
            await workshop.PostAsync(
                $"instruments/{code}/calibrations",
                new
                {
                    calibratedOn = on,
                    dueOn = on.AddDays(300),
                    reference = "invented",
                    passed,
                },
                Workshop.Quality
            )
        ).Expect(201);
    }

    public static async Task CheckAsync(this Workshop workshop, string code, decimal value) =>
        (await workshop.PostAsync($"instruments/{code}/checks", new { value })).Expect(201);

    public static Task<Reply> DecideAsync(this Workshop workshop, string bench, string kind, params string[] parts) =>
        workshop.DecideAsAsync(bench, kind, parts);

    public static Task<Reply> DecideAsAsync(
        this Workshop workshop,
        string bench,
        string kind,
        string[] parts,
        string reason = "looked at it",
        string badge = Workshop.Quality,
        string? pin = null
    ) =>
        workshop.PostAsync(
            $"instruments/{bench}/affected/decisions",
            new
            {
                parts,
                kind,
                reason,
                pin = pin ?? Workshop.PinOf(badge),
            },
            badge
        );
}
