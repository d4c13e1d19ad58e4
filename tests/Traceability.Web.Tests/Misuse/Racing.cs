namespace Traceability.Web.Tests.Misuse;

/// <summary>Eight that want the same at once.</summary>
internal static class Racing
{
    public const int AtOnce = 8;

    public static async Task OneWinsAsync(int status, string words, Func<int, Task<Reply>> command)
    {
        var replies = await Task.WhenAll(Enumerable.Range(0, AtOnce).Select(i => Task.Run(() => command(i))));
        Assert.Equal(1, replies.Count(r => (int)r.Status == status));
        Assert.All(replies.Where(r => (int)r.Status != status), r => Assert.Contains(words, r.Problem(409), StringComparison.Ordinal));
    }
}
