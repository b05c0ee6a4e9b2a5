using Umpirage.District.Pitchers;
using Umpirage.Rules.Codes;

namespace Umpirage.Tests.Pitchers;

/// <summary>
/// The ledger once more, slowly and plainly, from the sheets as a reader would work them out with a pencil: every calendar day is looked at by itself.
/// It shares the records with the ledger and nothing of its arithmetic.
/// </summary>
internal sealed class LedgerTwin(Codebook book, Code code)
{
    private double Number(string sheet, string parameter) => code.Value(book.Sheet(sheet)!.Parameters.Single(p => p.Name == parameter))!.Quantity!.Value;

    private string Word(string sheet, string parameter) => code.Value(book.Sheet(sheet)!.Parameters.Single(p => p.Name == parameter))!.Value;

    public MayPitch MayPitch(IReadOnlyList<Appearance> lines, DateOnly day, string game, bool batterUnderWay)
    {
        // the last correction of every counter; of two counters the larger figure of each kind
        var outings = new List<(string Game, DateOnly Day, int Pitches, int Before, int Innings, int Caught, int Outs)>();
        foreach (var g in lines.Select(l => l.Game).Distinct())
            foreach (var d in lines.Where(l => l.Game == g).Select(l => l.Day).Distinct())
            {
                var counts = new List<Appearance>();
                foreach (var counter in lines.Select(l => l.Counter).Distinct())
                {
                    Appearance? last = null;
                    foreach (var l in lines) if (l.Game == g && l.Day == d && l.Counter == counter && (last is null || l.Entry > last.Entry)) last = l;
                    if (last is not null) counts.Add(last);
                }
                outings.Add((g, d, counts.Max(c => c.Pitches), counts.Max(c => c.BeforeLastBatter), counts.Max(c => c.Innings), counts.Max(c => c.InningsCaught), counts.Max(c => c.Outs)));
            }
        outings.Sort((a, b) => string.CompareOrdinal(a.Game, b.Game)); // the tests name games in the order in which they start

        (int Pitches, int Before, int First, int Innings, int Caught, int Outs) On(DateOnly d)
        {
            var (pitches, before, first, innings, caught, outs) = (0, 0, 0, 0, 0, 0);
            foreach (var o in outings)
            {
                if (o.Day != d) continue;
                if (o.Pitches > 0)
                {
                    before = pitches + o.Before;
                    first = pitches + (o.Before >= o.Pitches ? o.Pitches : o.Before + 1);
                }
                pitches += o.Pitches; innings += o.Innings; caught += o.Caught; outs += o.Outs;
            }
            return (pitches, before, first, innings, caught, outs);
        }

        var today = On(day);
        // limits of the day
        var others = outings.Where(o => o.Day == day && o.Game != game && (o.Pitches > 0 || o.Innings > 0 || o.Outs > 0)).ToList();
        if (others.Count > 0 && Word("pitcher limits", "second game on one day") == "no") return Umpirage.District.Pitchers.MayPitch.No;
        if (others.Count > 0 && others[0].Pitches >= Number("pitcher limits", "pitches that bar a second game")) return Umpirage.District.Pitchers.MayPitch.No;
        bool Threw(DateOnly d) => On(d).Pitches > 0 || On(d).Innings > 0 || On(d).Outs > 0;
        if (Threw(day.AddDays(-1)) && Threw(day.AddDays(-2)) && Word("pitcher limits", "third day in a row") == "no") return Umpirage.District.Pitchers.MayPitch.No;
        // rest, by pitches and by innings
        for (var back = 1; back <= 40; back++)
        {
            var then = On(day.AddDays(-back));
            if (then.Pitches == 0 && then.Innings == 0) continue;
            var counted = Word("rest after pitching", "step is taken from") == "pitches in all" ? then.Pitches : then.First;
            var rest = 0;
            if (counted >= Number("rest after pitching", "one day from")) rest = 1;
            if (counted >= Number("rest after pitching", "two days from")) rest = 2;
            if (counted >= Number("rest after pitching", "three days from")) rest = 3;
            if (counted >= Number("rest after pitching", "four days from")) rest = 4;
            if (back - 1 < rest) return Umpirage.District.Pitchers.MayPitch.No;
        }
        if (On(day.AddDays(-1)).Innings >= Number("innings pitched", "innings that call for rest")) return Umpirage.District.Pitchers.MayPitch.No;
        if (today.Innings >= Number("innings pitched", "innings a day")) return Umpirage.District.Pitchers.MayPitch.No;
        // outs
        if (today.Outs >= Number("pitching innings", "outs a day")) return Umpirage.District.Pitchers.MayPitch.No;
        if (On(day.AddDays(-1)).Outs > Number("pitching innings", "most outs before pitching the next day")) return Umpirage.District.Pitchers.MayPitch.No;
        if (today.Outs + On(day.AddDays(-1)).Outs + On(day.AddDays(-2)).Outs >= Number("pitching innings", "outs in three days")) return Umpirage.District.Pitchers.MayPitch.No;
        if (today.Caught >= Number("pitcher and catcher", "innings caught that bar pitching")) return Umpirage.District.Pitchers.MayPitch.No;
        var most = Number("pitcher limits", "pitches a day");
        if (today.Pitches < most) return Umpirage.District.Pitchers.MayPitch.Yes;
        return batterUnderWay && today.Before < most && Word("pitcher limits", "limit with a batter at bat") == "until this batter is finished"
            ? Umpirage.District.Pitchers.MayPitch.UntilThisBatterIsFinished : Umpirage.District.Pitchers.MayPitch.No;
    }

    public bool MayCatch(IReadOnlyList<Appearance> lines, DateOnly day)
    {
        var (pitches, first, caught) = (0, 0, 0);
        foreach (var g in lines.Where(l => l.Day == day).GroupBy(l => l.Game).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var last = g.GroupBy(l => l.Counter).Select(c => c.OrderBy(l => l.Entry).Last()).ToList();
            var (p, b) = (last.Max(l => l.Pitches), last.Max(l => l.BeforeLastBatter));
            if (p > 0) first = pitches + Math.Min(p, b + 1);
            pitches += p;
            caught += last.Max(l => l.InningsCaught);
        }
        if (pitches == 0) return true;
        if (first >= Number("pitcher and catcher", "pitches that bar catching")) return false;
        return caught == 0 || pitches < Number("pitcher and catcher", "pitches that bar catching again");
    }
}
