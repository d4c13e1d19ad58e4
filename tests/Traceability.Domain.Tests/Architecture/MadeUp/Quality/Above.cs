namespace Traceability.Domain.Tests.Architecture.MadeUp.Quality;

/// <summary>What a room below may not use.</summary>
internal sealed class Above
{
    public static int Count => 1;
}
