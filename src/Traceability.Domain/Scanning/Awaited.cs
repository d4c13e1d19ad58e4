using System.Security.Cryptography;
using System.Text;

namespace Traceability.Domain.Scanning;

/// <summary>
/// What a station awaits: the part, its attempt and the prompt that the next scan answers. A window sends it back with every scan.
/// </summary>
/// <param name="Part">The part on the bench, or nothing.</param>
/// <param name="Attempt">The attempt open on it, or nothing.</param>
/// <param name="Prompt">A digest of all that decides what a scan would lead to; time apart, which opens and closes gates by itself.</param>
/// <remarks>
/// Two windows on one part, or on one screen, differ in it as soon as one of them has gone on. Checked by <c>AwaitedTests</c>.
/// </remarks>
public sealed record Awaited(string Part, string Attempt, string Prompt)
{
    private const int DigestBytes = 12;

    /// <summary>What is awaited in that session while the part on its bench needs that.</summary>
    public static Awaited Of(StationSession session, StageNeeds? needs)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (needs?.Part != session.Part)
            needs = null;
        var now = session.InStepWith(needs);
        object?[] decides =
        [
            now.Badge,
            now.BadgeToProve,
            now.Asks,
            now.Correcting?.ReadingId,
            now.Correcting?.Digits,
            now.Station,
            now.Part,
            now.AttemptId,
            now.LoadId,
            now.Repeats,
            now.MakesWay,
            now.ChosenPosition,
            now.ChosenCharacteristic,
            Listed(now.LoadParts),
            Listed(now.Instruments.Select(instrument => instrument.Code)),
            needs?.StageCode,
            Listed(needs?.Slots.Select(slot => slot.Position)),
            Listed(needs?.Characteristics.Select(characteristic => characteristic.Name)),
            Listed(needs?.Taken.Select(taken => $"{taken.Id} {taken.Digits}")),
            needs?.Evidence.Count > 0,
        ];
        var digest = SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', decides)));
        return new(now.Part ?? "", now.AttemptId?.ToString("N") ?? "", Convert.ToHexStringLower(digest.AsSpan(0, DigestBytes)));
    }

    private static string Listed(IEnumerable<string>? names) => string.Join('\t', names ?? []);
}
