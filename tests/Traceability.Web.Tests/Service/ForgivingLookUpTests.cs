using Traceability.Domain.Codes;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Service;

/// <summary>
/// The look-up box hears what somebody on the telephone reads out, and what a scanner reads off: in the box and by REST alike.
/// </summary>
public sealed class ForgivingLookUpTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Case_spaces_hyphens_and_leading_zeros_make_no_difference()
    {
        var unit = await UnitAsync();
        var (letters, number) = (unit[..^5].TrimEnd('-'), unit[^5..]);
        foreach (
            var said in new[]
            {
                unit.ToLowerInvariant(),
                $"{letters.ToLowerInvariant()}{number}",
                $"{letters} {number}",
                $"{letters}-{number.TrimStart('0')}",
                $"{letters}{number.TrimStart('0')}",
                $" {letters} - {number} ",
            }
        )
        {
            Assert.Equal(unit, await FirstAsync(said));
        }
    }

    [Fact]
    public async Task Look_alikes_one_wrong_and_two_swapped_characters_are_forgiven()
    {
        var unit = await UnitAsync();
        var (swapped, wrong) = (unit[..1] + unit[2] + unit[1] + unit[3..], unit[0] + "X" + unit[2..]);
        foreach (
            var said in new[]
            {
                unit.Replace('0', 'O'),
                unit.Replace('1', 'I'),
                unit.Replace('2', 'Z'),
                swapped,
                wrong,
                unit[..^1],
                unit + "7",
            }
        )
        {
            Assert.Equal(unit, await FirstAsync(said));
        }
    }

    [Fact]
    public async Task A_unit_comes_before_everything_else_that_is_called_alike()
    {
        var unit = await UnitAsync();
        var number = unit[^5..];
        var found = await FindAsync(number);
        var kinds = new List<string>();
        foreach (var serial in found.Where(f => f.Text("what") == "part").Select(f => f.Text("serial")))
        {
            kinds.Add((await workshop.GetAsync($"parts/{serial}")).Expect(200).Text("kind"));
        }

        Assert.Equal(unit, found[0].Text("serial"));
        Assert.Equal(kinds.OrderBy(k => k != "unit"), kinds);
    }

    [Fact]
    public async Task A_certificates_number_and_the_address_in_its_code_lead_to_the_unit()
    {
        var unit = await UnitAsync();
        var issued = (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        var id = issued.Text("certificateId");
        foreach (
            var said in new[]
            {
                id,
                id.ToLowerInvariant(),
                issued.Text("verifyAddress"),
                $"workshop.example/verify/{id}",
                id.Insert(4, " "),
                $"{id[..^1]}" + (id[^1] == 'A' ? 'B' : 'A'),
            }
        )
        {
            var found = (await FindAsync(said))[0];
            Assert.Equal(("certificate", id, unit), (found.Text("what"), found.Text("code"), found.Text("serial")));
        }

        var desk = await DeskClient.SignInAsync(workshop, Workshop.ServiceDesk);
        Assert.Equal(
            $"/parts/{unit}/certificate",
            (await desk.GetAsync($"/search?q={Uri.EscapeDataString(issued.Text("verifyAddress"))}")).Expect(200).Path
        );
    }

    [Fact]
    public async Task The_code_of_a_label_is_read_by_REST_as_in_the_box()
    {
        var unit = await UnitAsync();
        var label = PrintedCode.For(CodeKind.Part, unit);
        var misread = label.Text[..^1] + (label.Check == 'A' ? 'B' : 'A');
        Assert.Equal(unit, await FirstAsync(label.Text.ToLowerInvariant()));
        Assert.Equal(Workshop.Film, (await FindAsync(PrintedCode.For(CodeKind.Lot, Workshop.Film).Text))[0].Text("code"));

        var refused = await workshop.GetAsync($"search?q={misread}", Workshop.ServiceDesk);
        Assert.Contains("misread", refused.Problem(400), StringComparison.Ordinal);
        var desk = await DeskClient.SignInAsync(workshop, Workshop.ServiceDesk);
        Assert.Contains("misread", (await desk.GetAsync($"/search?q={misread}")).Expect(200).Words, StringComparison.Ordinal);
        Assert.Equal($"/parts/{unit}", (await desk.GetAsync($"/search?q={unit.Replace('0', 'O').ToLowerInvariant()}")).Expect(200).Path);
    }

    [Fact]
    public async Task What_is_called_nothing_alike_is_still_not_found()
    {
        await UnitAsync();
        Assert.Empty(await FindAsync("GREY HERON"));
        Assert.Empty(await FindAsync("QQ99-77777"));
    }

    private async Task<string> UnitAsync() => await workshop.UnitAsync();

    private async Task<IReadOnlyList<System.Text.Json.JsonElement>> FindAsync(string said) =>
        (await workshop.GetAsync($"search?q={Uri.EscapeDataString(said)}", Workshop.ServiceDesk)).Expect(200).List();

    private async Task<string> FirstAsync(string said) =>
        (await FindAsync(said)) is [var first, ..] && first.Has("serial") ? first.Text("serial") : $"nothing for {said}";
}
