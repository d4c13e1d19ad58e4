using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work.Delivery;

namespace Traceability.Domain.Tests.Work.Delivery;

/// <summary>What became of a certificate since it was issued.</summary>
public class CertificateCurrencyTests
{
    private static APart Certified =>
        new APart(ARoute.Of(ARoute.Stage("inspect").Measuring("noiseDba", 0, 20)) with { Kind = PartKinds.Unit })
            .Passed("inspect")
            .Certified();

    private static Certificate Latest(APart part) => part.Dossier.Of<Certificate>().Last();

    private static CertificateCurrency Of(APart part, DateTimeOffset? lastWorkInside = null, Certificate? certificate = null) =>
        ReleaseUnit.CurrencyOf(part.Dossier, certificate ?? Latest(part), lastWorkInside);

    [Fact]
    public void A_certificate_of_the_unit_as_it_is_is_current()
    {
        Assert.Equal(CertificateCurrency.Current, Of(Certified));
        Assert.True(ReleaseUnit.HasCurrentCertificate(Certified.Dossier, null));
    }

    [Fact]
    public void A_later_certificate_takes_its_place()
    {
        var part = Certified;
        var first = Latest(part);
        part.Certified();

        Assert.Equal(CertificateCurrency.Replaced, Of(part, certificate: first));
        Assert.Equal(CertificateCurrency.Current, Of(part));
    }

    [Fact]
    public void A_scrapped_unit_has_no_current_certificate_even_when_it_came_back()
    {
        var part = Certified.Shipped().CameBack();
        part.TryRaise().Accepted();
        part.Decided(DispositionKind.Scrap);

        Assert.Equal(CertificateCurrency.Scrapped, Of(part));
    }

    [Fact]
    public void What_came_back_is_no_longer_what_its_certificate_says_even_when_it_was_worked_on()
    {
        var part = Certified.Shipped().CameBack();
        Assert.Equal(CertificateCurrency.CameBack, Of(part));

        part.CameOut(ReturnOutcomeKind.NoFault);
        part.TryCorrect("noiseDba", "11", Somebody.QualityLead).Accepted();
        Assert.Equal(CertificateCurrency.CameBack, Of(part));
        Assert.Equal(CertificateCurrency.Current, Of(part.Certified()));
    }

    [Fact]
    public void A_certificate_issued_between_the_return_and_how_it_came_out_does_not_speak_of_it()
    {
        var part = Certified.Shipped().CameBack().Certified().CameOut(ReturnOutcomeKind.NoFault);

        Assert.False(ReleaseUnit.CertifiedSinceItCameBack(part.Dossier));
        Assert.True(ReleaseUnit.CertifiedSinceItCameBack(part.Certified().Dossier));
    }

    [Fact]
    public void Work_on_the_unit_or_on_anything_inside_it_ends_it_when_it_was_recorded_later()
    {
        var part = Certified;
        var issued = Latest(part).RecordedAt;

        Assert.Equal(CertificateCurrency.Current, Of(part, lastWorkInside: issued));
        Assert.Equal(CertificateCurrency.WorkedOn, Of(part, lastWorkInside: issued.AddTicks(1)));
        part.TryCorrect("noiseDba", "11").Accepted();
        Assert.Equal(CertificateCurrency.WorkedOn, Of(part));
    }

    [Fact]
    public void A_hold_does_not_end_it()
    {
        var part = Certified;
        part.Hold();

        Assert.Equal(CertificateCurrency.Current, Of(part));
    }

    [Fact]
    public void A_scrapped_unit_says_that_it_was_scrapped()
    {
        var part = Certified;
        part.TryRaise().Accepted();
        part.Decided(DispositionKind.Scrap);

        var check = ReleaseUnit.MissingForCertificate(part.Dossier).Single(c => c.Rule == "scrapped");

        check.IsNotMet("was scrapped");
    }

    [Fact]
    public void A_repair_that_nobody_tested_says_so()
    {
        var part = Certified.Shipped().CameBack().CameOut(ReturnOutcomeKind.Repaired);

        ReleaseUnit.MissingForCertificate(part.Dossier).Single(c => c.Rule == "return-test").IsNotMet("repaired");
    }
}
