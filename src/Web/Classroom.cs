using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Clinic;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>
/// What the clinic draws from the rule code as the desk has it: banks of questions, certificates, and how hard questions are. Drawn when first asked for,
/// kept until something is published.
/// </summary>
public sealed class Classroom(Settings settings, Shelf shelf, Func<DistrictStore> open)
{
    private const int MostBanks = 12, AnswersBetweenFits = 200;

    private volatile Drawn? drawn;
    private volatile Difficulty? difficulty;
    private int kept, fitting;

    private sealed record Drawn(Codebook Book, PhraseBook Phrases, CertificateBook Certificates)
    {
        public WorkedOut<(string Code, DateOnly Day), Bank> Banks { get; } = new((key, found) =>
            Casebook.Code(Book, key.Code, key.Day, fault => found.Add(new(FindingKind.UnknownWord, "clinic", 0, fault))) is { } code ? District.Clinic.Bank.Of(Book, Phrases, code, []) : null, MostBanks);
        public ConcurrentDictionary<(string Game, string Edition, Difficulty Difficulty), Lazy<IReadOnlySet<string>>> InTests { get; } = [];
    }

    private Drawn Now => drawn is { } now && now.Book == shelf.Book ? now : drawn = Draw(shelf.Book);

    private Drawn Draw(Codebook book)
    {
        var file = Path.Combine(settings.Codes, "clinic", "certificates.txt");
        var certificates = File.Exists(file) ? CertificateReader.Read(Path.GetFileName(file), File.ReadAllText(file), book, []) : null;
        return new(book, shelf.Phrases, certificates ?? CertificateBook.Empty);
    }

    public CertificateBook Certificates => Now.Certificates;

    /// <summary>The questions of a code on a day; null, with the reasons, when there is no such code.</summary>
    public Bank? Bank(string code, DateOnly day, List<string> faults)
    {
        var found = new List<Finding>();
        var bank = Now.Banks.Of((code, day), found);
        faults.AddRange(found.Select(f => f.Message));
        return bank;
    }

    /// <summary>The edition of the test forms on a day: forms change with the year.</summary>
    public static string Edition(DateOnly day) => CodeAddress.Day(day)[..4];

    /// <summary>The cases that stand in the year's test forms of a code's game: the drill leaves them out.</summary>
    public IReadOnlySet<string> InTests(string code, DateOnly day)
    {
        var (now, game, difficulty) = (Now, code.Split('/')[0], Difficulty);
        if (now.InTests.Count > MostBanks) now.InTests.Clear();
        return now.InTests.GetOrAdd((game, Edition(day), difficulty), key => new(() =>
            FormMaker.InUse(now.Certificates.Kinds.Where(k => k.Code.StartsWith(game + "/", StringComparison.Ordinal)), c => Bank(c, day, []), difficulty, key.Edition))).Value;
    }

    /// <summary>Assumed until the answers on record have been looked at, which is done aside.</summary>
    public Difficulty Difficulty
    {
        get
        {
            if (difficulty is { } known) return known;
            Fit();
            return Difficulty.Assumed;
        }
    }

    /// <summary>Said when answers were kept: after enough of them the questions are fitted anew.</summary>
    public void Kept(int answers)
    {
        if (Interlocked.Add(ref kept, answers) >= AnswersBetweenFits) Fit();
    }

    private void Fit()
    {
        if (Interlocked.Exchange(ref fitting, 1) != 0) return;
        Interlocked.Exchange(ref kept, 0);
        _ = Task.Run(() =>
        {
            try
            {
                using var store = open();
                difficulty = Difficulty.From(store.Answers.AsNoTracking());
            }
            // what is assumed serves until the next time
            catch (System.Data.Common.DbException fault) { Console.Error.WriteLine($"questions were not fitted to answers: {fault.Message}"); }
            finally { Interlocked.Exchange(ref fitting, 0); }
        });
    }
}
