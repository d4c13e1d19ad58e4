using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.InsulationTest;

/// <summary>
/// What a route must say of the voltages of an insulation test: between what they are put, and how far from pull-in they stay.
/// </summary>
internal static class TestTerminalRules
{
    /// <summary>The key under <c>parameters</c>.</summary>
    public const string Key = "terminals";

    /// <summary>What both methods of the test read from the route.</summary>
    public static readonly IReadOnlyList<MethodParameter> Parameters =
    [
        new(PermittedVoltage.FactorNumber, "", "Pull-in voltage of the capsule over the highest permitted test voltage; 1.25 is usual.")
        {
            Lower = 1,
            Required = true,
        },
        new(LeakageConsequence.BiasResistor, "GΩ", "Bias resistor of the microphone; needed for what the leakage does to it."),
        new(Electrification.Asked, "s", "How long the voltage must have been on at the last reading; not asked when not stated."),
        new(
            Key,
            null,
            "Between what the voltages are put: each with the characteristic that holds it, what is tied together at one pole and"
                + " at the other."
        )
        {
            Required = true,
        },
    ];

    /// <summary>Where its rules come from.</summary>
    public static readonly IReadOnlyList<string> Sources =
    [
        "Resistance at a stated time of electrification: IEC 62631-3-1, from memory.",
        "Distance from pull-in: common practice, no source.",
    ];

    public static IEnumerable<string> ProblemsWith(Stage stage)
    {
        if (stage.Parameters.Numbers.TryGetValue(PermittedVoltage.FactorNumber, out var factor) && factor < 1)
        {
            yield return InsulationTexts.FactorIsAtLeastOne(PermittedVoltage.FactorNumber);
        }

        if (stage.Parameters.Terminals is not { Count: > 0 } terminals)
        {
            yield return InsulationTexts.RouteSaysWhatIsTied(Key, string.Join(", ", TestTerminals.All));
            yield break;
        }

        if (terminals.All(t => t.Voltage != PermittedVoltage.TestVoltage))
        {
            yield return InsulationTexts.NoTerminalsOf(Key, PermittedVoltage.TestVoltage);
        }

        foreach (var problem in terminals.SelectMany(t => ProblemsWith(stage, t)).Distinct())
        {
            yield return problem;
        }
    }

    /// <summary>
    /// One line for each connection, with the voltage and, where it stands across a gap, the highest that this capsule may have.
    /// </summary>
    public static IEnumerable<string> InWords(Stage stage, PermittedVoltage permitted) =>
        (stage.Parameters.Terminals ?? []).Select(t =>
        {
            var voltage = stage.Characteristic(t.Voltage);
            var connection = InsulationTexts.ConnectionAt(
                Tied(t.Tied),
                Tied(t.Against),
                voltage?.Label ?? t.Voltage,
                voltage?.LimitsInWords()
            );
            return t.CrossesAGap() ? $"{connection} {permitted.InWords}." : $"{connection} {InsulationTexts.NothingAcrossTheGap}";
        });

    private static IEnumerable<string> ProblemsWith(Stage stage, TestConnection connection)
    {
        if (stage.Characteristic(connection.Voltage) is not { Entered: true, Required: true, Unit: "V", Lower: not null, Upper: not null })
        {
            yield return InsulationTexts.VoltageNeedsItsLimits(connection.Voltage);
        }

        foreach (var unknown in connection.Tied.Concat(connection.Against).Where(t => !TestTerminals.All.Contains(t)))
        {
            yield return InsulationTexts.NoSuchTerminal(unknown, string.Join(", ", TestTerminals.All));
        }

        if (connection.Tied.Count == 0 || connection.Against.Count == 0 || connection.Tied.Intersect(connection.Against).Any())
        {
            yield return InsulationTexts.PolesMustDiffer(connection.Voltage);
        }
    }

    private static string Tied(IReadOnlyList<string> terminals) => string.Join(InsulationTexts.TiedTo, terminals.Select(Name));

    private static string Name(string terminal) =>
        terminal switch
        {
            "film" => InsulationTexts.TerminalFilm,
            "backplate" => InsulationTexts.TerminalBackplate,
            "front-film" => InsulationTexts.TerminalFrontFilm,
            "front-backplate" => InsulationTexts.TerminalFrontBackplate,
            "rear-film" => InsulationTexts.TerminalRearFilm,
            "rear-backplate" => InsulationTexts.TerminalRearBackplate,
            "body" => InsulationTexts.TerminalBody,
            _ => terminal,
        };
}
