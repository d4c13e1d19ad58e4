using Traceability.Domain.Codes;

namespace Traceability.Domain.Tests.Codes;

public class CodeTextTests
{
    [Theory]
    [InlineData("D26-00017", "D26-00017")]
    [InlineData("  jig.7_b ", "JIG.7_B")]
    [InlineData("7", "7")]
    [InlineData("1234567890123456789012345678901234567890", "1234567890123456789012345678901234567890")]
    public void A_good_text_is_kept_in_capitals(string text, string expected)
    {
        Assert.True(CodeText.TryRead(text, "A serial", out var code, out _));
        Assert.Equal(expected, code);
    }

    [Theory]
    [InlineData(null, "A serial must not be empty.")]
    [InlineData("  ", "A serial must not be empty.")]
    [InlineData("12345678901234567890123456789012345678901", "A serial may have 40 characters; this has 41.")]
    [InlineData("L/7", "A serial may have the letters A-Z, digits, \"-\", \".\" and \"_\"; this has \"/\".")]
    [InlineData("L 7", "A serial may have the letters A-Z, digits, \"-\", \".\" and \"_\"; this has a blank.")]
    [InlineData("Lä7", "A serial may have the letters A-Z, digits, \"-\", \".\" and \"_\"; this has \"Ä\".")]
    [InlineData("L\u00007", "A serial may have the letters A-Z, digits, \"-\", \".\" and \"_\"; this has U+0000.")]
    [InlineData("-L7", "A serial must begin and end with a letter or digit.")]
    [InlineData("L7.", "A serial must begin and end with a letter or digit.")]
    [InlineData("..", "A serial must begin and end with a letter or digit.")]
    public void A_bad_text_is_refused_with_what_is_allowed(string? text, string expected)
    {
        Assert.False(CodeText.TryRead(text, "A serial", out var code, out var problem));
        Assert.Null(code);
        Assert.Equal(expected, problem);
    }
}
