using System.Globalization;
using System.Net;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Metadata;

namespace Traceability.Web.Http;

/// <summary>Says of an address that is open to anybody how large a body may be there.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class OpenBodyAttribute(long mostBytes) : Attribute
{
    public long MostBytes => mostBytes;
}

/// <summary>
/// Says of a page how large a body may be there for somebody who is signed in. The framework's own attribute would say it again to
/// everybody, after it was made small for whoever is not.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class SignedInBodyAttribute(long mostBytes) : Attribute, IRequestSizeLimitMetadata
{
    public long? MaxRequestBodySize => mostBytes;
}

/// <summary>
/// Bounds what anybody may ask for without signing in: how often from one address, how much at once, how large a body. Nobody who is signed
/// in is bounded here. It comes after authorization: whoever gets through that without a session stands at an open door.
/// </summary>
public static class AnonymousLimits
{
    /// <summary>A form or a sign-in is smaller.</summary>
    private const long SmallBody = 4 * 1024;

    /// <summary>Several benches and a workshop's customers may share an address.</summary>
    private const int MostPerMinute = 300;

    /// <summary>Twice as many as may wait to sign in, so that the other doors stay open meanwhile.</summary>
    private const int MostAtOnce = 208;

    private static readonly TimeSpan ShortWait = TimeSpan.FromSeconds(5);

    public static void AddAnonymousLimits(this IServiceCollection services) =>
        services.AddRateLimiter(o =>
        {
            o.GlobalLimiter = PartitionedRateLimiter.CreateChained(
                PartitionedRateLimiter.Create<HttpContext, string>(context =>
                    IsBounded(context) && context.Connection.RemoteIpAddress is { } address
                        ? RateLimitPartition.GetFixedWindowLimiter(
                            PlaceOf(address),
                            _ =>
                                new()
                                {
                                    PermitLimit = MostPerMinute,
                                    Window = TimeSpan.FromMinutes(1),
                                    QueueLimit = 0,
                                }
                        )
                        : RateLimitPartition.GetNoLimiter("")
                ),
                PartitionedRateLimiter.Create<HttpContext, string>(context =>
                    IsBounded(context)
                        ? RateLimitPartition.GetConcurrencyLimiter("open", _ => new() { PermitLimit = MostAtOnce, QueueLimit = 0 })
                        : RateLimitPartition.GetNoLimiter("")
                )
            );
            o.OnRejected = async (rejected, _) =>
                await RefuseAsync(
                    rejected.HttpContext,
                    rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? wait : ShortWait
                );
        });

    /// <summary>Makes bodies small where nobody is signed in.</summary>
    public static Task LimitBodyAsync(HttpContext context, RequestDelegate next)
    {
        if (IsOpen(context))
        {
            var most = context.GetEndpoint()?.Metadata.GetMetadata<OpenBodyAttribute>()?.MostBytes ?? SmallBody;
            if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            {
                limit.MaxRequestBodySize = most;
            }

            if (context.Request.ContentLength > most)
            {
                throw new BadHttpRequestException(
                    $"without a sign-in a body has at most {most} bytes here; nothing was recorded",
                    StatusCodes.Status413PayloadTooLarge
                );
            }
        }

        return next(context);
    }

    /// <summary>Where an address stands: of IPv6 its first half, for the other is the guest's to choose.</summary>
    public static string PlaceOf(IPAddress address) =>
        address is { AddressFamily: System.Net.Sockets.AddressFamily.InterNetworkV6, IsIPv4MappedToIPv6: false }
            ? Convert.ToHexStringLower(address.GetAddressBytes()[..8])
            : address.MapToIPv4().ToString();

    private static bool IsOpen(HttpContext context) => context.User.Identity?.IsAuthenticated != true;

    /// <summary>Not the service's health, for which its keepers ask; nor the page that only words what was refused already.</summary>
    private static bool IsBounded(HttpContext context) =>
        IsOpen(context)
        && context.GetEndpoint() is not null
        && !context.Request.Path.StartsWithSegments(Addresses.Health)
        && context.Features.Get<IStatusCodeReExecuteFeature>() is null;

    private static Task RefuseAsync(HttpContext context, TimeSpan wait)
    {
        context.Response.Headers.RetryAfter = ((int)Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
        return PageProblems.IsPage(context)
            ? PageProblems.WriteBareAsync(context, StatusCodes.Status429TooManyRequests)
            : ProblemAnswers.Of(ProblemKinds.TooManyAttempts).ExecuteAsync(context);
    }
}
