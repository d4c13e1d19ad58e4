using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Access;

namespace Traceability.Benchmarks;

/// <summary>Who and what a filled workshop has before its first part: people, stations, jigs, instruments and routes.</summary>
internal sealed class FilledWorkshop
{
    /// <summary>Signs in with this badge and PIN 1111; may do everything.</summary>
    public const string Badge = "QUAL1";

    public const string Pin = "1111";

    public static readonly DateTimeOffset Opened = new(2016, 11, 1, 8, 0, 0, TimeSpan.Zero);
    public static readonly DateTimeOffset Closed = new(2026, 11, 1, 8, 0, 0, TimeSpan.Zero);

    public FilledWorkshop(OrderedIds ids)
    {
        Id = () => ids.Next(Opened.AddDays(-60));
        Lead = Id();
        Builders = [.. Enumerable.Range(1, 6).Select(n => Hire($"BUILD{n}", Role.Builder))];
        Quality = Hire(Badge, Role.Quality, Role.Builder, Role.Lead, Role.Service);
        Stations = [.. Enumerable.Range(1, 5).Select(n => $"BENCH-{n}")];
        Jigs = [.. Enumerable.Range(1, 12).Select(n => string.Create(CultureInfo.InvariantCulture, $"JIG-{n:00}"))];
        Instruments =
        [
            .. Enumerable
                .Range(1, 6)
                .Select(n => new Instrument(Id(), $"GAUGE-{n}", "gauge", $"Gauge {n}", null, null, null, Lead, Start, Start)),
        ];
        Routes = FilledRoutes.Stages.Keys.ToDictionary(kind => kind, _ => Id());
        facts.AddRange(Stations.Select(code => new Station(Id(), code, code, Lead, Start, Start)));
        facts.AddRange(Jigs.Select(code => new Carrier(Id(), code, "jig", Lead, Start, Start)));
        facts.AddRange(Instruments);
        facts.AddRange(Routes.Select(r => Revision(r.Value, r.Key)));
    }

    private readonly List<Fact> facts = [];

    public IReadOnlyList<Guid> Builders { get; }

    public Guid Quality { get; }

    public Guid Lead { get; }

    public IReadOnlyList<string> Stations { get; }

    public IReadOnlyList<string> Jigs { get; }

    public IReadOnlyList<Instrument> Instruments { get; }

    public IReadOnlyDictionary<string, Guid> Routes { get; }

    private static DateTimeOffset Start => Opened.AddDays(-60);

    private Func<Guid> Id { get; }

    public Task SaveAsync(WorkshopContext db)
    {
        db.AddRange(facts);
        return db.SaveChangesAsync();
    }

    private Guid Hire(string badge, params Role[] roles)
    {
        var person = new Person(Id(), badge, $"Invented {badge}", Lead, Start, Start);
        facts.AddRange([
            person,
            new PinSetting(Id(), person.Id, PinHash.Of(Pin), Lead, Start, Start),
            .. roles.Select(r => new RoleGrant(Id(), person.Id, r, true, Lead, Start, Start)),
        ]);
        return person.Id;
    }

    private RouteRevision Revision(Guid id, string kind)
    {
        var text = FilledRoutes.Text(kind);
        return new(
            id,
            FilledRoutes.Model,
            kind,
            1,
            text,
            Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))),
            "LEAD1",
            Badge,
            new(2010, 1, 4),
            Lead,
            Start,
            Start
        );
    }
}
