using Microsoft.Kiota.Abstractions.Authentication;
using Microsoft.Kiota.Http.HttpClientLibrary;
using Traceability.GeneratedClient;
using Traceability.GeneratedClient.Models;

namespace Traceability.Web.Tests.Contract;

/// <summary>A client that was made from the OpenAPI document and compiled, with nothing written by hand, works at a stage.</summary>
public sealed class GeneratedClientTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_generated_client_takes_a_part_through_a_stage()
    {
        var session = await (await ClientAsync(null)).Api.V1.Sessions.PostAsync(
            new SignInInput { Badge = Workshop.Builder, Pin = Workshop.PinOf(Workshop.Builder) }
        );
        Assert.Equal(Role.Builder, Assert.Single(session!.Person!.Roles!));

        var client = await ClientAsync(Workshop.Builder);
        var part = await client.Api.V1.Parts.PostAsync(new RegisterPartInput { Kind = "diaphragm", Model = Workshop.Model });
        var attempt = await client
            .Api.V1.Parts[part!.Serial!]
            .Attempts.PostAsync(new OpenAttemptInput { Stage = "mount", Station = "PLATE-1" });
        var open = client.Api.V1.Attempts[attempt!.Id!.Value];
        await open.Fittings.PostAsync(
            new()
            {
                FittingsPostRequestBodyFitInputsInput = new() { Position = "film", Lot = Workshop.Film },
            }
        );
        var taken = await open.Readings.PostAsync(
            new()
            {
                ReadingsPostRequestBodyTakeReadingsInput = new()
                {
                    Characteristic = "coarseHz",
                    Value = new() { Double = 850.5 },
                },
            }
        );
        Assert.True(Assert.Single(taken!.Readings!).Met);

        var closed = await open.Close.PostAsync(new CloseAttemptInput { Note = "by a generated client" });
        Assert.Equal(Verdict.Pass, closed!.Verdict);
        Assert.Equal("cure", closed.Next!.Stage);
    }

    [Fact]
    public async Task A_generated_client_is_told_what_is_missing()
    {
        var client = await ClientAsync(Workshop.Builder);
        var part = await client.Api.V1.Parts.PostAsync(new RegisterPartInput { Kind = "diaphragm", Model = Workshop.Model });

        var refused = await Assert.ThrowsAsync<Problem>(() =>
            client.Api.V1.Parts[part!.Serial!].Attempts.PostAsync(new OpenAttemptInput { Stage = "cure", Station = "PLATE-1" })
        );

        Assert.Equal("/problems/gate-closed", refused.Type);
        Assert.Contains(refused.Checks!, check => check.Met is false && check.Rule == "earlier-stages");
    }

    private async Task<WorkshopClient> ClientAsync(string? badge)
    {
        var http = await workshop.ClientAsync(badge);
        return new(
            new HttpClientRequestAdapter(new AnonymousAuthenticationProvider(), httpClient: http) { BaseUrl = http.BaseAddress!.ToString() }
        );
    }
}
