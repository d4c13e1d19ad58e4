using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace Traceability.Documents.Drawing;

/// <summary>A ruled table as a list of strips: columns wrap, rows stay whole, headings come again on every page.</summary>
internal sealed class Table(double left, double width, params Column[] columns)
{
    private const double Gap = 8,
        Padding = 2.4;

    /// A row with more lines than this is carried on in a further strip: otherwise it could outgrow a page.
    private const int MostLines = 24;

    private readonly double[] _lefts = [.. columns.Select((_, i) => left + width * columns.Take(i).Sum(column => column.Share))];
    private readonly List<Strip> _strips = [Opening];
    private Strip? _heading;

    private static Strip Opening => new(0, (canvas, _) => canvas.Open(PdfBlockLevelElementTag.Table)) { KeepWithNext = true };

    private static Strip Closing => new(0, (canvas, _) => canvas.Close());

    public IReadOnlyList<Strip> Strips => [.. _strips.Select(Last), Closing];

    public Table WithHeading()
    {
        var cells = columns.Select((column, i) => LineBreaker.Break(column.Title, TextStyle.Label, Inner(i))).ToArray();
        var height = cells.Max(lines => lines.Count) * TextStyle.Label.LineHeight + 2 * Padding;
        _heading = new Strip(
            height,
            (canvas, top) =>
            {
                canvas.Block(
                    PdfBlockLevelElementTag.TableRow,
                    () =>
                    {
                        for (var i = 0; i < columns.Length; i++)
                        {
                            canvas.Open(PdfBlockLevelElementTag.TableHeaderCell);
                            // Names of columns stand on the rule.
                            var offset = height - Padding - cells[i].Count * TextStyle.Label.LineHeight;
                            for (var line = 0; line < cells[i].Count; line++)
                                Put(canvas, i, cells[i][line], TextStyle.Label, 0, top + offset + line * TextStyle.Label.LineHeight);
                            canvas.Close();
                        }
                    }
                );
                canvas.Rule(left, top + height, width, Ink.Brass, 0.6);
            }
        )
        {
            KeepWithNext = true,
        };
        _strips.Add(_heading);
        return this;
    }

    /// Names the rows that follow; comes again, with the columns' names, where they run over to another page.
    public void AddGroup(string text)
    {
        var lines = LineBreaker.Break(text, TextStyle.SubHeading, width);
        var height = lines.Count * TextStyle.SubHeading.LineHeight + 2 * Padding + 3;
        var group = new Strip(
            height,
            (canvas, top) =>
            {
                canvas.Block(
                    PdfBlockLevelElementTag.TableRow,
                    () =>
                        canvas.Block(
                            PdfBlockLevelElementTag.TableHeaderCell,
                            () => canvas.Lines(lines, TextStyle.SubHeading, left, top + Padding + 3)
                        )
                );
                canvas.Rule(left, top + height, width, Ink.Rule, 0.4);
            }
        )
        {
            KeepWithNext = true,
            Heading = _columnsOnly ??= _heading,
        };
        _strips.Add(group);
        _heading = _columnsOnly is { } names
            ? new Strip(
                names.Height + height,
                (canvas, top) =>
                {
                    names.Draw(canvas, top);
                    group.Draw(canvas, top + names.Height);
                }
            )
            : group;
    }

    private Strip? _columnsOnly;

    public void AddRow(IReadOnlyList<Cell> cells, string? note = null, XColor? fill = null)
    {
        var wrapped = cells.Select((cell, i) => cell.Wrap(Inner(i))).ToArray();
        var notes = string.IsNullOrEmpty(note) ? [] : LineBreaker.Break(note, TextStyle.Note, width - 12);
        var lines = wrapped.Max(cell => cell.Count);
        for (var first = 0; first < lines; first += MostLines)
        {
            var part = wrapped.Select(cell => (IReadOnlyList<(string, TextStyle)>)[.. cell.Skip(first).Take(MostLines)]).ToArray();
            var ends = first + MostLines >= lines;
            _strips.Add(Row(cells, part, ends && notes.Count <= MostLines ? notes : [], ruled: ends && notes.Count <= MostLines, fill));
        }
        if (notes.Count > MostLines)
        {
            foreach (var chunk in notes.Chunk(MostLines))
                _strips.Add(Row([], [], chunk, ruled: chunk[^1] == notes[^1], fill));
        }
    }

    private Strip Row(
        IReadOnlyList<Cell> cells,
        IReadOnlyList<(string Line, TextStyle Style)>[] wrapped,
        IReadOnlyList<string> notes,
        bool ruled,
        XColor? fill
    )
    {
        var body = wrapped.Select(cell => cell.Sum(line => line.Style.LineHeight)).DefaultIfEmpty(0).Max();
        var height = body + notes.Count * TextStyle.Note.LineHeight + 2 * Padding;
        return new Strip(
            height,
            (canvas, top) =>
            {
                if (fill is { } colour)
                    canvas.Artifact(() => canvas.Graphics.DrawRectangle(Ink.Brush(colour), left - 4, top + 0.3, width + 8, height - 0.3));
                canvas.Block(
                    PdfBlockLevelElementTag.TableRow,
                    () =>
                    {
                        for (var i = 0; i < wrapped.Length; i++)
                        {
                            canvas.Open(PdfBlockLevelElementTag.TableDataCell);
                            var y =
                                top
                                + Padding
                                + Math.Max(
                                    0,
                                    TextStyle.Body.BaselineOffset - wrapped[i].Select(line => line.Style.BaselineOffset).FirstOrDefault()
                                );
                            if (cells[i].Mark is { } mark)
                                canvas.Artifact(() =>
                                    mark(canvas.Graphics, new XRect(_lefts[i], top + Padding, Inner(i), TextStyle.Body.LineHeight))
                                );
                            foreach (var (line, style) in wrapped[i])
                            {
                                Put(canvas, i, line, style, cells[i].Indent, y);
                                y += style.LineHeight;
                            }
                            canvas.Close();
                        }
                        if (notes.Count > 0)
                            canvas.Block(
                                PdfBlockLevelElementTag.TableDataCell,
                                () => canvas.Lines(notes, TextStyle.Note, left + 12, top + Padding + body)
                            );
                    }
                );
                if (ruled)
                    canvas.Rule(left, top + height, width, Ink.Rule, 0.4);
            }
        )
        {
            Heading = _heading,
        };
    }

    private void Put(PageCanvas canvas, int column, string text, TextStyle style, double indent, double top)
    {
        if (columns[column].Right)
            canvas.TextRight(text, style, _lefts[column] + Inner(column), top);
        else
            canvas.Text(text, style, _lefts[column] + indent, top);
    }

    private double Inner(int column) => width * columns[column].Share - Gap;

    /// The end of the table stays with its last row.
    private Strip Last(Strip strip, int index) => index == _strips.Count - 1 ? strip with { KeepWithNext = true } : strip;
}
