using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>Units that came back.</summary>
[Authorize(Roles = $"{nameof(Role.Service)},{nameof(Role.Quality)}")]
public sealed class ReturnsPage(ListReturns list, Writes writes) : DeskPage(writes)
{
    /// <summary>True for those that are done.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Closed { get; set; }

    public IReadOnlyList<ReturnRow> Rows { get; private set; } = [];

    public Paging Paging { get; private set; } = null!;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        var page = await list.RunAsync(!Closed, await Paging.AskedAsync(HttpContext), cancellation);
        (Rows, Paging) = (page.Items, Paging.Of(Request, page.Next));
    }
}
