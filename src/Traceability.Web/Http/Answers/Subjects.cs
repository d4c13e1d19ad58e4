namespace Traceability.Web.Http.Answers;

/// <summary>What the calls of the interface are about: the headings under which they are listed.</summary>
public static class Subjects
{
    public const string Access = "Access";
    public const string Parts = "Parts";
    public const string Attempts = "Attempts";
    public const string Loads = "Loads";
    public const string Lots = "Lots";
    public const string Nonconformities = "Nonconformities";
    public const string Holds = "Holds";
    public const string Certificates = "Certificates";
    public const string Tracing = "Tracing";
    public const string Analyses = "Analyses";
    public const string Studies = "Gauge studies";
    public const string Returns = "Returns";
    public const string Routes = "Routes";
    public const string Instruments = "Instruments";
    public const string Stations = "Stations";
    public const string People = "People";
    public const string Workshop = "Workshop";
    public const string SetUp = "Set-up";
    public const string Imports = "Imports";
    public const string Health = "Health";

    /// <summary>Each with one sentence.</summary>
    public static readonly IReadOnlyDictionary<string, string> Sentences = new Dictionary<string, string>
    {
        [Access] = "Signing in and out, the first account, and setting the own PIN.",
        [Parts] = "Parts and carriers: registering, reading, history, what is inside, what matches.",
        [Attempts] = "Work at a stage: opening, readings, fittings, files, closing, and what is mended afterwards.",
        [Loads] = "One run of an oven or a cabinet for many parts.",
        [Lots] = "Lots of film, adhesive, parts bought in: received, released, put into quarantine.",
        [Nonconformities] = "What does not conform and what was decided about it, concessions among it.",
        [Holds] = "What must not be used, and when it may again.",
        [Certificates] = "Birth certificates, shipping, and the check that a certificate is genuine.",
        [Tracing] = "What a lot, an instrument, a person or a load has touched, and the chain of entries that proves it.",
        [Analyses] = "What fails, where, since when and with what: film lots, causes, charts, yields, notices, the monthly report.",
        [Studies] = "Gauge repeatability and reproducibility.",
        [Returns] = "Units that came back, and looking one up.",
        [Routes] = "The routes that parts travel: revisions, comparison, approval.",
        [Instruments] = "Instruments, their calibrations, checks and tokens, and what was measured with one in doubt.",
        [Stations] = "Benches and cabinets.",
        [People] = "Who works here, with which roles and qualifications.",
        [Workshop] = "What the workshop says about itself: name, address, time zone, and what certificates show.",
        [SetUp] = "Retiring what is used no more, taking back what was entered by mistake, and the workshop's lists of kinds.",
        [Imports] = "Tables of people, stations, instruments, lots or carriers, entered all or none.",
        [Health] = "Is the service alive and ready?",
    };
}
