using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Pairing;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using PartLister = Traceability.Web.Features.Station.ListParts.ListParts;
using PartReader = Traceability.Web.Features.Station.ReadPart.ReadPart;

namespace Traceability.Web.Features.Station.Mates;

/// <summary>Free finished parts for a slot, ranked by how well they match what is, or is about to be, in the positions that the route matches with it.</summary>
public sealed class FindMates(WorkshopContext db, DossierReader dossiers, PartLister parts)
{
    private const int MostParts = 500;

    public sealed record Valued(string Serial, decimal Value);

    public sealed record Mate(string Serial, decimal Value, decimal? Difference, bool? Within);

    /// <summary>Two free parts that go together.</summary>
    public sealed record Pair(string First, string Second, decimal Difference);

    /// <summary>The mates by rank, and the best pairing of all free parts: as many pairs within the limit as can be, and among those the closest.</summary>
    public sealed record Output(
        string Serial, string Position, string Characteristic, string Unit, decimal MaximumDifference, IReadOnlyList<Valued> Against, IReadOnlyList<Mate> Mates, IReadOnlyList<Pair> Pairs);

    public static async Task<IResult> HandleAsync(string serial, string position, FindMates use, CancellationToken cancellation, string? with = null)
    {
        var (mates, refusal) = await use.RunAsync(serial, position, with, cancellation);
        return refusal is null ? Results.Ok(mates) : ProblemAnswers.From(refusal);
    }

    /// <summary><paramref name="with"/> names a part that is about to be fitted in another of the matched positions.</summary>
    public async Task<(Output? Mates, Refusal? Refusal)> RunAsync(string serial, string position, string? with, CancellationToken cancellation)
    {
        if (await PartReader.FindAsync(serial, dossiers, cancellation) is not { } parent)
        {
            return (null, Refusal.NotFound($"there is no part or carrier '{serial}'"));
        }

        if (parent.Route.Stages.FirstOrDefault(s => s.Match?.Positions.Contains(position) == true) is not { Match: { } match } stage)
        {
            return (null, Refusal.Invalid("position", $"no stage of {parent.Part.Serial} matches anything at '{position}'"));
        }

        var candidate = with is null ? null : await PartReader.FindAsync(with, dossiers, cancellation);
        if (with is not null && candidate is null)
        {
            return (null, Refusal.Invalid("with", $"there is no part or carrier '{with}'"));
        }

        var others = await OthersAsync(parent, match, position, candidate, cancellation);
        var free = await FreeAsync(stage.Slot(position)!.PartKind!, parent.Part.Model, match.Characteristic, cancellation);
        free.RemoveAll(f => others.Any(o => o.Serial == f.Serial));
        var unit = free.Concat(others).Select(o => o.Reading.Reading.Unit).FirstOrDefault("");
        return (new(
            parent.Part.Serial, position, match.Characteristic, unit, match.MaximumDifference, [.. others.Select(o => new Valued(o.Serial, o.Reading.Value))],
            Rank(free, others, match), PairUp(free, match)), null);
    }

    private static List<Mate> Rank(IEnumerable<(string Serial, ReadingView Reading)> free, List<(string Serial, ReadingView Reading)> others, MatchRule match) =>
    [
        .. from part in free
           let spread = others.Count == 0 ? (decimal?)null : others.Max(o => Math.Abs(o.Reading.Value - part.Reading.Value))
           orderby spread, part.Reading.Value, part.Serial
           select new Mate(part.Serial, part.Reading.Value, spread, spread <= match.MaximumDifference),
    ];

    private static List<Pair> PairUp(List<(string Serial, ReadingView Reading)> free, MatchRule match)
    {
        var costs = PairingCosts.Of(free.Count, (a, b) => Difference(a, b) is var d && d <= match.MaximumDifference ? (double)d : double.PositiveInfinity);
        return [.. BestPairing.Of(costs).Pairs.OrderBy(p => p.Cost).Select(p => new Pair(free[p.First].Serial, free[p.Second].Serial, Difference(p.First, p.Second)))];

        decimal Difference(int a, int b) => Math.Abs(free[a].Reading.Value - free[b].Reading.Value);
    }

    private async Task<List<(string Serial, ReadingView Reading)>> OthersAsync(Dossier parent, MatchRule match, string position, Dossier? candidate, CancellationToken cancellation)
    {
        var fitted = match.Positions.Where(p => p != position).Select(p => parent.PresentFittings.GetValueOrDefault(p)?.ChildId).OfType<Guid>().ToArray();
        var inside = (await dossiers.LoadAsync(fitted, cancellation)).Values;
        return Valuing(candidate is null ? inside : inside.Append(candidate), match.Characteristic);
    }

    private async Task<List<(string Serial, ReadingView Reading)>> FreeAsync(string kind, string model, string characteristic, CancellationToken cancellation)
    {
        var free = await parts.RunAsync(new(kind, model, null, true), new(MostParts, null), cancellation);
        var serials = free.Items.Select(p => p.Serial).ToList();
        var ids = await db.Set<Part>().Where(p => serials.Contains(p.Serial)).Select(p => p.Id).ToArrayAsync(cancellation);
        return Valuing((await dossiers.LoadAsync(ids, cancellation)).Values, characteristic);
    }

    private static List<(string Serial, ReadingView Reading)> Valuing(IEnumerable<Dossier> dossiers, string characteristic) =>
        [.. dossiers.Select(d => (d.Part.Serial, Reading: d.CountingReading(characteristic))).Where(x => x.Reading is not null).Select(x => (x.Serial, x.Reading!))];
}
