using System.Text.RegularExpressions;

namespace Traceability.Web.Tests.Misuse;

/// <summary>Real things to put into the holes of a path, so that the calls come further than "there is no such thing".</summary>
internal sealed partial record Addresses(string Serial, Guid Attempt, Guid Hold)
{
    public static async Task<Addresses> OfAsync(Workshop workshop)
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount");
        var hold = (await workshop.PostAsync("holds", new { lot = Workshop.Body, reason = "for the fuzz" }, Workshop.Quality))
            .Expect(201)
            .Id();
        return new(serial, attempt, hold);
    }

    public Uri Of(string template) => new(Hole().Replace(template, hole => Fill(template, hole.Groups[1].Value)), UriKind.Relative);

    private string Fill(string template, string name) =>
        name switch
        {
            "serial" => Serial,
            "number" => Workshop.Ring,
            "badge" => Workshop.OtherBuilder,
            "model" => Workshop.Model,
            "kind" => "unit",
            "code" => template.Contains("stations", StringComparison.Ordinal) ? "BENCH-2" : "RB-1",
            "id" when template.Contains("attempts", StringComparison.Ordinal) => Attempt.ToString(),
            "id" when template.Contains("holds", StringComparison.Ordinal) => Hold.ToString(),
            "revision" => "1",
            "sort" => "stations",
            _ => Guid.NewGuid().ToString(),
        };

    [GeneratedRegex(@"\{(\w+)\}")]
    private static partial Regex Hole();
}
