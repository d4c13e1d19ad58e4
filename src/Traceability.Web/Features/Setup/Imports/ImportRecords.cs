using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>
/// Enters many people, stations, instruments, lots or carriers from one table, all or none. A dry run takes the same way and takes
/// everything back, so what it says is what would happen.
/// </summary>
public sealed class ImportRecords(
    Writes writes,
    ImportPeople people,
    ImportStations stations,
    ImportInstruments instruments,
    ImportLots lots,
    ImportCarriers carriers
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/imports", HandleAsync)
            .For(Role.Lead, Role.Importer)
            .TakesFile("text/csv")
            .Is(Subjects.Imports, "importRecords", "Enter a table of people, stations, instruments, lots or carriers: all or none.");

    /// <summary>What the table came to.</summary>
    /// <param name="Lines" example="12">How many lines it has beside its heading.</param>
    /// <param name="Accepted" example="12">How many of them were recorded, or would be.</param>
    /// <param name="Problems">What is wrong, line by line; nothing is recorded while there is anything.</param>
    /// <param name="Codes">The codes of people who were added, shown this once.</param>
    public sealed record Output(int Lines, int Accepted, IReadOnlyList<ImportProblem> Problems, IReadOnlyList<ImportedCode>? Codes = null);

    /// <summary>What can be imported, in the order in which a workshop is set up.</summary>
    public IReadOnlyList<ImportKind> Kinds { get; } = [people, stations, instruments, lots, carriers];

    /// <param name="kind" example="stations">people, stations, instruments, lots or carriers.</param>
    /// <param name="dryRun" example="true">True to be told what would happen, without recording anything.</param>
    public static async Task<Results<Recorded<Output>, Ok<Output>, Problem>> HandleAsync(
        string kind,
        HttpRequest request,
        SignedIn signedIn,
        ImportRecords use,
        Writes writes,
        CancellationToken cancellation,
        bool dryRun = false
    )
    {
        if (await TextOfAsync(request, cancellation) is not (var text, null))
        {
            return ProblemAnswers.From(Refusal.Invalid("table", ImportSentences.TableIsNoText));
        }

        if (!dryRun)
        {
            var written = await writes.WriteAsync(c => use.RunAsync(kind, text, signedIn.Actor, c));
            return Writes.RecordedAs<Output>(written).Result switch
            {
                Recorded<Output> recorded => recorded,
                var problem => (Problem)problem,
            };
        }

        var tried = await use.TryAsync(kind, text, signedIn.Actor, cancellation);
        return tried.Value is { } output ? TypedResults.Ok(output) : ProblemAnswers.From(tried.Refusal!);
    }

    /// <summary>Says what would happen, and records nothing.</summary>
    public async Task<Answer<Output>> TryAsync(string kind, string text, Actor actor, CancellationToken cancellation) =>
        WhyNot(kind, text, actor) is { } refusal
            ? refusal
            : Answer.Ok((await writes.Book.TryAsync(c => AddAsync(kind, text, actor, c), cancellation)) with { Codes = null });

    /// <summary>Records the whole table, or nothing of it.</summary>
    public async Task<Answer<Output>> RunAsync(string kind, string text, Actor actor, CancellationToken cancellation)
    {
        if (WhyNot(kind, text, actor) is { } refusal)
        {
            return refusal;
        }

        var output = await AddAsync(kind, text, actor, cancellation);
        return output.Problems.Count > 0 ? Faulty(output)
            : output.Lines == 0 ? Refusal.Invalid("table", ImportSentences.TableHasNoLines)
            : output.Codes is { Count: > 0 } ? Answer.CreatedOnce(output)
            : Answer.Created(output);
    }

    private Refusal? WhyNot(string kind, string text, Actor actor) =>
        Kinds.FirstOrDefault(k => k.Code == kind) is not { } found
            ? Refusal.Invalid("kind", ImportSentences.NoSuchKind(kind, string.Join(", ", Kinds.Select(k => k.Code))))
        : !found.IsFor(actor) ? Refusal.Forbidden(ImportSentences.OnlyTheLeadImportsPeople)
        : text.Length > ImportTable.MostBytes ? Refusal.Invalid("table", ImportSentences.TableIsTooBig(ImportTable.MostBytes / 1024 / 1024))
        : null;

    private async Task<Output> AddAsync(string code, string text, Actor actor, CancellationToken cancellation)
    {
        var kind = Kinds.First(k => k.Code == code);
        people.Forget();
        var problems = new List<ImportProblem>();
        var lines = ImportTable.Read(text, kind.Columns, problems);
        if (lines.Count > ImportTable.MostLines)
        {
            return new(lines.Count, 0, [new(ImportTable.MostLines + 2, "", ImportSentences.TooManyLines(ImportTable.MostLines))]);
        }

        foreach (var line in lines)
        {
            var before = problems.Count;
            foreach (var column in kind.Columns.Where(c => c.Required && line.May(c.Name) is null))
            {
                line.Refuse(column.Name, ImportSentences.CellIsNeeded);
            }

            if (problems.Count > before)
            {
                continue;
            }

            var refusal = await kind.AddAsync(line, actor, cancellation);
            // What the cells themselves lack was said already, and clearer than the use case can, which is handed nothing for them.
            if (refusal is not null && problems.Count == before)
            {
                line.Refuse(refusal.Errors.Count > 0 ? kind.ColumnOf(refusal.Errors.First().Key) : kind.Columns[0].Name, refusal.Message);
            }

            await writes.Book.SaveSoFarAsync(cancellation);
            if (problems.Count >= ImportTable.MostProblems)
            {
                break;
            }
        }

        var accepted = problems.Count > 0 ? lines.Count - problems.Select(p => p.Line).Distinct().Count() : lines.Count;
        return new(
            lines.Count,
            Math.Max(0, accepted),
            [.. problems.OrderBy(p => p.Line)],
            people.Codes.Count > 0 ? [.. people.Codes] : null
        );
    }

    private static Refusal Faulty(Output output) =>
        new(
            RefusalKind.Invalid,
            ImportSentences.NothingWasImported(
                output.Problems.Count == 1 ? ImportSentences.OnePlace : ImportSentences.Places(output.Problems.Count)
            ),
            [],
            output
                .Problems.GroupBy(p => ImportSentences.LineAndField(p.Line, p.Field).TrimEnd(',', ' '))
                .ToDictionary(g => g.Key, g => g.Select(p => p.Message).ToArray())
        );

    private static async Task<(string Text, string? Wrong)> TextOfAsync(HttpRequest request, CancellationToken cancellation)
    {
        try
        {
            using var reader = new StreamReader(request.Body, new UTF8Encoding(false, true));
            return (await reader.ReadToEndAsync(cancellation), null);
        }
        catch (DecoderFallbackException)
        {
            return ("", "not UTF-8");
        }
    }
}
