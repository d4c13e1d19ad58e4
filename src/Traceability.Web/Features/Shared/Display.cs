using System.Globalization;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Html;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Values;

namespace Traceability.Web.Features.Shared;

/// <summary>Says times, numbers and states to people, the same way on every page.</summary>
public sealed class Display(WorkshopCalendar calendar, TimeProvider clock, IStringLocalizer<Texts> texts)
{
    /// <summary>Stands where a model would, of what has none: a film lot.</summary>
    public const string AnyModel = "ANY";

    /// <summary>"25 Nov 2026, 14:20", in workshop time.</summary>
    public IHtmlContent At(DateTimeOffset? moment) => moment is { } m ? Time(m, calendar.Say(m)) : HtmlString.Empty;

    /// <summary>"14:20" today, "25 Nov 2026, 14:20" on any other day.</summary>
    public IHtmlContent Clock(DateTimeOffset moment) => Time(moment, ClockText(moment));

    /// <summary>The same as plain text.</summary>
    public string ClockText(DateTimeOffset moment) =>
        calendar.DayOf(moment) == calendar.DayOf(clock.GetUtcNow())
            ? calendar.Local(moment).ToString("HH:mm", CultureInfo.InvariantCulture)
            : calendar.Say(moment);

    /// <summary>A nonconformity's code: in words where the service itself gives it, as it stands where people do.</summary>
    public string Code(string code) => texts["NcCode." + code] is { ResourceNotFound: false } words ? words.Value : code;

    /// <summary>"25 Nov 2026".</summary>
    public string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>"25 Nov 2026", in workshop time.</summary>
    public string Day(DateTimeOffset moment) => Day(calendar.DayOf(moment));

    /// <summary>How long until a moment: "35 min", "2 h 05 min", "3 d 4 h"; "now" when it is over.</summary>
    public string Until(DateTimeOffset moment) =>
        (moment - clock.GetUtcNow()) switch
        {
            var left when left <= TimeSpan.Zero => texts["Say.Now"],
            { TotalHours: < 1 } left => $"{Math.Ceiling(left.TotalMinutes):0} min",
            { TotalDays: < 1 } left => $"{(int)left.TotalHours} h {left.Minutes:00} min",
            var left => $"{(int)left.TotalDays} d {left.Hours} h",
        };

    /// <summary>A number with its unit, with the digits that were entered: "12.50 pF". They are not parted at a line's end.</summary>
    public IHtmlContent Number(string digits, string? unit) =>
        new HtmlString(
            $"""<span class="number">{Encode(digits)}{(Symbol(unit) is { Length: > 0 } symbol ? "\u00a0" + Encode(symbol) : "")}</span>"""
        );

    /// <summary>A number of ours with its unit.</summary>
    public IHtmlContent Number(decimal value, string? unit) => Number(value.ToString(CultureInfo.InvariantCulture), unit);

    /// <summary>A number of ours with its unit, as plain text.</summary>
    public static string Plain(decimal value, string? unit) => $"{value.ToString(CultureInfo.InvariantCulture)} {Symbol(unit)}".TrimEnd();

    /// <summary>A probability in percent: "97.4 %"; never rounded up to certainty.</summary>
    public static string Percent(double probability) =>
        probability is > 0.9995 and < 1 ? "> 99.9 %" : string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0.0} %");

    /// <summary>Limits in words: "880 to 920 Hz", "at least 100 GΩ", "no limit".</summary>
    public string Limits(decimal? lower, decimal? upper, string? unit) =>
        (lower, upper) switch
        {
            ({ } l, { } u) => texts[
                "Say.Between",
                l.ToString(CultureInfo.InvariantCulture),
                u.ToString(CultureInfo.InvariantCulture),
                Symbol(unit)
            ]
                .Value.TrimEnd(),
            ({ } l, null) => texts["Say.AtLeast", l.ToString(CultureInfo.InvariantCulture), Symbol(unit)].Value.TrimEnd(),
            (null, { } u) => texts["Say.AtMost", u.ToString(CultureInfo.InvariantCulture), Symbol(unit)].Value.TrimEnd(),
            _ => texts["Say.NoLimit"],
        };

    /// <summary>"08:05 – 08:20" within a day, with the day in front; one moment, where nothing lies between.</summary>
    public IHtmlContent Span(DateTimeOffset from, DateTimeOffset? until)
    {
        var content = new HtmlContentBuilder().AppendHtml(At(from));
        return until is not { } end || calendar.Say(end) == calendar.Say(from)
            ? content
            : content
                .Append(" – ")
                .AppendHtml(
                    calendar.DayOf(end) == calendar.DayOf(from)
                        ? Time(end, calendar.Local(end).ToString("HH:mm", CultureInfo.InvariantCulture))
                        : At(end)
                );
    }

    /// <summary>"diaphragm, TARN-2": a kind of part and its model, which is not parted at a line's end; a film lot has no model.</summary>
    public static IHtmlContent Kind(string kind, string model) =>
        new HtmlString(
            model == AnyModel
                ? Encode(Domain.Routes.PlainWords.OfCode(kind))
                : $"""{Encode(Domain.Routes.PlainWords.OfCode(kind))}, <span class="number">{Encode(model)}</span>"""
        );

    /// <summary>A state as word, shape and colour together.</summary>
    public IHtmlContent Badge(string state)
    {
        var look = StateLook.Of(state);
        var word = texts["State." + state];
        return new HtmlContentBuilder()
            .AppendHtml($"""<span class="badge badge-{look.Tone}">""")
            .AppendHtml(Marks.Of(look.Mark))
            .Append(word.ResourceNotFound ? state : word.Value)
            .AppendHtml("</span>");
    }

    /// <summary>What stands behind a part's word: where it is, until when it waits and why; nothing, where the word says all.</summary>
    public string Standing(string code, DateTimeOffset? until, string? because, string? place) =>
        string.Join(
            " ",
            new[]
            {
                place is not null && texts[$"Standing.Where.{code}", place] is { ResourceNotFound: false } words ? words.Value : place,
                until is { } end ? texts["Standing.Until", ClockText(end), Until(end)].Value : null,
                because is { } reason ? char.ToUpperInvariant(reason[0]) + reason[1..].TrimEnd('.') : null,
            }
                .OfType<string>()
                .Select(part => part + ".")
        );

    /// <summary>The printed symbol of a unit's code.</summary>
    public static string Symbol(string? unit) => Units.SymbolOf(unit);

    /// <summary>
    /// A fresh key for a form, so that a form sent twice records once:
    /// <c>&lt;input type="hidden" name="Key" value="@Display.NewKey()"&gt;</c>.
    /// </summary>
    public static string NewKey() => Guid.NewGuid().ToString("N");

    private static HtmlString Time(DateTimeOffset moment, string words)
    {
        var utc = moment.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
        return new($"""<time datetime="{utc}">{Encode(words)}</time>""");
    }

    private static string Encode(string text) => HtmlEncoder.Default.Encode(text);
}
