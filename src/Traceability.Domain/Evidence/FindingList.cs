namespace Traceability.Domain.Evidence;

/// <summary>Collects what is noticed while a file is read, and stops a hopeless file from filling a page with complaints.</summary>
internal sealed class FindingList
{
    private const int MostProblems = 20;

    private readonly List<FileProblem> _problems = [];
    private readonly List<string> _notes = [];

    public bool IsFull => _problems.Count >= MostProblems;

    public bool Any => _problems.Count > 0;

    public void Add(int line, string message, FileFault fault = FileFault.BadContent)
    {
        if (_problems.Count < MostProblems)
            _problems.Add(new(line, message, fault));
        if (_problems.Count == MostProblems)
            _problems.Add(new(line, EvidenceTexts.ReadingStoppedHere(MostProblems)));
    }

    public void Note(string note) => _notes.Add(note);

    public ParsedFile<T> Refuse<T>()
        where T : class => new(null, _problems, _notes);

    public ParsedFile<T> Refuse<T>(string message, FileFault fault)
        where T : class
    {
        Add(0, message, fault);
        return Refuse<T>();
    }

    public ParsedFile<T> Accept<T>(T data)
        where T : class => Any ? Refuse<T>() : new(data, [], _notes);
}
