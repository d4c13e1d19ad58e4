using Traceability.SeedScenario.Foundation;

namespace Traceability.SeedScenario.History;

/// <summary>Which lot, instrument and station is at hand.</summary>
internal static class Supplies
{
    /// <summary>The lot of a kind that is in use in a week.</summary>
    public static string Lot(string kind, int week) =>
        WorkshopFiles.Lots.Where(l => l.Kind == kind && l.Stays is null && l.FromWeek <= week).MaxBy(l => l.FromWeek)?.Number
        ?? throw new SeedException($"no lot of kind '{kind}' in week {week}");

    /// <summary>One instrument of a kind.</summary>
    public static string Instrument(string kind, Chance chance) =>
        chance.Of(WorkshopFiles.Instruments.Where(i => i.Kind == kind && !i.ByPlan).ToList()).Code;

    /// <summary>A station where a stage is done.</summary>
    public static string Station(string stage, Chance chance) =>
        chance.Of(WorkshopFiles.Stations.Where(s => s.Stages.Contains(stage)).ToList()).Code;
}
