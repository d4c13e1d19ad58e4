namespace Traceability.Domain.Work.QualityDecisions;

/// <summary>What a trace begins with: the thing that is in doubt.</summary>
public enum TraceKind
{
    /// <summary>One lot of ours.</summary>
    Lot,

    /// <summary>What a supplier calls one lot; it may have come in under several numbers of ours.</summary>
    SupplierLot,

    /// <summary>An instrument, from its last good proof on.</summary>
    Instrument,

    /// <summary>A jig, tray or tin.</summary>
    Carrier,

    /// <summary>One run for many parts.</summary>
    Load,

    /// <summary>A bench or cabinet.</summary>
    Station,

    /// <summary>A person.</summary>
    Person,
}

/// <summary>The words of the contract for what a trace begins with.</summary>
public static class TraceKinds
{
    private static readonly IReadOnlyDictionary<string, TraceKind> ByCode = Enum.GetValues<TraceKind>().ToDictionary(Code);

    /// <summary>Every word, in the order in which a page offers them.</summary>
    public static IEnumerable<string> Codes => ByCode.Keys;

    /// <summary>The word: "supplier-lot".</summary>
    public static string Code(this TraceKind kind) => kind == TraceKind.SupplierLot ? "supplier-lot" : kind.ToString().ToLowerInvariant();

    /// <summary>The kind of that word; null when there is none.</summary>
    public static TraceKind? FromCode(string code) => ByCode.TryGetValue(code, out var kind) ? kind : null;

    /// <summary>True when only the work of a period is in doubt; a lot is, or is not, inside.</summary>
    public static bool HasPeriod(this TraceKind kind) => kind is not (TraceKind.Lot or TraceKind.SupplierLot or TraceKind.Load);
}
