using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;

namespace Umpirage.Tests.Screen;

/// <summary>Somebody's HTTP client: keeps cookies, follows nothing, and comes from an address of its own, so that one client's limits are not another's.</summary>
public sealed partial class Door : IDisposable
{
    private static int last = 1;
    private readonly HttpClient http;
    private readonly CookieContainer cookies = new();

    public Door(Uri desk, string? seat = null)
    {
        var own = new IPAddress([127, 0, (byte)(Interlocked.Increment(ref last) / 250), (byte)(last % 250 + 2)]);
        http = new(new SocketsHttpHandler
        {
            CookieContainer = cookies, AllowAutoRedirect = false,
            ConnectCallback = async (context, stop) =>
            {
                var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
                socket.Bind(new IPEndPoint(own, 0));
                await socket.ConnectAsync(IPAddress.Loopback, context.DnsEndPoint.Port, stop);
                return new NetworkStream(socket, ownsSocket: true);
            },
        }) { BaseAddress = desk };
        if (seat is not null) cookies.Add(desk, new System.Net.Cookie("seat", seat));
    }

    public async Task<(HttpStatusCode Status, string Body, HttpResponseMessage Response)> Get(string path)
    {
        var response = await http.GetAsync(path);
        return (response.StatusCode, await response.Content.ReadAsStringAsync(), response);
    }

    /// <summary>Sends a form with the token of a page that shows one; without a token when <paramref name="token"/> is false.</summary>
    public async Task<(HttpStatusCode Status, string Body, HttpResponseMessage Response)> Post(string path, IEnumerable<(string, string)> fields, bool token = true, string from = "/sign-in")
    {
        List<KeyValuePair<string, string>> form = [.. fields.Select(f => new KeyValuePair<string, string>(f.Item1, f.Item2))];
        if (token) form.Add(new("__RequestVerificationToken", Token().Match((await Get(from)).Body).Groups[1].Value));
        var response = await http.PostAsync(path, new FormUrlEncodedContent(form));
        return (response.StatusCode, await response.Content.ReadAsStringAsync(), response);
    }

    public Task<(HttpStatusCode Status, string Body, HttpResponseMessage Response)> SignIn(string name, string password) => Post("/sign-in", [("name", name), ("password", password), ("to", "/")]);

    public IReadOnlyList<System.Net.Cookie> Cookies => [.. cookies.GetAllCookies().Cast<System.Net.Cookie>()];

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    public void Dispose() => http.Dispose();
}
