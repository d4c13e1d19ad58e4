using Traceability.Domain.Evidence;

namespace Traceability.Domain.Tests.Evidence;

public class EvidenceKindTests
{
    [Fact]
    public void The_kinds_are_those_of_the_contract() =>
        Assert.Equal(
            ["climate-log", "frequency-response", "noise-spectrum", "noise-recording", "photo"],
            EvidenceKinds.All.Select(kind => kind.Code())
        );

    [Fact]
    public void Every_kind_is_found_by_its_code_and_no_other_is()
    {
        Assert.All(EvidenceKinds.All, kind => Assert.Equal(kind, EvidenceKinds.FromCode(kind.Code())));
        Assert.Null(EvidenceKinds.FromCode("Photo"));
        Assert.Null(EvidenceKinds.FromCode(null));
    }

    [Fact]
    public void A_picture_is_known_by_its_first_bytes()
    {
        Assert.Equal("image/jpeg", Photo.Read(new byte[] { 0xFF, 0xD8, 0xFF, 0xE0, 0 }).Data?.ContentType);
        Assert.Equal("image/png", Photo.Read(new byte[] { 0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0 }).Data?.ContentType);
        Assert.Equal(FileFault.WrongFormat, Assert.Single(Photo.Read("<svg/>"u8.ToArray()).Problems).Fault);
        Assert.Equal(FileFault.TooLittle, Assert.Single(Photo.Read(default).Problems).Fault);
    }

    [Fact]
    public void Each_kind_is_looked_through_as_what_it_is()
    {
        ReadOnlyMemory<byte> response = "frequency_hz,level_db\n20,0\n200,0\n2000,0\n"u8.ToArray();

        Assert.Equal(
            [EvidenceKind.FrequencyResponse],
            EvidenceKinds.All.Where(kind => EvidenceCheck.Problems(kind, response, fullScaleV: 1).Count == 0)
        );
    }

    [Fact]
    public void A_recording_needs_its_volts_at_full_scale() =>
        Assert.Contains(
            "fullScaleV",
            Assert.Single(EvidenceCheck.Problems(EvidenceKind.NoiseRecording, default)).Message,
            StringComparison.Ordinal
        );
}
