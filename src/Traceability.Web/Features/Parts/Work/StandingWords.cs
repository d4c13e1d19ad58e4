using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>Says to people how a part stands.</summary>
public static class StandingWords
{
    /// <summary>What stands behind a part's word: where it is, until when it waits and why; nothing, where the word says all.</summary>
    public static string Standing(this Display display, StandingAnswer standing) =>
        display.Standing(standing.Code, standing.Until, standing.Because, standing.Where);
}
