using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace Umpirage.Bench;

/// <summary>
/// One learner at the desk's drill, with the whole bank of a code and more than 500 earlier answers: from sending an answer until the next question is there, with
/// the answer kept, the ruling shown and the next question chosen, as a browser does it: one post and two pages, there and back.
/// </summary>
internal static partial class DrillBench
{
    private const int Port = 8478, Before = 500, Measured = 300;
    private const string Code = "softball/12U+Oslemoor";
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(25);

    [GeneratedRegex("name=\"(__RequestVerificationToken|code|since|asked|q)\" value=\"([^\"]*)\"")]
    private static partial Regex Field();

    [GeneratedRegex("name=\"answer\" value=\"([^\"]+)\"")]
    private static partial Regex Choice();

    public static void Run()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        var start = new ProcessStartInfo(Path.Combine(Shelf.Root, "umpirage")) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var word in (string[])["desk", "--demo", "--data", Path.Combine(folder, "desk.db"), "--port", Port.ToString(CultureInfo.InvariantCulture)]) start.ArgumentList.Add(word);
        using var desk = Process.Start(start)!;
        using var http = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new($"http://127.0.0.1:{Port}") };
        try
        {
            while (!DeskBench.Up(http)) { Thread.Sleep(25); if (desk.HasExited) throw new InvalidOperationException("the desk did not open"); }
            var first = Stopwatch.StartNew();
            var page = Text(http, $"/drill?code={Uri.EscapeDataString(Code)}");
            Console.WriteLine($"drill, {Code}: the bank drawn and the first question there after {first.Elapsed.TotalMilliseconds:0} ms");
            var (whole, kept, shown, next) = (new List<double>(), new List<double>(), new List<double>(), new List<double>());
            for (var i = 0; i < Before + Measured; i++)
            {
                var fields = Field().Matches(page).Select(m => new KeyValuePair<string, string>(m.Groups[1].Value, WebUtility.HtmlDecode(m.Groups[2].Value))).DistinctBy(f => f.Key).ToList();
                var choices = Choice().Matches(page);
                fields.Add(new("answer", WebUtility.HtmlDecode(choices[i * 7 % choices.Count].Groups[1].Value)));
                using var form = new FormUrlEncodedContent(fields);
                var watch = Stopwatch.StartNew();
                using var answer = http.PostAsync("/drill", form).Result;
                if (answer.StatusCode != HttpStatusCode.Redirect) throw new InvalidOperationException($"answer {i}: {(int)answer.StatusCode}");
                var one = watch.Elapsed.TotalMilliseconds;
                Text(http, answer.Headers.Location!.ToString());
                var two = watch.Elapsed.TotalMilliseconds;
                // without the beginning of this drill, so that its five minutes never end
                page = Text(http, $"/drill?code={Uri.EscapeDataString(Code)}");
                var three = watch.Elapsed.TotalMilliseconds;
                if (i >= Before) { whole.Add(three); kept.Add(one); shown.Add(two - one); next.Add(three - two); }
                Thread.Sleep(Pause);
            }
            Console.WriteLine(FormattableString.Invariant($"answer to next question after {Before} earlier answers, {Measured} times: p95 {P95(whole):0.0} ms, median {P(whole, 0.5):0.0} ms (bar 20 ms); of it the answer kept {P95(kept):0.0}, the ruling {P95(shown):0.0}, the next question {P95(next):0.0} (each its own p95)"));
        }
        finally
        {
            desk.Kill(entireProcessTree: true);
            desk.WaitForExit();
            Directory.Delete(folder, true);
        }
    }

    private static string Text(HttpClient http, string path)
    {
        using var response = http.GetAsync(path).Result;
        return response.EnsureSuccessStatusCode().Content.ReadAsStringAsync().Result;
    }

    private static double P95(List<double> times) => P(times, 0.95);

    private static double P(List<double> times, double share) => times.Order().ElementAt((int)Math.Ceiling(times.Count * share) - 1);
}
