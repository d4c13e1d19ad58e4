using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Drafts;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes.Examples;

/// <summary>
/// Proposes the routes of a new model from an example, all of them or none: diaphragm, capsule, board set and unit, and that of the film
/// lots when the workshop has none yet. Whoever asks is their author; somebody else approves each.
/// </summary>
public sealed partial class StartFromExample(WorkshopContext db, LoadRoute load, WorkshopCalendar calendar, Writes writes)
{
    /// <summary>What is asked for.</summary>
    public sealed record Input(string Design, string Model, string Letters, IReadOnlyList<string> Kinds, bool FilmLots);

    /// <summary>A route that was proposed.</summary>
    public sealed record Proposed(string Model, string Kind, int Revision);

    /// <summary>The routes that were proposed.</summary>
    public sealed record Output(IReadOnlyList<Proposed> Routes);

    /// <summary>True when film lots have a route already, proposed or in force.</summary>
    public Task<bool> HasFilmLotsAsync(CancellationToken cancellation) =>
        db.Set<RouteRevision>().AnyAsync(r => r.Model == FilmLotRoute.AnyModel && r.Kind == PartKinds.FilmLot, cancellation);

    public async Task<Answer<Output>> RunAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        if (await ProblemAsync(input, cancellation) is { } problem)
        {
            return problem;
        }

        List<Proposed> proposed = [];
        var letters = input.Letters.Trim().ToUpperInvariant();
        var drafts = RouteExamples
            .KindsOfAModel.Where(k => input.Kinds.Contains(k.Kind))
            .Select(k => For(RouteExamples.Of(input.Design, k.Kind), input.Model.Trim(), $"{k.Letter}{letters}", actor))
            .ToList();
        if (input.FilmLots && !await HasFilmLotsAsync(cancellation))
        {
            var film = RouteExamples.FilmLot();
            drafts.Insert(0, For(film, film["model"], film["serialPrefix"], actor));
        }

        foreach (var draft in drafts)
        {
            var answer = await load.RunAsync(DraftWriter.Write(draft), actor.PersonId, cancellation);
            if (answer.Refusal is { } refusal)
            {
                return refusal;
            }

            proposed.Add(new(draft["model"], draft["kind"], 1));
        }

        return Answer.Created(new Output(proposed));
    }

    private DraftMap For(DraftMap draft, string model, string prefix, Actor actor)
    {
        draft.Comments = ["# " + SetupSentences.MadeFromAnExample];
        draft["model"] = model;
        draft["revision"] = "1";
        draft["serialPrefix"] = prefix;
        draft["author"] = actor.Badge;
        draft["approvedBy"] = "";
        draft["effectiveFrom"] = calendar.DayOf(writes.Now).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        return draft;
    }

    private async Task<Refusal?> ProblemAsync(Input input, CancellationToken cancellation)
    {
        if (!RouteExamples.Has(input.Design))
        {
            return Refusal.Invalid("design", SetupSentences.ChooseADesign);
        }

        if (!ModelName().IsMatch(input.Model.Trim()))
        {
            return Refusal.Invalid("model", SetupSentences.ModelIsLettersDigitsAndHyphens);
        }

        if (!SerialLetters().IsMatch(input.Letters.Trim()))
        {
            return Refusal.Invalid("letters", SetupSentences.OneOrTwoLetters);
        }

        if (input.Kinds.Count == 0 && !input.FilmLots)
        {
            return Refusal.Invalid("kinds", SetupSentences.ChooseAtLeastOneRoute);
        }

        var model = input.Model.Trim();
        var there = await db.Set<RouteRevision>()
            .Where(r => r.Model == model && input.Kinds.Contains(r.Kind))
            .Select(r => r.Kind)
            .Distinct()
            .ToListAsync(cancellation);
        return there.Count > 0
            ? Refusal.Invalid("model", SetupSentences.ModelHasRoutesAlready(model, string.Join(", ", there.Order())))
            : null;
    }

    [GeneratedRegex(@"^[A-Za-z0-9-]{1,40}\z")]
    private static partial Regex ModelName();

    [GeneratedRegex(@"^[A-Za-z]{1,2}\z")]
    private static partial Regex SerialLetters();
}
