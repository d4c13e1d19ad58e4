using Traceability.Domain.Records;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Tests.Routes;

namespace Traceability.Domain.Tests.Stages;

/// <summary>Judges a stage of a demo route whose readings are nominal but for what a test is about.</summary>
internal static class Judging
{
    /// <summary>All nominal, with finished nominal parts inside.</summary>
    public static StageInput Nominal(string model, string kind, string stage) => NominalBuild.InputOf(model, kind, stage);

    /// <summary>The same with some entered values changed; null leaves the value out.</summary>
    public static StageInput With(this StageInput input, params (string Name, decimal? Value)[] values)
    {
        var entered = input.Entered.ToDictionary();
        foreach (var (name, value) in values)
        {
            if (value is { } number)
            {
                entered[name] = number;
            }
            else
            {
                entered.Remove(name);
            }
        }

        return input with
        {
            Entered = entered,
        };
    }

    /// <summary>The same with some values of earlier stages changed; null stands for none on record.</summary>
    public static StageInput WithEarlier(this StageInput input, params (string Name, decimal? Value)[] values)
    {
        var (before, changed) = (input.Earlier, values.ToDictionary(v => v.Name, v => v.Value));
        return input with { Earlier = name => changed.TryGetValue(name, out var value) ? value : before(name) };
    }

    /// <summary>The same with some numbers of the route changed.</summary>
    public static StageInput WithNumbers(this StageInput input, params (string Name, decimal Value)[] numbers)
    {
        var all = input.Stage.Parameters.Numbers.ToDictionary();
        foreach (var (name, value) in numbers)
        {
            all[name] = value;
        }

        return input with
        {
            Stage = input.Stage with { Parameters = input.Stage.Parameters with { Numbers = all } },
        };
    }

    /// <summary>The same with other limits on a characteristic.</summary>
    public static StageInput WithLimits(this StageInput input, string characteristic, decimal? lower, decimal? upper) =>
        input with
        {
            Stage = input.Stage with
            {
                Characteristics =
                [
                    .. input.Stage.Characteristics.Select(c =>
                        c.Name == characteristic ? c with { Lower = lower, Upper = upper, Nominal = null } : c
                    ),
                ],
            },
        };

    /// <summary>What the stage's own method says.</summary>
    public static StageOutcome Judge(this StageInput input) => StageMethods.Get(input.Stage.Method).Judge(input);

    /// <summary>The digits of a computed value; null when it was not computed.</summary>
    public static string? Digits(this StageOutcome outcome, string characteristic) =>
        outcome.Computed.FirstOrDefault(c => c.Characteristic == characteristic)?.Digits;

    /// <summary>Pass or fail as closing would say; null when nothing can be judged.</summary>
    public static bool? Passes(this StageInput input)
    {
        var outcome = input.Judge();
        return outcome.Unreadable is not null
            ? null
            : !outcome.Findings.Any(f => f.Fails)
                && input
                    .Entered.Select(e => (Name: e.Key, e.Value))
                    .Concat(outcome.Computed.Select(c => (Name: c.Characteristic, c.Value)))
                    .All(v => input.Stage.Characteristic(v.Name)!.IsMetBy(v.Value));
    }

    /// <summary>No verdict was invented, and the words say why.</summary>
    public static void IsNotJudged(this StageInput input, params string[] words)
    {
        var outcome = input.Judge();
        Assert.NotNull(outcome.Unreadable);
        Assert.Empty(outcome.Computed);
        Assert.All(words, w => Assert.Contains(w, outcome.Unreadable, StringComparison.Ordinal));
    }

    /// <summary>A value that equals its limit meets it, a step beyond does not.</summary>
    public static void JudgesAtItsLimits(this StageInput input, string characteristic, decimal step)
    {
        var value = input.Judge().Value(characteristic);
        Assert.True(input.WithLimits(characteristic, value, value).Passes());
        Assert.True(input.WithLimits(characteristic, value - step, value + step).Passes());
        Assert.False(input.WithLimits(characteristic, value + step, null).Passes());
        Assert.False(input.WithLimits(characteristic, null, value - step).Passes());
    }

    /// <summary>An instrument in use whose calibration states a constant.</summary>
    public static StageInput Calibrated(this StageInput input, string constant, decimal value) =>
        input with
        {
            Instruments = [new("RES-1", "resonance-bench", new Dictionary<string, decimal> { [constant] = value })],
        };

    /// <summary>The film lot inside, otherwise than nominal.</summary>
    public static StageInput OfFilm(this StageInput input, decimal? baseUm, decimal? metalNm) =>
        input with
        {
            Inside = input.Inside.ToDictionary(
                i => i.Key,
                i =>
                    i.Value is FittedLot { Lot.Kind: Lot.FilmKind } film
                        ? film with
                        {
                            Lot = film.Lot with { FilmBaseThicknessUm = baseUm, FilmMetalThicknessNm = metalNm },
                        }
                        : i.Value
            ),
        };
}
