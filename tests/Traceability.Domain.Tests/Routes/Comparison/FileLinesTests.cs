using Traceability.Domain.Routes.Comparison;

namespace Traceability.Domain.Tests.Routes.Comparison;

public class FileLinesTests
{
    [Fact]
    public void A_changed_line_is_the_old_one_and_then_the_new_one_and_the_others_stand_once() =>
        Assert.Equal([new("a", 1, 1), new("b", 2, null), new("x", null, 2), new("c", 3, 3)], FileLines.Of("a\nb\nc\n", "a\nx\nc"));

    [Fact]
    public void A_line_more_or_less_leaves_the_others_the_same() =>
        Assert.Equal([new("a", 1, 1), new("b", 2, null), new("c", 3, 2), new("d", null, 3)], FileLines.Of("a\nb\nc", "a\r\nc\r\nd"));

    [Fact]
    public void Around_what_differs_so_many_of_the_others_are_shown() =>
        Assert.Equal(
            ["3", "4", "x", "5", "6"],
            FileLines.Around(FileLines.Of("1\n2\n3\n4\n5\n6\n7", "1\n2\n3\n4\nx\n5\n6\n7"), 2).Select(l => l.Text)
        );
}
