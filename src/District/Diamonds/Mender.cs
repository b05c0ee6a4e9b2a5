namespace Umpirage.District.Diamonds;

/// <summary>Holds a surveyed diamond against a layout, and looks for the smallest move that mends it.</summary>
internal static class Mender
{
    private static readonly (string, string)[] Asked =
        [("home", "first"), ("first", "second"), ("second", "third"), ("home", "third"), ("home", "second"), ("first", "third"), ("home", SurveyFile.Plate), ("first", SurveyFile.Plate), ("third", SurveyFile.Plate)];

    /// <summary>Beyond this many deviations from the edge of the grace a distance counts as known (two-sided 95 %, normal).</summary>
    private const double Sure = 1.96;

    public static Serving Hold(Layout layout, TapeNet net)
    {
        var grace = layout.Measures.Feet("grace for bases and plate");
        var points = net.Points.ToHashSet();
        var held = new List<Held>();
        foreach (var (from, to) in Asked.Where(a => points.Contains(a.Item1) && points.Contains(a.Item2)))
        {
            var asked = Surveyor.Place(layout, from).To(Surveyor.Place(layout, to));
            var (found, deviation) = net.Between(from, to);
            var over = Math.Abs(found - asked) - grace;
            // inside the grace is good enough for a game; outside it by less than the tapes can tell, nobody moves a base yet
            held.Add(new(from, to, asked, found, deviation, Math.Abs(over) < Sure * deviation && over > 0 ? Stands.TooNearToTell : over > 0 ? Stands.Off : Stands.AsAsked));
        }
        List<string> notTaped = [.. Layout.Corners.Append(SurveyFile.Plate).Where(p => !points.Contains(p))];
        return new(layout, grace, held, notTaped, held.Any(h => h.Stands == Stands.Off) ? Moves(layout, net, grace) : []);
    }

    /// <summary>
    /// The layout may be laid on the ground through any two points that stay where they are. The way in which the fewest points move wins, then
    /// the one in which they move least.
    /// </summary>
    private static List<Move> Moves(Layout layout, TapeNet net, double grace)
    {
        List<string> points = [.. Asked.SelectMany(a => new[] { a.Item1, a.Item2 }).Distinct().Where(net.Points.Contains)];
        List<Move>? best = null;
        foreach (var stay in points)
            foreach (var toward in points.Where(p => p != stay))
            {
                // the point that stays is hit; the other gives the direction
                At at = Surveyor.Place(layout, stay), wanted = Surveyor.Place(layout, toward) - at, found = net[toward] - net[stay];
                var turn = Math.Atan2(found.Y, found.X) - Math.Atan2(wanted.Y, wanted.X);
                At Laid(string p)
                {
                    var from = Surveyor.Place(layout, p) - at;
                    return net[stay] + new At(from.X * Math.Cos(turn) - from.Y * Math.Sin(turn), from.X * Math.Sin(turn) + from.Y * Math.Cos(turn));
                }
                At After(string p) => net[p].To(Laid(p)) > grace ? Laid(p) : net[p];
                // points that stay by a little must not add up to a distance that is off
                if (Asked.Any(a => points.Contains(a.Item1) && points.Contains(a.Item2)
                    && Math.Abs(After(a.Item1).To(After(a.Item2)) - Surveyor.Place(layout, a.Item1).To(Surveyor.Place(layout, a.Item2))) > grace)) continue;
                List<Move> moves = [.. points.Where(p => net[p].To(Laid(p)) > grace).Select(p => new Move(p, net[p], Laid(p), Way(p, Laid(p), points, net), []))];
                if (best is null || moves.Count < best.Count || (moves.Count == best.Count && moves.Sum(m => m.Feet) < best.Sum(m => m.Feet) - 1e-9))
                    best = [.. moves.Select(m => m with { Then = [.. Layout.Corners.Where(c => c != m.Mark && points.Contains(c)).Take(2).Select(c => new Diagonal(m.Mark, c, After(c).To(m.To)))] })];
            }
        return best ?? [];
    }

    /// <summary>"straight toward home", "toward third and home" or "away from first": the point whose direction is nearest to the way, or away from which it leads.</summary>
    private static string Way(string point, At to, List<string> points, TapeNet net)
    {
        var step = to - net[point];
        double Turn(At other)
        {
            var way = other - net[point];
            return Math.Acos(Math.Clamp((step.X * way.X + step.Y * way.Y) / (step.Length * way.Length), -1, 1)) * 180 / Math.PI;
        }
        var turns = points.Where(p => p != point).Select(p => (Name: p, Toward: Turn(net[p]))).ToList();
        // toward a point is easier to follow than away from one
        const double Easier = 5;
        var straight = turns.SelectMany(t => new[] { (Words: $"toward {t.Name}", Off: t.Toward, Hard: 0.0), (Words: $"away from {t.Name}", Off: 180 - t.Toward, Hard: Easier) }).MinBy(t => Math.Round(t.Off + t.Hard));
        return straight.Off < 12 ? $"straight {straight.Words}" : $"{straight.Words}, {straight.Off:0} degrees off that line";
    }
}
