using System.Globalization;

namespace Traceability.Web.Tests.Quality;

/// <summary>A calibration or check that was entered wrong is corrected like a reading: what hangs on it follows the right one.</summary>
public sealed class ProofCorrectionTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_check_that_was_typed_wrong_puts_nothing_in_doubt_once_it_is_corrected()
    {
        var (unit, _, bench) = await workshop.BuiltAsync();
        var wrong = (await workshop.PostAsync($"instruments/{bench}/checks", new { value = 9000 })).Expect(201).Id();
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(409);
        var path = $"instruments/{bench}/checks/{wrong}/corrections";
        (await workshop.PostAsync(path, new { value = 900.0, reason = "a nought too many" })).Expect(403);
        (await workshop.PostAsync(path, new { value = 900.0, reason = " " }, Workshop.Quality)).Expect(400);
        (await workshop.PostAsync(path, new { value = 900.0, reason = "a nought too many" }, Workshop.Quality)).Expect(200);
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        Assert.Contains(
            "corrected already",
            (await workshop.PostAsync(path, new { value = 901.0, reason = "again" }, Workshop.Quality)).Problem(404),
            StringComparison.Ordinal
        );
        var page = (await (await Pages.Visitor.SignedInAsync(workshop, Workshop.Quality)).GoAsync($"/instruments/{bench}")).Text;
        Assert.Contains("9000 Hz", page, StringComparison.Ordinal);
        Assert.Contains("Corrected: a nought too many.", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_due_date_that_was_typed_wrong_is_corrected_and_the_instrument_is_due_by_the_right_one()
    {
        var bench = await workshop.BenchAsync();
        var today = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime);
        var wrong = (
            await workshop.PostAsync(
                $"instruments/{bench}/calibrations",
                new
                {
                    calibratedOn = today.AddDays(-5),
                    dueOn = today.AddDays(3000),
                    reference = "C-7",
                },
                Workshop.Quality
            )
        ).Expect(201).Id();
        var right = new
        {
            calibratedOn = today.AddDays(-8),
            dueOn = today.AddDays(-1),
            reference = "C-7",
            reason = "wrong year",
        };
        (await workshop.PostAsync($"instruments/{bench}/calibrations/{wrong}/corrections", right, Workshop.Quality)).Expect(200);
        var listed = (await workshop.GetAsync("instruments")).Expect(200).List().Single(i => i.Text("code") == bench);
        Assert.Equal((today.AddDays(-1).ToString("O", CultureInfo.InvariantCulture), "due"), (listed.Text("dueOn"), listed.Text("state")));
    }
}
