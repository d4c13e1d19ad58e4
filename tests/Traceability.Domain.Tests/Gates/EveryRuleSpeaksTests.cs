using System.Globalization;
using System.Reflection;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Tests.Texts;

namespace Traceability.Domain.Tests.Gates;

/// <summary>
/// One part in perfect order and several in none: between them every rule is met once and unmet once, and always says why.
/// </summary>
public class EveryRuleSpeaksTests
{
    private static readonly DateOnly LastYear = new(2025, 6, 1);

    private static readonly IReadOnlyList<Type> RuleFiles =
    [
        .. typeof(PartUsable)
            .Assembly.GetTypes()
            .Where(t => t.Namespace == typeof(PartUsable).Namespace && t.GetMethod("Check") is not null),
    ];

    private static IEnumerable<string> AllRules => RuleFiles.Select(NameOf).OfType<string>();

    private static string? NameOf(Type rule) =>
        (string?)rule.GetField("Rule", BindingFlags.Public | BindingFlags.Static)?.GetRawConstantValue();

    private static APart Demanding(bool inOrder)
    {
        var last = (
            ARoute.Stage("stack") with
            {
                Waits = [new("dry", 60)],
                Windows = [new("dry", 90)],
                MinimumOpenMinutes = 15,
                InstrumentKinds = ["balance"],
                CheckedToday = true,
                Qualification = "stacking",
                AllowedAttempts = 1,
                NotByBuilderOf = ["dry"],
                Match = new(["front", "rear"], "resonanceHz", 0.5m),
                Parameters = new() { Terminals = [new("testVoltageV", ["film"], ["backplate"])] },
            }
        ).Taking("front", partKind: ARoute.ChildKind).Taking("rear", partKind: ARoute.ChildKind);
        last = last with { Characteristics = [new("testVoltageV", "Test voltage", "V", null, 60, 70, null, true, false, false)] };
        var cut = inOrder ? ARoute.Stage("cut").Measuring("pullInV", 80, 90) : ARoute.Stage("cut").Measuring("pullInV", 60, 70);
        var part = new APart(ARoute.Of(cut, ARoute.Stage("dry"), last)).Passed("cut", "dry");
        part.Bench.Later(inOrder ? 70 : 30);
        part.Worker = inOrder ? Somebody.OtherBuilder.QualifiedFor("stacking") : Somebody.Builder;
        part.Instruments = [Something.Instrument("balance", LastYear, inOrder ? part.Bench.Today : LastYear, true).Checked(part.Bench.Now)];
        return part;
    }

    private static IReadOnlyDictionary<string, Input> Pair(decimal difference) =>
        new Dictionary<string, Input>
        {
            ["front"] = Something.Part("front", serial: "D-1", values: ("resonanceHz", 900m)),
            ["rear"] = Something.Part("rear", serial: "D-2", values: ("resonanceHz", 900m + difference)),
        };

    private static IReadOnlyDictionary<string, Input> InDoubt() =>
        Pair(0.5m)
            .ToDictionary(
                p => p.Key,
                p =>
                    (Input)(
                        (PartInput)p.Value with
                        {
                            InDoubt =
                            [
                                new(Guid.Empty, "D-1", "verify", "RB-1", "D-1: Verify was measured with RB-1, which failed its check"),
                            ],
                        }
                    )
            );

    private static IEnumerable<GateCheck> InOrder()
    {
        var part = Demanding(inOrder: true);
        var start = part.Gate("stack");
        part.Opened("stack");
        part.Bench.Later(15);
        return
        [
            .. start.Checks,
            .. Gatekeeper.EvaluateInputs(part.Dossier, part.StageOf("stack"), part.Context with { Inputs = Pair(0.5m) }).Checks,
            .. Gatekeeper.EvaluateEnd(part.Dossier, part.StageOf("stack"), part.Context with { Inputs = Pair(0.5m) }).Checks,
        ];
    }

    private static IEnumerable<GateCheck> OutOfOrder()
    {
        var early = Demanding(inOrder: false);
        early.Holding(InsideProblemKind.Hold).TryRaise().Accepted();
        early.Hold();
        var late = Demanding(inOrder: false).Holding(InsideProblemKind.Quarantine);
        late.Bench.Later(100);
        var again = new APart(
            ARoute.Of(ARoute.Stage("test").Measuring("levelDb", 0, 1) with { AllowedAttempts = 1 }, ARoute.Stage("pack"))
        ).Failed("test");
        var open = Demanding(inOrder: true).Opened("stack");
        var end = open.Context with { Inputs = Pair(0.75m) };
        return
        [
            .. early.Gate("stack").Checks,
            .. late.Gate("stack").Checks,
            .. again.Gate("test").Checks,
            .. again.Gate("pack").Checks,
            .. Gatekeeper.EvaluateInputs(open.Dossier, open.StageOf("stack"), open.Context with { Inputs = InDoubt() }).Checks,
            .. open.Gate("dry").Checks,
            .. Gatekeeper.EvaluateEnd(open.Dossier, open.StageOf("stack"), end).Checks,
            .. open.EndGate("stack").Checks,
        ];
    }

    [Fact]
    public void Every_rule_has_a_name_of_its_own()
    {
        Assert.All(RuleFiles, rule => Assert.False(string.IsNullOrEmpty(NameOf(rule)), rule.Name));
        Assert.Distinct(AllRules);
    }

    [Fact]
    public void Every_rule_is_met_by_a_part_in_order_and_says_why()
    {
        var checks = InOrder().ToList();

        Assert.All(checks, Outcomes.IsMet);
        Assert.Equal(AllRules.Order(), checks.Select(c => c.Rule).Distinct().Order());
    }

    [Fact]
    public void Every_rule_is_unmet_by_some_part_out_of_order_and_says_why_and_what_would_help()
    {
        var unmet = OutOfOrder().Where(c => !c.Met).ToList();

        Assert.All(unmet, c => Assert.False(string.IsNullOrWhiteSpace(c.Because) || string.IsNullOrWhiteSpace(c.Remedy), c.ToString()));
        Assert.Equal(AllRules.Order(), unmet.Select(c => c.Rule).Distinct().Order());
    }

    [Fact]
    public void Every_rule_speaks_the_language_of_who_asks() =>
        Assert.All(
            AnotherLanguage.Speaking(() => InOrder().Concat(OutOfOrder()).ToList()),
            c => Assert.Matches("^«.*» / «.*»$", $"{c.Because} / {c.Remedy ?? "«»"}")
        );

    [Fact]
    public void The_words_are_the_same_wherever_the_workshops_computer_was_set_up()
    {
        var before = CultureInfo.CurrentCulture;
        string[] Said() => [.. InOrder().Concat(OutOfOrder()).Select(c => $"{c.Rule}: {c.Because} / {c.Remedy}")];
        var here = Said();
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");

            Assert.Equal(here, Said());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
