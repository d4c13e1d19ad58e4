using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Traceability.Documents.Fonts;

/// <summary>
/// The typeface Inter, read out of a font assembly that is embedded here as data and never loaded as code.
/// </summary>
public static class InterFonts
{
    /// <summary>The faces drawn with here, and those a page may ask for.</summary>
    public const string Light = "Inter-Light",
        Regular = "Inter-Regular",
        Medium = "Inter-Medium",
        SemiBold = "Inter-SemiBold",
        Bold = "Inter-Bold";

    private static readonly Lazy<IReadOnlyDictionary<string, byte[]>> Faces = new(Load);

    /// <summary>Names of all faces in the assembly.</summary>
    public static IReadOnlyCollection<string> Names => [.. Faces.Value.Keys];

    /// <summary>The SIL Open Font License under which Inter is passed on; serve it beside the fonts.</summary>
    public static string Licence { get; } = ReadLicence();

    /// <summary>The TrueType file of a face, or null when there is none of that name.</summary>
    public static ReadOnlyMemory<byte>? FindTrueType(string face) =>
        Faces.Value.TryGetValue(face, out var bytes) ? bytes : (ReadOnlyMemory<byte>?)null;

    internal static byte[] TrueType(string face) => Faces.Value[face];

    private static Stream Resource(string name) =>
        typeof(InterFonts).Assembly.GetManifestResourceStream(name)
        ?? throw new InvalidOperationException($"Resource {name} was not embedded.");

    private static string ReadLicence()
    {
        using var reader = new StreamReader(Resource("inter-licence.txt"));
        return reader.ReadToEnd();
    }

    private static Dictionary<string, byte[]> Load()
    {
        using var image = new PEReader(Resource("inter-fonts.dll"), PEStreamOptions.PrefetchEntireImage);
        var metadata = image.GetMetadataReader();
        var bundle = metadata
            .ManifestResources.Select(metadata.GetManifestResource)
            .Single(resource => metadata.GetString(resource.Name) == "!AvaloniaResources");
        var block = image.GetSectionData(image.PEHeaders.CorHeader!.ResourcesDirectory.RelativeVirtualAddress);
        var reader = block.GetReader((int)bundle.Offset, block.Length - (int)bundle.Offset);
        return Unpack(reader.ReadBytes(reader.ReadInt32()));
    }

    /// Layout of the bundle: length of the index; then its version, the number of files and (path, offset, length) of each; then the files.
    private static Dictionary<string, byte[]> Unpack(byte[] bundle)
    {
        using var index = new BinaryReader(new MemoryStream(bundle));
        var start = sizeof(int) + index.ReadInt32();
        if (index.ReadInt32() is not 2 and var version)
            throw new InvalidDataException($"Font bundle version {version} is not known here.");

        var faces = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        for (var left = index.ReadInt32(); left > 0; left--)
        {
            var (path, offset, length) = (index.ReadString(), start + index.ReadInt32(), index.ReadInt32());
            if (path.EndsWith(".ttf", StringComparison.OrdinalIgnoreCase))
                faces[Path.GetFileNameWithoutExtension(path)] = bundle[offset..(offset + length)];
        }
        return faces;
    }
}
