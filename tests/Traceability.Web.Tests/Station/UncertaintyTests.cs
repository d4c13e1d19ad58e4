using System.Globalization;

namespace Traceability.Web.Tests.Station;

/// <summary>A stated uncertainty goes with the reading from the route to every answer.</summary>
public sealed class UncertaintyTests(Workshop workshop) : IClassFixture<Workshop>
{
    /// <summary>One Hz inside a limit with U = 2 Hz, k = 2: Phi(1) = 0.8413 (normal table, JCGM 106:2012, 7.3).</summary>
    [Fact]
    public async Task A_reading_states_its_uncertainty_and_the_probability_that_it_conforms()
    {
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        var reading = (await workshop.VerifyAsync(serial, 881)).List("readings")[0];
        Assert.Equal(("2", "met", "True"), (reading.Text("expandedUncertainty"), reading.Text("conformity"), reading.Text("met")));
        Assert.Equal(0.8413, double.Parse(reading.Text("probabilityOfConformance"), CultureInfo.InvariantCulture), 4);
    }

    /// <summary>9.5 mm of at most 10 mm with U = 2 mm lies in the guard band of 8 to 10 mm (JCGM 106:2012, 8.3.2).</summary>
    [Fact]
    public async Task A_conditional_verdict_is_called_so_on_the_page_of_the_part()
    {
        const string route = """
            model: TEST-1
            kind: guarded-piece
            title: Piece judged with a guard band
            serialPrefix: G
            author: L1
            approvedBy: Q1
            effectiveFrom: 2020-01-01
            stages:
              - code: gauge
                title: Gauge
                method: entered-limits
                characteristics:
                  - {name: lengthMm, unit: mm, upper: 10, expandedUncertainty: 2, decisionRule: guarded}
            """;
        await workshop.RouteAsync(route);
        var serial = await workshop.RegisterAsync("guarded-piece");
        var closing = await workshop.RecordAsync(
            serial,
            "gauge",
            new { readings = new[] { new { characteristic = "lengthMm", value = 9.5 } } }
        );
        Assert.Equal("conditional", closing.Text("verdict"));
        var page = (await (await Pages.DeskClient.SignInAsync(workshop, Workshop.Quality)).GetAsync($"/parts/{serial}")).Expect(200);
        Assert.Contains("Gauge conditional", page.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_route_says_which_rule_judges()
    {
        var stages = (await workshop.GetAsync($"routes/{Workshop.Model}/diaphragm")).Expect(200).List("stages");
        var ring = stages.Single(s => s.Text("code") == "verify").List("characteristics").Single();
        Assert.Equal(("2", "simple"), (ring.Text("expandedUncertainty"), ring.Text("decisionRule")));
    }
}
