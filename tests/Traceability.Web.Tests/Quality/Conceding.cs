namespace Traceability.Web.Tests.Quality;

/// <summary>Concessions are given and used.</summary>
internal static class Conceding
{
    public static readonly string Pin = Workshop.PinOf(Workshop.Quality);

    public static async Task<string> GiveAsync(this Workshop workshop, object permit) =>
        (await workshop.PostAsync("quality/concessions", permit, Workshop.Quality)).Expect(201).Text("number");

    public static async Task<Guid> RaisedAsync(this Workshop workshop, string film) =>
        (
            await workshop.PostAsync(
                $"parts/{await workshop.MountAsync(film)}/nonconformities",
                new { code = "scratched-film", description = "a scratch" }
            )
        )
            .Expect(201)
            .Id();

    public static Task<Reply> ConcedeAsync(this Workshop workshop, Guid id, string permit) =>
        workshop.PostAsync(
            $"nonconformities/{id}/disposition",
            new
            {
                kind = "concession",
                reason = "covered",
                pin = Pin,
                permit,
            },
            Workshop.Quality
        );
}
