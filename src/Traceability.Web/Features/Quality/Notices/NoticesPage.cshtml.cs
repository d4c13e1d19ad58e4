using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Notices;

/// <summary>The notices on a page of the desk, and where its forms come back to.</summary>
public sealed record NoticesShown(DeskPage Page, NoticesAnswer Answer, int Most, string Back);

/// <summary>All notices that stand, what is watched, and what was acknowledged.</summary>
public sealed class NoticesPage(
    ReadNotices read,
    AcknowledgeNotice acknowledge,
    IStringLocalizer<NoticeTexts> texts,
    AnalysisFilters filters,
    Writes writes
) : AnalysisPage(filters, writes)
{
    /// <summary>More than this are not acknowledged one by one in a day; the interface for programs has them all.</summary>
    public const int Most = 100;

    private const string Here = "/quality/notices",
        Desk = "/quality";

    public NoticesAnswer Answer { get; private set; } = null!;

    public IReadOnlyList<AcknowledgementRow> Acknowledged { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        if (!May(Role.Quality))
        {
            return Forbid();
        }

        Answer = await read.RunAsync(null, HttpContext.RequestAborted);
        Acknowledged = await read.AcknowledgementsAsync(HttpContext.RequestAborted);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(string? notice, string? note, string? back)
    {
        if (await RecordAsync([Role.Quality], c => acknowledge.RunAsync(notice ?? "", note, Actor, c)))
        {
            Done = texts["Notices.Done"];
            return LocalRedirect(back == Desk ? Desk : Here);
        }

        var status = Response.StatusCode;
        var result = await OnGetAsync();
        Response.StatusCode = status;
        return result;
    }

    /// <summary>The chart on which the rule was broken, from its first point on.</summary>
    public static string ChartOf(NoticeRow row) =>
        "/quality/control-chart"
        + new QueryBuilder
        {
            { "stage", row.Stage ?? "" },
            { "characteristic", row.Characteristic ?? "" },
            { "model", row.Model ?? "" },
            { "from", row.ChartFrom?.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'", CultureInfo.InvariantCulture) ?? "" },
        };
}
