using System.Reflection;

namespace Traceability.Domain.Tests.Architecture;

/// <summary>What the core may lean on: a closed list of assemblies, so that a new one is a decision and not an accident.</summary>
internal static class Fence
{
    public static readonly IReadOnlySet<string> AllowedForTheCore = new HashSet<string>
    {
        "System.Runtime",
        "System.Runtime.InteropServices",
        "System.Runtime.Numerics",
        "System.Memory",
        "System.Collections",
        "System.Collections.Concurrent",
        "System.Collections.Immutable",
        "System.Linq",
        "System.Text.Json",
        "System.Text.Encodings.Web",
        "System.Text.Encoding.Extensions",
        "System.Text.RegularExpressions",
        "System.Security.Cryptography",
        "MathNet.Numerics",
        "YamlDotNet",
    };

    /// <summary>What the assembly refers to beyond the list.</summary>
    public static IReadOnlyList<string> Beyond(IReadOnlySet<string> allowed, Assembly assembly) =>
        [.. assembly.GetReferencedAssemblies().Select(a => a.Name!).Where(name => !allowed.Contains(name)).Order()];
}
