using PdfSharp.Drawing;
using Traceability.Documents.Drawing;
using Traceability.Domain.Quality.Reports;

namespace Traceability.Documents.Reports;

/// <summary>
/// Small drawings in a table's cell: a share on a line from 0 to 100 % with its interval, and a bar as long as its share of the longest.
/// </summary>
internal static class ShareMark
{
    public static Cell Interval(ReportedShare share, bool alert = false) =>
        share is { Value: { } value, Lower: { } lower, Upper: { } upper }
            ? new Cell("") { Mark = (graphics, room) => Draw(graphics, room, value, lower, upper, alert ? Ink.Alert : Ink.Brass) }
            : new Cell("");

    public static Cell Bar(double share) =>
        new("")
        {
            Mark = (graphics, room) =>
                graphics.DrawRectangle(
                    Ink.Brush(Ink.BrassLight),
                    room.X,
                    room.Y + 2,
                    Math.Max(0.5, room.Width * Math.Clamp(share, 0, 1)),
                    room.Height - 4
                ),
        };

    private static void Draw(XGraphics graphics, XRect room, double value, double lower, double upper, XColor colour)
    {
        var (middle, left, width) = (room.Y + room.Height / 2, room.X + 3, room.Width - 6);
        graphics.DrawLine(Ink.Pen(Ink.Rule, 0.5), left, middle, left + width, middle);
        foreach (var end in new[] { left, left + width })
            graphics.DrawLine(Ink.Pen(Ink.Rule, 0.5), end, middle - 2.5, end, middle + 2.5);
        graphics.DrawLine(Ink.Pen(colour, 2.2), left + lower * width, middle, left + upper * width, middle);
        graphics.DrawEllipse(Ink.Brush(Ink.Black), left + value * width - 1.9, middle - 1.9, 3.8, 3.8);
    }
}
