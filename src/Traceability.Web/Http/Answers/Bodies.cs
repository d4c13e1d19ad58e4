namespace Traceability.Web.Http.Answers;

/// <summary>A body that is a file of one of these kinds.</summary>
public sealed record FileBody(IReadOnlyList<string> MediaTypes);

/// <summary>A body that is one of something or a list of them.</summary>
public sealed record OneOrManyBody(Type Item);
