namespace Traceability.Persistence.Embedded;

/// <summary>The private PostgreSQL cannot run here; the message is one line that ends with the ways out.</summary>
public sealed class EmbeddedPostgresException(string problem, Exception? cause = null) : Exception($"{problem} {WaysOut}", cause)
{
    public const string WaysOut =
        "Otherwise name a PostgreSQL server of your own in ConnectionStrings__Traceability, or start everything with: docker compose up";
}
