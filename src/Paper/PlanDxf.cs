using System.Globalization;
using System.Text;
using Umpirage.District.Diamonds;

namespace Umpirage.Paper;

/// <summary>A laid-out field as a drawing-exchange file of release 12, in plain text: one unit a foot, one layer for each thing the ground is made of.</summary>
public static class PlanDxf
{
    /// <summary>A layer's colour in the numbers of the format: white, red, green, brown, grey, blue.</summary>
    private static int Colour(Made made) => made switch { Made.Coloured => 30, Made.Grass => 3, Made.Dirt => 34, Made.Fence => 8, _ => 7 };

    public static string Of(Layout layout)
    {
        var dxf = new StringBuilder();
        void Put(int code, string value) => dxf.Append(CultureInfo.InvariantCulture, $"{code,3}\n{value}\n");
        void Number(int code, double value) => Put(code, value.ToString("0.000000", CultureInfo.InvariantCulture));
        void Entity(string kind, string layer) { Put(0, kind); Put(8, layer); }
        void Point(At at, int first = 10) { Number(first, at.X); Number(first + 10, at.Y); Number(first + 20, 0); }
        void Text(string layer, At at, double high, string words) { Entity("TEXT", layer); Point(at); Number(40, high); Put(1, words); }

        Put(0, "SECTION"); Put(2, "HEADER"); Put(9, "$ACADVER"); Put(1, "AC1009"); Put(9, "$EXTMIN"); Point(Window.Whole(layout).Low); Put(9, "$EXTMAX"); Point(Window.Whole(layout).High); Put(0, "ENDSEC");
        Put(0, "SECTION"); Put(2, "TABLES");
        Put(0, "TABLE"); Put(2, "LTYPE"); Put(70, "1"); Put(0, "LTYPE"); Put(2, "CONTINUOUS"); Put(70, "0"); Put(3, "Solid line"); Put(72, "65"); Put(73, "0"); Number(40, 0); Put(0, "ENDTAB");
        var layers = Enum.GetValues<Made>().Select(m => (Name: Name(m), Colour: Colour(m))).Append(("STAKES", 1)).Append(("WORDS", 5)).ToList();
        Put(0, "TABLE"); Put(2, "LAYER"); Put(70, layers.Count.ToString(CultureInfo.InvariantCulture));
        foreach (var (name, colour) in layers) { Put(0, "LAYER"); Put(2, name); Put(70, "0"); Put(62, colour.ToString(CultureInfo.InvariantCulture)); Put(6, "CONTINUOUS"); }
        Put(0, "ENDTAB"); Put(0, "ENDSEC");
        Put(0, "SECTION"); Put(2, "ENTITIES");
        foreach (var course in layout.Courses)
        {
            var corners = course.Closed ? [.. course.Corners, course.Corners[0]] : course.Corners;
            for (var i = 1; i < corners.Count; i++) { Entity("LINE", Name(course.Made)); Point(corners[i - 1]); Point(corners[i], 11); }
        }
        foreach (var bow in layout.Bows)
        {
            Entity(bow.IsWhole ? "CIRCLE" : "ARC", Name(bow.Made));
            Point(bow.Centre);
            Number(40, bow.Radius);
            if (!bow.IsWhole) { Number(50, Turned(bow.From)); Number(51, Turned(bow.From + bow.Sweep)); }
        }
        foreach (var mark in layout.Marks.Where(m => m.Staked)) { Entity("POINT", "STAKES"); Point(mark.At); }
        foreach (var corner in Layout.Corners) Text("WORDS", layout[corner] + new At(1, 1), 2, corner);
        var low = Window.Whole(layout).Low;
        Text("WORDS", low, 3, $"{layout.Code.Address}: one unit is one foot; (0, 0) is the rear point of home");
        foreach (var (diagonal, at) in StakeOut.Of(layout).Diagonals.Select((d, i) => (d, i))) Text("WORDS", low - new At(0, 4 * (at + 1)), 2.5, diagonal.InWords);
        Put(0, "ENDSEC"); Put(0, "EOF");
        return dxf.ToString();
    }

    private static string Name(Made made) => made.ToString().ToUpperInvariant();

    private static double Turned(double angle) => (angle % 360 + 360) % 360;
}
