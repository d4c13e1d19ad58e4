using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Setup.InstrumentTokens;

/// <summary>Finds the instrument that tokens are for.</summary>
internal static class InstrumentByCode
{
    /// <summary>The instrument, or null; however the code was typed.</summary>
    public static Task<Instrument?> FindAsync(WorkshopContext db, string code, CancellationToken cancellation)
    {
        var known = code.Trim().ToUpperInvariant();
        return db.Kept<Instrument>().AsNoTracking().FirstOrDefaultAsync(i => i.Code == known, cancellation);
    }

    /// <summary>Says that there is none.</summary>
    public static Refusal Unknown(string code) => Refusal.NotFound(SetupSentences.ThereIsNoInstrument(code));
}
