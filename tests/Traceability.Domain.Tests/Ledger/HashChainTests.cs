using System.Text.Json.Nodes;
using Traceability.Domain.Ledger;

namespace Traceability.Domain.Tests.Ledger;

public class HashChainTests
{
    private static readonly string[] Events =
    [
        """{"n": 1, "what": "receive"}""",
        """{"n": 2, "what": "tension"}""",
        """{"n": 3, "what": "ship"}""",
    ];

    // Source: our reference sheet, G3-001 (computed there with Python's hashlib).
    private static readonly string[] Digests =
    [
        "6bf88ebef9127212fb2a6e64c36088efba65c374268005a2344fe62668692aad",
        "89031844def84dadd74dd9257c5e38e0752770a3dc86163a9bc3d6629ff14df8",
        "5ab712642dd6464fd85cf5231ebe3e144c5536ab4e1948b9d4383baf57f9c5a8",
    ];

    private static List<ChainLink> Chain()
    {
        var links = new List<ChainLink>();
        foreach (var json in Events)
            links.Add(new(json, HashChain.Append(links.Count == 0 ? Digest.Zero : links[^1].Digest, JsonNode.Parse(json))));
        return links;
    }

    [Fact]
    public void The_chain_of_the_reference_sheet_is_met() => Assert.Equal(Digests, Chain().Select(link => link.Digest.ToString()));

    [Fact]
    public void An_untouched_chain_holds() => Assert.Null(HashChain.Verify(Chain()));

    [Fact]
    public void An_empty_chain_holds() => Assert.Null(HashChain.Verify([]));

    [Fact]
    public void White_space_and_the_order_of_keys_are_no_change()
    {
        var links = Chain();
        links[1] = links[1] with { Json = """{ "what" : "tension",  "n" : 2.0 }""" };

        Assert.Null(HashChain.Verify(links));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void A_changed_entry_is_named(int changed)
    {
        var links = Chain();
        links[changed] = links[changed] with { Json = links[changed].Json.Replace("\"n\": ", "\"n\": 1", StringComparison.Ordinal) };

        Assert.Equal(changed + 1, HashChain.Verify(links)?.Number);
    }

    [Fact]
    public void A_changed_entry_with_its_digest_made_anew_breaks_the_next_link()
    {
        var links = Chain();
        const string Forged = """{"n": 2, "what": "tensions"}""";
        links[1] = new(Forged, HashChain.Append(links[0].Digest, JsonNode.Parse(Forged)));

        Assert.Equal(3, HashChain.Verify(links)?.Number);
    }

    [Fact]
    public void A_dropped_entry_is_named_by_the_one_after_it()
    {
        var links = Chain();
        links.RemoveAt(1);

        Assert.Equal(2, HashChain.Verify(links)?.Number);
    }

    [Fact]
    public void Two_swapped_entries_are_found()
    {
        var links = Chain();
        (links[0], links[1]) = (links[1], links[0]);

        Assert.Equal(1, HashChain.Verify(links)?.Number);
    }

    [Fact]
    public void An_entry_that_is_no_json_is_a_broken_link_and_no_exception()
    {
        var links = Chain();
        links[2] = links[2] with { Json = "{\"n\":" };

        Assert.Equal(3, HashChain.Verify(links)?.Number);
        Assert.Contains("not JSON", HashChain.Verify(links)?.Because, StringComparison.Ordinal);
    }

    [Fact]
    public void A_digest_is_its_bytes_whatever_way_it_was_made()
    {
        var fromHex = Digest.FromHex(Digests[0].ToUpperInvariant());

        Assert.Equal(Digest.FromBytes(fromHex.Bytes), fromHex);
        Assert.Equal(default, Digest.Zero);
        Assert.NotEqual(Digest.Zero, fromHex);
        Assert.Throws<ArgumentException>(() => Digest.FromBytes(new byte[31]));
        Assert.Throws<FormatException>(() => Digest.FromHex("00"));
    }
}
