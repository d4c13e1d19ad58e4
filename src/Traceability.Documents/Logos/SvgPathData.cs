using System.Numerics;

namespace Traceability.Documents.Logos;

/// <summary>The path language (SVG 1.1, 8.3): every command, absolute and relative, as cubic curves.</summary>
internal sealed class SvgPathData(string text)
{
    private const int MostCurves = 50_000;

    private readonly List<SvgOutline> outlines = [];
    private List<SvgCurve> curves = [];
    private int at;
    private int count;
    private Vector2 here,
        start,
        lastControl;
    private char lastCommand;

    public IReadOnlyList<SvgOutline> Outlines()
    {
        var command = '\0';
        while (SkipBlanks())
        {
            if (char.IsAsciiLetter(text[at]))
                command = text[at++];
            else if (command is '\0' or 'z' or 'Z')
                throw Wrong();
            Run(command);
            // Pairs after a move are lines.
            command = command switch
            {
                'M' => 'L',
                'm' => 'l',
                _ => command,
            };
        }
        End(false);
        return outlines;
    }

    private void Run(char command)
    {
        var from = char.IsAsciiLetterLower(command) ? here : Vector2.Zero;
        var kind = char.ToUpperInvariant(command);
        switch (kind)
        {
            case 'M':
                End(false);
                start = here = from + Point();
                break;
            case 'L':
                To(SvgCurve.Line(here, from + Point()));
                break;
            case 'H':
                To(SvgCurve.Line(here, new(from.X + Number(), here.Y)));
                break;
            case 'V':
                To(SvgCurve.Line(here, new(here.X, from.Y + Number())));
                break;
            case 'C':
                Cubic(from + Point(), from + Point(), from + Point());
                break;
            case 'S':
                Cubic(lastCommand is 'C' or 'S' ? 2 * here - lastControl : here, from + Point(), from + Point());
                break;
            case 'Q':
                Quadratic(from + Point(), from + Point());
                break;
            case 'T':
                Quadratic(lastCommand is 'Q' or 'T' ? 2 * here - lastControl : here, from + Point());
                break;
            case 'A':
                var (rx, ry, turn, large, sweep) = (Number(), Number(), Number(), Flag(), Flag());
                foreach (var curve in SvgArc.Curves(here, from + Point(), rx, ry, turn, large, sweep))
                    To(curve);
                break;
            case 'Z':
                End(true);
                here = start;
                break;
            default:
                throw Wrong();
        }
        lastCommand = kind;
    }

    private void Cubic(Vector2 first, Vector2 second, Vector2 to)
    {
        lastControl = second;
        To(new(here, first, second, to));
    }

    private void Quadratic(Vector2 control, Vector2 to)
    {
        lastControl = control;
        To(new(here, Vector2.Lerp(here, control, 2 / 3f), Vector2.Lerp(to, control, 2 / 3f), to));
    }

    private void To(SvgCurve curve)
    {
        if (++count > MostCurves)
            throw new LogoException(LogoFault.NotDrawn, "path");
        curves.Add(curve);
        here = curve.To;
    }

    private void End(bool closed)
    {
        if (curves.Count > 0)
            outlines.Add(new(curves, closed));
        curves = [];
    }

    private Vector2 Point() => new(Number(), Number());

    /// Flags may stand without anything between them: "a1 1 0 011 1".
    private bool Flag() => SkipBlanks() && text[at] is '0' or '1' ? text[at++] == '1' : throw Wrong();

    private float Number()
    {
        if (!SkipBlanks())
            throw Wrong();
        var first = at;
        if (text[at] is '+' or '-')
            at++;
        Digits();
        if (at < text.Length && text[at] == '.')
        {
            at++;
            Digits();
        }
        if (at < text.Length && text[at] is 'e' or 'E')
        {
            at++;
            if (at < text.Length && text[at] is '+' or '-')
                at++;
            Digits();
        }
        return (float)SvgNumbers.Parse(text[first..at], "d");
    }

    private void Digits()
    {
        while (at < text.Length && char.IsAsciiDigit(text[at]))
            at++;
    }

    private bool SkipBlanks()
    {
        while (at < text.Length && (char.IsWhiteSpace(text[at]) || text[at] == ','))
            at++;
        return at < text.Length;
    }

    private static LogoException Wrong() => new(LogoFault.NotAPicture, "d");
}
