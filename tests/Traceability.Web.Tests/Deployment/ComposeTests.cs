using System.Xml.Linq;
using Npgsql;
using Traceability.Persistence.Embedded;
using Traceability.Web.Tests.Server;

namespace Traceability.Web.Tests.Deployment;

/// <summary>What can be said of docker-compose.yml and the Dockerfile without an engine.</summary>
public sealed class ComposeTests
{
    private readonly Compose compose = new();

    [Fact]
    public void The_service_connects_to_the_database_that_is_made_beside_it()
    {
        var connection = new NpgsqlConnectionStringBuilder(
            compose.Resolved("services", "service", "environment", "ConnectionStrings__Traceability")
        );
        Assert.Contains(connection.Host, compose.Keys("services"));
        Assert.Equal(compose.Resolved("services", "postgres", "environment", "POSTGRES_USER"), connection.Username);
        Assert.Equal(compose.Resolved("services", "postgres", "environment", "POSTGRES_DB"), connection.Database);
        Assert.Equal(compose.Resolved("services", "postgres", "environment", "POSTGRES_PASSWORD"), connection.Password);
        Assert.Equal(EmbeddedPostgres.OwnerRole, connection.Username);
        Assert.Equal("service_healthy", compose.Text("services", "service", "depends_on", "postgres", "condition"));
    }

    [Fact]
    public void The_database_is_of_the_version_that_the_tests_use_and_keeps_its_data_in_a_named_volume()
    {
        Assert.Equal(ContainerPostgres.PinnedImage, compose.Text("services", "postgres", "image"));
        var mount = Assert.Single(compose.Items("services", "postgres", "volumes")).Split(':');
        Assert.Contains(mount[0], compose.Keys("volumes"));
        Assert.Equal("/var/lib/postgresql/data", mount[1]);
    }

    [Fact]
    public void The_published_port_is_the_one_that_the_service_listens_at()
    {
        var address = new Uri(compose.Text("services", "service", "environment", "TRACEABILITY_URL"));
        Assert.Equal("0.0.0.0", address.Host);
        Assert.Equal($"127.0.0.1:5080:{address.Port}", Assert.Single(compose.Items("services", "service", "ports")));
        Assert.Contains($"/dev/tcp/127.0.0.1/{address.Port}", compose.Items("services", "service", "healthcheck", "test")[^1]);
    }

    [Fact]
    public void Every_setting_given_to_the_service_is_read_by_it()
    {
        var source = string.Concat(
            Directory
                .EnumerateFiles(Compose.InProject("src"), "*.cs", SearchOption.AllDirectories)
                .Where(file => !file.Contains("/obj/"))
                .Select(File.ReadAllText)
        );
        foreach (var name in compose.Keys("services", "service", "environment"))
        {
            string[] read = name.StartsWith("ConnectionStrings__", StringComparison.Ordinal)
                ? [$"GetConnectionString(\"{name.Split("__")[1]}\")"]
                : [$"[\"{name}\"]", $"Setting = \"{name}\""];
            Assert.True(Array.Exists(read, r => source.Contains(r, StringComparison.Ordinal)), $"nothing reads {name}");
        }
    }

    [Fact]
    public void The_image_is_built_from_files_that_are_there()
    {
        foreach (var path in Copied())
            Assert.True(Path.Exists(Compose.InProject(path)), path);
    }

    [Fact]
    public void Every_project_that_the_service_is_made_of_is_copied_into_the_image()
    {
        var folders = Copied().Select(Compose.InProject).Where(Directory.Exists).ToList();
        var projects = ProjectsOf(Compose.InProject("src/Traceability.Web/Traceability.Web.csproj")).ToList();
        Assert.True(projects.Count >= 4);
        Assert.All(projects, project => Assert.Contains(folders, folder => project.StartsWith(folder + "/", StringComparison.Ordinal)));
    }

    private IEnumerable<string> Copied()
    {
        var context = compose.Text("services", "service", "build", "context");
        var dockerfile = Compose.InProject(Path.Combine(context, compose.Text("services", "service", "build", "dockerfile")));
        return File.ReadLines(dockerfile)
            .Where(line => line.StartsWith("COPY ", StringComparison.Ordinal) && !line.Contains("--from="))
            .SelectMany(line => line.Split(' ')[1..^1]);
    }

    private static IEnumerable<string> ProjectsOf(string project) =>
        XDocument
            .Load(project)
            .Descendants("ProjectReference")
            .Select(reference => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(project)!, reference.Attribute("Include")!.Value)))
            .SelectMany(ProjectsOf)
            .Prepend(project)
            .Distinct();
}
