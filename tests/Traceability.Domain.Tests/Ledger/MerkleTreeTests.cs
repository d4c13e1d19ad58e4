using CsCheck;
using Traceability.Domain.Ledger;

namespace Traceability.Domain.Tests.Ledger;

public class MerkleTreeTests
{
    // Source: the eight reference leaves of RFC 6962's test data (same hashing as RFC 9162), as in our reference sheet, G1.
    private static readonly string[] Leaves =
    [
        "",
        "00",
        "10",
        "2021",
        "3031",
        "40414243",
        "5051525354555657",
        "606162636465666768696a6b6c6d6e6f",
    ];

    private static MerkleTree Tree(int size) =>
        MerkleTree.Over(Leaves.Take(size).Select(hex => new ReadOnlyMemory<byte>(Convert.FromHexString(hex))));

    private static MerkleTree Numbered(int size) =>
        MerkleTree.Over(Enumerable.Range(0, size).Select(i => new ReadOnlyMemory<byte>(BitConverter.GetBytes(i))));

    private static Digest NumberedLeaf(int i) => MerkleTree.Leaf(BitConverter.GetBytes(i));

    // Source: our reference sheet, G1-002 to G1-009; size 0 is SHA-256 of nothing (RFC 9162, 2.1.1; FIPS 180-4).
    [Theory]
    [InlineData(0, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    [InlineData(1, "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d")]
    [InlineData(2, "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125")]
    [InlineData(3, "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77")]
    [InlineData(4, "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7")]
    [InlineData(7, "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c")]
    [InlineData(8, "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328")]
    public void The_roots_of_the_reference_leaves_are_met(int size, string root)
    {
        Assert.Equal(root, Tree(size).Root.ToString());
        Assert.Equal(root, Tree(8).RootAt(size).ToString());
    }

    // Source: our reference sheet, G1-010 to G1-014.
    [Theory]
    [InlineData(
        0,
        8,
        "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7",
        "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
        "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4"
    )]
    [InlineData(2, 3, "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125")]
    [InlineData(
        1,
        5,
        "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
        "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
        "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b"
    )]
    [InlineData(0, 1)]
    public void The_inclusion_proofs_of_the_reference_leaves_are_met(int index, int size, params string[] proof) =>
        Assert.Equal(proof, Tree(size).InclusionProof(index).Select(hash => hash.ToString()));

    // Source: our reference sheet, G1-016 and G1-018.
    [Theory]
    [InlineData(
        6,
        8,
        "0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a",
        "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
        "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7"
    )]
    [InlineData(
        6,
        7,
        "0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a",
        "b08693ec2e721597130641e8211e7eedccb4c26413963eee6c1e2ed16ffb1a5f",
        "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7"
    )]
    public void The_consistency_proofs_of_the_reference_leaves_are_met(int earlier, int later, params string[] proof) =>
        Assert.Equal(proof, Tree(later).ConsistencyProof(earlier).Select(hash => hash.ToString()));

    [Fact]
    public void Every_inclusion_proof_holds_for_its_own_leaf_and_index_only()
    {
        for (var size = 1; size <= 33; size++)
        {
            var tree = Numbered(size);
            for (var index = 0; index < size; index++)
            {
                var proof = tree.InclusionProof(index);
                for (var claimed = 0; claimed < size; claimed++)
                {
                    Assert.Equal(claimed == index, MerkleProof.ShowsInclusion(NumberedLeaf(index), claimed, size, proof, tree.Root));
                    Assert.Equal(claimed == index, MerkleProof.ShowsInclusion(NumberedLeaf(claimed), index, size, proof, tree.Root));
                }
            }
        }
    }

    [Fact]
    public void Every_consistency_proof_holds_between_its_own_two_trees_only()
    {
        for (var later = 1; later <= 33; later++)
        {
            var tree = Numbered(later);
            for (var earlier = 1; earlier <= later; earlier++)
            {
                var proof = tree.ConsistencyProof(earlier);
                Assert.True(MerkleProof.ShowsConsistency(earlier, tree.RootAt(earlier), later, tree.Root, proof));
                Assert.False(MerkleProof.ShowsConsistency(earlier, Digest.Zero, later, tree.Root, proof));
                Assert.False(MerkleProof.ShowsConsistency(earlier, tree.RootAt(earlier), later, Digest.Zero, proof));
                if (earlier < later)
                    Assert.False(MerkleProof.ShowsConsistency(earlier, Numbered(earlier + 1).Root, later, tree.Root, proof));
            }
        }
    }

    [Fact]
    public void A_proof_with_any_hash_changed_dropped_or_added_shows_nothing() =>
        Gen.Select(Gen.Int[2, 60], Gen.Int[0, 59], Gen.Int[0, 10])
            .Where((size, index, _) => index < size)
            .Sample(
                (size, index, at) =>
                {
                    var tree = Numbered(size);
                    var proof = tree.InclusionProof(index).ToList();
                    var place = at % proof.Count;
                    List<Digest> changed = [.. proof[..place], Digest.Of(proof[place].Bytes), .. proof[(place + 1)..]];
                    List<Digest> dropped = [.. proof[..place], .. proof[(place + 1)..]];
                    List<Digest> added = [.. proof, Digest.Zero];

                    bool Shows(List<Digest> p) => MerkleProof.ShowsInclusion(NumberedLeaf(index), index, size, p, tree.Root);
                    return Shows(proof) && !Shows(changed) && !Shows(dropped) && !Shows(added);
                }
            );

    [Fact]
    public void Claims_about_sizes_that_cannot_be_are_no_proof()
    {
        var tree = Tree(3);

        Assert.False(MerkleProof.ShowsInclusion(tree.Root, 0, 0, [], tree.Root));
        Assert.False(MerkleProof.ShowsInclusion(tree.Root, -1, 3, [], tree.Root));
        Assert.False(MerkleProof.ShowsInclusion(tree.Root, 3, 3, [], tree.Root));
        Assert.False(MerkleProof.ShowsConsistency(0, tree.Root, 3, tree.Root, []));
        Assert.False(MerkleProof.ShowsConsistency(4, tree.Root, 3, tree.Root, []));
        Assert.False(MerkleProof.ShowsConsistency(3, tree.Root, 4, tree.Root, []));
        Assert.False(MerkleProof.ShowsInclusion(Tree(1).Root, 1, 1, [], Tree(1).Root));
        Assert.All([-1, 3], index => Assert.Throws<ArgumentOutOfRangeException>(nameof(index), () => tree.InclusionProof(index)));
        Assert.All([0, 4], size => Assert.Throws<ArgumentOutOfRangeException>("earlierSize", () => tree.ConsistencyProof(size)));
        Assert.All([-1, 4], size => Assert.Throws<ArgumentOutOfRangeException>(nameof(size), () => tree.RootAt(size)));
    }

    [Fact]
    public void A_consistency_proof_with_a_hash_changed_dropped_or_added_shows_nothing()
    {
        for (var later = 2; later <= 33; later++)
        {
            var tree = Numbered(later);
            for (var earlier = 1; earlier < later; earlier++)
            {
                var proof = tree.ConsistencyProof(earlier).ToList();
                bool Shows(List<Digest> p) => MerkleProof.ShowsConsistency(earlier, tree.RootAt(earlier), later, tree.Root, p);

                Assert.True(Shows(proof));
                Assert.False(Shows([.. proof, Digest.Zero]), $"one more, {earlier} of {later}");
                Assert.False(Shows([.. proof[..^1], Digest.Zero]), $"the last changed, {earlier} of {later}");
                Assert.False(Shows(proof[..^1]), $"the last dropped, {earlier} of {later}");
            }
        }
    }

    [Fact]
    public void A_leaf_cannot_be_passed_off_as_a_node()
    {
        var two = Tree(2);
        byte[] both =
        [
            .. MerkleTree.Leaf(Convert.FromHexString(Leaves[0])).Bytes,
            .. MerkleTree.Leaf(Convert.FromHexString(Leaves[1])).Bytes,
        ];

        Assert.NotEqual(two.Root, MerkleTree.Over([new ReadOnlyMemory<byte>(both)]).Root);
    }
}
