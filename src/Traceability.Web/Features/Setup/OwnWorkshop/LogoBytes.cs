using Traceability.Documents.Logos;
using Traceability.Domain.Work;

namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>Reads a logo that somebody sends, and says what is wrong with one.</summary>
internal static class LogoBytes
{
    /// <summary>The bytes; null when there are more than a logo has, of which no more are read.</summary>
    public static async Task<byte[]?> ReadAsync(Stream from, CancellationToken cancellation)
    {
        using var kept = new MemoryStream();
        var part = new byte[64 * 1024];
        for (int read; (read = await from.ReadAsync(part, cancellation)) > 0; )
        {
            if (kept.Length + read > LogoFile.MostBytes)
            {
                return null;
            }

            kept.Write(part, 0, read);
        }

        return kept.ToArray();
    }

    /// <summary>Why it is refused, and what to do.</summary>
    public static Refusal Refused(LogoProblem problem) =>
        Refusal.Invalid(
            "logo",
            problem.Fault switch
            {
                LogoFault.TooManyPixels => SetupSentences.LogoHasTooManyPixels(problem.What!, LogoFile.MostPixels),
                LogoFault.Script => SetupSentences.LogoHoldsAScript(problem.What!),
                LogoFault.ForeignContent => SetupSentences.LogoHoldsForeignContent(problem.What!),
                LogoFault.Reference => SetupSentences.LogoRefersElsewhere(problem.What!),
                LogoFault.Declaration => SetupSentences.LogoDeclaresEntities,
                LogoFault.NotDrawn => SetupSentences.LogoHoldsWhatIsNotDrawn(problem.What!),
                LogoFault.Empty => SetupSentences.LogoIsEmpty,
                _ => SetupSentences.LogoIsNoPicture,
            }
        );

    /// <summary>The refusal of a file that is too large.</summary>
    public static Refusal TooLarge => Refusal.Invalid("logo", SetupSentences.LogoIsTooLarge);
}
