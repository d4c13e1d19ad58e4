namespace Traceability.Domain.Evidence;

/// <summary>Reads ISO 8601 times as loggers write them, from bytes and without making text.</summary>
/// <remarks>
/// <c>yyyy-MM-dd</c>, then T or a blank, then <c>HH:mm</c>, <c>HH:mm:ss</c> or with a fraction after point or comma (kept to 100 ns); then
/// nothing (taken as UTC), Z, or an offset <c>+hh:mm</c>, <c>+hhmm</c>, <c>+hh</c>. The answer is in UTC.
/// </remarks>
internal static class IsoTime
{
    public static bool TryRead(ReadOnlySpan<byte> text, out DateTimeOffset at, out bool hasZone)
    {
        (at, hasZone) = (default, false);
        if (
            text.Length < 16
            || text[4] != '-'
            || text[7] != '-'
            || text[13] != ':'
            || text[10] is not ((byte)'T' or (byte)'t' or (byte)' ')
        )
            return false;
        if (
            !Digits(text[..4], out var year)
            || !Digits(text[5..7], out var month)
            || !Digits(text[8..10], out var day)
            || !Digits(text[11..13], out var hour)
            || !Digits(text[14..16], out var minute)
        )
            return false;

        var rest = text[16..];
        if (!TakeSeconds(ref rest, out var second, out var fractionTicks))
            return false;
        hasZone = !rest.IsEmpty;
        if (!Offset(rest, out var offsetMinutes))
            return false;
        if (year is 0 or > 9998 || month is 0 or > 12 || day == 0 || day > DateTime.DaysInMonth(year, month))
            return false;
        if (hour > 23 || minute > 59 || second > 59)
            return false;

        var ticks = new DateTime(year, month, day, hour, minute, second, DateTimeKind.Utc).Ticks + fractionTicks;
        ticks -= offsetMinutes * TimeSpan.TicksPerMinute;
        if (ticks < 0)
            return false;
        at = new DateTimeOffset(ticks, TimeSpan.Zero);
        return true;
    }

    private static bool TakeSeconds(ref ReadOnlySpan<byte> rest, out int second, out long fractionTicks)
    {
        (second, fractionTicks) = (0, 0);
        if (rest.IsEmpty || rest[0] != ':')
            return true;
        if (rest.Length < 3 || !Digits(rest[1..3], out second))
            return false;
        rest = rest[3..];
        if (rest.IsEmpty || rest[0] is not ((byte)'.' or (byte)','))
            return true;

        var used = 1;
        for (var unit = TimeSpan.TicksPerSecond / 10; used < rest.Length && rest[used] is >= (byte)'0' and <= (byte)'9'; used++, unit /= 10)
            fractionTicks += (rest[used] - '0') * unit;
        rest = rest[used..];
        return used > 1;
    }

    private static bool Offset(ReadOnlySpan<byte> zone, out int minutes)
    {
        minutes = 0;
        if (zone.IsEmpty || zone is [(byte)'Z' or (byte)'z'])
            return true;
        if (zone.Length < 3 || zone[0] is not ((byte)'+' or (byte)'-') || !Digits(zone[1..3], out var hours))
            return false;

        var rest = zone[3..];
        if (rest is [(byte)':', ..])
            rest = rest[1..];
        var extra = 0;
        if (zone.Length > 3 && (rest.Length != 2 || !Digits(rest, out extra)))
            return false;
        minutes = (hours * 60 + extra) * (zone[0] == '-' ? -1 : 1);
        return hours <= 14 && extra <= 59;
    }

    private static bool Digits(ReadOnlySpan<byte> text, out int value)
    {
        value = 0;
        foreach (var c in text)
        {
            if (c is < (byte)'0' or > (byte)'9')
                return false;
            value = value * 10 + (c - '0');
        }
        return true;
    }
}
