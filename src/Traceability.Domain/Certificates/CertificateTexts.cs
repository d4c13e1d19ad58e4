using Traceability.Domain.Values;

namespace Traceability.Domain.Certificates;

/// <summary>What a certificate says beside the facts themselves. Its words are in <c>CertificateTexts.resx</c>.</summary>
internal static class CertificateTexts
{
    private static readonly TextFile Words = new(typeof(CertificateTexts));

    internal static string AirIsNotRecorded => Words.Say();

    internal static string AirWasNotRecordedAt(string stages) => Words.Say([stages]);

    internal static string Builder => Words.Say();
    internal static string Importer => Words.Say();
    internal static string Instrument => Words.Say();
    internal static string QualityLead => Words.Say();
    internal static string ServiceDesk => Words.Say();
    internal static string WorkshopLead => Words.Say();
    internal static string RoleWasNotRecorded => Words.Say();
    internal static string UnknownPerson => Words.Say();
    internal static string Rework => Words.Say();
    internal static string Repair => Words.Say();
    internal static string Concession => Words.Say();
    internal static string Regrade => Words.Say();
    internal static string Scrap => Words.Say();
    internal static string Repaired => Words.Say();
    internal static string NoFaultFound => Words.Say();
    internal static string Unrepaired => Words.Say();

    internal static string CameBack(string complaint) => Words.Say([complaint]);

    internal static string CameBackAndWasFound(string complaint, string found) => Words.Say([complaint, found]);

    internal static string CameOutAs(string outcome) => Words.Say([outcome]);

    internal static string AtTheCustomersWish(string reason) => Words.Say([reason]);

    internal static string LimitedTo(string limit) => Words.Say([limit]);

    internal static string ValueMissesLimits(string label, string value, string limits) => Words.Say([label, value, limits]);

    internal static string CorrectedBy(string person, string at, string was, string reason) => Words.Say([person, at, was, reason]);

    internal static string LotOfKind(string kind) => Words.Say([kind]);

    internal static string UncertaintyIs(decimal expanded) => Words.Say([expanded]);

    internal static string TakenOut(string position, string item) => Words.Say([position, item]);

    internal static string UnknownItem => Words.Say();

    internal static string ALot => Words.Say();

    internal static string Times => Words.Say();

    internal static string SingleHanded => Words.Say();

    internal static string SignedInASecondTime(string serial, string what, string person, string at, string reason) =>
        Words.Say([serial, what, person, at, reason]);

    internal static string ConcessionOnOwnWork => Words.Say();

    internal static string DoubtOnOwnWork => Words.Say();

    internal static string StageAfterOwnWork(string stage) => Words.Say([stage]);

    internal static string TimesAreOf(string zone) => Words.Say([zone]);

    internal static string Warranty => Words.Say();

    internal static string Fitted(string position, string item) => Words.Say([position, item]);

    internal static string Corrected(string label, string now, string was) => Words.Say([label, now, was]);

    internal static string Decided(string description, string decision) => Words.Say([description, decision]);

    internal static string DecidedWithLimit(string description, string decision, string limit) => Words.Say([description, decision, limit]);

    internal static string Done(string stage) => Words.Say([stage]);

    internal static string DoneAgain(string stage) => Words.Say([stage]);

    internal static string ResponsesOf(string serial, string stage) => Words.Say([serial, stage]);

    internal static string WithItsLimits(string of, string names) => Words.Say([of, names]);

    internal static string ByDirection(string of) => Words.Say([of]);

    internal static string ForInformation(string of) => Words.Say([of]);

    internal static string RearOnItsOwnAxis => Words.Say();

    internal static string Angle(int degrees) => Words.Say([degrees]);

    internal static string ZeroIsItsOwnLevel => Words.Say();

    internal static string ZeroIsTheLevelOf(string name) => Words.Say([name]);

    internal static string LimitsLieAroundItsOwnLevel(string db) => Words.Say([db]);

    internal static string ReferenceCurveIsTakenOff => Words.Say();

    internal static string SmoothedOver(int perOctave) => Words.Say([perOctave]);

    internal static string Measured(string at) => Words.Say([at]);

    internal static string PhaseInTolerance(string phase, double minutes, int asked) => Words.Say([phase, minutes, asked]);

    internal static string TolerancesComeFrom(string source) => Words.Say([source]);

    internal static string Sensitivity => Words.Say();
    internal static string SensitivityByComparison => Words.Say();
    internal static string SensitivityAsRead => Words.Say();
    internal static string Noise => Words.Say();
    internal static string NoiseIsALevel => Words.Say();
    internal static string Uncertainty => Words.Say();
    internal static string UncertaintyAsTheRouteStates => Words.Say();
    internal static string Verdict => Words.Say();
    internal static string VerdictByLimits => Words.Say();
    internal static string VerdictGuarded => Words.Say();
    internal static string Scope => Words.Say();
}
