namespace Traceability.Web.Http.Answers;

/// <summary>What a feature consists of, one line a use case: read by the program for its services and for its addresses.</summary>
public sealed class Contents
{
    private readonly List<Action<IServiceCollection>> services = [];
    private readonly List<Action<IEndpointRouteBuilder>> addresses = [];

    /// <summary>A use case with addresses of its own.</summary>
    public Contents With<T>()
        where T : class, IUseCase
    {
        addresses.Add(T.Map);
        return Needing<T>();
    }

    /// <summary>What use cases or pages need, made anew for every request.</summary>
    public Contents Needing<T>()
        where T : class
    {
        services.Add(s => s.AddScoped<T>());
        return this;
    }

    /// <summary>What use cases or pages need, once for the whole program.</summary>
    public Contents NeedingOnce<T>()
        where T : class
    {
        services.Add(s => s.AddSingleton<T>());
        return this;
    }

    /// <summary>Adds the services.</summary>
    public void AddTo(IServiceCollection collection) => services.ForEach(add => add(collection));

    /// <summary>Puts the addresses where they belong.</summary>
    public void MapTo(IEndpointRouteBuilder api) => addresses.ForEach(map => map(api));
}
