using System.Globalization;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Resources;
using System.Runtime.Loader;
using Traceability.Domain.Gates.Rules;

namespace Traceability.Domain.Tests.Texts;

/// <summary>
/// A second language that exists in the tests only: every English sentence between « and ». It is made as the build makes one out of
/// X.eo.resx, as a satellite of the core, so that what is tested is how a real one is found.
/// </summary>
internal static class AnotherLanguage
{
    private static readonly CultureInfo Culture = CultureInfo.GetCultureInfo("eo");

    private static readonly Assembly Core = typeof(Gatekeeper).Assembly;

    static AnotherLanguage() =>
        AssemblyLoadContext.GetLoadContext(Core)!.Resolving += (context, wanted) =>
            wanted.Name == Core.GetName().Name + ".resources" && wanted.CultureName == Culture.Name
                ? context.LoadFromStream(Satellite())
                : null;

    /// <summary>What is said by somebody who works in that language.</summary>
    public static T Speaking<T>(Func<T> say) => Speaking(Culture, say);

    /// <summary>What is said by somebody who works in a language.</summary>
    public static T Speaking<T>(CultureInfo language, Func<T> say)
    {
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = language;
            return say();
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    private static MemoryStream Satellite()
    {
        var (metadata, resources) = (new MetadataBuilder(), new BlobBuilder());
        var name = Core.GetName();
        metadata.AddAssembly(
            metadata.GetOrAddString(name.Name + ".resources"),
            name.Version!,
            metadata.GetOrAddString(Culture.Name),
            default,
            default,
            AssemblyHashAlgorithm.None
        );
        metadata.AddModule(
            0,
            metadata.GetOrAddString(name.Name + ".resources.dll"),
            metadata.GetOrAddGuid(new Guid("4a5f3c1e-0000-4000-8000-000000000001")),
            default,
            default
        );
        metadata.AddTypeDefinition(
            default,
            default,
            metadata.GetOrAddString("<Module>"),
            default,
            MetadataTokens.FieldDefinitionHandle(1),
            MetadataTokens.MethodDefinitionHandle(1)
        );
        foreach (var file in Core.GetManifestResourceNames())
        {
            var spoken = Spoken(file);
            metadata.AddManifestResource(
                ManifestResourceAttributes.Public,
                metadata.GetOrAddString($"{Path.GetFileNameWithoutExtension(file)}.{Culture.Name}.resources"),
                default,
                (uint)resources.Count
            );
            resources.WriteInt32(spoken.Length);
            resources.WriteBytes(spoken);
            resources.Align(8);
        }

        var image = new BlobBuilder();
        new ManagedPEBuilder(
            PEHeaderBuilder.CreateLibraryHeader(),
            new MetadataRootBuilder(metadata),
            new BlobBuilder(),
            managedResources: resources
        ).Serialize(image);
        return new MemoryStream(image.ToArray());
    }

    private static byte[] Spoken(string file)
    {
        using var spoken = new MemoryStream();
        using (var reader = new ResourceReader(Core.GetManifestResourceStream(file)!))
        using (var writer = new ResourceWriter(spoken))
        {
            var entries = reader.GetEnumerator();
            while (entries.MoveNext())
            {
                writer.AddResource((string)entries.Key, $"«{entries.Value}»");
            }

            writer.Generate();
            return spoken.ToArray();
        }
    }
}
