using Traceability.Domain.Work;

namespace Traceability.Web.Http;

/// <summary>A kind of problem: the code that ends its address, and the status that it is answered with.</summary>
public sealed record ProblemKind(string Code, int Status)
{
    /// <summary>The <c>type</c> of its problems (RFC 9457, 3.1.1): a reference to a page of this service that says what it means.</summary>
    public string Address => "/problems/" + Code;
}

/// <summary>Every kind of problem that is answered: the one list, from which answers, pages and the description are made.</summary>
public static class ProblemKinds
{
    public static readonly ProblemKind InvalidRequest = new(RefusalCode.InvalidRequest, 400);
    public static readonly ProblemKind AntiforgeryTokenMissing = new("antiforgery-token-missing", 400);
    public static readonly ProblemKind UnknownQuery = new("unknown-query", 400);
    public static readonly ProblemKind NotSignedIn = new("not-signed-in", 401);
    public static readonly ProblemKind WrongBadgeOrPin = new("wrong-badge-or-pin", 401);
    public static readonly ProblemKind NotAllowed = new(RefusalCode.NotAllowed, 403);
    public static readonly ProblemKind NoSuchAddress = new("no-such-address", 404);
    public static readonly ProblemKind MethodNotAllowed = new("method-not-allowed", 405);
    public static readonly ProblemKind BodyTooLarge = new("body-too-large", 413);
    public static readonly ProblemKind UnsupportedContent = new("unsupported-content", 415);
    public static readonly ProblemKind SecretAlreadyShown = new("secret-already-shown", 409);
    public static readonly ProblemKind KeyReused = new("key-reused", 422);
    public static readonly ProblemKind TooManyAttempts = new(RefusalCode.TooManyAttempts, 429);
    public static readonly ProblemKind ServiceFailed = new("service-failed", 500);
    public static readonly ProblemKind Starting = new("starting", 503);
    public static readonly ProblemKind DatabaseUnavailable = new("database-unavailable", 503);

    private static readonly ProblemKind[] OfRefusals =
    [
        new(RefusalCode.WrongPin, 403),
        new(RefusalCode.TooManyWrongPins, 429),
        new(RefusalCode.PastNotAllowed, 403),
        new(RefusalCode.InstrumentNotNamed, 403),
        new(RefusalCode.BuilderMayNotDecide, 403),
        new(RefusalCode.NotFound, 404),
        new(RefusalCode.GateClosed, 409),
        new(RefusalCode.WrongState, 409),
        new(RefusalCode.AlreadyDone, 409),
        new(RefusalCode.AlreadyExists, 409),
        new(RefusalCode.DuplicateReading, 409),
        new(RefusalCode.PositionFilled, 409),
        new(RefusalCode.CarrierFull, 409),
        new(RefusalCode.AttemptEnded, 409),
        new(RefusalCode.AttemptOpen, 409),
        new(RefusalCode.StageIncomplete, 409),
        new(RefusalCode.NotComputable, 409),
        new(RefusalCode.OutOfOrder, 409),
        new(RefusalCode.InstrumentNotUsable, 409),
        new(RefusalCode.NoAttemptOpen, 409),
        new(RefusalCode.InstrumentOfAnotherKind, 409),
        new(RefusalCode.AnotherAttemptOpen, 409),
        new(RefusalCode.SeveralAttemptsOpen, 409),
        new(RefusalCode.PartIsFitted, 409),
        new(RefusalCode.SecondPersonNeeded, 409),
        new(RefusalCode.ChangedMeanwhile, 409),
        new(RefusalCode.ConcessionDoesNotCover, 409),
        new(RefusalCode.CertificateMissing, 409),
        new(RefusalCode.RevisionOutOfOrder, 409),
        new(RefusalCode.TooManyParts, 409),
        new(RefusalCode.PublicAddressMissing, 409),
        new(RefusalCode.Retired, 409),
        new(RefusalCode.StillNeeded, 409),
        new(RefusalCode.CannotRecordNow, 503),
    ];

    /// <summary>All of them, by status.</summary>
    public static readonly IReadOnlyList<ProblemKind> All =
    [
        .. new[]
        {
            InvalidRequest,
            AntiforgeryTokenMissing,
            UnknownQuery,
            NotSignedIn,
            WrongBadgeOrPin,
            NotAllowed,
            NoSuchAddress,
            MethodNotAllowed,
            BodyTooLarge,
            UnsupportedContent,
            SecretAlreadyShown,
            KeyReused,
            TooManyAttempts,
            ServiceFailed,
            Starting,
            DatabaseUnavailable,
        }
            .Concat(OfRefusals)
            .OrderBy(k => k.Status),
    ];

    private static readonly Dictionary<string, ProblemKind> ByCode = All.ToDictionary(k => k.Code, StringComparer.Ordinal);

    /// <summary>The kind of that code, or null.</summary>
    public static ProblemKind? Find(string code) => ByCode.GetValueOrDefault(code);

    /// <summary>The kind of a status that the framework gives by itself.</summary>
    public static ProblemKind OfStatus(int status) =>
        status switch
        {
            401 => NotSignedIn,
            403 => NotAllowed,
            404 => NoSuchAddress,
            405 => MethodNotAllowed,
            413 => BodyTooLarge,
            415 => UnsupportedContent,
            429 => TooManyAttempts,
            503 => DatabaseUnavailable,
            >= 500 => ServiceFailed,
            _ => InvalidRequest,
        };
}
