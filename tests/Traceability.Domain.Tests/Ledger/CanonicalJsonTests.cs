using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Traceability.Domain.Ledger;

namespace Traceability.Domain.Tests.Ledger;

public class CanonicalJsonTests
{
    // Source: RFC 8785, section 3.2.2, sample (from memory).
    [Fact]
    public void The_sample_of_the_standard_is_met()
    {
        const string Input = """
            {
              "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
              "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
              "literals": [null, true, false]
            }
            """;

        Assert.Equal(
            """{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}""",
            CanonicalJson.FromText(Input)
        );
    }

    // Source: our reference sheet, G2-027 and G2-028 (the published test data of the scheme's authors, values.json, and its SHA-256).
    [Fact]
    public void The_published_values_file_and_its_hash_are_met()
    {
        const string Input = """
            {"numbers": [1E30, 4.50, 333333333.33333329, 2e-3, 0.000000000000000000000000001],
             "escaping": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
             "literals": [null, true, false]}
            """;

        var bytes = CanonicalJson.Bytes(JsonNode.Parse(Input));

        Assert.Equal(
            """{"escaping":"€$\u000f\nA'B\"\\\\\"/","literals":[null,true,false],"numbers":[1e+30,4.5,333333333.3333333,0.002,1e-27]}""",
            Encoding.UTF8.GetString(bytes)
        );
        Assert.Equal("0af3685dce30daa753153aadb1956b0f3133642fbe5d4a5e3a4267f94814ba87", Digest.Of(bytes).ToString());
    }

    // Source: RFC 8785, section 3.2.3, sample; order as in our reference sheet, G2-029.
    [Fact]
    public void Keys_stand_in_the_order_of_their_utf16_code_units()
    {
        const string Input = """
            {
              "\u20ac": "Euro Sign",
              "\r": "Carriage Return",
              "\ufb33": "Hebrew Letter Dalet With Dagesh",
              "1": "One",
              "\ud83d\ude00": "Emoji: Grinning Face",
              "\u0080": "Control",
              "\u00f6": "Latin Small Letter O With Diaeresis"
            }
            """;

        using var sorted = JsonDocument.Parse(CanonicalJson.FromText(Input));

        Assert.Equal(
            [
                "Carriage Return",
                "One",
                "Control",
                "Latin Small Letter O With Diaeresis",
                "Euro Sign",
                "Emoji: Grinning Face",
                "Hebrew Letter Dalet With Dagesh",
            ],
            sorted.RootElement.EnumerateObject().Select(member => member.Value.GetString()!)
        );
    }

    // Source: our reference sheet, G2-030 and G2-031.
    [Fact]
    public void A_birth_certificate_has_the_text_and_hash_of_the_reference_sheet()
    {
        var document = new JsonObject
        {
            ["serial"] = "M-0001",
            ["sensitivity_mV_per_Pa"] = 20.5,
            ["f01_Hz"] = 912.0,
            ["tests"] = new JsonArray(
                new JsonObject
                {
                    ["name"] = "insulation",
                    ["ohm"] = 100000000000.0,
                    ["pass"] = true,
                }
            ),
            ["issued"] = "2024-05-01T12:00:00Z",
        };

        Assert.Equal(
            """{"f01_Hz":912,"issued":"""
                + "\"2024-05-01T12:00:00Z\","
                + """
                "sensitivity_mV_per_Pa":20.5,"serial":"M-0001","tests":[{"name":"insulation","ohm":100000000000,"pass":true}]}
                """,
            CanonicalJson.Text(document)
        );
        Assert.Equal(
            "fe035ed6902fe59d6ab8c221a43fba678ebf5030314d5c5aeb7300a59efd267b",
            Digest.Of(CanonicalJson.Bytes(document)).ToString()
        );
    }

    // Source: RFC 8785, section 3.2.2.2: the short escapes, \u00xx in lower case for other controls, everything else as it is.
    [Theory]
    [InlineData("\b\t\n\f\r", "\"\\b\\t\\n\\f\\r\"")]
    [InlineData("\u0000\u001f", "\"\\u0000\\u001f\"")]
    [InlineData(" a b ", "\" a b \"")]
    [InlineData("\u007f\u2028/<>&'+", "\"\u007f\u2028/<>&'+\"")]
    [InlineData("µΩ😀", "\"µΩ😀\"")]
    public void Only_what_json_must_escape_is_escaped(string content, string expected) =>
        Assert.Equal(expected, CanonicalJson.Text(JsonValue.Create(content)));

    [Fact]
    public void A_node_made_in_code_and_the_same_value_read_from_text_have_the_same_form()
    {
        var id = new Guid("0193a0c0-0000-7000-8000-000000000001");
        var at = new DateTimeOffset(2026, 11, 25, 14, 20, 0, TimeSpan.Zero);
        var made = new JsonObject
        {
            ["id"] = id,
            ["at"] = at,
            ["count"] = 3,
            ["long"] = 4L,
            ["value"] = 12.50m,
            ["small"] = 0.1f,
            ["none"] = null,
            ["yes"] = true,
        };

        Assert.Equal(CanonicalJson.FromText(made.ToJsonString()), CanonicalJson.Text(made));
        Assert.Equal(
            """{"at":"2026-11-25T14:20:00+00:00","count":3,"id":"""
                + "\"0193a0c0-0000-7000-8000-000000000001\","
                + """
                "long":4,"none":null,"small":0.1,"value":12.5,"yes":true}
                """,
            CanonicalJson.Text(made)
        );
    }

    [Theory]
    [InlineData("""{"a":1,"a":2}""")]
    [InlineData("""{"x":{"a":1,"\u0061":1}}""")]
    [InlineData("""["\ud800"]""")]
    [InlineData("""["\udc00\ud800"]""")]
    [InlineData("""{"\ud800":1}""")]
    [InlineData("[1e400]")]
    [InlineData("[-1e400]")]
    [InlineData("[NaN]")]
    [InlineData("")]
    [InlineData("{} {}")]
    public void What_has_no_canonical_form_is_refused(string json) =>
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.FromText(json));

    [Fact]
    public void A_node_that_has_no_canonical_form_is_refused()
    {
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.Text(new JsonArray(double.NaN)));
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.Text(new JsonArray(float.PositiveInfinity)));
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.Text(new JsonArray("a\ud800")));
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.Text(new JsonArray("\udc00b")));
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.Text(new JsonObject { ["\ud800"] = 1 }));
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.Text(JsonNode.Parse("""{"a":1,"a":2}""")));
        Assert.Throws<CanonicalJsonException>(() => CanonicalJson.Text(default(JsonElement)));
    }

    [Theory]
    [InlineData(128, true)]
    [InlineData(129, false)]
    [InlineData(200, false)]
    public void Nesting_deeper_than_128_is_refused_before_the_stack_ends(int deep, bool hasForm)
    {
        JsonNode nested = new JsonArray();
        for (var i = 1; i < deep; i++)
            nested = new JsonArray(nested);

        if (hasForm)
            Assert.Equal(new string('[', deep) + new string(']', deep), CanonicalJson.Text(nested));
        else
            Assert.Throws<CanonicalJsonException>(() => CanonicalJson.Text(nested));
    }

    [Fact]
    public void The_canonical_text_of_a_canonical_text_is_itself() =>
        Gen.Select(
                Gen.Dictionary(Gen.String[Gen.Char['\0', '\ud7ff'], 0, 8], Gen.Double.Where(double.IsFinite)),
                Gen.String[Gen.Char['\0', '\ud7ff'], 0, 20]
            )
            .Sample(
                (members, text) =>
                {
                    var node = new JsonObject(members.Select(member => KeyValuePair.Create(member.Key, (JsonNode?)member.Value)))
                    {
                        ["text"] = text,
                    };
                    var once = CanonicalJson.Text(node);
                    return CanonicalJson.FromText(once) == once
                        && JsonNode.DeepEquals(JsonNode.Parse(once), JsonNode.Parse(node.ToJsonString()));
                }
            );

    [Fact]
    public void The_order_in_which_members_were_written_makes_no_difference() =>
        Gen.Shuffle(new[] { "serial", "Stage", "é", "z", "1", "10", "2" })
            .Sample(keys =>
                CanonicalJson.Text(new JsonObject(keys.Select(key => KeyValuePair.Create(key, (JsonNode?)key))))
                == """{"1":"1","10":"10","2":"2","Stage":"Stage","serial":"serial","z":"z","é":"é"}"""
            );
}
