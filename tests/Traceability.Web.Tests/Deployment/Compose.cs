using YamlDotNet.RepresentationModel;

namespace Traceability.Web.Tests.Deployment;

/// <summary>docker-compose.yml and the Dockerfile as they lie in the project.</summary>
internal sealed class Compose
{
    private readonly YamlMappingNode root;

    public Compose()
    {
        var yaml = new YamlStream();
        using var file = File.OpenText(InProject("docker-compose.yml"));
        yaml.Load(file);
        root = (YamlMappingNode)yaml.Documents[0].RootNode;
    }

    public YamlNode this[params string[] path] => path.Aggregate((YamlNode)root, (node, key) => node[key]);

    public string Text(params string[] path) => this[path].ToString();

    public IReadOnlyList<string> Keys(params string[] path) =>
        [.. ((YamlMappingNode)this[path]).Children.Keys.Select(key => key.ToString())];

    public IReadOnlyList<string> Items(params string[] path) => [.. ((YamlSequenceNode)this[path]).Select(item => item.ToString())];

    /// <summary>The value with every ${NAME:-default} replaced by its default, as when nothing is set.</summary>
    public string Resolved(params string[] path) => System.Text.RegularExpressions.Regex.Replace(Text(path), @"\$\{\w+:-([^}]*)\}", "$1");

    public static string InProject(string path)
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Traceability.sln")))
            folder = Path.GetDirectoryName(folder)!;
        return Path.GetFullPath(Path.Combine(folder, path));
    }
}
