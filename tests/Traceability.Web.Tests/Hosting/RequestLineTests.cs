using Microsoft.AspNetCore.Http;
using Serilog.Events;
using Traceability.Web.Hosting;

namespace Traceability.Web.Tests.Hosting;

public sealed class RequestLineTests
{
    [Theory]
    [InlineData("/parts/x\r\n2026-11-29 12:00:00 INF made up", "/parts/x%0d%0a2026-11-29 12:00:00 INF made up")]
    [InlineData("/parts/\u001b[2J", "/parts/%1b[2J")]
    [InlineData("/parts/Ø-1", "/parts/Ø-1")]
    public void A_path_stays_on_its_line_of_the_log(string path, string logged) =>
        Assert.Equal(
            logged,
            ((ScalarValue)RequestLine.Properties(new DefaultHttpContext(), path, 1, 200).Single(p => p.Name == "RequestPath").Value).Value
        );
}
