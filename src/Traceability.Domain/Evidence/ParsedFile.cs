using System.Diagnostics.CodeAnalysis;

namespace Traceability.Domain.Evidence;

/// <summary>What is the matter with a file, as far as a program must tell it apart.</summary>
public enum FileFault
{
    /// <summary>A line (or the heading) says something that cannot be.</summary>
    BadContent,

    /// <summary>It is another kind of file altogether, or a variant that is not read.</summary>
    WrongFormat,

    /// <summary>There is nothing in it, or too little to judge by.</summary>
    TooLittle,

    /// <summary>It ends before its own heading says it should.</summary>
    CutOff,

    /// <summary>A recording that hit the end of its scale: peaks are lost.</summary>
    Clipped,

    /// <summary>A recording of nothing: no cable, muted, or stopped.</summary>
    Silent,
}

/// <summary>One thing that is wrong with a file; line 0 is the file as a whole.</summary>
public sealed record FileProblem(int Line, string Message, FileFault Fault = FileFault.BadContent)
{
    /// <summary>The message with its line in front, as a person reads it.</summary>
    public override string ToString() => Line > 0 ? EvidenceTexts.AtLine(Line, Message) : Message;
}

/// <summary>A file that was read: either its data, or all that is wrong with it; never both, never an exception.</summary>
/// <param name="Data">What the file says; <see langword="null"/> when there are problems.</param>
/// <param name="Problems">Why it cannot be used, in the order of its lines; empty when it can.</param>
/// <param name="Notes">What was assumed or passed over in reading it, worth telling but no reason to refuse.</param>
public sealed record ParsedFile<T>(T? Data, IReadOnlyList<FileProblem> Problems, IReadOnlyList<string> Notes)
    where T : class
{
    /// <summary>Whether the file can be used.</summary>
    [MemberNotNullWhen(true, nameof(Data))]
    public bool IsGood => Data is not null;
}
