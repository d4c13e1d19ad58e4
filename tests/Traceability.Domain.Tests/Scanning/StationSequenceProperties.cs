using CsCheck;
using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using static Traceability.Domain.Tests.Scanning.ScannedLines;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>Whatever is scanned or typed in whatever order.</summary>
public class StationSequenceProperties
{
    [Fact]
    public void No_sequence_of_scans_throws_and_every_one_is_answered() =>
        Gen.Select(Sequences, Gen.Bool, Gen.Bool)
            .Sample(
                (lines, signedIn, moody) =>
                {
                    var bench = Workshop(moody);
                    if (signedIn)
                        bench.SignedIn();
                    return lines.All(line => bench.Type(line).Line.Length > 0);
                }
            );

    [Fact]
    public void No_text_whatever_throws() =>
        Gen.Select(Gen.String, Gen.Int[0, 3])
            .Sample(
                (text, stage) =>
                {
                    var bench = Workshop();
                    if (stage > 0)
                        bench.SignedIn();
                    if (stage > 1)
                        bench.Scan(CodeKind.Part, "C26-00001");
                    if (stage > 2)
                    {
                        bench.Type("LCR-1");
                        bench.Type("START");
                    }
                    return bench.Type(text).Line.Length > 0;
                }
            );

    [Fact]
    public void A_collected_part_leaves_only_when_the_run_starts_or_the_bench_is_cleared() =>
        Sequences.Sample(lines =>
        {
            var bench = Workshop().SignedIn();
            foreach (var line in lines)
            {
                var before = bench.Session.LoadParts;
                var orders = bench.Orders.Count;
                bench.Type(line);
                var mayGo = line == "CLEAR" || bench.Orders.Skip(orders).OfType<StationCommand.StartLoad>().Any();
                if (!mayGo && !before.SequenceEqual(bench.Session.LoadParts.Take(before.Count)))
                    return false;
                if (bench.Session.LoadParts.Distinct().Count() != bench.Session.LoadParts.Count)
                    return false;
            }
            return true;
        });

    [Fact]
    public void A_started_run_names_every_part_that_was_collected() =>
        Sequences.Sample(lines =>
        {
            var bench = Workshop().SignedIn();
            foreach (var line in lines)
            {
                var (before, orders) = (bench.Session.LoadParts, bench.Orders.Count);
                bench.Type(line);
                if (
                    before.Count > 0
                    && bench.Orders.Skip(orders).OfType<StationCommand.StartLoad>().Any(load => !load.Parts.SequenceEqual(before))
                )
                    return false;
            }
            return true;
        });
}
