using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Public.Verify;

/// <summary>Answers whether a file is, byte for byte, a certificate that was issued here; for the API and for the page.</summary>
public sealed class VerifyFile(WorkshopContext db, VerifyCertificate certificates) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/verify", HandleAsync)
            .AllowAnonymous()
            .TakesFile("application/pdf")
            .WithMetadata(new AcceptsMetadata(["application/pdf"], typeof(Stream)), new OpenBodyAttribute(MaxBytes))
            .Is(Subjects.Certificates, "verifyFile", "Is this PDF, byte for byte, a certificate issued here?");

    /// <summary>No certificate drawn here comes near this size.</summary>
    public const int MaxBytes = 20 * 1024 * 1024;

    private static string UnknownFile => PublicSentences.ThisFileIsNotByteForByte;

    public static async Task<Ok<Verified>> HandleAsync(HttpRequest request, VerifyFile use, CancellationToken cancellation)
    {
        if (request.ContentLength > MaxBytes)
        {
            throw new BadHttpRequestException($"a certificate has at most {MaxBytes} bytes", 413);
        }

        return TypedResults.Ok(await use.RunAsync(request.Body, cancellation));
    }

    /// <summary>By the file itself.</summary>
    public async Task<Verified> RunAsync(Stream pdf, CancellationToken cancellation)
    {
        var hash = await HashAsync(pdf, cancellation);
        return await db.Set<Certificate>().AsNoTracking().FirstOrDefaultAsync(c => c.PdfSha256 == hash, cancellation) is { } certificate
            ? await certificates.AboutAsync(certificate, true, cancellation)
            : new(false, false, false, UnknownFile);
    }

    private static async Task<string> HashAsync(Stream pdf, CancellationToken cancellation)
    {
        using var sha = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[64 * 1024];
        var total = 0;
        for (int read; (read = await pdf.ReadAsync(buffer, cancellation)) > 0; )
        {
            total += read;
            if (total > MaxBytes)
            {
                throw new BadHttpRequestException($"a certificate has at most {MaxBytes} bytes", 413);
            }

            sha.AppendData(buffer, 0, read);
        }

        return Convert.ToHexStringLower(sha.GetHashAndReset());
    }
}
