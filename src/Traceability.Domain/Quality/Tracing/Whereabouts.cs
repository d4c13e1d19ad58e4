using Traceability.Domain.Gates;

namespace Traceability.Domain.Quality.Tracing;

/// <summary>Where a traced part is to be found.</summary>
public enum Whereabouts
{
    /// <summary>On its route: at a bench, in a cabinet, or waiting for its next stage.</summary>
    InWork,

    /// <summary>Finished and in the house.</summary>
    Stock,

    /// <summary>With a customer.</summary>
    Shipped,

    /// <summary>Back from a customer.</summary>
    Returned,

    /// <summary>Out of use.</summary>
    Scrapped,
}

/// <summary>Finds where a part is from what it is now, so that the two never disagree.</summary>
public static class WhereaboutsOf
{
    /// <summary>A part goes where the thing around it goes, except that what was scrapped stays scrapped.</summary>
    /// <param name="part">What the part is now, which says whether it left the house or use, by itself or inside something.</param>
    /// <param name="outermostFinished">True when every stage of the outermost part around it is passed; of itself, when it is in
    /// nothing.</param>
    public static Whereabouts Part(StandingCode part, bool outermostFinished) =>
        part switch
        {
            StandingCode.Scrapped => Whereabouts.Scrapped,
            StandingCode.Returned => Whereabouts.Returned,
            StandingCode.Shipped => Whereabouts.Shipped,
            _ => outermostFinished ? Whereabouts.Stock : Whereabouts.InWork,
        };
}
