using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>
/// A table pasted from a spreadsheet, or its file: looked through first, line by line, then recorded as a whole. What was pasted stays in
/// the form until it is.
/// </summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Importer)}")]
public sealed class ImportPage(ImportRecords import, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    [BindProperty(SupportsGet = true)]
    public string? Kind { get; set; }

    /// <summary>What this person may import.</summary>
    public IReadOnlyList<ImportKind> Kinds => [.. import.Kinds.Where(k => k.IsFor(Actor))];

    /// <summary>What is being imported.</summary>
    public ImportKind Chosen => Kinds.FirstOrDefault(k => k.Code == Kind) ?? Kinds[0];

    /// <summary>The table as it was pasted or sent.</summary>
    public string? Table { get; private set; }

    /// <summary>What looking it through came to.</summary>
    public ImportRecords.Output? Looked { get; private set; }

    /// <summary>What was recorded just now, with the codes that are shown this once.</summary>
    public ImportRecords.Output? Entered { get; private set; }

    protected override IReadOnlyCollection<string> LongFields => ["table"];

    public IActionResult OnGetTemplate() => File(Encoding.UTF8.GetBytes(Chosen.Template), "text/csv", $"{Chosen.Code}.csv");

    /// <summary>Looks the table through and records nothing.</summary>
    public async Task<IActionResult> OnPostLookAsync(IFormFile? file, string? table)
    {
        if (await ReadAsync(file, table) is { } wrong)
        {
            Refuse(wrong);
            return Page();
        }

        var looked = await import.TryAsync(Chosen.Code, Table!, Actor, HttpContext.RequestAborted);
        Looked = looked.Value;
        if (looked.Refusal is { } refusal)
        {
            Refuse(refusal);
        }

        return Page();
    }

    /// <summary>Records the table that was looked through.</summary>
    public async Task<IActionResult> OnPostAsync(string? table)
    {
        Table = table ?? "";
        if (await RecordAsync([Role.Lead, Role.Importer], c => import.RunAsync(Chosen.Code, Table, Actor, c)))
        {
            Entered = Recorded<ImportRecords.Output>();
            Table = null;
            Response.Headers.CacheControl = "no-store";
            return Page();
        }

        Looked = (await import.TryAsync(Chosen.Code, Table, Actor, HttpContext.RequestAborted)).Value;
        return Page();
    }

    /// <summary>What is imported, in words.</summary>
    public string WordsOf(ImportKind kind) => texts["Import.Of." + kind.Code];

    private async Task<Refusal?> ReadAsync(IFormFile? file, string? table)
    {
        Table = table ?? "";
        if (file is not { Length: > 0 })
        {
            return Table.Trim().Length > 0 ? null : Refusal.Invalid("table", ImportSentences.PasteOrChoose);
        }

        if (file.Length > ImportTable.MostBytes)
        {
            return Refusal.Invalid("file", ImportSentences.TableIsTooBig(ImportTable.MostBytes / 1024 / 1024));
        }

        try
        {
            using var reader = new StreamReader(file.OpenReadStream(), new UTF8Encoding(false, true));
            Table = await reader.ReadToEndAsync();
            return null;
        }
        catch (DecoderFallbackException)
        {
            return Refusal.Invalid("file", ImportSentences.TableIsNoText);
        }
    }
}
