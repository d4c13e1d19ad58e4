namespace Traceability.Domain.Work;

/// <summary>The kinds of refusal, by the stable codes by which programs tell them apart. Words may change, these do not.</summary>
public static class RefusalCode
{
    /// <summary>The command itself is wrong in some field.</summary>
    public const string InvalidRequest = "invalid-request";

    /// <summary>Not for this person.</summary>
    public const string NotAllowed = "not-allowed";

    /// <summary>The PIN that should sign is not this person's.</summary>
    public const string WrongPin = "wrong-pin";

    /// <summary>Too many wrong PINs: the badge is locked for a while.</summary>
    public const string TooManyWrongPins = "too-many-wrong-pins";

    /// <summary>Too much came in too short a time.</summary>
    public const string TooManyAttempts = "too-many-attempts";

    /// <summary>Only who enters older records may state a past time.</summary>
    public const string PastNotAllowed = "past-not-allowed";

    /// <summary>The attempt does not name the instrument that sends.</summary>
    public const string InstrumentNotNamed = "instrument-not-named";

    /// <summary>Who built a part does not decide that it may stay as it is.</summary>
    public const string BuilderMayNotDecide = "builder-may-not-decide";

    /// <summary>No such thing.</summary>
    public const string NotFound = "not-found";

    /// <summary>A gate is closed; its checks say what is missing.</summary>
    public const string GateClosed = "gate-closed";

    /// <summary>Not possible in the state in which the thing is.</summary>
    public const string WrongState = "wrong-state";

    /// <summary>It was done already.</summary>
    public const string AlreadyDone = "already-done";

    /// <summary>The code, number or badge is taken.</summary>
    public const string AlreadyExists = "already-exists";

    /// <summary>The characteristic was read already in this attempt.</summary>
    public const string DuplicateReading = "duplicate-reading";

    /// <summary>Something is fitted at the position already.</summary>
    public const string PositionFilled = "position-filled";

    /// <summary>Another part lies in the carrier.</summary>
    public const string CarrierFull = "carrier-full";

    /// <summary>The attempt was closed or abandoned.</summary>
    public const string AttemptEnded = "attempt-ended";

    /// <summary>An attempt that is still open stands in the way.</summary>
    public const string AttemptOpen = "attempt-open";

    /// <summary>The stage still needs readings or files.</summary>
    public const string StageIncomplete = "stage-incomplete";

    /// <summary>What was recorded cannot be computed with.</summary>
    public const string NotComputable = "not-computable";

    /// <summary>The stated time lies before something that must come first.</summary>
    public const string OutOfOrder = "out-of-order";

    /// <summary>The instrument is held, out of tolerance, or due.</summary>
    public const string InstrumentNotUsable = "instrument-not-usable";

    /// <summary>The stage asks for no instrument of this kind.</summary>
    public const string InstrumentOfAnotherKind = "instrument-of-another-kind";

    /// <summary>The part or attempt that was named is not the one open there.</summary>
    public const string AnotherAttemptOpen = "another-attempt-open";

    /// <summary>No attempt is open at the station.</summary>
    public const string NoAttemptOpen = "no-attempt-open";

    /// <summary>Several attempts are open at the station.</summary>
    public const string SeveralAttemptsOpen = "several-attempts-open";

    /// <summary>The part is fitted in another one.</summary>
    public const string PartIsFitted = "part-is-fitted";

    /// <summary>Somebody else must do this.</summary>
    public const string SecondPersonNeeded = "second-person-needed";

    /// <summary>Somebody else changed it since it was looked at.</summary>
    public const string ChangedMeanwhile = "changed-meanwhile";

    /// <summary>The concession given beforehand does not cover this.</summary>
    public const string ConcessionDoesNotCover = "concession-does-not-cover";

    /// <summary>The unit has no certificate of now.</summary>
    public const string CertificateMissing = "certificate-missing";

    /// <summary>The revision is not the next of its route, or would never be used.</summary>
    public const string RevisionOutOfOrder = "revision-out-of-order";

    /// <summary>Nothing can be recorded at the moment.</summary>
    public const string CannotRecordNow = "cannot-record-now";

    /// <summary>A certificate needs the address under which customers reach the service.</summary>
    public const string PublicAddressMissing = "public-address-missing";

    /// <summary>It was retired, or its code belongs to what was entered by mistake: nothing new may use it.</summary>
    public const string Retired = "retired";

    /// <summary>Something depends on it, so that it cannot be taken back.</summary>
    public const string StillNeeded = "still-needed";

    /// <summary>More parts than one command may touch.</summary>
    public const string TooManyParts = "too-many-parts";
}
