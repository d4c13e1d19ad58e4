using Traceability.Domain.Values;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>What is said about tables to be imported. Their words are in <c>ImportSentences.resx</c>.</summary>
internal static class ImportSentences
{
    private static readonly TextFile Words = new(typeof(ImportSentences));

    internal static string TableIsEmpty(string columns) => Words.Say([columns]);

    internal static string HeadingLacks(string missing, string columns) => Words.Say([missing, columns]);

    internal static string HeadingNamesUnknown(string unknown, string columns) => Words.Say([unknown, columns]);

    internal static string HeadingNamesTwice(string columns) => Words.Say([columns]);

    internal static string LineHasAnotherNumberOfFields(int fields, int columns) => Words.Say([fields, columns]);

    internal static string DecimalMarksAreMixed(string number) => Words.Say([number]);

    internal static string NoSuchRole(string role, string known) => Words.Say([role, known]);

    internal static string CalibrationNeedsBothDays => Words.Say();

    internal static string TableIsNoText => Words.Say();

    internal static string TableHasNoLines => Words.Say();

    internal static string NoSuchKind(string kind, string known) => Words.Say([kind, known]);

    internal static string OnlyTheLeadImportsPeople => Words.Say();

    internal static string TableIsTooBig(int megabytes) => Words.Say([megabytes]);

    internal static string TooManyLines(int lines) => Words.Say([lines]);

    internal static string NothingWasImported(string places) => Words.Say([places]);

    internal static string OnePlace => Words.Say();

    internal static string Places(int places) => Words.Say([places]);

    internal static string LineAndField(int line, string field) => Words.Say([line, field]);

    internal static string PasteOrChoose => Words.Say();

    internal static string CellIsNeeded => Words.Say();

    internal static string FilmNeedsItsThickness => Words.Say();
}
