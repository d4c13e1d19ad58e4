using Traceability.Domain.Gates;
using Traceability.Domain.Values;
using Traceability.Web.Features.Quality.Doubts;

namespace Traceability.Web.Tests.Quality;

/// <summary>The page of what was measured with an instrument in doubt says since when it is, until when, and why.</summary>
public sealed class DoubtSentenceTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly DateTimeOffset Since = new(2026, 9, 21, 0, 0, 0, TimeSpan.Zero),
        Found = new(2026, 11, 13, 15, 30, 0, TimeSpan.Zero),
        Good = new(2026, 11, 16, 8, 5, 0, TimeSpan.Zero);

    public static TheoryData<DateTimeOffset?, DateTimeOffset?, DoubtCause, string> Spans =>
        new()
        {
            {
                Since,
                null,
                DoubtCause.Calibration,
                "CAP-02 is in doubt from 21 Sep 2026, 00:00 until now: a calibration found it out of tolerance on 13 Nov 2026."
            },
            {
                Since,
                Good,
                DoubtCause.Check,
                "CAP-02 is in doubt from 21 Sep 2026, 00:00 until 16 Nov 2026, 08:05: it failed its check on 13 Nov 2026, 15:30."
            },
            {
                null,
                null,
                DoubtCause.Hold,
                "CAP-02 is in doubt from the beginning until now: it was stopped on 13 Nov 2026, 15:30 and not found good since."
            },
        };

    [Theory]
    [MemberData(nameof(Spans))]
    public void A_span_of_doubt_is_a_sentence(DateTimeOffset? since, DateTimeOffset? until, DoubtCause cause, string sentence) =>
        Assert.Equal(sentence, DoubtSentence.Of("CAP-02", new(since, until, cause, Found, Found), WorkshopCalendar.Utc));

    [Fact]
    public async Task The_page_says_it_in_these_words()
    {
        var (_, bench) = await workshop.MeasuredAsync();
        await workshop.CheckAsync(bench, 950);
        var desk = await Pages.DeskClient.SignInAsync(workshop, Workshop.Quality);

        Assert.Matches(
            $@"{bench} is in doubt from \d+ \w+ \d+, \d\d:\d\d until now: it failed its check on \d+ \w+ \d+, \d\d:\d\d\.",
            (await desk.GetAsync($"/instruments/{bench}/affected")).Expect(200).Words
        );
    }
}
