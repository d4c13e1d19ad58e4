namespace Traceability.Web.Http;

/// <summary>What a page says in place of one that cannot be shown; the words are in <c>PageProblemTexts.resx</c>.</summary>
public sealed class PageProblemTexts;
