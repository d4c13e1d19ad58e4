using System.Text;

namespace Traceability.Web.Tests.Setup;

/// <summary>Many at once from one table: all or none, and each line by the rules of the page that enters one.</summary>
public sealed class ImportTests(Workshop w) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_table_with_one_wrong_line_enters_nothing_and_says_which_line()
    {
        const string table = "code,title\nIMP-1,Bench one\nIMP 2?,Bench two\nIMP-3,\n";
        var refused = await SendAsync("stations", table);
        var errors = refused.Expect(400).At("errors");
        Assert.True(errors.TryGetProperty("line 3, code", out _), refused.Body);
        Assert.True(errors.TryGetProperty("line 4, title", out _), refused.Body);
        Assert.DoesNotContain("IMP-1", await StationsAsync());

        (await SendAsync("stations", "code,title\nIMP-1,Bench one\nIMP-2,Bench two\n")).Expect(201);
        Assert.Contains("IMP-1", await StationsAsync());
        Assert.Contains("IMP-2", await StationsAsync());
    }

    [Fact]
    public async Task A_dry_run_says_what_would_happen_and_records_nothing()
    {
        var looked = (await SendAsync("stations", "code,title\nDRY-1,Bench\nDRY-1,Bench again\n", dryRun: true)).Expect(200);
        Assert.Equal((2, 1), (looked.At("lines").GetInt32(), looked.At("accepted").GetInt32()));
        var problem = Assert.Single(looked.List("problems"));
        Assert.Equal((3, "code"), (problem.At("line").GetInt32(), problem.Text("field")));
        Assert.DoesNotContain("DRY-1", await StationsAsync());
    }

    [Fact]
    public async Task Each_imported_person_gets_a_code_that_sets_the_own_PIN_and_is_shown_once()
    {
        const string table = "badge;name;roles;qualifications\nIP1;Ines One;builder;bonding soldering\nIP2;Ivo Two;builder+service;\n";
        var entered = (await SendAsync("people", table, key: "people-once")).Expect(201);
        var code = entered.List("codes").Single(c => c.Text("badge") == "IP1").Text("code");
        Assert.DoesNotContain(code, (await SendAsync("people", table, key: "people-once")).Body, StringComparison.Ordinal);
        (
            await w.PostAsync(
                "pins",
                new
                {
                    badge = "IP1",
                    code,
                    newPin = "2496",
                },
                null
            )
        ).Expect(200);
        var person = (await w.GetAsync("people?limit=500", Workshop.Lead)).Expect(200).List().Single(p => p.Text("badge") == "IP1");
        Assert.Equal(["bonding", "soldering"], person.List("qualifications").Select(q => q.GetString()));
    }

    [Fact]
    public async Task Only_a_lead_imports_people_and_a_builder_imports_nothing()
    {
        const string table = "badge,name,roles\nIX1,Ivo X,lead\n";
        Assert.Contains(
            "only the workshop lead",
            (await SendAsync("people", table, Workshop.Importer)).Problem(403),
            StringComparison.Ordinal
        );
        (await SendAsync("stations", "code,title\nIX-1,Bench\n", Workshop.Builder)).Expect(403);
    }

    [Fact]
    public async Task Instruments_come_with_their_calibrations_and_are_usable()
    {
        var today = w.Clock.GetUtcNow();
        var table =
            "code\tkind\ttitle\tcalibrated on\tdue on\treference\n"
            + $"IMPI-1\tresonance-bench\tBench\t{today.AddDays(-9):d MMM yyyy}\t{today.AddDays(300):yyyy-MM-dd}\tC-1\n"
            + "IMPI-2\tresonance-bench\tSpare bench\t\t\t\n";
        (await SendAsync("instruments", table)).Expect(201);
        var states = (await w.GetAsync("instruments?limit=500")).Expect(200).List().ToDictionary(i => i.Text("code"), i => i.Text("state"));
        Assert.Equal(("usable", "due"), (states["IMPI-1"], states["IMPI-2"]));
    }

    [Fact]
    public async Task Stock_received_earlier_keeps_its_day_when_an_importer_enters_it()
    {
        const string table =
            "kind,supplier,supplierLot,quantity,unit,number,receivedOn\nring,Ring works,R-1,\"12,5\",kg,OLD-1,3 Mar 2025\n";
        (await SendAsync("lots", table, Workshop.Importer)).Expect(201);
        var lot = (await w.GetAsync("lots/OLD-1")).Expect(200);
        Assert.StartsWith("2025-03-03", lot.Text("receivedAt"), StringComparison.Ordinal);
        Assert.Equal(("12.5", "quarantined"), (lot.Text("quantity"), lot.Text("state")));
        var received = (await w.GetAsync("ledger/OLD-1")).Expect(200).Text("items");
        Assert.Contains("\"occurredAt\":\"2025-03-03", received.Replace("\\u0022", "\"").Replace("\\\"", "\""), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Carriers_are_known_before_a_part_lies_in_one()
    {
        (await SendAsync("carriers", "code,kind\nTIN-71,tin\nJIG-71,jig\n")).Expect(201);
        (await w.PostAsync("carriers", new { code = "JIG-71", kind = "jig" }, Workshop.Lead)).Expect(409);
        (
            await w.PostAsync(
                "parts",
                new
                {
                    kind = "diaphragm",
                    model = Workshop.Model,
                    carrier = "JIG-71",
                }
            )
        ).Expect(201);
    }

    [Theory]
    [InlineData("stations", "kode,title\nA-1,x\n", "the heading lacks code")]
    [InlineData("stations", "code,title,colour\nA-1,x,red\n", "names colour, which is no column")]
    [InlineData("stations", "code,title,code\nA-1,x,A-2\n", "names code more than once")]
    [InlineData("stations", "code,title\nA-1,one,two\n", "has 3 fields, the heading 2")]
    [InlineData("stations", "", "the table is empty")]
    [InlineData("stations", "code,title\n", "no lines")]
    [InlineData("benches", "code,title\n", "cannot be imported")]
    [InlineData("people", "badge,name,roles\nZZ1,Zoe,king\n", "there is no role 'king'")]
    [InlineData("people", "badge,name,roles\nZZ1,Zoe,3\n", "there is no role '3'")]
    [InlineData(
        "lots",
        "kind;supplier;supplierLot;quantity;unit\nring;R;1;12.5;kg\nring;R;2;12,5;kg\n",
        "another decimal mark than the numbers above"
    )]
    [InlineData("lots", "kind,supplier,supplierLot,quantity,unit,receivedOn\nring,R,1,3,kg,03/04/2026\n", "is not a day")]
    [InlineData("lots", "kind,supplier,supplierLot,quantity,unit\nring,R,1,,kg\n", "this cell is empty, and it is needed")]
    [InlineData("lots", "kind,supplier,supplierLot,quantity,unit\nfilm,R,1,3,m\n", "the thickness of its base")]
    public async Task What_is_wrong_with_a_table_is_said_and_nothing_is_recorded(string kind, string table, string said)
    {
        var refused = await SendAsync(kind, table);
        refused.Expect(400);
        Assert.Contains(said, refused.Body.Replace("\\u0027", "'"), StringComparison.Ordinal);
        Assert.DoesNotContain((await StationsAsync()).Concat(await BadgesAsync()), c => c is "A-1" or "ZZ1");
    }

    [Fact]
    public async Task Bytes_that_are_no_text_are_refused()
    {
        var content = new ByteArrayContent([0x63, 0xFF, 0xFE, 0x00]);
        content.Headers.ContentType = new("text/csv");
        Assert.Contains(
            "UTF-8",
            (await w.PostAsync("imports?kind=stations", content, Workshop.Lead)).Problem(400),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Five_thousand_lines_are_taken_and_one_more_is_refused()
    {
        var table = new StringBuilder("code,title\n");
        for (var i = 0; i < 5001; i++)
        {
            table.Append(System.Globalization.CultureInfo.InvariantCulture, $"MANY-{i},Bench {i}\n");
        }

        Assert.Contains(
            "at most 5000 lines",
            (await SendAsync("stations", table.ToString())).Expect(400).ToString(),
            StringComparison.Ordinal
        );
        var most = table.ToString()[..table.ToString().LastIndexOf("MANY-5000", StringComparison.Ordinal)];
        Assert.Equal(5000, (await SendAsync("stations", most, dryRun: true)).Expect(200).At("accepted").GetInt32());
    }

    private Task<Reply> SendAsync(string kind, string table, string? badge = Workshop.Lead, bool dryRun = false, string? key = null) =>
        w.PostAsync($"imports?kind={kind}{(dryRun ? "&dryRun=true" : "")}", Workshop.Csv(table), badge, key);

    private async Task<IReadOnlyList<string>> StationsAsync() =>
        (await w.GetAsync("stations?limit=500")).Expect(200).Texts("items", "code");

    private async Task<IReadOnlyList<string>> BadgesAsync() =>
        (await w.GetAsync("people?limit=500", Workshop.Lead)).Expect(200).Texts("items", "badge");
}
