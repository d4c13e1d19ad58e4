using Traceability.Domain.Codes;
using Traceability.Domain.Records;

namespace Traceability.Domain.Routes.Files;

/// <summary>
/// Something that is said about a line of a route file. With <c>Stops</c> the route cannot come into force as long as it is so.
/// </summary>
public sealed record RouteWarning(long Line, string Message, bool Stops);

/// <summary>
/// The kinds that a workshop has something of: lots that were received, instruments that are registered, parts that a route makes. A kind
/// that a route asks for and that nothing is known of is misspelt, or its first lot or instrument has yet to be entered; either way nobody
/// could work by the route.
/// </summary>
/// <param name="Lots">Kinds of lots received.</param>
/// <param name="Parts">Kinds of parts that other routes make.</param>
/// <param name="Instruments">Kinds of instruments registered.</param>
public sealed record KnownKinds(IReadOnlySet<string> Lots, IReadOnlySet<string> Parts, IReadOnlySet<string> Instruments)
{
    private static readonly IReadOnlySet<string> OwnLots = new HashSet<string> { Lot.FilmKind };

    private static readonly IReadOnlySet<string> OwnParts = new HashSet<string>
    {
        PartKinds.FilmLot,
        PartKinds.Diaphragm,
        PartKinds.Capsule,
        PartKinds.BoardSet,
        PartKinds.Unit,
    };

    /// <summary>
    /// What is to be said about the kinds that a file names, line by line; each kind once. A new kind of part is made by its first route,
    /// so that is only pointed out.
    /// </summary>
    public IReadOnlyList<RouteWarning> WarningsOf(IEnumerable<NamedKind> named) =>
        [
            .. named
                .DistinctBy(k => (k.Sort, k.Code))
                .Select(k =>
                    k.Sort switch
                    {
                        KindSort.Lot => Warning(k, Lots, OwnLots, RouteTexts.NoLotOfTheKind),
                        KindSort.Instrument => Warning(k, Instruments, OwnNothing, RouteTexts.NoInstrumentOfTheKind),
                        KindSort.Part => Warning(k, Parts, OwnParts, RouteTexts.NoRouteMakesTheKind),
                        _ => Warning(k, Parts, OwnParts, RouteTexts.FirstRouteOfTheKind) is { } first ? first with { Stops = false } : null,
                    }
                )
                .OfType<RouteWarning>(),
        ];

    private static IReadOnlySet<string> OwnNothing { get; } = new HashSet<string>();

    private static RouteWarning? Warning(
        NamedKind named,
        IReadOnlySet<string> known,
        IReadOnlySet<string> own,
        Func<string, string, string> words
    ) =>
        known.Contains(named.Code) || own.Contains(named.Code)
            ? null
            : new(named.Line, Said(named, known.Union(own), words) + Meant(named.Code, [.. known.Union(own)]), true);

    private static string Said(NamedKind named, IEnumerable<string> there, Func<string, string, string> words) =>
        words(named.Code, string.Join(", ", there.Order(StringComparer.Ordinal)) is { Length: > 0 } listed ? listed : RouteTexts.NoneYet);

    /// <summary>"Did you mean film?", where a known kind differs by one slip of the finger; nothing otherwise.</summary>
    private static string Meant(string code, IReadOnlyCollection<string> known) =>
        KindLikeness.Nearest(code, known) is { } near ? RouteTexts.DidYouMean(near) : "";
}
