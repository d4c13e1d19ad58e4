using Traceability.Domain.Codes;

namespace Traceability.Domain.Tests.Codes;

public class CertificateNumberTests
{
    private const string Number = "23456789ABCDEFGHJKLM";

    [Theory]
    [InlineData(Number)]
    [InlineData("23456789abcdefghjklm")]
    [InlineData(" 2345-6789 abcd-efgh jklm ")]
    [InlineData("https://workshop.example/verify/23456789ABCDEFGHJKLM")]
    [InlineData("workshop.example/verify/23456789abcdefghjklm?from=label")]
    public void A_number_is_found_however_it_is_written_and_at_the_end_of_its_address(string text) =>
        Assert.Equal(Number, CertificateNumber.In(text));

    [Theory]
    [InlineData("")]
    [InlineData("US-0015")]
    [InlineData("23456789ABCDEFGHJKLMNPQ")]
    [InlineData("23456789ABCDEFGHJK_M")]
    [InlineData("https://workshop.example/verify/")]
    public void Anything_else_is_no_number_of_a_certificate(string text) => Assert.Null(CertificateNumber.In(text));
}
