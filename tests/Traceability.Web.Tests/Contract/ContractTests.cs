using UglyToad.PdfPig;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;

namespace Traceability.Web.Tests.Contract;

/// <summary>The contract alone is enough to build a microphone of each demo model, and no stage of its routes can be left out.</summary>
public sealed class ContractTests(Foundation foundation) : IClassFixture<Foundation>
{
    [Theory]
    [InlineData("TARN-2", 5)]
    [InlineData("TARN-1", 4)]
    public async Task A_client_that_knows_only_the_contract_builds_a_unit_whose_certificate_says_what_went_in(string model, int parts)
    {
        var skipped = 0;
        var client = await foundation.ClientAsync();
        client.BeforeStage = async ahead =>
        {
            await RefusedToSkipAsync(client, ahead);
            skipped++;
        };
        var unit = await client.MakeAsync(model, "unit");
        Assert.Equal(skipped, client.Closings.Count);
        Assert.Equal(parts, client.Closings.Select(c => c.Text("serial")).Distinct().Count());

        var issued = (await client.TryCertificateAsync(unit)).Expect(201);
        var text = TextOf(await client.BytesAsync($"parts/{unit}/certificate.pdf"));
        Assert.Contains(unit, text, StringComparison.Ordinal);
        Assert.Contains(client.Lots["film"], text, StringComparison.Ordinal);
        Assert.DoesNotContain("Number of the board", text, StringComparison.Ordinal);
        Assert.Contains(issued.Text("certificateId"), text.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        var finals = client.Closings.Where(c => c.Text("serial") == unit).SelectMany(c => c.List("readings")).ToList();
        Assert.True(finals.Count > 5);
        Assert.All(finals, r => Assert.Contains(r.At("value").GetRawText().Replace('-', '\u2212'), text, StringComparison.Ordinal));
    }

    /// <summary>Tries what comes after the stage ahead, as if it had been done: its next stage, or what a finished part is for.</summary>
    private static async Task RefusedToSkipAsync(GenericClient client, StageAhead ahead)
    {
        var title = ahead.Stage.Text("title");
        var (reply, rule, words) = ahead switch
        {
            { Index: var i, Stages: var stages } when i + 1 < stages.Count => (
                await client.TryOpenAsync(ahead.Serial, stages[i + 1]),
                "earlier-stages",
                $"not passed yet: {title}"
            ),
            { Destination: { } parent } => (
                await client.TryFitAsync(parent, ahead.Serial),
                "inputs",
                $"{ahead.Serial} has not passed its own route yet"
            ),
            _ => (await client.TryCertificateAsync(ahead.Serial), "stages", $"not passed: {title}"),
        };
        Assert.Contains(words, reply.Problem(409), StringComparison.Ordinal);
        var check = Assert.Single(reply.Json.List("checks"), c => c.Text("rule") == rule);
        Assert.Equal("False", check.Text("met"));
        Assert.Contains(words, check.Text("because"), StringComparison.Ordinal);
        Assert.NotEmpty(check.Text("remedy"));
    }

    private static string TextOf(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return string.Join('\n', document.GetPages().Select(p => ContentOrderTextExtractor.GetText(p)));
    }
}
