using System.Text;
using System.Text.Json;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Tests.Certificates;

public sealed class CertificateJsonTests
{
    [Fact]
    public void A_full_certificate_reads_back_as_it_was_written()
    {
        var written = CertificateJson.Write(Examples.Full);
        var back = CertificateJson.Read(written);

        Assert.Equal(Encoding.UTF8.GetString(written), Encoding.UTF8.GetString(CertificateJson.Write(back)));
        Assert.Equal(Examples.Full.IssuedAt, back.IssuedAt);
        Assert.Equal(Examples.Full.IssuedAt.Offset, back.IssuedAt.Offset);
        Assert.Equal(Examples.Full.Contents, back.Contents);
        Assert.Equal(Examples.Full.Measurements.SelectMany(stage => stage.Values), back.Measurements.SelectMany(stage => stage.Values));
        Assert.Equal(Examples.Full.Patterns.SelectMany(pattern => pattern.Values), back.Patterns.SelectMany(pattern => pattern.Values));
        Assert.Equal(
            Examples.Full.Curves.SelectMany(curve => curve.Traces[0].Points),
            back.Curves.SelectMany(curve => curve.Traces[0].Points)
        );
        Assert.Equal(Examples.Full.Soaks[0].Phases, back.Soaks[0].Phases);
        Assert.Equal(Examples.Full.Nonconformities, back.Nonconformities);
        Assert.Equal(Examples.Full.Statements, back.Statements);
    }

    [Fact]
    public void Trailing_zeros_of_values_and_limits_survive()
    {
        var back = CertificateJson.Read(CertificateJson.Write(Examples.Full));

        var capacitance = back.Measurements.SelectMany(stage => stage.Values).Single(value => value.Label == "Capacitance, front");
        Assert.Equal("61.30", capacitance.Value);
        Assert.Equal("6.0", back.FilmLots().Single().BaseThicknessUm.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Letters_beyond_ascii_are_written_as_themselves()
    {
        var text = Encoding.UTF8.GetString(CertificateJson.Write(Examples.Full));

        Assert.Contains("Jiří Řezáč", text, StringComparison.Ordinal);
        Assert.Contains("GΩ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_member_is_refused()
    {
        var text = Encoding
            .UTF8.GetString(CertificateJson.Write(Examples.Bare))
            .Replace("\"serial\"", "\"serail\"", StringComparison.Ordinal);

        Assert.Throws<JsonException>(() => CertificateJson.Read(Encoding.UTF8.GetBytes(text)));
    }

    [Fact]
    public void A_film_lot_used_twice_is_named_once()
    {
        Assert.Equal("F-26-002-9", Assert.Single(Examples.Full.FilmLots()).LotNumber);
    }
}
