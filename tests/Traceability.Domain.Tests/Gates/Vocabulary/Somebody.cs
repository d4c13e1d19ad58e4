using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Tests.Gates.Vocabulary;

/// <summary>The people of the tests.</summary>
internal static class Somebody
{
    public static readonly Actor Builder = Of(1, "the builder", Role.Builder);
    public static readonly Actor OtherBuilder = Of(2, "the other builder", Role.Builder);
    public static readonly Actor QualityLead = Of(3, "the quality lead", Role.Quality);
    public static readonly Actor ServiceDesk = Of(4, "the service desk", Role.Service);
    public static readonly Actor Importer = Of(5, "the importer", Role.Importer, Role.Builder);
    public static readonly Actor BuildingQualityLead = Of(6, "the quality lead who also builds", Role.Quality, Role.Builder);

    private static readonly DateTimeOffset LongAgo = new(2025, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static Actor QualifiedFor(
        this Actor actor,
        string code,
        DateOnly? validUntil = null,
        bool given = true,
        int grantedAfterDays = 0
    ) =>
        actor with
        {
            Qualifications =
            [
                .. actor.Qualifications,
                new(Guid.Empty, actor.PersonId, code, given, validUntil, Guid.Empty, LongAgo, LongAgo.AddDays(grantedAfterDays)),
            ],
        };

    private static Actor Of(int number, string name, params Role[] roles) =>
        new(new(number, 9, 9, 0, 0, 0, 0, 0, 0, 0, 0), $"P{number}", name, roles.ToHashSet(), []);
}
