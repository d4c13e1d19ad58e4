namespace Traceability.Web.Tests.Setup;

/// <summary>The workshop says what it is.</summary>
internal static class OwnWorkshop
{
    public static Dictionary<string, object?> Body(string name = "The Mill") =>
        new()
        {
            ["name"] = name,
            ["timeZone"] = "UTC",
            ["language"] = "en",
            ["certificateSections"] = new
            {
                suppliers = false,
                lotNumbers = false,
                reworks = false,
            },
        };

    /// <summary>Certificates show all that a workshop may show.</summary>
    public static async Task ShowEverythingAsync(this Workshop workshop)
    {
        var body = Body();
        body["certificateSections"] = new
        {
            suppliers = true,
            lotNumbers = true,
            reworks = true,
        };
        (await workshop.PostAsync("workshop", body, Workshop.Lead)).Expect(201);
    }

    public static async Task SayAsync(
        this Workshop workshop,
        string name,
        string? publicUrl = null,
        string? address = null,
        string timeZone = "UTC",
        string? reason = null
    )
    {
        var body = Body(name);
        (body["publicUrl"], body["address"], body["timeZone"], body["reason"]) = (publicUrl, address, timeZone, reason);
        (await workshop.PostAsync("workshop", body, Workshop.Lead)).Expect(201);
    }
}
