using System.Text.RegularExpressions;
using Traceability.Domain.Routes;
using Route = Traceability.Domain.Routes.Route;

namespace Traceability.Web.Features.Shared;

/// <summary>
/// Findings are recorded with the names of characteristics by which programs know them; people read the route's labels instead:
/// "ringHz 929 Hz is outside" becomes "Resonance on the ring 929 Hz is outside".
/// </summary>
public static class PlainWords
{
    /// <summary>The text with the names of one stage's characteristics said in words; of all stages, when none is known.</summary>
    public static string Of(Route? route, string? stage, string text)
    {
        IEnumerable<Stage> stages = route?.Find(stage ?? "") is { } one ? [one] : route?.Stages ?? [];
        return stages.SelectMany(s => s.Characteristics).DistinctBy(c => c.Name).Aggregate(
            text, (said, c) => said.Contains(c.Name, StringComparison.Ordinal) ? Regex.Replace(said, $@"\b{Regex.Escape(c.Name)}\b", _ => c.Label) : said);
    }
}
