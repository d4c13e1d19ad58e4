namespace Traceability.Domain.Quality;

/// <summary>
/// Either a computed figure or the reason why there is none. Every analysis that thin data can defeat returns one, so that a page
/// has to decide what to show instead of printing a NaN.
/// </summary>
/// <typeparam name="T">The figure, when there is one.</typeparam>
public sealed record Computed<T>
    where T : notnull
{
    private readonly T? value;

    private Computed(T? value, NotEnoughData? missing) => (this.value, Missing) = (value, missing);

    /// <summary>What is missing, or null when the figure is known.</summary>
    public NotEnoughData? Missing { get; }

    /// <summary>True when <see cref="Value"/> may be read.</summary>
    public bool IsKnown => Missing is null;

    /// <summary>The figure.</summary>
    /// <exception cref="InvalidOperationException">There is none; the message says what is missing.</exception>
    public T Value => Missing is null ? value! : throw new InvalidOperationException(Missing.ToString());

    /// <summary>Carries a figure as an answer.</summary>
    /// <param name="value">The figure.</param>
    public static implicit operator Computed<T>(T value) => new(value, null);

    /// <summary>Carries a refusal as an answer.</summary>
    /// <param name="missing">What is missing.</param>
    public static implicit operator Computed<T>(NotEnoughData missing) => new(default, missing);

    /// <summary>Folds both cases into one result.</summary>
    /// <typeparam name="TResult">What both cases become.</typeparam>
    /// <param name="known">Used when there is a figure.</param>
    /// <param name="missing">Used when there is none.</param>
    public TResult Match<TResult>(Func<T, TResult> known, Func<NotEnoughData, TResult> missing) =>
        Missing is null ? known(value!) : missing(Missing);

    /// <summary>Computes on with the figure and passes a refusal through.</summary>
    /// <typeparam name="TOther">The next figure.</typeparam>
    /// <param name="next">Computes the next figure from this one.</param>
    public Computed<TOther> Select<TOther>(Func<T, TOther> next)
        where TOther : notnull => Missing is null ? next(value!) : Missing;

    /// <summary>The figure's own text, or the sentence that says what is missing.</summary>
    public override string ToString() => Missing is null ? value!.ToString() ?? "" : Missing.ToString();
}
