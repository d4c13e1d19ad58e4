using System.Globalization;
using System.Text;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Tests.Gates;

/// <summary>Where a log judges a stage, clocks count from what the log shows and not from the scan that closes the stage.</summary>
public class SoakClockTests
{
    private static readonly Stage Humid = ARoute.Stage("humid") with
    {
        Method = "climate-soak",
        Loads = true,
        Evidence = [new("climate-log", "climate-log", true)],
        Parameters = new() { ToleranceSource = "workshop", Phases = [new("humid", 40, 2, 93, 3, 60, null, 20)] },
    };

    private static APart Soaking =>
        new APart(
            ARoute.Of(
                Humid.Computing("humidDwellMinutes", "min"),
                ARoute.Stage("insulation") with
                {
                    Windows = [new("humid", 30)],
                    Waits = [new("humid", 10)],
                }
            )
        ).Opened("humid");

    /// <summary>One line a minute from the part's opening on: in tolerance for so long, in the room afterwards.</summary>
    private static string Log(DateTimeOffset from, int minutesInside, int minutesOutside = 0)
    {
        var csv = new StringBuilder("time,temperature_c,humidity_pct\n");
        for (var minute = 0; minute <= minutesInside + minutesOutside; minute++)
        {
            var climate = minute <= minutesInside ? "40,93" : "23,45";
            csv.Append(CultureInfo.InvariantCulture, $"{from.AddMinutes(minute):yyyy-MM-ddTHH:mm:ssZ},{climate}\n");
        }

        return csv.ToString();
    }

    private static APart Closed(APart part, string log, double minutesOpen)
    {
        part.TryAttach("climate-log", "climate-log", log).Accepted();
        part.Bench.Later(minutesOpen);
        Assert.Equal(Verdict.Pass, part.TryClose().Accepted().Verdict);
        return part;
    }

    [Fact]
    public void A_window_counts_from_the_last_line_in_tolerance_and_not_from_the_scan_that_closed_the_soak()
    {
        var part = Soaking;
        var opened = part.Bench.Now;
        Closed(part, Log(opened, 70, 30), 11 * 24 * 60);

        Assert.Equal(opened.AddMinutes(70 + 30), part.Gate("insulation").ClosesAt);
        part.Rule("insulation", WindowOpen.Rule).IsNotMet("too late", "inside its tolerance");
        part.TryOpen("insulation").IsRefused(RefusalKind.Conflict, "too late");
    }

    [Fact]
    public void A_wait_counts_from_the_last_line_in_tolerance_too()
    {
        var part = Soaking;
        var opened = part.Bench.Now;
        Closed(part, Log(opened, 70, 30), 85);

        part.Rule("insulation", WaitElapsed.Rule).IsMet();
        Assert.Contains("inside its tolerance", part.Rule("insulation", WaitElapsed.Rule).Because, StringComparison.Ordinal);
        Assert.Equal(opened.AddMinutes(80), part.Gate("insulation").OpensAt);
        part.TryOpen("insulation").Accepted();
    }

    [Fact]
    public void A_part_taken_out_early_counts_from_the_last_line_before_its_own_closing_though_the_cabinet_went_on()
    {
        var part = Soaking;
        var opened = part.Bench.Now;
        Closed(part, Log(opened, 200), 90.5);

        Assert.Equal(opened.AddMinutes(90 + 30), part.Gate("insulation").ClosesAt);
    }

    [Fact]
    public void A_line_of_the_second_in_which_the_soak_was_opened_counts_though_the_logger_writes_whole_seconds()
    {
        var part = new APart(Soaking.Dossier.Route);
        part.Bench.Now = part.Bench.Now.AddMilliseconds(700);
        part.Opened("humid");
        Closed(part, Log(part.Bench.Now, 60), 60);

        Assert.Equal(60, part.ReadingOf("humidDwellMinutes").Value);
    }

    [Fact]
    public void A_log_that_came_after_a_part_was_closed_is_no_evidence_of_it()
    {
        var part = new APart(ARoute.Of(Humid.Computing("humidDwellMinutes", "min")));
        var stamp = part.Bench.Stamp(part.Worker);
        var load = new Load(stamp.NewId(), "humid", "ST-1", [], stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        var attempt = Attempts.Open(part.Dossier, "humid", "ST-1", load.Id, part.Context, stamp);
        part.Add([.. attempt.Facts, LogOf(load, part)]);
        var files = new List<EvidenceFile>
        {
            new(
                part.Dossier.Attempts[0].Evidence[0].Id,
                "climate-log",
                "climate-log",
                Encoding.UTF8.GetBytes(Log(part.Bench.Now, 70)),
                null
            ),
        };
        part.Bench.Later(70);
        part.Add([
            .. Attempts
                .Close(
                    part.Dossier,
                    attempt.Value!.Id,
                    files,
                    null,
                    part.Context with
                    {
                        Inputs = part.InSlots,
                    },
                    part.Bench.Stamp(part.Worker)
                )
                .Facts,
        ]);
        var judgedOn = part.Dossier.Attempts[0].Evidence.Single();

        part.Add(LogOf(load, part));

        Assert.Equal(judgedOn, Assert.Single(part.Dossier.Attempts[0].Evidence));
    }

    private static EvidenceRecord LogOf(Load load, APart part)
    {
        var stamp = part.Bench.Stamp(part.Worker);
        return new(
            stamp.NewId(),
            null,
            null,
            load.Id,
            "climate-log",
            "climate-log",
            "text/csv",
            "",
            1,
            null,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
    }
}
