using Microsoft.Extensions.DependencyInjection;
using Traceability.Web.Hosting;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Misuse;

/// <summary>
/// Bodies of a hundred megabytes, against the service as it really listens: the server of the other tests has no limits of its own. The
/// workshop is at the hour that it is, because a service in a process of its own is not ready while its clock is behind what was recorded.
/// </summary>
public sealed class BigBodyTests : IAsyncLifetime
{
    private const long HundredMegabytes = 100_000_000;

    private readonly Workshop workshop = new() { AtThisHour = true };

    public Task InitializeAsync() => workshop.InitializeAsync();

    public Task DisposeAsync() => workshop.DisposeAsync();

    [Fact]
    public async Task A_body_of_a_hundred_megabytes_is_refused_and_leaves_nothing()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount");
        var data = Directory.CreateTempSubdirectory("traceability-big-body-test-");
        using (
            var service = await ServiceProcess.StartAsync(
                new Dictionary<string, string>
                {
                    ["ConnectionStrings__Traceability"] = workshop.Services.GetRequiredService<WorkshopDatabase>().OwnerConnectionString,
                    ["TRACEABILITY_DATA"] = data.FullName,
                }
            )
        )
        {
            await using var door = BackDoor.Of(workshop);
            await door.UntouchedByAsync(async () =>
            {
                foreach (
                    var (path, mediaType) in new[]
                    {
                        ($"attempts/{attempt}/evidence?name=photo", "image/png"),
                        ($"parts/{serial}/records", "application/json"),
                    }
                )
                {
                    foreach (var (announced, key) in new[] { (true, false), (false, false), (true, true), (false, true) })
                    {
                        var status = await SendAsync(service.Client, path, mediaType, announced, key);
                        // A body whose length was not announced may be cut off in the middle, before its sender listens for the answer.
                        Assert.True(status == 413 || (!announced && status is null), $"{path}, announced {announced}, key {key}: {status}");
                    }
                }
            });
            Assert.Equal(200, (int)(await service.Client.GetAsync(new Uri("/health/ready", UriKind.Relative))).StatusCode);
        }

        data.Delete(recursive: true);
    }

    private async Task<int?> SendAsync(HttpClient client, string path, string mediaType, bool announced, bool key)
    {
        using var signedIn = await workshop.ClientAsync(Workshop.Builder);
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri($"/api/v1/{path}", UriKind.Relative))
        {
            Content = new StreamContent(new Endless(HundredMegabytes)),
        };
        request.Headers.Authorization = signedIn.DefaultRequestHeaders.Authorization;
        request.Headers.ExpectContinue = true;
        request.Content.Headers.ContentType = new(mediaType);
        if (announced)
        {
            request.Content.Headers.ContentLength = HundredMegabytes;
        }
        else
        {
            request.Headers.TransferEncodingChunked = true;
        }

        if (key)
        {
            request.Headers.Add("Idempotency-Key", Guid.NewGuid().ToString());
        }

        try
        {
            using var answer = await client.SendAsync(request);
            return (int)answer.StatusCode;
        }
        catch (HttpRequestException)
        {
            return null;
        }
    }

    /// <summary>As many blanks as are asked for, without holding them.</summary>
    private sealed class Endless(long length) : Stream
    {
        private long left = length;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var some = (int)Math.Min(left, count);
            buffer.AsSpan(offset, some).Fill((byte)' ');
            left -= some;
            return some;
        }

        public override void Flush() { }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
