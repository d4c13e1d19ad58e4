using Traceability.Domain.Routes;

namespace Traceability.Domain.Gates;

/// <summary>What every rule is asked about.</summary>
public sealed record GateQuestion(Dossier Dossier, Stage Stage, GateContext Context)
{
    /// <summary>Title of a stage of this route, for people.</summary>
    public string TitleOf(string stage) => Dossier.Route.Find(stage)?.Title ?? stage;
}
