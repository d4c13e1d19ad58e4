using Microsoft.Extensions.Localization;
using Traceability.Domain.Routes.Drafts;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Values;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Setup.Routes.Drafts;

/// <summary>What each field of the editor offers, and how a line of a list is said in short.</summary>
public sealed class DraftOffers(IStringLocalizer<RouteEditTexts> texts, IStringLocalizer<DeskTexts> desk)
{
    /// <summary>One of these must be chosen; null for a field that is typed.</summary>
    /// <param name="page">The editor.</param>
    /// <param name="key">The key of the field.</param>
    public IReadOnlyList<(string Value, string Words)>? Options(EditPage page, string key) =>
        key switch
        {
            "method" =>
            [
                .. StageMethods.Names.Select(n => (n, desk["Method." + n].Value)).OrderBy(o => o.Value, StringComparer.CurrentCulture),
            ],
            "unit" => [("", ""), .. Units.All.Select(u => (u.Code, u.Symbol.Length == 0 ? u.Code : $"{u.Symbol} ({u.Quantity})"))],
            "kind" => [("", ""), .. DraftChoices.EvidenceCodes.Select(c => (c, c))],
            "decisionRule" => [("", texts["Choice.simple"]), ("guarded", texts["Choice.guarded"])],
            "afterStage" => [("", ""), .. Earlier(page)],
            "reworkReturnsTo" => [("", texts["Choice.thisStage"]), .. Earlier(page)],
            _ => null,
        };

    /// <summary>Several of these may be ticked; null for a field that is typed.</summary>
    public static IReadOnlyList<(string Value, string Words)>? Several(EditPage page, string key) =>
        key switch
        {
            "cautions" => [.. DraftChoices.CautionTexts.Select(c => (c.Key, c.Value))],
            "notByBuilderOf" => [.. Earlier(page)],
            _ => null,
        };

    /// <summary>The list that is proposed while typing; null without one.</summary>
    public static string? Proposals(string key) =>
        key is "name" or "lotKind" or "partKind" or "instrumentKinds" or "qualification" ? "list-" + key : null;

    /// <summary>The names that a method reads and computes.</summary>
    public static IEnumerable<string> Names(StageMethod? method) =>
        method is null ? [] : method.Description.Reads.Concat(method.Description.Computes.Select(c => c.Name));

    /// <summary>True when the method reads that key of the parameters, or something stands under it.</summary>
    public static bool IsRead(StageMethod? method, DraftMap parameters, string key) =>
        key == "toleranceSource"
            ? parameters[key] != "" || method?.ReadsParameters.Contains("phases") == true
            : method?.ReadsParameters.Contains(key) == true || parameters.Items(key).Count > 0 || parameters.List(key).Count > 0;

    /// <summary>One thing of a list in a few words.</summary>
    public string InShort(DraftField list, DraftMap item) =>
        list.Key switch
        {
            "characteristics" => texts[
                item["entered"] == "false" ? "Short.computed" : "Short.entered",
                item["label"] is { Length: > 0 } label ? label : item["name"],
                Limits(item)
            ],
            "slots" => $"{(item["label"] is { Length: > 0 } label ? label : item["position"])}: {item["lotKind"]}{item["partKind"]}",
            "waits" => texts["Short.wait", item["afterStage"], item["minimumMinutes"]],
            "windows" => texts["Short.window", item["afterStage"], item["maximumMinutes"]],
            _ => string.Join(
                ", ",
                list.Fields.Where(f => f.Sort != DraftSort.Flag)
                    .Select(f => f.Sort == DraftSort.Words ? string.Join(" + ", item.List(f.Key)) : item[f.Key])
                    .Where(v => v.Length > 0)
            ),
        };

    private string Limits(DraftMap item)
    {
        var unit = Units.SymbolOf(item["unit"]);
        return (item["lower"], item["upper"]) switch
        {
            ("", "") => texts["Short.noLimit", unit],
            (var lower, "") => $"≥ {lower} {unit}",
            ("", var upper) => $"≤ {upper} {unit}",
            var (lower, upper) => $"{lower} – {upper} {unit}",
        };
    }

    private static IEnumerable<(string, string)> Earlier(EditPage page) =>
        (page.Draft?.Items("stages") ?? []).Take(Math.Max(0, page.Open)).Select(s => (s["code"], s["title"]));
}
