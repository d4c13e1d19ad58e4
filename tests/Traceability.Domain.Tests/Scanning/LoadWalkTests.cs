using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using static Traceability.Domain.Tests.Scanning.BenchStages;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>Many parts under one start and one end, line by line.</summary>
public class LoadWalkTests
{
    [Fact]
    public void A_run_for_many_parts_is_scan_scan_scan_start()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002"), Cure("D26-00003")).SignedIn(station: "PLATE-1");

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "Scan START, or more parts for the same run."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            (B(CodeKind.Part, "D26-00003"), Severity.Ok, "3 collected."),
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "collected already; 3 in all"),
            ("START", Severity.Ok, "The run is started for 3 parts."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ask, "Scan LOAD-CLOSE"),
            ("CLEAR", Severity.Ask, "The bench is clear."),
            (B(CodeKind.Part, "D26-00003"), Severity.Ask, "Scan LOAD-CLOSE"),
            ("LOAD-CLOSE", Severity.Ok, "Passed.")
        );

        var load = Assert.Single(bench.Orders.OfType<StationCommand.StartLoad>());
        Assert.Equal(("cure", "PLATE-1"), (load.StageCode, load.Station));
        Assert.Equal(["D26-00001", "D26-00002", "D26-00003"], load.Parts);
        Assert.Single(bench.Orders.OfType<StationCommand.CloseLoad>());
    }

    [Fact]
    public void A_row_of_parts_is_bonded_one_by_one_although_a_cure_for_many_comes_next()
    {
        var bench = new WalkThrough(Bond("D26-00001"), Bond("D26-00002"), Bond("D26-00003"))
        {
            Refusing = command =>
                command is StationCommand.AddToLoad add
                    ? new ScanOutcome.LoadPartRefused(add.Serial, $"{add.Serial} is at another stage: Bond the ring.")
                    : null,
        }.SignedIn();
        foreach (var serial in new[] { "D26-00001", "D26-00002", "D26-00003" })
            bench.Then[serial] = Cure(serial);

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "Scan START."),
            ("START", Severity.Ask, "Scan DONE."),
            ("DONE", Severity.Ok, "Passed."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "Scan START."),
            ("START", Severity.Ask, "Scan DONE."),
            ("DONE", Severity.Ok, "Passed."),
            (B(CodeKind.Part, "D26-00003"), Severity.Ok, "Scan START."),
            ("START", Severity.Ask, "Scan DONE."),
            ("DONE", Severity.Ok, "Passed.")
        );

        Assert.Equal(["D26-00001", "D26-00002", "D26-00003"], bench.Orders.OfType<StationCommand.OpenAttempt>().Select(open => open.Part));
        Assert.Empty(bench.Session.LoadParts);
    }

    [Fact]
    public void After_the_row_the_parts_are_collected_for_the_cure_by_scanning_them()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002"), Bond("D26-00003")).SignedIn();
        bench.Then["D26-00003"] = Cure("D26-00003");

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00003"), Severity.Ok, "START"),
            ("START", Severity.Ask, "DONE"),
            ("DONE", Severity.Ok, "Passed."),
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "more parts for the same run"),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            (B(CodeKind.Part, "D26-00003"), Severity.Ok, "3 collected."),
            ("START", Severity.Ok, "The run is started for 3 parts.")
        );
    }

    [Fact]
    public void The_part_just_closed_starts_a_row_of_its_own_once_it_is_scanned_again()
    {
        var bench = new WalkThrough(Bond("D26-00001"), Cure("D26-00002")).SignedIn();
        bench.Then["D26-00001"] = Cure("D26-00001");

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "START"),
            ("START", Severity.Ask, "DONE"),
            ("DONE", Severity.Ok, "Passed."),
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "more parts for the same run"),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected.")
        );
    }

    [Fact]
    public void A_part_that_was_put_aside_is_turned_to_by_the_word_that_the_station_names()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002"), Bond("D26-00003"))
        {
            Refusing = command =>
                command is StationCommand.AddToLoad { Serial: "D26-00003" } add
                    ? new ScanOutcome.LoadPartRefused(add.Serial, "D26-00003 is at another stage: Bond the ring.")
                    : null,
        }.SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "START"),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            (B(CodeKind.Part, "D26-00003"), Severity.Refused, "another stage")
        );
        Assert.Contains("CLEAR", bench.Last.Detail, StringComparison.Ordinal);
        Walk(bench, ("CLEAR", Severity.Ask, "clear"), (B(CodeKind.Part, "D26-00003"), Severity.Ok, "Scan START."));
    }

    [Fact]
    public void DONE_takes_one_part_out_of_its_run_and_LOAD_CLOSE_ends_the_run_for_the_others()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002")).SignedIn(station: "PLATE-1");

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "Scan START, or more parts for the same run."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            ("START", Severity.Ok, "The run is started for 2 parts."),
            (B(CodeKind.Part, "D26-00001"), Severity.Ask, "or DONE to take this one out"),
            ("DONE", Severity.Ok, "Passed."),
            (B(CodeKind.Part, "D26-00002"), Severity.Ask, "Scan LOAD-CLOSE"),
            ("LOAD-CLOSE", Severity.Ok, "Passed.")
        );

        Assert.Equal(WalkThrough.IdOf("D26-00001"), Assert.Single(bench.Orders.OfType<StationCommand.CloseAttempt>()).AttemptId);
        Assert.Single(bench.Orders.OfType<StationCommand.CloseLoad>());
    }

    [Fact]
    public void A_part_that_cannot_join_a_load_is_put_aside_and_the_others_stay()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002"), Cure("D26-00003"))
        {
            Refusing = command =>
                command is StationCommand.AddToLoad { Serial: "D26-00002" } add
                    ? new ScanOutcome.LoadPartRefused(add.Serial, "D26-00002 is on hold.")
                    : null,
        }.SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "START"),
            (B(CodeKind.Part, "D26-00002"), Severity.Refused, "D26-00002 is on hold."),
            (B(CodeKind.Part, "D26-00003"), Severity.Ok, "2 collected.")
        );

        Assert.Equal(["D26-00001", "D26-00003"], bench.Session.LoadParts);
    }

    [Fact]
    public void A_load_survives_signing_out_and_can_be_started_by_the_next_person()
    {
        var bench = new WalkThrough(Cure("D26-00001"), Cure("D26-00002")).SignedIn();

        Walk(
            bench,
            (B(CodeKind.Part, "D26-00001"), Severity.Ok, "START"),
            (B(CodeKind.Part, "D26-00002"), Severity.Ok, "2 collected."),
            ("OUT", Severity.Ok, "Signed out."),
            (B(CodeKind.Badge, "BUILD2"), Severity.Ask, "PIN"),
            ("1111", Severity.Ok, "2 collected."),
            ("START", Severity.Ok, "2 collected."),
            ("START", Severity.Ok, "The run is started for 2 parts.")
        );
    }
}
