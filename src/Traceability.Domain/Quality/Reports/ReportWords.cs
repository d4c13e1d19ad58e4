using System.Globalization;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Reports;

/// <summary>Words that several sections share: how the month is named, and what the routes call their stages.</summary>
internal sealed class ReportWords(MonthlyReportFacts facts)
{
    private static readonly string[] Flow = [PartKinds.FilmLot, PartKinds.Diaphragm, PartKinds.Capsule, PartKinds.BoardSet, PartKinds.Unit];

    /// "in October 2026" or "in November 2026 so far".
    public string InTheMonth => $"in {facts.Month.Title}{(facts.Month.SoFar ? " so far" : "")}";

    /// "at the end of October 2026" or "on 27 Nov 2026, 09:30".
    public string AtTheEnd => facts.Month.SoFar ? $"on {facts.Calendar.Say(facts.Month.AsOf)}" : $"at the end of {facts.Month.Title}";

    public string TitleOf(string? model, string kind, string? stage) =>
        stage is null ? "" : facts.Routes.Where(r => r.Kind == kind && (model is null || r.Model == model)).Select(r => r.Find(stage)?.Title).FirstOrDefault(t => t is not null) ?? stage;

    /// The place of a stage in the flow of the work: film first, unit last, then as the route goes.
    public (int Kind, string Name, int Stage) PlaceOf(string? model, string kind, string stage)
    {
        var place = Array.IndexOf(Flow, kind);
        var index = facts.Routes.Where(r => r.Kind == kind && (model is null || r.Model == model)).Select(r => r.IndexOf(stage)).DefaultIfEmpty(-1).Max();
        return (place < 0 ? Flow.Length : place, kind, index < 0 ? int.MaxValue : index);
    }

    public DateTimeOffset Local(DateTimeOffset moment) => facts.Calendar.Local(moment);

    public int DaysSince(DateTimeOffset moment) => Math.Max(0, (int)(facts.Month.AsOf - moment).TotalDays);

    public static string Symbol(string unit) => Units.TryFind(unit, out var known, out _) ? known.Symbol : unit;

    public static string Number(double value) => value.ToString("G5", CultureInfo.InvariantCulture);

    /// "1 value", "2 values".
    public static string Counted(int count, string one, string? many = null) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many ?? one + "s")}");
}
