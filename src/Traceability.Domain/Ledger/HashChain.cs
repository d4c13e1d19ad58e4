using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Traceability.Domain.Ledger;

/// <summary>One stored entry of a chain: the JSON of the event as kept, and the digest kept beside it.</summary>
public sealed record ChainLink(string Json, Digest Digest);

/// <summary>The first link that does not hold: its place (the first link is 1) and why.</summary>
public sealed record BrokenLink(int Number, string Because);

/// <summary>Chains the events of one part so that none can be changed, dropped or put in between unnoticed.</summary>
/// <remarks>
/// h_i = SHA-256(h_(i-1) || JCS(event_i)), h_0 = 32 zero bytes; JCS is <see cref="CanonicalJson"/>. Dropping links from the end leaves
/// a chain that holds: that is what the seal (<see cref="MerkleTree"/>) is for. Checked by <c>HashChainTests</c>.
/// </remarks>
public static class HashChain
{
    /// <summary>The digest of a new event chained to the digest before it (<see cref="Digest.Zero"/> for the first).</summary>
    public static Digest Append(Digest previous, JsonNode? entry) => Digest.Of(previous.Bytes, CanonicalJson.Bytes(entry));

    /// <inheritdoc cref="Append(Digest, JsonNode?)"/>
    public static Digest Append(Digest previous, JsonElement entry) => Digest.Of(previous.Bytes, CanonicalJson.Bytes(entry));

    /// <summary>Recomputes a chain from its start; <see langword="null"/> when every link holds.</summary>
    public static BrokenLink? Verify(IEnumerable<ChainLink> links)
    {
        ArgumentNullException.ThrowIfNull(links);
        var previous = Digest.Zero;
        var number = 0;
        foreach (var link in links)
        {
            number++;
            if (WhyBroken(previous, link) is { } because)
                return new(number, because);
            previous = link.Digest;
        }
        return null;
    }

    private static string? WhyBroken(Digest previous, ChainLink link)
    {
        try
        {
            var expected = Digest.Of(previous.Bytes, Encoding.UTF8.GetBytes(CanonicalJson.FromText(link.Json)));
            return expected == link.Digest
                ? null
                : $"The entry and the link before it give {expected}, but {link.Digest} is kept beside it.";
        }
        catch (CanonicalJsonException unreadable)
        {
            return unreadable.Message;
        }
    }
}
