using CsCheck;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;

namespace Traceability.Domain.Tests.Routes;

/// <summary>Whatever is done to a route file, reading it ends in a route or in problems.</summary>
public class RouteTextMutationTests
{
    private static readonly string[] Fragments =
    [
        "\n",
        "  ",
        "\t",
        ":",
        ": ",
        "- ",
        "[",
        "]",
        "{",
        "}",
        "'",
        "\"",
        "&a ",
        "*a",
        "!!int ",
        "? ",
        "|",
        ">",
        "#",
        "%",
        "---\n",
        "...",
        "<<: ",
        "\0",
        "\u2028",
        "\uD800",
        "é",
        "~",
        "1e999",
        "-1",
        "null",
    ];

    private static readonly Gen<Func<string, string>> Mutation = Gen.OneOf(
        Gen.Select(Gen.Int[0, 9999], Gen.Int[1, 60], (at, length) => (Func<string, string>)(text => Cut(text, at, length))),
        Gen.Select(
            Gen.Int[0, 9999],
            Gen.Int[0, Fragments.Length - 1],
            (at, what) => (Func<string, string>)(text => text.Insert(at % (text.Length + 1), Fragments[what]))
        ),
        Gen.Select(Gen.Int[0, 9999], Gen.Int[0, 9999], (from, to) => (Func<string, string>)(text => Move(text, from, to))),
        Gen.Select(Gen.Int[0, 9999], Gen.Char, (at, c) => (Func<string, string>)(text => text.Insert(at % (text.Length + 1), c.ToString())))
    );

    [Fact]
    public void Reading_a_spoilt_file_never_throws_and_gives_a_route_or_problems_with_lines_of_the_file() =>
        Mutation
            .Array[1, 6]
            .Sample(
                mutations =>
                {
                    var text = mutations.Aggregate(ARouteFile.Good, (t, mutate) => mutate(t));
                    var lines = text.Split(['\n', '\r', '\u0085', '\u2028', '\u2029']).Length;

                    var reading = RouteText.Read(text, StageMethods.Requirements);

                    Assert.Equal(reading.Route is null, reading.Problems.Count > 0);
                    Assert.All(
                        reading.Problems,
                        p => Assert.True(p.Line >= 1 && p.Line <= lines + 1 && p.Message.Length > 0, p.ToString())
                    );
                },
                iter: 1000,
                print: mutations => mutations.Aggregate(ARouteFile.Good, (t, mutate) => mutate(t))
            );

    private static string Cut(string text, int at, int length) =>
        text.Length == 0 ? text : text.Remove(at % text.Length, Math.Min(length, text.Length - (at % text.Length)));

    private static string Move(string text, int from, int to)
    {
        var lines = text.Split('\n').ToList();
        var line = lines[from % lines.Count];
        lines.Insert(to % lines.Count, line);
        return string.Join('\n', lines);
    }
}
