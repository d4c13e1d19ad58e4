namespace Traceability.Domain.Evidence;

/// <summary>A picture, known by its content and not by its name.</summary>
/// <param name="ContentType">What it is served as: <see cref="Jpeg"/> or <see cref="Png"/>.</param>
public sealed record Photo(string ContentType)
{
    /// <summary>The content type of a JPEG.</summary>
    public const string Jpeg = "image/jpeg";

    /// <summary>The content type of a PNG.</summary>
    public const string Png = "image/png";

    /// <summary>The picture's kind by its first bytes (JPEG: FF D8 FF; PNG: the eight of its specification), or that it is none.</summary>
    public static ParsedFile<Photo> Read(ReadOnlyMemory<byte> content) =>
        content.Span switch
        {
            [] => new FindingList().Refuse<Photo>(EvidenceTexts.PictureIsEmpty, FileFault.TooLittle),
            [0xFF, 0xD8, 0xFF, _, ..] => new FindingList().Accept(new Photo(Jpeg)),
            [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, _, ..] => new FindingList().Accept(new Photo(Png)),
            _ => new FindingList().Refuse<Photo>(EvidenceTexts.NoPicture, FileFault.WrongFormat),
        };
}
