using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Kinds;

/// <summary>One of the workshop's lists of kinds.</summary>
public sealed class ListKinds(KindsQuery kinds) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/kinds", HandleAsync).Is(Subjects.SetUp, "listKinds", "One of the workshop's lists of kinds.");

    /// <summary>A kind.</summary>
    /// <param name="Of" example="lot">The list in which it stands.</param>
    /// <param name="Code" example="film">Its code.</param>
    /// <param name="Title" example="Metallised film">What it is called.</param>
    /// <param name="ByUse" example="false">True when nobody entered it: something of the kind was entered by a program.</param>
    /// <param name="RetiredBecause" example="no longer bought">Why it is retired; null while it is offered.</param>
    public sealed record KindAnswer(
        [property: OneOf(typeof(KindOf))] string Of,
        string Code,
        string Title,
        bool ByUse,
        string? RetiredBecause
    );

    /// <param name="of" example="lot">Which list: lot, part, instrument, qualification, complaint or finding.</param>
    /// <param name="retired" example="true">Those that are retired too; without it only what is offered.</param>
    public static async Task<Results<JsonOrCsv<Page<KindAnswer>>, Problem>> HandleAsync(
        HttpContext http,
        string of,
        PageRequest page,
        ListKinds use,
        CancellationToken cancellation,
        bool retired = false
    ) =>
        KindLists.Read(of) is { } list
            ? JsonOrCsv.Of(page.Part(await use.RunAsync(list, retired, cancellation), k => k.Code))
            : ProblemAnswers.From(Refusal.Invalid("of", SetupSentences.ListsOfKinds(KindLists.Words)));

    public async Task<IReadOnlyList<KindAnswer>> RunAsync(KindOf of, bool retired, CancellationToken cancellation) =>
        [
            .. (await kinds.OfAsync(of, cancellation))
                .Where(k => retired || k.Offered)
                .Select(k => new KindAnswer(KindLists.WordOf(k.Of), k.Code, k.Title, k.ByUse, k.Decision?.Reason)),
        ];
}
