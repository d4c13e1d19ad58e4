using Traceability.Web.Tests.Pages;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Quality.Notices;

public sealed class NoticeMisuseTests(Workshop w) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Only_the_quality_lead_looks_and_acknowledges()
    {
        foreach (var badge in new[] { Workshop.Builder, Workshop.Lead, Workshop.ServiceDesk })
        {
            (await w.GetAsync("quality/notices", badge)).Expect(403);
            (await w.PostAsync("quality/notices/0123456789abcdef01234567/acknowledge", new { }, badge)).Expect(403);
        }

        (await w.GetAsync("quality/notices", null)).Expect(401);
        var desk = await DeskClient.SignInAsync(w, Workshop.Builder);
        (await desk.GetAsync("/quality/notices")).Expect(403);
    }

    [Theory]
    [InlineData("nothing")]
    [InlineData("..%2F..")]
    [InlineData("0123456789abcdef01234567")]
    public async Task A_key_that_names_nothing_acknowledges_nothing(string key)
    {
        await using var door = BackDoor.Of(w);
        await door.UntouchedByAsync(async () =>
            Assert.InRange(
                (int)(await w.PostAsync($"quality/notices/{key}/acknowledge", new { note = "x" }, Workshop.Quality)).Status,
                400,
                499
            )
        );
    }
}
