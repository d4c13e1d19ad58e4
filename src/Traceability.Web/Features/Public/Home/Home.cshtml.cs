using Microsoft.AspNetCore.Mvc;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Public.Home;

/// <summary>The first page leads each person to where their work begins.</summary>
public sealed class HomeModel : WorkshopPage
{
    public IActionResult OnGet() => Navigation.HomeOf(Actor) is var home and not "/" ? LocalRedirect(home) : Page();
}
