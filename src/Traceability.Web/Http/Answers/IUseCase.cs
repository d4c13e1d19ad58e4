namespace Traceability.Web.Http.Answers;

/// <summary>A use case that programs reach: it says in its own folder at which addresses, who may, and what it does.</summary>
public interface IUseCase
{
    /// <summary>Puts its addresses under <paramref name="api"/>.</summary>
    static abstract void Map(IEndpointRouteBuilder api);
}
