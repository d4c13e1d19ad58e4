using Microsoft.AspNetCore.Http.Extensions;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Analyses;

/// <summary>A page of an analysis: a period, a model, a stage, and links that keep them.</summary>
public abstract class AnalysisPage(AnalysisFilters filters, Writes writes) : DeskPage(writes)
{
    private static readonly string[] Common = ["from", "to", "model", "stage"];

    /// <summary>What was asked.</summary>
    public AnalysisQuery Asked => AnalysisQuery.Of(Request);

    /// <summary>The models to choose from.</summary>
    public IReadOnlyList<string> Models { get; private set; } = [];

    /// <summary>The stages to choose from, with the kind of part they belong to.</summary>
    public IReadOnlyList<(string Kind, Domain.Routes.Stage Stage)> Stages { get; private set; } = [];

    /// <summary>An address with the common filters of this page and what is added; what is null is left out.</summary>
    public string Kept(string path, IReadOnlyCollection<string> without, params (string Name, string? Value)[] more)
    {
        var query = new QueryBuilder();
        foreach (var name in Common.Except(without).Except(more.Select(m => m.Name)))
        {
            Add(name, AnalysisQuery.Text(Request, name));
        }

        foreach (var (name, value) in more)
        {
            Add(name, value);
        }

        return path + query;

        void Add(string name, string? value)
        {
            if (!string.IsNullOrEmpty(value))
            {
                query.Add(name, value);
            }
        }
    }

    /// <summary>This page's address as a file.</summary>
    public string AsFile =>
        Request.Path
        + new QueryBuilder(Request.Query.Where(q => q.Key != "handler").Select(q => KeyValuePair.Create(q.Key, q.Value.ToString())))
        {
            { "handler", "Csv" },
        };

    /// <summary>Reads what the filters offer.</summary>
    protected async Task LoadChoicesAsync()
    {
        Models = await filters.ModelsAsync(HttpContext.RequestAborted);
        Stages = [.. (await filters.StagesAsync(HttpContext.RequestAborted)).Where(s => s.Kind != Domain.Records.PartKinds.FilmLot)];
    }

    /// <summary>The page, with what is wrong with the question when something is.</summary>
    protected IActionResult Shown(Refusal? refusal)
    {
        if (refusal is { Kind: RefusalKind.NotFound })
        {
            return NotFound();
        }

        if (refusal is not null)
        {
            Refuse(refusal);
        }

        return Page();
    }
}
