using Traceability.Web.Tests.Pages;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Setup;

/// <summary>A calibration due in 2072 is a slip of the pen: nothing would ever ask for the next one.</summary>
public sealed class CalibrationDueTests(Workshop w) : IClassFixture<Workshop>
{
    /// <summary>Ten years to the day are the most; 29 February of a leap year ends on the 28th.</summary>
    [Theory]
    [InlineData("2022-02-01", "2032-02-01", true)]
    [InlineData("2022-02-01", "2032-02-02", false)]
    [InlineData("2024-02-29", "2034-02-28", true)]
    [InlineData("2022-02-01", "2072-02-01", false)]
    public async Task A_calibration_is_due_within_ten_years(string calibratedOn, string dueOn, bool taken)
    {
        var answer = await w.PostAsync(
            "instruments/RB-1/calibrations",
            new
            {
                calibratedOn,
                dueOn,
                reference = "CAL-LONG",
            },
            Workshop.Quality
        );
        Assert.Equal(taken ? 201 : 400, (int)answer.Status);
        Assert.True(taken || answer.Json.At("errors").TryGetProperty("dueOn", out _));
    }

    [Fact]
    public async Task The_page_asks_again_when_a_calibration_is_due_more_than_three_years_ahead()
    {
        (
            await w.PostAsync(
                "instruments",
                new
                {
                    code = "LONG-1",
                    kind = "height-gauge",
                    title = "Height gauge",
                },
                Workshop.Lead
            )
        ).Expect(201);
        var desk = await DeskClient.SignInAsync(w, Workshop.Quality);
        (string, string)[] typed = [("calibratedOn", "2026-01-15"), ("dueOn", "2031-01-15"), ("reference", "CAL-5"), ("outcome", "passed")];
        var asked = await desk.SendAsync("/instruments/LONG-1", "calibrate", typed);
        Assert.Contains("more than 3 years after the calibration: is the year right?", asked.Expect(400).Words, StringComparison.Ordinal);
        Assert.Equal(0, await CalibrationsAsync());
        (await desk.SendAsync(asked, "calibrate", [.. typed, ("sure", "true")])).Expect(200);
        Assert.Equal(1, await CalibrationsAsync());
        (
            await desk.SendAsync(
                "/instruments/LONG-1",
                "calibrate",
                ("calibratedOn", "2026-02-15"),
                ("dueOn", "2029-02-15"),
                ("reference", "CAL-6"),
                ("outcome", "passed")
            )
        ).Expect(200);
        Assert.Equal(2, await CalibrationsAsync());
    }

    private async Task<long> CalibrationsAsync()
    {
        await using var door = BackDoor.Of(w);
        return await door.AskAsync<long>(
            "select count(*) from calibrations c join instruments i on i.id = c.instrument_id where i.code = 'LONG-1'"
        );
    }
}
