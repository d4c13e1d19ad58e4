using System.Security.Cryptography;
using System.Text;

namespace Traceability.Web.Hosting;

/// <summary>
/// The people, routes, instruments and lots that the demonstration lays first. The service is ready before they are there; who asks it for
/// anything meanwhile waits for the answer, because a store with half a workshop in it would answer wrongly.
/// </summary>
public sealed class Foundation
{
    private const string Header = "Traceability-Foundation";

    private readonly TaskCompletionSource laid = new(TaskCreationOptions.RunContinuationsAsynchronously);

    // The demonstration is a client like any other, and must not wait for itself. Nobody else knows the word, and it opens nothing but the
    // wait.
    private readonly string word = Convert.ToHexString(RandomNumberGenerator.GetBytes(16));

    public Foundation(DemonstrationWish wish)
    {
        if (!wish.Asked)
        {
            Lay();
        }
    }

    /// <summary>Ends when it is laid, or will not be.</summary>
    public Task Laid => laid.Task;

    public void Lay() => laid.TrySetResult();

    /// <summary>Marks a client as the one that lays it.</summary>
    public void Let(HttpClient client) => client.DefaultRequestHeaders.Add(Header, word);

    /// <summary>Whether this request is one of those that lay it.</summary>
    public bool IsFor(HttpRequest request) =>
        CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(request.Headers[Header].ToString()), Encoding.ASCII.GetBytes(word));
}
