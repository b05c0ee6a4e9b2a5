using Umpirage.Rules.Games;

namespace Umpirage.Rules.Records;

/// <summary>
/// Reads one play of a public event file into moves. The part before the first slash or dot says what the batter or a runner did, the part
/// after the first dot says where runners went; what it says there counts before what the play implies.
/// </summary>
internal static class PlayCode
{
    private ref struct Moves
    {
        public Span<Place> To;      // Plate: not said
        public bool TurnDone;
    }

    public static Played? Read(string batter, string code, int line)
    {
        var dot = TopLevel(code, '.');
        var head = dot < 0 ? code : code[..dot];
        var slash = TopLevel(head, '/');
        var basic = (slash < 0 ? head : head[..slash]).Trim('!', '?', '#', '+', '-', ' ');
        var moves = new Moves { To = stackalloc Place[4] };
        if (!Basic(basic, ref moves)) return null;
        if (dot >= 0)
            foreach (var part in code[(dot + 1)..].Split(';'))
                if (!Advance(part, ref moves)) return null;
        if (moves.TurnDone && moves.To[0] == Place.Plate) return null;
        var list = new List<Move>(2);
        for (var from = 3; from >= 0; from--)
            if (moves.To[from] != Place.Plate && (from > 0 || moves.TurnDone)) list.Add(new((Place)from, moves.To[from]));
        return new(batter, moves.TurnDone, list, basic, line);
    }

    private static int TopLevel(string text, char wanted)
    {
        var depth = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '(') depth++;
            else if (text[i] == ')') depth--;
            else if (text[i] == wanted && depth == 0) return i;
        }
        return -1;
    }

    private static bool Basic(string code, ref Moves moves)
    {
        if (code is "NP" or "BK" or "PB" or "WP" or "DI" or "OA" || code.StartsWith("FLE", StringComparison.Ordinal)) return true;
        if (code.StartsWith("SB", StringComparison.Ordinal) || code.StartsWith("CS", StringComparison.Ordinal) || code.StartsWith("PO", StringComparison.Ordinal)) return Running(code, ref moves);
        moves.TurnDone = true;
        if (code.Length == 0) return false;
        if (code[0] == 'K') { moves.To[0] = Place.Out; return Added(code, ref moves); }
        if (code == "W" || code[0] == 'I' || code.StartsWith("W+", StringComparison.Ordinal)) { moves.To[0] = Place.First; return Added(code, ref moves); }
        if (code is "HP" or "C" || code.StartsWith("FC", StringComparison.Ordinal) || code[0] is 'S' or 'E') { moves.To[0] = Place.First; return true; }
        if (code.StartsWith("HR", StringComparison.Ordinal) || code[0] == 'H') { moves.To[0] = Place.Home; return true; }
        if (code[0] == 'D') { moves.To[0] = Place.Second; return true; }
        if (code[0] == 'T') { moves.To[0] = Place.Third; return true; }
        return char.IsAsciiDigit(code[0]) && Fielded(code, ref moves);
    }

    /// <summary>"K+SB2", "W+WP": what happened on the same pitch.</summary>
    private static bool Added(string code, ref Moves moves)
    {
        var plus = code.IndexOf('+');
        if (plus < 0) return true;
        var (done, batter) = (moves.TurnDone, moves.To[0]);
        var read = Basic(code[(plus + 1)..] is ['E', ..] ? "WP" : code[(plus + 1)..], ref moves);
        (moves.TurnDone, moves.To[0]) = (done, batter);
        return read;
    }

    private static bool Running(string code, ref Moves moves)
    {
        foreach (var part in code.Split(';'))
        {
            var pickedOff = part.StartsWith("PO", StringComparison.Ordinal) && !part.StartsWith("POCS", StringComparison.Ordinal);
            var at = part.StartsWith("POCS", StringComparison.Ordinal) ? 4 : 2;
            if (part.Length <= at || Base(part[at]) is not { } place) return false;
            var from = pickedOff ? (int)place : (int)place - 1;
            if (from is < 1 or > 3) return false;
            var safe = part.StartsWith("SB", StringComparison.Ordinal) || HasError(part);
            if (!safe) moves.To[from] = Place.Out;
            else if (!pickedOff) moves.To[from] = place;
        }
        return true;
    }

    /// <summary>Outs made by fielders: a runner's base stands in brackets after the fielder who put that runner out; the batter is out unless the last out was a runner's.</summary>
    private static bool Fielded(string code, ref Moves moves)
    {
        var batterOut = false;
        var lastWasRunner = false;
        for (var i = 0; i < code.Length; i++)
        {
            if (code[i] != '(') { lastWasRunner = false; continue; }
            if (i + 2 >= code.Length) return false;
            if (code[i + 1] == 'B') batterOut = true;
            else if (code[i + 1] is >= '1' and <= '3') moves.To[code[i + 1] - '0'] = Place.Out;
            else return false;
            lastWasRunner = true;
            i = code.IndexOf(')', i);
            if (i < 0) return false;
        }
        var safe = (lastWasRunner && !batterOut) || (!batterOut && code.Contains('E'));
        moves.To[0] = safe ? Place.First : Place.Out;
        return true;
    }

    /// <summary>"1-3", "BX2(84)": out unless an error stands in the brackets.</summary>
    private static bool Advance(string part, ref Moves moves)
    {
        if (part.Length < 3 || part[1] is not ('-' or 'X')) return false;
        var from = part[0] == 'B' ? 0 : part[0] is >= '1' and <= '3' ? part[0] - '0' : -1;
        if (from < 0 || Base(part[2]) is not { } to) return false;
        moves.To[from] = part[1] == '-' || HasError(part) ? to : Place.Out;
        return true;
    }

    private static Place? Base(char code) => code switch { '1' => Place.First, '2' => Place.Second, '3' => Place.Third, 'H' => Place.Home, _ => null };

    /// <summary>Whether a bracket holds an error by a fielder (E and a digit) that undid the out, and no other bracket tells of an out made after all.</summary>
    private static bool HasError(string part)
    {
        var error = false;
        for (var open = part.IndexOf('('); open >= 0; open = part.IndexOf('(', open + 1))
        {
            var close = part.IndexOf(')', open);
            var inside = part.AsSpan(open + 1, (close < 0 ? part.Length : close) - open - 1);
            var at = inside.IndexOf('E');
            if (at >= 0 && at + 1 < inside.Length && char.IsAsciiDigit(inside[at + 1])) error = true;
            else if (inside.Length > 0 && char.IsAsciiDigit(inside[0])) return false;
        }
        return error;
    }
}
