using System.Globalization;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Reports;

/// <summary>Words that several sections share: how the month is named, and what the routes call their stages.</summary>
internal sealed class MonthWords(MonthlyReportFacts facts)
{
    /// "in October 2026" or "in November 2026 so far".
    public string InTheMonth => $"in {facts.Month.Title}{(facts.Month.SoFar ? " so far" : "")}";

    /// "at the end of October 2026" or "on 27 Nov 2026, 09:30".
    public string AtTheEnd => facts.Month.SoFar ? $"on {facts.Calendar.Say(facts.Month.AsOf)}" : $"at the end of {facts.Month.Title}";

    /// What the routes call their stages, and in which order these come.
    public StageNames Stages { get; } = new(facts.Routes);

    public string TitleOf(string? model, string kind, string? stage) => Stages.TitleOf(model, kind, stage);

    public (int Kind, string Name, int Stage) PlaceOf(string? model, string kind, string stage) => Stages.PlaceOf(model, kind, stage);

    public DateTimeOffset Local(DateTimeOffset moment) => facts.Calendar.Local(moment);

    public int DaysSince(DateTimeOffset moment) => Math.Max(0, (int)(facts.Month.AsOf - moment).TotalDays);

    public static string Symbol(string unit) => Units.TryFind(unit, out var known, out _) ? known.Symbol : unit;

    public static string Number(double value) => value.ToString("G5", CultureInfo.InvariantCulture);

    /// "1 value", "2 values".
    public static string Counted(int count, string one, string? many = null) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many ?? one + "s")}");
}
