using System.Text;
using Traceability.Documents.Certificates;
using Traceability.Documents.Tests.Certificates;
using Traceability.Documents.Tests.Reading;

namespace Traceability.Documents.Tests.Logos;

/// <summary>A logo stands at the head of the certificate as it was drawn.</summary>
public sealed class LogoOnCertificateTests
{
    /// <summary>40 points high: black where x is below 20, with a hole of arcs; white beyond.</summary>
    private const string Drawn = """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 40"><style>.a{fill:#000}</style>
        <g transform="translate(-10,0) translate(10,0)"><path class="a" fill-rule="evenodd"
        d="M0 0h20v40H0zM5 20a5 5 0 1 0 10 0a5 5 0 1 0-10 0z"/></g></svg>
        """;

    [Fact]
    public void Shapes_arcs_transforms_and_classes_are_drawn_where_they_belong()
    {
        var page = Raster.OfPage(CertificatePdf.Render(Examples.Short, Encoding.UTF8.GetBytes(Drawn)), dotsPerInch: 72);
        // 46 points wide and high from the margin, 40 points below the edge.
        int At(double x, double y) => page.Grey[(int)(40 + y * 46 / 40) * page.Width + (int)(48 + x * 46 / 40)];
        Assert.All(new[] { At(2, 2), At(18, 2), At(2, 38), At(18, 38) }, grey => Assert.True(grey < 60, $"{grey}"));
        Assert.All(new[] { At(10, 20), At(7, 20), At(30, 20) }, grey => Assert.True(grey > 200, $"{grey}"));
    }

    [Fact]
    public void Without_a_logo_the_head_is_the_name_alone()
    {
        var text = PdfText.Read(CertificatePdf.Render(Examples.Short with { WorkshopAddress = "Mill Lane 4\nLower Mill" }));
        text.AssertHolds("The Lower Mill Workshop");
        text.AssertHolds("Mill Lane 4");
    }
}
