using System.Text.Json;

namespace Umpirage.Rules.Codes;

/// <summary>The pack as JSON. Written by hand, so that it needs no reflection on the phone.</summary>
internal static class PackJson
{
    public static void Write(Utf8JsonWriter json, Pack pack)
    {
        json.WriteStartObject();
        json.WriteString("code", pack.Address);
        json.WriteStartArray("sheets");
        foreach (var sheet in pack.Sheets)
        {
            json.WriteStartObject();
            json.WriteString("name", sheet.Name);
            json.WriteString("group", sheet.Group);
            Terms(json, "facts", sheet.Facts);
            Terms(json, "decisions", sheet.Decisions);
            json.WriteStartArray("clauses");
            foreach (var clause in sheet.Clauses) Strings(json, null, [clause.Id, clause.Title, clause.Source]);
            json.WriteEndArray();
            Numbers(json, "walk", sheet.Walk);
            json.WriteStartArray("outcomes");
            foreach (var outcome in sheet.Outcomes) Numbers(json, null, outcome);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Terms(Utf8JsonWriter json, string name, IReadOnlyList<PackedTerm> terms)
    {
        json.WriteStartArray(name);
        foreach (var term in terms)
        {
            json.WriteStartObject();
            json.WriteString("name", term.Name);
            Strings(json, "values", term.Values);
            if (term.Question != "") json.WriteString("ask", term.Question);
            if (term.Edges.Length > 0)
            {
                json.WriteStartArray("edges");
                foreach (var edge in term.Edges) { if (double.IsInfinity(edge)) json.WriteNullValue(); else json.WriteNumberValue(edge); }
                json.WriteEndArray();
            }
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Strings(Utf8JsonWriter json, string? name, IReadOnlyList<string> strings)
    {
        if (name is null) json.WriteStartArray(); else json.WriteStartArray(name);
        foreach (var text in strings) json.WriteStringValue(text);
        json.WriteEndArray();
    }

    private static void Numbers(Utf8JsonWriter json, string? name, int[] numbers)
    {
        if (name is null) json.WriteStartArray(); else json.WriteStartArray(name);
        foreach (var number in numbers) json.WriteNumberValue(number);
        json.WriteEndArray();
    }

    public static Pack Read(JsonElement json) => new(json.GetProperty("code").GetString()!, [.. json.GetProperty("sheets").EnumerateArray().Select(s => new PackedSheet(
        s.GetProperty("name").GetString()!, s.GetProperty("group").GetString()!, Terms(s.GetProperty("facts")), Terms(s.GetProperty("decisions")),
        [.. s.GetProperty("clauses").EnumerateArray().Select(c => new PackedClause(c[0].GetString()!, c[1].GetString()!, c[2].GetString()!))],
        Numbers(s.GetProperty("walk")), [.. s.GetProperty("outcomes").EnumerateArray().Select(Numbers)]))]);

    private static IReadOnlyList<PackedTerm> Terms(JsonElement json) => [.. json.EnumerateArray().Select(t => new PackedTerm(
        t.GetProperty("name").GetString()!, [.. t.GetProperty("values").EnumerateArray().Select(v => v.GetString()!)],
        t.TryGetProperty("ask", out var ask) ? ask.GetString()! : "",
        t.TryGetProperty("edges", out var edges) ? [.. edges.EnumerateArray().Select(e => e.ValueKind == JsonValueKind.Null ? double.PositiveInfinity : e.GetDouble())] : []))];

    private static int[] Numbers(JsonElement json) => [.. json.EnumerateArray().Select(n => n.GetInt32())];
}
