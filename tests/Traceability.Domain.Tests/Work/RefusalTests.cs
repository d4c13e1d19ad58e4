using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Work;

public class RefusalTests
{
    private static readonly IReadOnlyDictionary<string, string[]> Nowhere = new Dictionary<string, string[]>();

    [Theory]
    [InlineData(RefusalKind.Invalid, RefusalCode.InvalidRequest)]
    [InlineData(RefusalKind.Forbidden, RefusalCode.NotAllowed)]
    [InlineData(RefusalKind.NotFound, RefusalCode.NotFound)]
    [InlineData(RefusalKind.Conflict, RefusalCode.WrongState)]
    [InlineData(RefusalKind.Unavailable, RefusalCode.CannotRecordNow)]
    [InlineData(RefusalKind.TooMany, RefusalCode.TooManyAttempts)]
    public void Every_kind_of_refusal_has_its_usual_code(RefusalKind kind, string code) =>
        Assert.Equal(code, new Refusal(kind, "no", [], Nowhere).Code);

    [Fact]
    public void A_refusal_with_checks_is_a_closed_gate()
    {
        var part = new APart(ARoute.Plain);
        part.Hold();

        var refusal = part.TryOpen("mount").IsRefused(RefusalKind.Conflict, "Mount");

        Assert.Equal(RefusalCode.GateClosed, refusal.Code);
        Assert.Contains(refusal.Checks, c => !c.Met);
    }
}
