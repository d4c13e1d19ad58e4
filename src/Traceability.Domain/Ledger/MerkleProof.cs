namespace Traceability.Domain.Ledger;

/// <summary>Checks the proofs of a <see cref="MerkleTree"/> without having the tree.</summary>
/// <remarks>
/// Source: RFC 9162, sections 2.1.3.2 (inclusion) and 2.1.4.2 (consistency). Anything malformed, such as a proof too short, too long or
/// sizes out of order, is simply not a proof: the answer is false, never an exception. Checked by <c>MerkleTreeTests</c>.
/// </remarks>
public static class MerkleProof
{
    /// <summary>Whether the leaf hash is entry <paramref name="index"/> of the tree with this size and root.</summary>
    public static bool ShowsInclusion(Digest leaf, int index, int size, IReadOnlyList<Digest> proof, Digest root)
    {
        ArgumentNullException.ThrowIfNull(proof);
        if (index < 0 || index >= size)
            return false;

        var (position, last, hash) = (index, size - 1, leaf);
        foreach (var sibling in proof)
        {
            if (last == 0)
                return false;
            if (IsRight(position, last))
            {
                hash = MerkleTree.Node(sibling, hash);
                (position, last) = SkipLoneLevels(position, last);
            }
            else
                hash = MerkleTree.Node(hash, sibling);
            (position, last) = (position >> 1, last >> 1);
        }
        return last == 0 && hash == root;
    }

    /// <summary>Whether the tree with the earlier size and root is the beginning of the one with the later size and root.</summary>
    public static bool ShowsConsistency(int earlierSize, Digest earlierRoot, int laterSize, Digest laterRoot, IReadOnlyList<Digest> proof)
    {
        ArgumentNullException.ThrowIfNull(proof);
        if (earlierSize < 1 || earlierSize > laterSize)
            return false;
        if (earlierSize == laterSize)
            return proof.Count == 0 && earlierRoot == laterRoot;

        // An earlier tree that is full is itself the first node of the path and is left out of the proof.
        IReadOnlyList<Digest> path = int.IsPow2(earlierSize) ? [earlierRoot, .. proof] : proof;
        if (path.Count == 0)
            return false;

        var (position, last) = (earlierSize - 1, laterSize - 1);
        while ((position & 1) == 1)
            (position, last) = (position >> 1, last >> 1);

        var (earlier, later) = (path[0], path[0]);
        foreach (var sibling in path.Skip(1))
        {
            if (last == 0)
                return false;
            if (IsRight(position, last))
            {
                (earlier, later) = (MerkleTree.Node(sibling, earlier), MerkleTree.Node(sibling, later));
                (position, last) = SkipLoneLevels(position, last);
            }
            else
                later = MerkleTree.Node(later, sibling);
            (position, last) = (position >> 1, last >> 1);
        }
        return last == 0 && earlier == earlierRoot && later == laterRoot;
    }

    private static bool IsRight(int position, int last) => (position & 1) == 1 || position == last;

    // The last node of a level may have no sibling there; it moves up until it is a right child.
    private static (int Position, int Last) SkipLoneLevels(int position, int last)
    {
        while ((position & 1) == 0 && position != 0)
            (position, last) = (position >> 1, last >> 1);
        return (position, last);
    }
}
