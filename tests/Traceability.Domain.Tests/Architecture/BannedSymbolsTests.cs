namespace Traceability.Domain.Tests.Architecture;

public class BannedSymbolsTests
{
    public static TheoryData<string> Ids => [.. BannedSymbol.OfTheCore.Select(s => s.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_banned_symbol_exists(string id) => Assert.True(new BannedSymbol(id).Exists, $"there is no {id}");

    [Theory]
    [InlineData("T:System.IO.Flie")]
    [InlineData("P:System.DateTime.UtcNaw")]
    [InlineData("M:System.Guid.NewGuid(System.Int32)")]
    [InlineData("M:System.Guid.NewGiud")]
    [InlineData("System.DateTime.UtcNow")]
    public void A_misspelt_symbol_is_found_out(string id) => Assert.False(new BannedSymbol(id).Exists);

    [Theory]
    // Clocks.
    [InlineData("System.DateTime", "Now")]
    [InlineData("System.DateTime", "UtcNow")]
    [InlineData("System.DateTime", "Today")]
    [InlineData("System.DateTimeOffset", "Now")]
    [InlineData("System.DateTimeOffset", "UtcNow")]
    [InlineData("System.TimeProvider", null)]
    [InlineData("System.Diagnostics.Stopwatch", null)]
    [InlineData("System.Environment", "TickCount64")]
    [InlineData("System.TimeZoneInfo", "Local")]
    // Chance.
    [InlineData("System.Random", null)]
    [InlineData("System.Guid", "NewGuid")]
    [InlineData("System.Guid", "CreateVersion7")]
    [InlineData("System.Security.Cryptography.RandomNumberGenerator", null)]
    // Files, network, environment.
    [InlineData("System.IO.File", null)]
    [InlineData("System.IO.FileStream", null)]
    [InlineData("System.IO.Directory", null)]
    [InlineData("System.IO.Path", "GetTempFileName")]
    [InlineData("System.Console", null)]
    [InlineData("System.Net.Http.HttpClient", null)]
    [InlineData("System.Net.Sockets.Socket", null)]
    [InlineData("System.Diagnostics.Process", null)]
    [InlineData("System.Environment", "GetEnvironmentVariable")]
    [InlineData("System.Environment", "MachineName")]
    [InlineData("System.Threading.Thread", null)]
    [InlineData("System.Threading.Timer", null)]
    public void Clock_chance_and_the_outside_world_are_banned(string type, string? member) =>
        Assert.True(BannedSymbol.Covers(BannedSymbol.OfTheCore, type, member));

    [Fact]
    public void A_symbol_missing_from_the_list_would_be_missed()
    {
        var without = BannedSymbol.OfTheCore.Where(s => s.Id != "T:System.Random").ToList();

        Assert.False(BannedSymbol.Covers(without, "System.Random"));
        Assert.False(BannedSymbol.Covers(without, "System.Guid", "Parse"));
    }

    [Fact]
    public void The_list_is_given_to_the_analyzer_and_nobody_silences_it()
    {
        var project = TheRepository.Projects["Traceability.Domain"];

        Assert.Contains("BannedSymbols.txt", project.Included("AdditionalFiles"));
        Assert.Contains("Microsoft.CodeAnalysis.BannedApiAnalyzers", project.Included("PackageReference"));
        Assert.All(
            [
                project.ToString(),
                File.ReadAllText(TheRepository.At("Directory.Build.props")),
                File.ReadAllText(TheRepository.At(".editorconfig")),
            ],
            text => Assert.DoesNotContain("RS0030", text, StringComparison.Ordinal)
        );
        Assert.All(
            TheRepository.Sources("src", "Traceability.Domain"),
            f => Assert.DoesNotContain("#pragma warning disable", f.Text, StringComparison.Ordinal)
        );
    }
}
