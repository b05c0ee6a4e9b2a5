using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace Umpirage.Bench;

/// <summary>
/// The published desk under fifty users who think for two seconds, each taking a page at random; the users and the desk share this machine. In
/// the same run a bare page of the framework, served by the same process at /health.
/// </summary>
internal static class DeskBench
{
    private const int Users = 50, Seconds = 40, Port = 8477;

    private static readonly string[] Pages =
    [
        "/", "/ruling", "/ruling?sheet=double+first+base&code=softball/12U%2BOslemoor", "/ruling?sheet=look-back&code=softball/12U%2BOslemoor&f=circle+is+in+the+circle",
        Ruling, "/codes", "/codes/double-first-base?code=softball/12U%2BOslemoor", "/crossover", "/people", "/people/umpire-001", "/pitchers?on=2026-05-16&division=SB+12U", "/pitchers/TAR-SB12U-2/TAR-SB12U-2-04?on=2026-05-16&game=S-F1-SAT", "/schedule", "/clock?game=S-F4", "/weather?air=94&humidity=50", "/leagues", "/leagues/tarnholt", "/games/W06-SB12U-03", "/diamonds", "/questions", "/files", "/trail", "/options",
        "/ruling?q=runner+only+touched+the+white+half+of+first+on+a+grounder&code=softball/12U%2BOslemoor", Bare,
    ];

    private const string Bare = "/health";
    private const string Ruling = "/ruling?sheet=double+first+base&code=softball/12U%2BOslemoor&f=bag+at+first+is+double&f=her+foot+is+white+part+only&f=throw+is+from+the+fair+side&f=fielder's+foot+is+white+part&f=appeal+is+before+she+returned&far=true";

    public static void Run()
    {
        var root = Shelf.Root;
        var folder = Directory.CreateTempSubdirectory().FullName;
        var start = new ProcessStartInfo(Path.Combine(root, "umpirage")) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var word in (string[])["desk", "--demo", "--data", Path.Combine(folder, "desk.db"), "--port", Port.ToString(CultureInfo.InvariantCulture)]) start.ArgumentList.Add(word);
        var watch = Stopwatch.StartNew();
        using var desk = Process.Start(start)!;
        using var http = new HttpClient(new SocketsHttpHandler { MaxConnectionsPerServer = Users }) { BaseAddress = new($"http://127.0.0.1:{Port}") };
        try
        {
            while (!Up(http)) { Thread.Sleep(25); if (desk.HasExited || watch.Elapsed.TotalMinutes > 10) throw new InvalidOperationException("the desk did not open"); }
            Console.WriteLine($"desk on the demonstration district: open after {watch.Elapsed.TotalSeconds:0.0} s, the district made in that time (bar 10 s)");
            foreach (var page in Pages) http.GetAsync(page).Result.Dispose();
            var times = new ConcurrentBag<(string Page, double Ms)>();
            var stop = DateTime.UtcNow.AddSeconds(Seconds);
            Task.WaitAll([.. Enumerable.Range(0, Users).Select(u => User(http, u, stop, times))]);
            Console.WriteLine($"{Users} users, 2 s to think, {Seconds} s, {times.Count / (double)Seconds:0} pages a second; generator on the same machine");
            var bare = P95(times, Bare);
            foreach (var page in Pages)
                Console.WriteLine($"  {(page == Ruling ? "a whole ruling" : page.Length > 64 ? page[..61] + "..." : page),-64} p95 {P95(times, page),6:0.0} ms{(page == Bare ? "  (bare answer of the framework)" : $"  {P95(times, page) / bare,5:0.0} times the bare answer")}");
            var slowest = Pages.Max(p => P95(times, p));
            Console.WriteLine($"slowest page p95 {slowest:0.0} ms (bar 100 ms)");
            var alone = Enumerable.Range(0, 60).Select(_ => { var w = Stopwatch.StartNew(); http.GetAsync(Ruling).Result.Dispose(); return w.Elapsed.TotalMilliseconds; }).Order().ToList();
            Console.WriteLine($"a ruling, there and back, alone: median {alone[30]:0.0} ms, p95 {alone[57]:0.0} ms (bar 30 ms)");
            var id = Directory.EnumerateDirectories("/proc").Select(Path.GetFileName).FirstOrDefault(p => int.TryParse(p, out _) && Command(p!).Contains(folder, StringComparison.Ordinal));
            if (id is not null) Console.WriteLine($"memory of the desk: {File.ReadLines($"/proc/{id}/status").First(l => l.StartsWith("VmRSS", StringComparison.Ordinal))[6..].Trim()}, most {File.ReadLines($"/proc/{id}/status").First(l => l.StartsWith("VmHWM", StringComparison.Ordinal))[6..].Trim()}");
        }
        finally
        {
            desk.Kill(entireProcessTree: true);
            desk.WaitForExit();
            Directory.Delete(folder, true);
        }
    }

    private static string Command(string id)
    {
        try { return File.ReadAllText($"/proc/{id}/cmdline"); }
        catch (IOException) { return ""; }
    }

    internal static bool Up(HttpClient http)
    {
        try { return http.GetAsync(Bare).Result.IsSuccessStatusCode; }
        catch (AggregateException) { return false; }
    }

    private static async Task User(HttpClient http, int number, DateTime stop, ConcurrentBag<(string, double)> times)
    {
        var dice = new Random(number);
        await Task.Delay(dice.Next(2000));
        while (DateTime.UtcNow < stop)
        {
            var page = Pages[dice.Next(Pages.Length)];
            var watch = Stopwatch.StartNew();
            using (var answer = await http.GetAsync(page)) answer.EnsureSuccessStatusCode();
            times.Add((page, watch.Elapsed.TotalMilliseconds));
            await Task.Delay(1500 + dice.Next(1000));
        }
    }

    private static double P95(IEnumerable<(string Page, double Ms)> times, string page)
    {
        var own = times.Where(t => t.Page == page).Select(t => t.Ms).Order().ToList();
        return own.Count == 0 ? 0 : own[(int)Math.Ceiling(own.Count * 0.95) - 1];
    }
}
