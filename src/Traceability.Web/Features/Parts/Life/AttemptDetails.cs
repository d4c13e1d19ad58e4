using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Web.Features.Parts.Work;

namespace Traceability.Web.Features.Parts.Life;

/// <summary>
/// One attempt as the part's page shows it; <c>Counts</c> when it is the pass that counts for its stage, <c>InstrumentFindings</c> what
/// checks after it mean for it.
/// </summary>
public sealed record AttemptDetails(
    AttemptView View,
    Stage? Stage,
    bool Counts,
    IReadOnlyList<ChartPair> Charts,
    IReadOnlyList<string> InstrumentFindings
)
{
    /// <summary>The word for where it stands, corrections taken into account.</summary>
    public string State => AttemptState.Of(View);

    /// <summary>The name of a characteristic in the route's words.</summary>
    public string LabelOf(Reading reading) => Stage?.Characteristic(reading.Characteristic)?.Label ?? reading.Characteristic;

    /// <summary>The name of a position in the route's words.</summary>
    public string LabelOf(Fitting fitting) => Stage?.Slot(fitting.Position)?.Label ?? fitting.Position;
}
