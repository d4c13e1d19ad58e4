using System.Text;

namespace Traceability.Domain.Tests.Texts;

/// <summary>Finds the text literals of a C# source, those inside the holes of others too; what a hole stands for is left out.</summary>
internal sealed class SourceLiterals
{
    private readonly string code;
    private readonly List<(string Text, string Statement)> found = [];
    private int at;

    private SourceLiterals(string code) => this.code = code;

    /// <summary>Every literal with what stands before it in its statement.</summary>
    public static IReadOnlyList<(string Text, string Statement)> Of(string code)
    {
        var literals = new SourceLiterals(code);
        literals.Code(untilBrace: false);
        return literals.found;
    }

    private bool Sees(string next) => string.CompareOrdinal(code, at, next, 0, next.Length) == 0;

    private void Code(bool untilBrace)
    {
        for (var depth = 0; at < code.Length; at++)
        {
            if (Sees("//"))
                Skip("\n");
            else if (Sees("/*"))
                Skip("*/");
            else if (Sees("'"))
                at = code.IndexOf('\'', at + (code[at + 1] == '\\' ? 3 : 2));
            else if (code[at] == '"')
                Literal();
            else if (code[at] == '{')
                depth++;
            else if (code[at] == '}' && depth-- == 0 && untilBrace)
                return;
        }
    }

    private void Skip(string end) =>
        at = code.IndexOf(end, at, StringComparison.Ordinal) is var last and >= 0 ? last + end.Length - 1 : code.Length;

    private void Literal()
    {
        var prefix = code[Math.Max(0, at - 2)..at];
        var (interpolated, verbatim, raw) = (
            prefix.Contains('$'),
            prefix.EndsWith('@') || prefix.EndsWith("@$", StringComparison.Ordinal),
            Sees("\"\"\"")
        );
        var quote = raw ? "\"\"\"" : "\"";
        var statement = code[(code.LastIndexOfAny([';', '{', '}'], Math.Max(0, at - 1)) + 1)..at];
        var text = new StringBuilder();
        for (at += quote.Length; !Sees(quote); at++)
        {
            if (interpolated && Sees("{{"))
                at++;
            else if (interpolated && code[at] == '{')
            {
                at++;
                Code(untilBrace: true);
                continue;
            }
            else if (!verbatim && !raw && code[at] == '\\')
                at++;
            text.Append(code[at]);
        }

        at += quote.Length - 1;
        found.Add((text.ToString(), statement));
    }
}
