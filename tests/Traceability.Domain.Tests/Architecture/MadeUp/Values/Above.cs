namespace Traceability.Domain.Tests.Architecture.MadeUp.Values;

/// <summary>Has the name of a type of another room.</summary>
internal sealed class Above;
