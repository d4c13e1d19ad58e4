using System.Text;
using Traceability.Documents.Logos;

namespace Traceability.Documents.Tests.Logos;

/// <summary>What may be a workshop's logo, and why other files may not.</summary>
public sealed class LogoFileTests
{
    private const string Start =
        """<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 9 9">""";

    /// <summary>One white pixel.</summary>
    private static readonly byte[] Png = Convert.FromBase64String(
        "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAIAAACQd1PeAAAADElEQVR4nGP4//8/AAX+Av4N70a4AAAAAElFTkSuQmCC"
    );

    [Theory]
    [InlineData("<script>alert(1)</script>", LogoFault.Script)]
    [InlineData("<rect width='9' height='9' onclick='x()'/>", LogoFault.Script)]
    [InlineData("<set attributeName='x' to='1'/>", LogoFault.Script)]
    [InlineData("<g><foreignObject/></g>", LogoFault.ForeignContent)]
    [InlineData("<p xmlns='http://www.w3.org/1999/xhtml'>hello</p>", LogoFault.ForeignContent)]
    [InlineData("<image href='https://elsewhere.example/a.png'/>", LogoFault.Reference)]
    [InlineData("<use xlink:href='#a'/>", LogoFault.Reference)]
    [InlineData("<rect width='9' height='9' fill='url(#a)'/>", LogoFault.Reference)]
    [InlineData("<rect width='9' height='9' style='fill:url(https://elsewhere.example/a)'/>", LogoFault.Reference)]
    [InlineData("<style>@import 'https://elsewhere.example/a.css';</style>", LogoFault.Reference)]
    [InlineData("<text>The Mill</text>", LogoFault.NotDrawn)]
    [InlineData("<linearGradient/>", LogoFault.NotDrawn)]
    [InlineData("<path d='M0 0 L'/>", LogoFault.NotAPicture)]
    [InlineData("<path d='M0 0 L1 1 X'/>", LogoFault.NotAPicture)]
    [InlineData("<g/>", LogoFault.Empty)]
    [InlineData("<rect", LogoFault.NotAPicture)]
    public void What_a_logo_may_not_hold_is_refused_by_name(string inside, LogoFault fault) =>
        Assert.Equal(fault, Check($"{Start}{inside}</svg>").Problem?.Fault);

    [Theory]
    [InlineData("<!DOCTYPE svg [<!ENTITY a 'b'>]>")]
    [InlineData("<!DOCTYPE svg [<!ATTLIST svg onload CDATA 'x()'>]>")]
    public void Declarations_of_its_own_are_refused_because_a_browser_would_follow_them(string declared) =>
        Assert.Equal(LogoFault.Declaration, Check($"{declared}{Start}<rect width='9' height='9'/></svg>").Problem?.Fault);

    [Fact]
    public void An_svg_of_plain_shapes_and_a_png_are_taken_for_what_they_are()
    {
        var drawn = $"<?xml version='1.0'?>{Start}<title>a</title><rect width='9' height='9' rx='2'/></svg>";
        Assert.Equal((LogoFile.Svg, null), Check(drawn));
        Assert.Equal((LogoFile.Png, null), LogoFile.Check(Png));
    }

    [Fact]
    public void A_png_that_is_broken_or_unpacks_to_too_much_is_refused()
    {
        Assert.Equal(LogoFault.NotAPicture, LogoFile.Check(Png[..40]).Problem?.Fault);
        var huge = Png.ToArray();
        huge[17] = 1;
        Assert.Equal(LogoFault.TooManyPixels, LogoFile.Check(huge).Problem?.Fault);
    }

    private static (string? Type, LogoProblem? Problem) Check(string svg) => LogoFile.Check(Encoding.UTF8.GetBytes(svg));
}
