namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>Walks once through a log and keeps the dwell: when it began, how long it holds, what broke it.</summary>
internal sealed class DwellCount(SoakPhase phase)
{
    private const double PartBandK = 3;
    private const int ExcursionsTold = 5;

    private DateTimeOffset? _runFrom;
    private DateTimeOffset _lastGood;
    private double _summedMinutes;
    private double _partC;

    public DateTimeOffset? From { get; private set; }
    public DateTimeOffset? Until { get; private set; }
    public double Minutes { get; private set; }
    public double LongestExcursionMinutes { get; private set; }
    public int ExcursionCount { get; private set; }
    public double WidestGapMinutes { get; private set; }
    public List<string> Excursions { get; } = [];
    public bool LeftAfterDwell { get; private set; }

    private bool IsMet => Minutes >= phase.MinDwellMinutes;

    public void Walk(IReadOnlyList<ClimateSample> samples)
    {
        _partC = samples[0].TemperatureC;
        Take(samples[0]);
        for (var i = 1; i < samples.Count; i++)
        {
            var step = (samples[i].At - samples[i - 1].At).TotalMinutes;
            WidestGapMinutes = Math.Max(WidestGapMinutes, step);
            if (phase.SpecimenTimeConstantMinutes is { } lag)
                _partC = SpecimenLag.Follow(_partC, samples[i - 1].TemperatureC, samples[i].TemperatureC, step, lag);
            if (step > phase.MaxGapMinutes && _runFrom is not null)
                Break(SoakTexts.GapWithoutAReading(SoakWords.Time(samples[i - 1].At), step, phase.MaxGapMinutes));
            Take(samples[i]);
        }
        if (_runFrom is not null || From is null)
            return;
        LeftAfterDwell = IsMet;
        if (!LeftAfterDwell)
            Excursion(samples[^1].At);
    }

    private void Take(ClimateSample sample)
    {
        if (phase.Departure(sample) is not SoakDeparture.None)
        {
            // The words are made only where a run ends: most lines of a log lie outside any one phase.
            if (_runFrom is not null)
                Break(SoakWords.Outside(sample, phase));
            return;
        }
        if (_runFrom is null)
        {
            if (phase.SpecimenTimeConstantMinutes is not null && Math.Abs(_partC - phase.TemperatureC) > PartBandK)
                return;
            if (From is not null)
                Excursion(sample.At);
            _runFrom = _lastGood = sample.At;
            From ??= sample.At;
            Until ??= sample.At;
        }
        _summedMinutes += (sample.At - _lastGood).TotalMinutes;
        _lastGood = sample.At;
        Count(_runFrom.Value);
    }

    private void Count(DateTimeOffset runFrom)
    {
        if (phase.Excursions is ExcursionRule.IsSubtracted)
        {
            Minutes = _summedMinutes;
            Until = _lastGood;
            return;
        }
        var run = (_lastGood - runFrom).TotalMinutes;
        if (run <= Minutes)
            return;
        (From, Until, Minutes) = (runFrom, _lastGood, run);
    }

    private void Break(string because)
    {
        _runFrom = null;
        if (Excursions.Count < ExcursionsTold)
            Excursions.Add(because);
    }

    private void Excursion(DateTimeOffset backAt)
    {
        ExcursionCount++;
        LongestExcursionMinutes = Math.Max(LongestExcursionMinutes, (backAt - _lastGood).TotalMinutes);
    }
}
