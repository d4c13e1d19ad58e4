using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Traceability.Domain.Ledger;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Persistence.Book;

/// <summary>Makes ledger entries: canonical JSON (RFC 8785) of the facts of one command, chained by SHA-256.</summary>
public static class LedgerChain
{
    /// <summary>What the first entry of every chain follows: 32 zero bytes, in hex.</summary>
    public static readonly string BeforeFirst = new('0', 64);

    /// <summary>The next entry after <paramref name="head"/>, which moves on to it.</summary>
    public static LedgerEntry Next(LedgerHead head, string command, IReadOnlyList<Fact> facts)
    {
        var body = BodyOf(head.SubjectId, head.Sequence + 1, command, facts);
        var previous = head.Hash;
        head.Sequence++;
        head.Hash = HashChain.Append(Digest.FromHex(previous), body).ToString();
        return new(
            Guid.CreateVersion7(facts[^1].RecordedAt),
            head.SubjectId,
            head.Sequence,
            command,
            CanonicalJson.Text(body),
            previous,
            head.Hash,
            facts[^1].RecordedAt
        );
    }

    /// <summary>What an entry says.</summary>
    public static JsonObject BodyOf(Guid subjectId, long sequence, string command, IReadOnlyList<Fact> facts) =>
        new()
        {
            ["subject"] = subjectId.ToString(),
            ["sequence"] = sequence,
            ["command"] = command,
            ["facts"] = new JsonArray([.. facts.Select(FactNode)]),
        };

    /// <summary>
    /// One fact as it stands in an entry. Of a PIN's salted hash only the SHA-256 is told: it shows that the hash was changed, and nobody
    /// can try PINs on it without the salt.
    /// </summary>
    public static JsonNode FactNode(Fact fact)
    {
        var node = JsonSerializer.SerializeToNode(fact, fact.GetType(), FactJson.Ledger)!.AsObject();
        node.Insert(0, "fact", fact.GetType().Name);
        if (fact is PinSetting pin)
        {
            node["hash"] = Digest.Of(Encoding.UTF8.GetBytes(pin.Hash)).ToString();
        }

        return node;
    }
}
