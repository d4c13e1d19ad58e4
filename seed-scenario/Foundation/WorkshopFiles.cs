using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace Traceability.SeedScenario.Foundation;

/// <summary>The workshop on paper: files that lie beside this program and travel inside it.</summary>
internal static class WorkshopFiles
{
    private static readonly IDeserializer Yaml = new DeserializerBuilder().WithNamingConvention(CamelCaseNamingConvention.Instance).Build();

    private static readonly IDeserializer RouteHead = new DeserializerBuilder()
        .WithNamingConvention(CamelCaseNamingConvention.Instance)
        .IgnoreUnmatchedProperties()
        .Build();

    public static IReadOnlyList<PersonEntry> People { get; } = Read<PersonEntry>("people");

    public static IReadOnlyList<StationEntry> Stations { get; } = Read<StationEntry>("stations");

    public static IReadOnlyList<InstrumentEntry> Instruments { get; } = Read<InstrumentEntry>("instruments");

    public static IReadOnlyList<KindEntry> Kinds { get; } = Read<KindEntry>("kinds");

    public static IReadOnlyList<LotEntry> Lots { get; } = Read<LotEntry>("lots");

    /// <summary>The text of every route file, by file name.</summary>
    public static IEnumerable<(string File, string Text)> Routes =>
        typeof(WorkshopFiles)
            .Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith("routes/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(n => (n, Text(n)));

    /// <summary>PINs by badge, with that of the workshop lead, whom the program itself makes.</summary>
    public static IReadOnlyDictionary<string, string> Pins { get; } =
        People.ToDictionary(p => p.Badge, p => p.Pin).Append(new("LEAD1", "5555")).ToDictionary();

    /// <summary>The badge of whom a route file asks to approve it.</summary>
    public static string ApproverOf(string route) => RouteHead.Deserialize<RouteHeadEntry>(route).ApprovedBy;

    private static List<T> Read<T>(string name) => Yaml.Deserialize<List<T>>(Text($"workshop/{name}.yaml"));

    private static string Text(string resource)
    {
        using var reader = new StreamReader(typeof(WorkshopFiles).Assembly.GetManifestResourceStream(resource)!);
        return reader.ReadToEnd();
    }
}

/// <summary>A person of the demo; <c>all</c> among the qualifications stands for every one that a route asks for.</summary>
internal sealed record PersonEntry
{
    public string Badge { get; init; } = "";
    public string Pin { get; init; } = "";
    public string Name { get; init; } = "";
    public List<string> Roles { get; init; } = [];
    public List<string> Qualifications { get; init; } = [];
}

/// <summary>A kind in one of the lists of the demo.</summary>
internal sealed record KindEntry
{
    public string Of { get; init; } = "";
    public string Code { get; init; } = "";
    public string Title { get; init; } = "";
}

/// <summary>What the demo reads of a route file: who is asked to approve it.</summary>
internal sealed record RouteHeadEntry
{
    public string ApprovedBy { get; init; } = "";
}

/// <summary>A station, and the stages that the scenario does there.</summary>
internal sealed record StationEntry
{
    public string Code { get; init; } = "";
    public string Title { get; init; } = "";
    public List<string> Stages { get; init; } = [];
}

/// <summary>An instrument with its last calibration before the scenario begins.</summary>
internal sealed record InstrumentEntry
{
    public string Code { get; init; } = "";
    public string Kind { get; init; } = "";
    public string Title { get; init; } = "";
    public int CalibratedDaysAgo { get; init; }
    public string Reference { get; init; } = "";
    public decimal? CheckNominal { get; init; }
    public decimal? CheckTolerance { get; init; }
    public string? CheckUnit { get; init; }
    public bool ByPlan { get; init; }
    public Dictionary<string, decimal>? Constants { get; init; }
}

/// <summary>A lot with the week of the scenario from which it is used.</summary>
internal sealed record LotEntry
{
    public string Number { get; init; } = "";
    public string Kind { get; init; } = "";
    public string Supplier { get; init; } = "";
    public string SupplierLot { get; init; } = "";
    public decimal Quantity { get; init; }
    public string Unit { get; init; } = "";
    public int? FromWeek { get; init; }
    public string? Stays { get; init; }
    public FilmEntry? Film { get; init; }
}

/// <summary>What the supplier's certificate says of a film.</summary>
internal sealed record FilmEntry
{
    public decimal BaseThicknessUm { get; init; }
    public decimal MetalThicknessNm { get; init; }
    public decimal SheetResistanceOhm { get; init; }
}
