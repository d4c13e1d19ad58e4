using PdfSharp.Drawing;

namespace Traceability.Documents.Drawing;

/// <summary>
/// The house's mark: a capsule seen from the front. A brass ring with its screws, the stretched film inside it, and behind the film
/// the drilled electrode, its holes on rings of six, twelve, eighteen and so on.
/// </summary>
internal static class RingMotif
{
    private const int Screws = 12,
        HoleRings = 6;

    public static void Draw(XGraphics graphics, XPoint centre, double radius)
    {
        foreach (
            var (share, weight, colour) in new[]
            {
                (1.0, 0.9, Ink.BrassLight),
                (0.965, 0.3, Ink.BrassLight),
                (0.83, 0.3, Ink.BrassLight),
                (0.80, 0.7, Ink.BrassLight),
            }
        )
            Circle(graphics, Ink.Pen(colour, weight), centre, radius * share);

        for (var screw = 0; screw < Screws; screw++)
        {
            var at = On(centre, radius * 0.897, (screw + 0.5) / Screws);
            Circle(graphics, Ink.Pen(Ink.BrassLight, 0.5), at, radius * 0.038);
            var slot = (X: radius * 0.024 * Math.Cos(2.1 * screw), Y: radius * 0.024 * Math.Sin(2.1 * screw));
            graphics.DrawLine(Ink.Pen(Ink.BrassLight, 0.4), at.X - slot.X, at.Y - slot.Y, at.X + slot.X, at.Y + slot.Y);
        }

        Circle(graphics, Ink.Pen(Ink.BrassLight, 0.35), centre, radius * 0.018);
        for (var ring = 1; ring <= HoleRings; ring++)
        {
            for (var hole = 0; hole < 6 * ring; hole++)
                Circle(graphics, Ink.Pen(Ink.BrassLight, 0.35), On(centre, radius * 0.115 * ring, hole / (6.0 * ring)), radius * 0.018);
        }
    }

    private static XPoint On(XPoint centre, double radius, double turn) =>
        new(centre.X + radius * Math.Sin(turn * Math.Tau), centre.Y - radius * Math.Cos(turn * Math.Tau));

    private static void Circle(XGraphics graphics, XPen pen, XPoint centre, double radius) =>
        graphics.DrawEllipse(pen, centre.X - radius, centre.Y - radius, 2 * radius, 2 * radius);
}
