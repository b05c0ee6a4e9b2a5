using System.Text;

namespace Umpirage.District.Gear;

/// <summary>Gear that was looked over, as text: piece by piece, and the log of what was taken out.</summary>
public static class GearSheet
{
    public const string Caution = "Conforms to the code, or does not: that is all this says. Whether a piece can hurt somebody nobody on the field can test; in doubt it stays out.";

    public static string Text(GearFile list, IReadOnlyList<Looked> looked)
    {
        var text = new StringBuilder();
        text.AppendLine($"GEAR  {(list.Title == "" ? "" : list.Title + "   ")}{list.Code}").AppendLine();
        foreach (var piece in looked)
        {
            text.AppendLine($"{piece.Item.Name}: {(piece.Conforms ? "CONFORMS" : piece.Item.Kind.Kept ? "OUT" : "NOT AS REQUIRED")}");
            if (piece.Mark is not null) text.AppendLine($"  {piece.Mark}");
            if (piece.Conforms && piece.Item.Remarks.Count == 0) text.AppendLine("  nothing was found on it");
            foreach (var reason in piece.Reasons) text.AppendLine($"  {reason.InWords}");
            if (!piece.Conforms && piece.Costs.Count == 0) foreach (var ruling in piece.Rulings) text.AppendLine($"  {ruling}");
            foreach (var todo in piece.Do) text.AppendLine($"  do: {todo}");
            foreach (var cost in piece.Costs) text.AppendLine($"  {cost.InWords}");
            text.AppendLine();
        }
        var removed = looked.Select(l => l.Removal).OfType<Removal>().ToList();
        if (removed.Count > 0)
        {
            text.AppendLine("REMOVAL LOG (day | code | game | piece | why | rules)");
            foreach (var removal in removed) text.AppendLine($"  {removal.InWords}");
            text.AppendLine();
        }
        text.AppendLine(Caution);
        text.AppendLine("Advice from entered facts and a stated edition; the printed rule book and the local authority rule.");
        return text.ToString();
    }
}
