using Traceability.Domain.Stages;
using Traceability.Domain.Tests.Routes;

namespace Traceability.Domain.Tests.Stages;

/// <summary>A correction reaches what methods say they read: so none may read what it does not say.</summary>
public class EarlierValuesTests
{
    public static IEnumerable<object[]> EveryStage =>
        DemoRoutes.All.SelectMany(r => r.Stages.Select(s => new object[] { r.Model, r.Kind, s.Code }));

    [Theory]
    [MemberData(nameof(EveryStage))]
    public void Every_method_says_which_earlier_values_it_reads(string model, string kind, string stage)
    {
        var input = NominalBuild.InputOf(model, kind, stage);
        var method = StageMethods.Get(input.Stage.Method);
        List<string> undeclared = [];

        method.Judge(input with { Earlier = name => Note(name) });

        Assert.Empty(undeclared);

        decimal? Note(string name)
        {
            if (!method.ReadsEarlier.Contains(name))
            {
                undeclared.Add(name);
            }

            return input.Earlier(name);
        }
    }
}
