namespace Traceability.Web.Http;

/// <summary>One line for every endpoint, in the words of the contract.</summary>
internal static class ApiWords
{
    private static readonly Dictionary<string, string> Words = new()
    {
        ["GET /health/live"] = "Is the process alive?",
        ["GET /health/ready"] = "Is the database reachable and migrated?",
        ["POST /api/v1/sessions"] = "Sign in with badge and PIN; gives a bearer token.",
        ["DELETE /api/v1/sessions/current"] = "Sign out.",
        ["POST /api/v1/pins"] = "Set the own PIN with a one-time code or the PIN of now; ends the person's sessions.",
        ["POST /api/v1/first-account"] = "Make the first account of an empty store with the key of the printed link.",
        ["GET /api/v1/parts"] = "Parts by kind, model and state; or those free to be fitted.",
        ["POST /api/v1/parts"] = "Register a part on the route in force.",
        ["GET /api/v1/parts/{serial}"] = "A part as it stands; a carrier stands for the part in it.",
        ["GET /api/v1/parts/{serial}/gates"] = "For every stage: may it start, when, and what is missing.",
        ["GET /api/v1/parts/{serial}/history"] = "Every fact in order, now or as of a time.",
        ["GET /api/v1/parts/{serial}/made-of"] = "The tree of fitted parts and lots, now or as of a time.",
        ["GET /api/v1/parts/{serial}/mates"] = "Free parts that match best for a position, and the best pairing of all.",
        ["POST /api/v1/parts/{serial}/attempts"] = "Start a stage; refused with all checks when its gate is closed.",
        ["POST /api/v1/parts/{serial}/records"] = "A whole stage in one transaction: open, read, fit, attach, close.",
        ["POST /api/v1/parts/{serial}/removals"] = "Take out what is fitted at a position.",
        ["POST /api/v1/parts/{serial}/nonconformities"] = "Report that a part does not conform; it stops until decided.",
        ["GET /api/v1/parts/{serial}/certificates"] = "The revisions of a unit's birth certificate.",
        ["POST /api/v1/parts/{serial}/certificates"] = "Issue a revision; refused with what is missing.",
        ["GET /api/v1/parts/{serial}/certificate.pdf"] = "The latest certificate as it was issued.",
        ["GET /api/v1/parts/{serial}/certificates/{revision}.pdf"] = "One revision as it was issued.",
        ["GET /api/v1/parts/{serial}/certificates/{revision}.json"] = "The same document for programs.",
        ["POST /api/v1/parts/{serial}/shipments"] = "Record that a certified unit has left.",
        ["GET /api/v1/attempts/{id}"] = "One attempt with readings, fittings and files.",
        ["POST /api/v1/attempts/{id}/readings"] = "Enter one reading, or a list.",
        ["POST /api/v1/attempts/{id}/fittings"] = "Fit a part or a lot at a position, or a list.",
        ["POST /api/v1/attempts/{id}/evidence"] = "Keep a file (text/csv, audio/wav, image/jpeg, image/png), byte for byte.",
        ["GET /api/v1/attempts/{id}/evidence/{evidenceId}"] = "A file as it was sent.",
        ["POST /api/v1/attempts/{id}/close"] = "Close the attempt: compute, judge, say what comes next.",
        ["POST /api/v1/attempts/{id}/abandon"] = "Give the attempt up, with the reason.",
        ["POST /api/v1/stations/{code}/readings"] = "A machine's reading, into the attempt now open at the station.",
        ["GET /api/v1/stations"] = "The benches and cabinets.",
        ["POST /api/v1/stations"] = "Add a station.",
        ["POST /api/v1/loads"] = "Start one run for many parts.",
        ["GET /api/v1/loads/{id}"] = "A load with its parts and files.",
        ["POST /api/v1/loads/{id}/log"] =
            "Keep the logger's CSV for the parts still in the load; it may be sent again, more completely, for those that stay longer.",
        ["POST /api/v1/loads/{id}/close"] = "End the load, or take the named parts out of it; each part gets its own closing and verdict.",
        ["POST /api/v1/readings/{id}/corrections"] = "Supersede a wrong reading; both stay visible.",
        ["GET /api/v1/nonconformities"] = "Nonconformities, the latest first.",
        ["POST /api/v1/nonconformities/{id}/disposition"] = "Decide, signed with the PIN.",
        ["GET /api/v1/holds"] = "Holds, the latest first.",
        ["POST /api/v1/holds"] = "Put a lot, a part or an instrument on hold.",
        ["POST /api/v1/holds/{id}/release"] = "Lift a hold.",
        ["GET /api/v1/lots"] = "Lots by kind and state.",
        ["POST /api/v1/lots"] = "Receive a lot into quarantine.",
        ["GET /api/v1/lots/{number}"] = "A lot as it stands.",
        ["POST /api/v1/lots/{number}/release"] = "Release a lot.",
        ["POST /api/v1/lots/{number}/quarantine"] = "Put a lot into quarantine.",
        ["GET /api/v1/lots/{number}/where-used"] = "Every part and unit that contains the lot, now or at a time.",
        ["GET /api/v1/instruments/{code}/affected"] =
            "Every part and unit measured with the instrument since its last good calibration or check.",
        ["POST /api/v1/instruments/{code}/affected/decisions"] =
            "Decide on parts measured with the instrument while it was in doubt: accepted, held or remeasure; signed with the PIN.",
        ["GET /api/v1/quality/trace"] =
            "Every part and unit that a lot, supplier lot, instrument, carrier, load, station or person touched, and where each is.",
        ["POST /api/v1/quality/trace/holds"] = "Hold everything that a trace finds, signed with the PIN.",
        ["GET /api/v1/quality/trace/holds"] = "The decisions that held what a trace found, with what lifting each would touch.",
        ["GET /api/v1/quality/trace/holds/{id}"] = "One such decision, named by any of its holds.",
        ["POST /api/v1/quality/trace/holds/{id}/release"] =
            "Lift all that the decision still holds, signed with the PIN; what was lifted before stays as it is.",
        ["GET /api/v1/ledger/{serial}"] = "The chain of entries about a part or lot, to be recomputed outside.",
        ["GET /api/v1/quality/film-lots"] =
            "Film lots compared: where their diaphragms failed, yields with intervals, each lot against the rest.",
        ["GET /api/v1/quality/film-lots/{number}/parts"] = "The diaphragms behind a film lot's numbers, down to their units.",
        ["GET /api/v1/quality/causes"] = "What the failures of a stage have in common: every factor of the facts ranked by association.",
        ["GET /api/v1/quality/causes/parts"] = "The parts of one level of one factor.",
        ["GET /api/v1/quality/control-chart"] =
            "A characteristic over time: limits, Nelson's rules, subgroups, capability, and its values by lot.",
        ["GET /api/v1/quality/pareto"] = "Failure codes from the most frequent to the least.",
        ["GET /api/v1/quality/yield"] = "First-pass and rolled-throughput yield by stage, model, film lot, builder, week and more.",
        ["GET /api/v1/quality/notices"] = "Rules broken on watched charts and film lots that stand out, each until it is acknowledged.",
        ["POST /api/v1/quality/notices/{key}/acknowledge"] =
            "Acknowledge a notice, with a note or without; it comes back when something new adds to it.",
        ["GET /api/v1/quality/monthly-report.pdf"] =
            "The report of a month such as 2026-10: yields, film lots, what failed, what is open, charts.",
        ["GET /api/v1/quality/monthly-report.json"] = "The same document for programs.",
        ["GET /api/v1/people"] = "Everybody, with roles and qualifications.",
        ["POST /api/v1/people"] = "Add a person; the answer holds, this once, a code by which the person sets the own PIN.",
        ["POST /api/v1/people/{badge}/roles"] = "Give or take a role.",
        ["POST /api/v1/people/{badge}/qualifications"] = "Give or take a qualification.",
        ["POST /api/v1/people/{badge}/pin-code"] =
            "Give a one-time code, good for a day, by which the person sets a new PIN; ends the old PIN and the person's sessions.",
        ["GET /api/v1/instruments"] = "Instruments with where they stand today.",
        ["POST /api/v1/instruments"] = "Add an instrument.",
        ["POST /api/v1/instruments/{code}/calibrations"] = "Record a calibration.",
        ["POST /api/v1/instruments/{code}/checks"] = "Record a check against the reference.",
        ["GET /api/v1/instruments/{code}/tokens"] = "The tokens of an instrument, without the tokens themselves.",
        ["POST /api/v1/instruments/{code}/tokens"] =
            "Make a token by which the instrument sends readings; it is shown in this answer only.",
        ["POST /api/v1/instruments/{code}/tokens/{id}/revoke"] = "Revoke a token of an instrument.",
        ["GET /api/v1/quality/concessions"] = "Concessions given beforehand, with what is left of each.",
        ["POST /api/v1/quality/concessions"] =
            "Give a concession for a lot, a code or a stage, limited in number or time; signed with the PIN.",
        ["GET /api/v1/quality/gauge-studies"] = "Gauge repeatability and reproducibility studies.",
        ["GET /api/v1/quality/gauge-studies/{number}"] =
            "A study with its readings and its analysis of variance, or what is missing for one.",
        ["POST /api/v1/quality/gauge-studies"] = "Design a study: what is measured, with what, on which pieces, by whom, how often.",
        ["POST /api/v1/quality/gauge-studies/{number}/readings"] =
            "Enter one reading of a study, or a list; they never enter the record of a part.",
        ["GET /api/v1/routes"] = "The routes in force, said fully enough to work by.",
        ["GET /api/v1/routes/{model}/{kind}"] = "One route in force.",
        ["GET /api/v1/routes/revisions"] =
            "Every revision of every route: proposed, waiting, current or superseded, with the parts that are on it.",
        ["GET /api/v1/routes/{model}/{kind}/comparison"] = "Everything in which two revisions of a route differ.",
        ["POST /api/v1/routes"] =
            "Load the next revision of a route; the body is its file, text/yaml. It is a proposal until it is approved; approvedBy in"
            + " it is a wish.",
        ["POST /api/v1/routes/{model}/{kind}/{revision}/approval"] = "Approve a proposed revision, not by its author; signed with the PIN.",
        ["GET /api/v1/search"] = "Look up by a fragment of a serial, lot, carrier or customer reference.",
        ["GET /api/v1/returns"] = "Returns, the latest first.",
        ["GET /api/v1/returns/{id}"] = "One return with what was found and done.",
        ["POST /api/v1/returns"] = "Take a unit back.",
        ["POST /api/v1/returns/{id}/findings"] = "Record a finding.",
        ["POST /api/v1/returns/{id}/outcome"] = "Say how a return came out: repaired, no-fault, scrapped or unrepaired; the latest counts.",
        ["POST /api/v1/returns/{id}/close"] = "Close a return with what was done; refused without a finding and an outcome.",
        ["GET /api/v1/verify/{certificateId}"] = "Is this certificate genuine and current?",
        ["POST /api/v1/verify"] = "Is this PDF, byte for byte, a certificate issued here?",
    };

    /// <summary>The line for an endpoint, such as <c>GET /api/v1/parts</c>.</summary>
    public static string? Of(string endpoint) => Words.GetValueOrDefault(Plain(endpoint));

    /// <summary>A path without the kinds of its parameters.</summary>
    public static string Plain(string path) =>
        path.Replace(":guid}", "}", StringComparison.Ordinal).Replace(":int}", "}", StringComparison.Ordinal);
}
