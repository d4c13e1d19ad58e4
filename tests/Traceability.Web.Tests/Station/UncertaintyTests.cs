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

    [Fact]
    public async Task The_route_says_which_rule_judges()
    {
        var stages = (await workshop.GetAsync($"routes/{Workshop.Model}/diaphragm")).Expect(200).List("stages");
        var ring = stages.Single(s => s.Text("code") == "verify").List("characteristics").Single();
        Assert.Equal(("2", "simple"), (ring.Text("expandedUncertainty"), ring.Text("decisionRule")));
    }
}
