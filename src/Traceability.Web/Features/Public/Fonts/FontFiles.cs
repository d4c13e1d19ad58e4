using Traceability.Documents.Fonts;

namespace Traceability.Web.Features.Public.Fonts;

/// <summary>Serves the typeface of the certificates to the pages too, with its licence beside it.</summary>
public static class FontFiles
{
    /// <summary>A face by its name; it changes only with a new version of the service.</summary>
    public static IResult Face(string face, HttpContext http)
    {
        if (InterFonts.FindTrueType(face) is not { } bytes)
        {
            return Results.NotFound();
        }

        http.Response.Headers.CacheControl = "public, max-age=2592000";
        return Results.Bytes(bytes, "font/ttf");
    }

    /// <summary>The SIL Open Font License.</summary>
    public static IResult Licence() => Results.Text(InterFonts.Licence);
}
