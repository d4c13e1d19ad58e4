using System.Globalization;
using System.Xml.Linq;
using Traceability.Documents.Charts;
using Traceability.Documents.Drawing;
using Traceability.Documents.Fonts;
using Traceability.Documents.Tests.Certificates;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Tests.Charts;

public sealed class ChartSvgTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Pictures => ["response", "two traces", "no mask", "narrow", "soak", "dry soak", "nothing measured"];

    [Theory]
    [MemberData(nameof(Pictures))]
    public void A_picture_is_well_formed_and_holds_nothing_that_a_strict_page_refuses(string which)
    {
        var svg = Draw(which);

        Assert.Equal(Svg + "svg", svg.Name);
        Assert.All(
            svg.DescendantsAndSelf(),
            element =>
            {
                Assert.DoesNotContain(element.Name.LocalName, new[] { "style", "script", "foreignObject", "image", "use" });
                Assert.DoesNotContain(
                    element.Attributes(),
                    attribute =>
                        attribute.Name.LocalName is "style" or "id" or "href"
                        || attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal)
                );
            }
        );
    }

    [Theory]
    [MemberData(nameof(Pictures))]
    public void A_picture_has_a_role_a_title_and_a_description(string which)
    {
        var svg = Draw(which);

        Assert.Equal("img", svg.Attribute("role")?.Value);
        Assert.NotEqual("", svg.Elements().First(element => element.Name == Svg + "title").Value);
        Assert.NotEqual("", svg.Elements().First(element => element.Name == Svg + "desc").Value);
    }

    [Theory]
    [MemberData(nameof(Pictures))]
    public void No_label_is_cut_by_the_edge_of_the_picture(string which)
    {
        var svg = Draw(which);
        var (width, height) = (Number(svg, "width"), Number(svg, "height"));

        Assert.NotEmpty(svg.Descendants(Svg + "text"));
        Assert.All(
            svg.Descendants(Svg + "text").Where(text => text.Attribute("x") is not null),
            text =>
            {
                var measured = TextRuler.Width(
                    text.Attribute("font-weight") is null ? InterFonts.Regular : InterFonts.SemiBold,
                    Number(text, "font-size"),
                    text.Value
                );
                var left =
                    Number(text, "x")
                    - measured
                        * text.Attribute("text-anchor")!.Value switch
                        {
                            "start" => 0,
                            "middle" => 0.5,
                            _ => 1,
                        };
                Assert.InRange(left, 0, width - measured);
                Assert.InRange(Number(text, "y"), Number(text, "font-size") * 0.7, height);
            }
        );
    }

    [Fact]
    public void Frequencies_are_named_as_the_trade_names_them()
    {
        var labels = Draw("response").Descendants(Svg + "text").Select(text => text.Value).ToArray();

        Assert.Equal(
            ["20", "50", "100", "200", "500", "1k", "2k", "5k", "10k", "20k"],
            labels.Where(label => label is "20" or "50" or "100" or "200" or "500" || label.EndsWith('k'))
        );
    }

    [Fact]
    public void A_mask_is_a_band_with_an_edge_on_either_side()
    {
        var svg = Draw("response");

        Assert.Single(svg.Descendants(), element => element.Attribute("class")?.Value == "chart-band");
        Assert.True(svg.Descendants().Count(element => element.Attribute("class")?.Value == "chart-band-edge") >= 2);
        Assert.DoesNotContain(Draw("no mask").Descendants(), element => element.Attribute("class")?.Value == "chart-band");
    }

    [Fact]
    public void Two_traces_differ_in_dash_and_not_in_colour_alone()
    {
        var svg = Draw("two traces");

        Assert.All(
            svg.Descendants().Where(element => element.Attribute("class")?.Value == "chart-curve-1"),
            line => Assert.Null(line.Attribute("stroke-dasharray"))
        );
        Assert.All(
            svg.Descendants().Where(element => element.Attribute("class")?.Value == "chart-curve-2"),
            line => Assert.NotNull(line.Attribute("stroke-dasharray"))
        );
    }

    [Fact]
    public void A_short_excursion_in_a_long_log_stays_in_the_picture()
    {
        var start = Examples.At(13, 5);
        var samples = Enumerable
            .Range(0, 20_000)
            .Select(i => new CertifiedSample(start.AddSeconds(i), i == 12_345 ? 61 : 45, null))
            .ToArray();
        var quiet = samples.Select(sample => sample with { TemperatureC = 45 }).ToArray();
        var phases = new[] { new CertifiedPhase("warm", start, start.AddSeconds(20_000), 45, 30) };

        var spiked = Curve(SoakChart.ToSvg(new SoakRecord("Soak", "K-1", samples, phases, "")));
        var flat = Curve(SoakChart.ToSvg(new SoakRecord("Soak", "K-1", quiet, phases, "")));

        Assert.NotEqual(flat, spiked);
        Assert.True(spiked.Length < 40_000, "the log was not thinned");
    }

    [Fact]
    public void The_same_curve_gives_the_same_picture()
    {
        Assert.Equal(ResponseChart.ToSvg(Examples.Full.Curves[0]), ResponseChart.ToSvg(Examples.Full.Curves[0]));
    }

    private static string Curve(string svg) =>
        string.Concat(
            XElement
                .Parse(svg)
                .Descendants()
                .Where(element => element.Attribute("class")?.Value == "chart-curve-1")
                .Select(line => line.Attribute("d")!.Value)
        );

    private static XElement Draw(string which) =>
        XElement.Parse(
            which switch
            {
                "response" => ResponseChart.ToSvg(Examples.Full.Curves[0]),
                "two traces" => ResponseChart.ToSvg(Examples.Full.Curves[1]),
                "no mask" => ResponseChart.ToSvg(Examples.Full.Curves[2]),
                "narrow" => ResponseChart.ToSvg(Examples.Full.Curves[1], ChartSize.Narrow),
                "soak" => SoakChart.ToSvg(Examples.Full.Soaks[0]),
                "dry soak" => SoakChart.ToSvg(
                    Examples.Full.Soaks[0] with
                    {
                        Samples = [.. Examples.Full.Soaks[0].Samples.Select(sample => sample with { HumidityPct = null })],
                    }
                ),
                _ => ResponseChart.ToSvg(
                    new CertifiedCurve(
                        "A <curve> & nothing\u0001",
                        [new ResponseTrace("empty", [])],
                        [new(20, null, 3), new(20_000, -3, null)],
                        ""
                    )
                ),
            }
        );

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
