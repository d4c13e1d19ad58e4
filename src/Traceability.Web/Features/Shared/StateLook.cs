namespace Traceability.Web.Features.Shared;

/// <summary>How a state is shown: its tone (a colour pair of site.css) and its mark. The word comes from the texts.</summary>
public sealed record StateLook(string Tone, string Mark)
{
    private static readonly StateLook Unknown = new("mute", "later");

    private static readonly Dictionary<string, StateLook> Looks = new()
    {
        ["passed"] = new("ok", "ok"),
        ["pass"] = new("ok", "ok"),
        ["finished"] = new("ok", "ok"),
        ["released"] = new("ok", "ok"),
        ["usable"] = new("ok", "ok"),
        ["met"] = new("ok", "ok"),
        ["genuine"] = new("ok", "ok"),
        ["current"] = new("ok", "ok"),
        ["closed"] = new("ok", "ok"),
        ["open"] = new("info", "go"),
        ["ready"] = new("info", "go"),
        ["in-work"] = new("info", "work"),
        ["free"] = new("info", "go"),
        ["waiting"] = new("wait", "wait"),
        ["due"] = new("wait", "wait"),
        ["quarantined"] = new("wait", "held"),
        ["running"] = new("wait", "wait"),
        ["superseded"] = new("wait", "later"),
        ["outdated"] = new("wait", "warn"),
        ["blocked"] = new("stop", "stop"),
        ["fail"] = new("stop", "stop"),
        ["failed"] = new("stop", "stop"),
        ["nonconforming"] = new("stop", "stop"),
        ["used-up"] = new("stop", "stop"),
        ["expired"] = new("stop", "stop"),
        ["conditional"] = new("wait", "warn"),
        ["proposed"] = new("wait", "ask"),
        ["rejected"] = new("mute", "scrapped"),
        ["withdrawn"] = new("mute", "scrapped"),
        ["wrong"] = new("stop", "outside"),
        ["same"] = new("mute", "later"),
        ["changed"] = new("wait", "changed"),
        ["added"] = new("info", "plus"),
        ["moved"] = new("info", "gone"),
        ["worse"] = new("stop", "warn"),
        ["sample-failed"] = new("stop", "warn"),
        ["beyond"] = new("stop", "outside"),
        ["rule-broken"] = new("wait", "warn"),
        ["watched"] = new("ok", "ok"),
        ["too-few"] = new("mute", "later"),
        ["not-met"] = new("stop", "outside"),
        ["undecided"] = new("stop", "stop"),
        ["altered"] = new("stop", "stop"),
        ["revoked"] = new("stop", "scrapped"),
        ["on-hold"] = new("stop", "held"),
        ["held"] = new("stop", "held"),
        ["scrapped"] = new("mute", "scrapped"),
        ["shipped"] = new("mute", "gone"),
        ["stock"] = new("ok", "ok"),
        ["returned"] = new("wait", "changed"),
        ["fitted"] = new("mute", "inside"),
        ["present"] = new("mute", "inside"),
        ["removed"] = new("mute", "scrapped"),
        ["pass-undone"] = new("mute", "later"),
        ["later"] = new("mute", "later"),
        ["abandoned"] = new("mute", "scrapped"),
    };

    /// <summary>The look of a state by its word in the contract.</summary>
    public static StateLook Of(string state) => Looks.GetValueOrDefault(state, Unknown);
}
