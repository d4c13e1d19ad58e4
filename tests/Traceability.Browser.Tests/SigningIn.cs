using Microsoft.Playwright;
using Traceability.Web.Tests;

namespace Traceability.Browser.Tests;

/// <summary>Signing in at the desk.</summary>
internal static class SigningIn
{
    public static async Task<Screen> SignedInAsync(this Chromium chromium, int width, ColorScheme scheme, string badge)
    {
        var screen = await chromium.OpenAsync(width, scheme);
        await screen.Page.GotoAsync("/sign-in");
        await screen.Page.Locator("#badge").FillAsync(badge);
        await screen.Page.Locator("#pin").FillAsync(Workshop.PinOf(badge));
        await screen.Page.Locator("#pin").PressAsync("Enter");
        await screen.Page.Locator("form[action='/sign-out']").WaitForAsync();
        return screen;
    }
}
