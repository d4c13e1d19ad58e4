using Traceability.Documents.Fonts;

namespace Traceability.Documents.Tests.Fonts;

public sealed class InterFontsTests
{
    [Theory]
    [InlineData(InterFonts.Light)]
    [InlineData(InterFonts.Regular)]
    [InlineData(InterFonts.Medium)]
    [InlineData(InterFonts.SemiBold)]
    [InlineData(InterFonts.Bold)]
    public void Every_face_used_here_is_a_true_type_file(string face)
    {
        var bytes = InterFonts.FindTrueType(face);

        Assert.NotNull(bytes);
        Assert.Equal([0, 1, 0, 0], bytes.Value[..4].ToArray());
    }

    [Fact]
    public void A_face_that_is_not_there_is_null() => Assert.Null(InterFonts.FindTrueType("../secret"));

    [Fact]
    public void The_licence_goes_with_the_font()
    {
        Assert.Contains("SIL OPEN FONT LICENSE Version 1.1", InterFonts.Licence, StringComparison.Ordinal);
        Assert.Contains("The Inter Project Authors", InterFonts.Licence, StringComparison.Ordinal);
    }
}
