using System.Net;

namespace Traceability.Web.Tests.Pages;

public sealed class SignInPageTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_page_for_signed_in_people_leads_through_the_sign_in_and_back()
    {
        var visitor = await Visitor.OpenAsync(workshop);
        Assert.Equal("/sign-in", (await visitor.GoAsync("/labels?Kind=lots")).Path);
        Assert.Equal("/labels?Kind=lots", WebUtility.HtmlDecode(visitor.Now.Field("ReturnTo")));
        var after = await visitor.SendAsync(
            "/sign-in",
            ("Badge", Workshop.Builder),
            ("Pin", Workshop.PinOf(Workshop.Builder)),
            ("ReturnTo", "/labels?Kind=lots")
        );
        Assert.Equal(HttpStatusCode.OK, after.Status);
        Assert.Equal("/labels", after.Path);
    }

    [Theory]
    [InlineData("https://elsewhere.example/")]
    [InlineData("//elsewhere.example/")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("javascript:alert(1)")]
    public async Task An_address_elsewhere_is_not_followed_after_signing_in(string elsewhere)
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.GoAsync("/sign-in?returnTo=" + Uri.EscapeDataString(elsewhere));
        var after = await visitor.SendAsync(
            "/sign-in",
            ("Badge", Workshop.Builder),
            ("Pin", Workshop.PinOf(Workshop.Builder)),
            ("ReturnTo", elsewhere)
        );
        Assert.Equal("/station", after.Path);
    }

    [Fact]
    public async Task A_scanned_badge_alone_has_the_PIN_asked_next()
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.GoAsync("/sign-in");
        var code = Domain.Codes.PrintedCode.For(Domain.Codes.CodeKind.Badge, Workshop.Builder).Text;
        var asked = await visitor.SendAsync("/sign-in", ("Badge", code), ("Pin", ""));
        Assert.Contains("Now type your PIN", asked.Text, StringComparison.Ordinal);
        Assert.Contains($"value=\"{Workshop.Builder}\"", asked.Html, StringComparison.Ordinal);
        Assert.Equal(
            "/station",
            (await visitor.SendAsync("/sign-in", ("Badge", Workshop.Builder), ("Pin", Workshop.PinOf(Workshop.Builder)))).Path
        );
    }

    [Fact]
    public async Task A_wrong_PIN_is_refused_and_does_not_come_back_in_the_page()
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.GoAsync("/sign-in");
        var refused = await visitor.SendAsync("/sign-in", ("Badge", Workshop.OtherBuilder), ("Pin", "98765431"));
        Assert.Equal(HttpStatusCode.Unauthorized, refused.Status);
        Assert.DoesNotContain("98765431", refused.Html, StringComparison.Ordinal);
        Assert.Contains("do not belong together", refused.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_five_failures_the_page_says_when_the_badge_opens_again()
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.GoAsync("/sign-in");
        for (var i = 0; i < 5; i++)
        {
            Assert.Equal(
                HttpStatusCode.Unauthorized,
                (await visitor.SendAsync("/sign-in", ("Badge", Workshop.Machine), ("Pin", "1"))).Status
            );
        }

        var locked = await visitor.SendAsync("/sign-in", ("Badge", Workshop.Machine), ("Pin", Workshop.PinOf(Workshop.Machine)));
        Assert.Equal(HttpStatusCode.TooManyRequests, locked.Status);
        Assert.Matches(@"opens again at (\d+ \w+ \d+, )?\d\d:\d\d", locked.Text);
    }

    [Fact]
    public async Task The_cookie_is_out_of_reach_of_scripts_and_of_other_sites()
    {
        var visitor = new Visitor(workshop.ClientWithoutRedirects());
        await visitor.GoAsync("/sign-in");
        var answer = await visitor.SendAsync("/sign-in", ("Badge", Workshop.Builder), ("Pin", Workshop.PinOf(Workshop.Builder)));
        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        var cookie = Assert.Single(answer.Cookies, c => c.StartsWith("workshop-session=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Signing_out_ends_the_session_and_needs_a_form_of_ours()
    {
        var visitor = await Visitor.SignedInAsync(workshop);
        Assert.Equal("/bench", (await visitor.GoAsync("/bench")).Path);
        Assert.Equal(HttpStatusCode.BadRequest, (await visitor.ForgeAsync("/sign-out")).Status);
        Assert.Equal("/bench", (await visitor.GoAsync("/bench")).Path);
        Assert.Equal("/sign-in", (await visitor.SendAsync("/sign-out")).Path);
        Assert.Equal("/sign-in", (await visitor.GoAsync("/bench")).Path);
    }
}
