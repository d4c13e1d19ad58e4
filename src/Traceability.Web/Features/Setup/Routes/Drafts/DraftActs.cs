using System.Globalization;
using Traceability.Domain.Routes.Drafts;
using Traceability.Domain.Stages;

namespace Traceability.Web.Features.Setup.Routes.Drafts;

/// <summary>What the buttons of the editor do to a draft: <c>open:3</c>, <c>add:3</c>, <c>cut:characteristics:2</c> and so on.</summary>
public static class DraftActs
{
    /// <summary>The place of the head among the things that can be open.</summary>
    public const int Head = -1;

    /// <summary>Does it, and says which stage is open afterwards.</summary>
    /// <param name="draft">The draft; it is changed.</param>
    /// <param name="open">Which stage is open, from 0; <see cref="Head"/> for the head.</param>
    /// <param name="act">The value of the button.</param>
    /// <param name="newTitle">What a new stage is to be called.</param>
    public static int Do(DraftMap draft, int open, string act, string newTitle)
    {
        var stages = draft.Items("stages");
        var parts = act.Split(':');
        var at =
            parts.Length > 1 && int.TryParse(parts[^1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var n) ? n : Head;
        switch (parts[0])
        {
            case "open" when at >= Head && at < stages.Count:
                return at;
            case "add" when at >= 0 && at <= stages.Count:
                stages.Insert(at, NewStage(stages, newTitle));
                return at;
            case "remove" when at >= 0 && at < stages.Count:
                stages.RemoveAt(at);
                return Head;
            case "up" when at > 0 && at < stages.Count:
                (stages[at - 1], stages[at]) = (stages[at], stages[at - 1]);
                return at - 1;
            case "down" when at >= 0 && at < stages.Count - 1:
                (stages[at + 1], stages[at]) = (stages[at], stages[at + 1]);
                return at + 1;
            case "cut" or "lift" when parts.Length == 3 && open >= 0 && open < stages.Count:
                var list = ListAt(stages[open], parts[1]);
                if (parts[0] == "cut" && at >= 0 && at < list.Count)
                {
                    list.RemoveAt(at);
                }
                else if (parts[0] == "lift" && at > 0 && at < list.Count)
                {
                    (list[at - 1], list[at]) = (list[at], list[at - 1]);
                }

                return open;
            default:
                return open;
        }
    }

    private static DraftMap NewStage(List<DraftMap> stages, string title)
    {
        var code = Enumerable.Range(stages.Count + 1, 1000).Select(i => $"stage-{i}").First(c => stages.TrueForAll(s => s["code"] != c));
        var stage = new DraftMap();
        stage["code"] = code;
        stage["title"] = title;
        stage["method"] = new EnteredLimits().Name;
        return stage;
    }

    /// <summary>The list at a path such as <c>characteristics</c> or <c>parameters.phases</c>.</summary>
    private static List<DraftMap> ListAt(DraftMap stage, string path)
    {
        var keys = path.Split('.');
        return keys[..^1].Aggregate(stage, (map, key) => map.Group(key)).Items(keys[^1]);
    }
}
