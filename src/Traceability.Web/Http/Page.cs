using System.Reflection;
using System.Text;

namespace Traceability.Web.Http;

/// <summary>Part of a list, and where the next part begins; <c>Next</c> is null on the last page.</summary>
/// <param name="Items">This part of the list.</param>
/// <param name="Next" example="5553303033">The cursor of the next part; null on the last page.</param>
public sealed record Page<T>(IReadOnlyList<T> Items, string? Next);

/// <summary>
/// <c>?limit=</c> (default 50, at most 500) and <c>?cursor=</c>, which is the key of the last item seen, made opaque. A table asked for
/// as CSV without a limit comes whole: a recall list must not end in silence after fifty lines. So does a list that is short by its nature.
/// </summary>
public sealed record PageRequest(int Limit, string? After) : IBindableFromHttpContext<PageRequest>
{
    private const int Most = 500;
    private const int Whole = int.MaxValue - 1;

    /// <summary>The names that it reads from the query.</summary>
    public static readonly IReadOnlyList<string> QueryNames = ["limit", "cursor"];

    public static ValueTask<PageRequest?> BindAsync(HttpContext context, ParameterInfo parameter)
    {
        var query = context.Request.Query;
        var limit = Csv.IsWanted(context) ? Whole : 50;
        var asked = query["limit"].ToString() is { Length: > 0 };
        if (asked && (!int.TryParse(query["limit"].ToString(), out limit) || limit is < 1 or > Most))
        {
            throw new BadHttpRequestException($"limit is a number from 1 to {Most}");
        }

        return ValueTask.FromResult<PageRequest?>(
            new(limit, query["cursor"].ToString() is { Length: > 0 } cursor ? Open(cursor) : null) { IsLimited = asked }
        );
    }

    /// <summary>True when a limit was asked for.</summary>
    public bool IsLimited { get; private init; }

    /// <summary>The cursor as the id of the last item seen, for lists in the order of their ids.</summary>
    public Guid? AfterId =>
        After is null ? null
        : Guid.TryParse(After, out var id) ? id
        : throw NotOurs();

    /// <summary>The cursor as the number of the last item seen, for lists in the order of their numbers.</summary>
    public long? AfterNumber =>
        After is null ? null
        : long.TryParse(After, out var number) ? number
        : throw NotOurs();

    /// <summary>Cuts a list that was read with one item more than the limit, and makes the cursor from the last item's key.</summary>
    public Page<T> Cut<T>(IReadOnlyList<T> oneMore, Func<T, string> key) =>
        oneMore.Count <= Limit ? new(oneMore, null) : new([.. oneMore.Take(Limit)], Close(key(oneMore[Limit - 1])));

    /// <summary>
    /// The part asked for of a list that is there whole; all of it, when no limit was asked for. The keys are the items' own.
    /// </summary>
    public Page<T> Part<T>(IReadOnlyList<T> whole, Func<T, string> key)
    {
        var before = After is null ? 0 : whole.TakeWhile(i => key(i) != After).Count() + 1;
        if (before > whole.Count && After is not null)
        {
            throw NotOurs();
        }

        return !IsLimited || whole.Count - before <= Limit
            ? new([.. whole.Skip(before)], null)
            : new([.. whole.Skip(before).Take(Limit)], Close(key(whole[before + Limit - 1])));
    }

    private static string Close(string key) => Convert.ToHexStringLower(Encoding.UTF8.GetBytes(key));

    private static string Open(string cursor)
    {
        try
        {
            return Encoding.UTF8.GetString(Convert.FromHexString(cursor));
        }
        catch (FormatException)
        {
            throw NotOurs();
        }
    }

    private static BadHttpRequestException NotOurs() => new("this cursor was not made here; take it from the 'next' of the page before");
}
