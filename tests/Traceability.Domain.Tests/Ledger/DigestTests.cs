using Traceability.Domain.Ledger;

namespace Traceability.Domain.Tests.Ledger;

public class DigestTests
{
    private static readonly Digest One = Digest.Of([1]);

    [Fact]
    public void Digests_of_the_same_bytes_are_equal_by_every_way_of_asking()
    {
        var again = Digest.FromBytes(One.ToArray());

        Assert.True(One == again && One.Equals(again) && One.Equals((object)again));
        Assert.False(One != again);
        Assert.Equal(One.GetHashCode(), again.GetHashCode());
    }

    [Fact]
    public void Digests_of_other_bytes_differ_by_every_way_of_asking()
    {
        var other = Digest.Of([2]);

        Assert.True(One != other);
        Assert.False(One == other || One.Equals(other) || One.Equals((object)other) || One.Equals((object)"1"));
    }

    [Fact]
    public void A_digest_is_written_in_lower_case_and_read_in_either() =>
        Assert.All([One.ToString(), One.ToString().ToUpperInvariant()], hex => Assert.Equal(One, Digest.FromHex(hex)));

    [Fact]
    public void No_text_and_no_list_are_named_as_missing_and_not_judged()
    {
        Assert.Throws<ArgumentNullException>("hex", () => Digest.FromHex(null!));
        Assert.Throws<ArgumentNullException>("json", () => CanonicalJson.FromText(null!));
        Assert.Throws<ArgumentNullException>("links", () => HashChain.Verify(null!));
        Assert.Throws<ArgumentNullException>("proof", () => MerkleProof.ShowsInclusion(One, 0, 1, null!, One));
        Assert.Throws<ArgumentNullException>("proof", () => MerkleProof.ShowsConsistency(1, One, 1, One, null!));
    }
}
