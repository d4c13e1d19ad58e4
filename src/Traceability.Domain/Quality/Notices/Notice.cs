using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Traceability.Domain.Quality.Charts;
using Traceability.Domain.Records;

namespace Traceability.Domain.Quality.Notices;

/// <summary>
/// What a notice is about: a rule on the chart of a characteristic, or a film lot. Exactly one of <c>Rule</c> and <c>FilmLot</c> is set.
/// </summary>
public sealed record NoticeSubject(string? Kind, string? Model, string? Stage, string? Characteristic, NelsonRule? Rule, string? FilmLot)
{
    /// <summary>A rule on a chart.</summary>
    public static NoticeSubject Of(WatchedChart chart, NelsonRule rule) =>
        new(chart.Kind, chart.Model, chart.Stage, chart.Characteristic, rule, null);

    /// <summary>A film lot.</summary>
    public static NoticeSubject OfFilmLot(string number) => new(null, null, null, null, null, number);

    /// <summary>What an acknowledgement was about.</summary>
    public static NoticeSubject Of(NoticeAcknowledgement a) =>
        new(a.Kind, a.Model, a.Stage, a.Characteristic, (NelsonRule?)a.Rule, a.FilmLot);
}

/// <summary>Something that the quality lead should know and has not acknowledged.</summary>
/// <param name="Subject">What it is about.</param>
/// <param name="Points">How many new points break the rule; of a film lot, how many diaphragms failed.</param>
/// <param name="LastAt">When the last of them happened.</param>
/// <param name="KnownUntil">Up to when everything about the subject was known.</param>
/// <param name="Last">The last point that breaks the rule; null for a film lot.</param>
/// <param name="Lot">The film lot; null for a rule.</param>
public sealed record Notice(
    NoticeSubject Subject,
    int Points,
    DateTimeOffset LastAt,
    DateTimeOffset KnownUntil,
    WatchedPoint? Last,
    ComparedLot? Lot
)
{
    /// <summary>
    /// Names the notice as it stands: the subject with its last point and the moment that point became known, hashed (24 hexadecimal
    /// digits). A new point makes a new key, so that nobody acknowledges what they have not seen.
    /// </summary>
    public string Key { get; } = KeyOf(Subject, Points, LastAt, Last);

    /// <summary>The acknowledgement of this notice.</summary>
    /// <param name="note">What was found or done; may be left out.</param>
    /// <param name="stamp">Who and when.</param>
    public NoticeAcknowledgement Acknowledge(string? note, Stamp stamp) =>
        new(
            stamp.NewId(),
            Key,
            Subject.Kind,
            Subject.Model,
            Subject.Stage,
            Subject.Characteristic,
            (int?)Subject.Rule,
            Subject.FilmLot,
            Last?.ReadingId,
            KnownUntil,
            Points,
            string.IsNullOrWhiteSpace(note) ? null : note.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );

    private static string KeyOf(NoticeSubject s, int points, DateTimeOffset lastAt, WatchedPoint? last)
    {
        string?[] parts =
        [
            s.Kind,
            s.Model,
            s.Stage,
            s.Characteristic,
            ((int?)s.Rule)?.ToString(CultureInfo.InvariantCulture),
            s.FilmLot,
            last is null ? points.ToString(CultureInfo.InvariantCulture) : last.ReadingId.ToString("N"),
            (last?.KnownAt ?? lastAt).UtcTicks.ToString(CultureInfo.InvariantCulture),
        ];
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', parts))))[..24];
    }
}
