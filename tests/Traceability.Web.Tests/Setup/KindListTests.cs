using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Setup;

/// <summary>Kinds are chosen from the workshop's lists; programs may still enter any, and a retired one is refused to both.</summary>
public sealed class KindListTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_kind_that_a_program_entered_is_listed_by_use_until_it_gets_a_title()
    {
        (await ReceiveAsync("mica-disc", "S-1")).Expect(201);
        var listed = await FindAsync("lot", "mica-disc");
        Assert.Equal(("mica-disc", "True"), (listed.Text("title"), listed.Text("byUse")));
        (await AddAsync("lot", "mica-disc", "Mica disc")).Expect(201);
        listed = await FindAsync("lot", "mica-disc");
        Assert.Equal(("Mica disc", "False"), (listed.Text("title"), listed.Text("byUse")));
        (await AddAsync("lot", "mica-disc", "Again")).Expect(409);
    }

    [Fact]
    public async Task A_retired_kind_takes_nothing_new_and_one_that_something_is_of_cannot_be_taken_back()
    {
        (await AddAsync("lot", "felt-pad", "Felt pad")).Expect(201);
        (await ReceiveAsync("felt-pad", "S-2")).Expect(201);
        Assert.Contains("felt-pad", (await DecideAsync("felt-pad", "mistake")).Problem(409), StringComparison.Ordinal);
        (await DecideAsync("felt-pad", "retirement")).Expect(200);
        Assert.Contains("no longer bought", (await ReceiveAsync("felt-pad", "S-3")).Problem(409), StringComparison.Ordinal);
        Assert.DoesNotContain("felt-pad", (await workshop.GetAsync("kinds?of=lot")).Expect(200).Texts("items", "code"));
        (await AddAsync("lot", "flet-pad", "Misspelt")).Expect(201);
        (await DecideAsync("flet-pad", "mistake")).Expect(200);
        Assert.DoesNotContain("flet-pad", (await workshop.GetAsync("kinds?of=lot&retired=true")).Expect(200).Texts("items", "code"));
        (await workshop.GetAsync("kinds?of=colour")).Expect(400);
    }

    [Fact]
    public async Task A_page_asks_about_a_kind_typed_anew_and_names_the_one_that_may_be_meant()
    {
        var quality = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        (string, string)[] lot =
        [
            ("supplier", "S"),
            ("supplierLot", "Q-1"),
            ("quantity", "5"),
            ("unit", "pcs"),
            ("kindNew", "insulating-rnig"),
        ];
        var asked = (await quality.SendAsync("/lots/new", "lot", lot)).Expect(400);
        Assert.Contains("Did you mean insulating-ring?", asked.Words, StringComparison.Ordinal);
        (await quality.SendAsync("/lots/new", "lot", [.. lot, ("kindSure", "true")])).Expect(200);
        Assert.Equal("insulating-rnig", (await FindAsync("lot", "insulating-rnig")).Text("code"));
    }

    [Fact]
    public async Task The_same_supplier_lot_twice_is_asked_about_by_page_and_warned_of_by_API()
    {
        (await ReceiveAsync("body", "TWICE-1")).Expect(201);
        Assert.Contains(
            "TWICE-1 came before",
            (await ReceiveAsync("body", "TWICE-1")).Expect(201).Text("warnings"),
            StringComparison.Ordinal
        );
        (await ReceiveAsync("body", "TWICE-1", confirm: false)).Expect(400);
        Assert.False((await ReceiveAsync("body", "TWICE-1", confirm: true)).Expect(201).Has("warnings"));
    }

    private Task<Reply> AddAsync(string of, string code, string title) =>
        workshop.PostAsync(
            "kinds",
            new
            {
                of,
                code,
                title,
            },
            Workshop.Lead
        );

    private Task<Reply> DecideAsync(string code, string what) =>
        workshop.PostAsync($"kinds/{code}/{what}", new { reason = "no longer bought", of = "lot" }, Workshop.Quality);

    private async Task<System.Text.Json.JsonElement> FindAsync(string of, string code) =>
        (await workshop.GetAsync($"kinds?of={of}")).Expect(200).List().Single(k => k.Text("code") == code);

    private Task<Reply> ReceiveAsync(string kind, string supplierLot, bool? confirm = null) =>
        workshop.PostAsync(
            "lots",
            new
            {
                kind,
                supplier = "Invented Supplies",
                supplierLot,
                quantity = 5,
                unit = "pcs",
                confirm,
            },
            Workshop.Quality
        );
}
