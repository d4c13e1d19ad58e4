using Traceability.Domain.Gates;

namespace Traceability.Domain.Quality.Tracing;

/// <summary>Where a traced part can be laid hands on.</summary>
public enum Whereabouts
{
    /// <summary>On its route: at a bench, in a cabinet, or waiting for its next stage.</summary>
    InWork,

    /// <summary>Finished and in the house.</summary>
    Stock,

    /// <summary>With a customer.</summary>
    Shipped,

    /// <summary>Out of use.</summary>
    Scrapped,
}

/// <summary>Finds where a part is from where it stands, and where the outermost thing around it stands.</summary>
public static class WhereaboutsOf
{
    /// <summary>A part goes where the thing around it goes, except that what was scrapped stays scrapped.</summary>
    /// <param name="part">Where the part itself stands.</param>
    /// <param name="outermost">Where the outermost part that it is in stands; the part itself when it is in nothing.</param>
    /// <param name="outermostFinished">True when every stage of the outermost part is passed.</param>
    public static Whereabouts Part(PartState part, PartState outermost, bool outermostFinished) =>
        part == PartState.Scrapped || outermost == PartState.Scrapped ? Whereabouts.Scrapped
        : outermost == PartState.Shipped ? Whereabouts.Shipped
        : outermostFinished ? Whereabouts.Stock
        : Whereabouts.InWork;
}
