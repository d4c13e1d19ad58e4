using System.Numerics;

namespace Traceability.Domain.Ledger;

/// <summary>The Merkle tree of RFC 9162 over a growing list of entries: one root seals them all.</summary>
/// <remarks>
/// Leaf = SHA-256(0x00 || entry), node = SHA-256(0x01 || left || right), empty tree = SHA-256 of nothing; n leaves are split at the largest
/// power of two below n. Source: RFC 9162, sections 2.1.1 to 2.1.4 (same hashing as RFC 6962). Checked by <c>MerkleTreeTests</c>
/// against the eight reference leaves of RFC 6962's test data. Proofs are checked by <see cref="MerkleProof"/>.
/// </remarks>
public sealed class MerkleTree
{
    private readonly Digest[] _leaves;

    private MerkleTree(Digest[] leaves) => _leaves = leaves;

    /// <summary>How many entries the tree has.</summary>
    public int Size => _leaves.Length;

    /// <summary>The root over all entries.</summary>
    public Digest Root => RootOf(_leaves);

    /// <summary>A tree over entries as they are kept (for the ledger: the 32 bytes of each chain digest).</summary>
    public static MerkleTree Over(IEnumerable<ReadOnlyMemory<byte>> entries) => new([.. entries.Select(entry => Leaf(entry.Span))]);

    /// <summary>A tree over digests, each of which is an entry.</summary>
    public static MerkleTree Over(IEnumerable<Digest> entries) => new([.. entries.Select(entry => Leaf(entry.Bytes))]);

    /// <summary>The hash of one entry as a leaf.</summary>
    public static Digest Leaf(ReadOnlySpan<byte> entry) => Digest.Of([0], entry);

    /// <summary>The root over the first entries only: what an earlier seal said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The tree has never had that size.</exception>
    public Digest RootAt(int size)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(size);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(size, Size);
        return RootOf(_leaves.AsSpan(0, size));
    }

    /// <summary>The hashes that lead from one entry (counted from 0) to the root.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such entry.</exception>
    public IReadOnlyList<Digest> InclusionProof(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Size);
        return Path(index, _leaves);
    }

    /// <summary>The hashes that show that the tree of an earlier size is the beginning of this one.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The earlier size is not between 1 and the present size.</exception>
    public IReadOnlyList<Digest> ConsistencyProof(int earlierSize)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(earlierSize, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(earlierSize, Size);
        return SubProof(earlierSize, _leaves, isWhole: true);
    }

    internal static Digest Node(Digest left, Digest right) => Digest.Of([1], left.Bytes, right.Bytes);

    private static Digest RootOf(ReadOnlySpan<Digest> leaves)
    {
        if (leaves.IsEmpty)
            return Digest.Of([]);
        if (leaves.Length == 1)
            return leaves[0];
        var split = Split(leaves.Length);
        return Node(RootOf(leaves[..split]), RootOf(leaves[split..]));
    }

    private static List<Digest> Path(int index, ReadOnlySpan<Digest> leaves)
    {
        if (leaves.Length == 1)
            return [];
        var split = Split(leaves.Length);
        return index < split
            ? [.. Path(index, leaves[..split]), RootOf(leaves[split..])]
            : [.. Path(index - split, leaves[split..]), RootOf(leaves[..split])];
    }

    private static List<Digest> SubProof(int earlier, ReadOnlySpan<Digest> leaves, bool isWhole)
    {
        if (earlier == leaves.Length)
            return isWhole ? [] : [RootOf(leaves)];
        var split = Split(leaves.Length);
        return earlier <= split
            ? [.. SubProof(earlier, leaves[..split], isWhole), RootOf(leaves[split..])]
            : [.. SubProof(earlier - split, leaves[split..], isWhole: false), RootOf(leaves[..split])];
    }

    private static int Split(int count) => 1 << (BitOperations.Log2((uint)count - 1));
}
