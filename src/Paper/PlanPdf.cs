using PdfSharp.Drawing;
using Umpirage.District.Diamonds;

namespace Umpirage.Paper;

/// <summary>A laid-out field on paper, to scale: the infield, plate, first base and pitcher's plate, the whole field, and the stake-out sheet.</summary>
public static class PlanPdf
{
    private static readonly int[] Scales = [10, 15, 20, 25, 30, 40, 50, 75, 100, 125, 150, 200, 250, 300, 350, 400, 500, 600, 750, 1000, 1250, 1500];

    private const double MetreInPoints = 1000 * Pages.Millimetre;

    /// <param name="told">Tells a length in feet; by default in feet and inches.</param>
    public static byte[] Of(Layout layout, Func<double, string>? told = null)
    {
        told ??= Tape.Told;
        var sheet = StakeOut.Of(layout, told);
        var under = $"{layout.Code.Address}   {string.Join(" < ", layout.Code.LayerNames)}";
        using var pages = new Pages($"Field plan {layout.Code.Address}", "Advice from a stated edition; the printed rule book and the local authority rule. Print at 100 %: the bar must measure what it says.");
        One(Window.Infield(layout));
        One(Window.Plate(layout));
        pages.Begin("First base, lane and pitcher's plate", under);
        var half = (pages.Bottom - pages.At) / 2;
        Draw(pages, layout, Window.First(layout), told, half - 20, titled: true);
        pages.At += 10;
        Draw(pages, layout, Window.Pitching(layout), told, pages.Bottom - pages.At, titled: true);
        One(Window.Whole(layout, told));
        List(pages, sheet, under);
        return pages.Bytes();

        void One(Window window)
        {
            pages.Begin(window.Name, under);
            Draw(pages, layout, window, told, pages.Bottom - pages.At, titled: false);
        }
    }

    /// <summary>The largest of the usual scales at which a window fits; 1 to so many.</summary>
    private static int Scale(Window window, double wide, double tall)
    {
        bool Fits(int s) => Paper(window.Wide, s) <= wide && Paper(window.Tall, s) <= tall;
        // a ground larger than any of them goes on in steps of the largest
        return Scales.FirstOrDefault(Fits) is > 0 and var usual ? usual : Enumerable.Range(2, 1000).Select(k => k * Scales[^1]).First(Fits);
    }

    /// <summary>Feet of ground as points of paper.</summary>
    private static double Paper(double feet, int scale) => feet * Tape.MetresInAFoot * MetreInPoints / scale;

    private static void Draw(Pages pages, Layout layout, Window window, Func<double, string> told, double tall, bool titled)
    {
        const double Legend = 34;
        var scale = Scale(window, pages.Width, tall - Legend - (titled ? 16 : 0));
        if (titled) pages.TryLine(window.Name, 11, bold: true);
        double wide = Paper(window.Wide, scale), high = Paper(window.Tall, scale), left = pages.Left + (pages.Width - wide) / 2, top = pages.At;
        XPoint On(At at) => new(left + Paper(at.X - window.Low.X, scale), top + Paper(window.High.Y - at.Y, scale));
        var pen = pages.Pen;
        var kept = pen.Save();
        pen.IntersectClip(new XRect(left, top, wide, high));
        foreach (var bow in layout.Bows) Bow(pen, bow, On, Paper(bow.Radius, scale));
        foreach (var course in layout.Courses) Course(pen, course, On);
        pen.Restore(kept);
        // words are never cut at the window's edge
        foreach (var dimension in window.Dimensions) Measure(pen, dimension, told, On, scale);
        foreach (var (words, at) in window.Labels) Words(pen, words, On(at), 0, bold: true);
        pages.At = top + high + 12;
        Bar(pages, scale);
    }

    private static XPen Stroke(Made made) => made switch
    {
        Made.Grass => new(XColors.DarkGreen, 0.8) { DashStyle = XDashStyle.Dash },
        Made.Dirt => new(XColors.SaddleBrown, 0.8) { DashStyle = XDashStyle.Dot },
        Made.Fence => new(XColors.DimGray, 1.6),
        _ => new(XColors.Black, 0.9),
    };

    private static void Bow(XGraphics pen, Bow bow, Func<At, XPoint> on, double radius)
    {
        var centre = on(bow.Centre);
        var box = new XRect(centre.X - radius, centre.Y - radius, 2 * radius, 2 * radius);
        if (bow.IsWhole) pen.DrawEllipse(Stroke(bow.Made), box);
        // paper counts angles with the clock
        else pen.DrawArc(Stroke(bow.Made), box, -bow.From, -bow.Sweep);
    }

    private static void Course(XGraphics pen, Course course, Func<At, XPoint> on)
    {
        XPoint[] corners = [.. course.Corners.Select(on)];
        if (!course.Closed) pen.DrawLines(Stroke(course.Made), corners);
        else if (course.Made == Made.Chalk) pen.DrawPolygon(Stroke(course.Made), corners);
        else pen.DrawPolygon(Stroke(course.Made), new XSolidBrush(course.Made == Made.Coloured ? XColors.Orange : XColors.White), corners, XFillMode.Winding);
    }

    private static void Measure(XGraphics pen, Dimension d, Func<double, string> told, Func<At, XPoint> on, int scale)
    {
        var way = (d.To - d.From) * (1 / d.From.To(d.To));
        var aside = new At(-way.Y, way.X);
        XPoint from = on(d.From + aside * d.Aside), to = on(d.To + aside * d.Aside);
        var thin = new XPen(XColors.MidnightBlue, 0.5);
        pen.DrawLine(thin, from, to);
        if (Paper(Math.Abs(d.Aside), scale) > 6)
        {
            pen.DrawLine(thin, on(d.From), from);
            pen.DrawLine(thin, on(d.To), to);
        }
        foreach (var end in (XPoint[])[from, to]) pen.DrawLine(thin, end.X - 2, end.Y + 2, end.X + 2, end.Y - 2);
        var angle = Math.Atan2(to.Y - from.Y, to.X - from.X) * 180 / Math.PI;
        if (angle is >= 90 or < -90) angle += angle > 0 ? -180 : 180;
        Words(pen, d.Words(told), new(from.X + (to.X - from.X) * d.Along, from.Y + (to.Y - from.Y) * d.Along), angle, bold: false);
    }

    private static void Words(XGraphics pen, string words, XPoint at, double angle, bool bold)
    {
        var font = Typeface.Of(9, bold);
        var size = pen.MeasureString(words, font);
        var kept = pen.Save();
        pen.RotateAtTransform(angle, at);
        pen.DrawRectangle(XBrushes.White, at.X - size.Width / 2 - 1.5, at.Y - 5.5, size.Width + 3, 11);
        pen.DrawString(words, font, XBrushes.Black, at.X - size.Width / 2, at.Y + 3.2);
        pen.Restore(kept);
    }

    /// <summary>The scale in words, and a bar of ground that is measured after printing.</summary>
    private static void Bar(Pages pages, int scale)
    {
        // the largest round number of feet whose bar is no longer than 80 mm
        int[] rounds = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500];
        var feet = rounds.Last(r => Paper(r, scale) <= 80 * Pages.Millimetre);
        double length = Paper(feet, scale), y = pages.At;
        var pen = new XPen(XColors.Black, 1.2);
        pages.Pen.DrawLine(pen, pages.Left, y, pages.Left + length, y);
        foreach (var x in (double[])[pages.Left, pages.Left + length]) pages.Pen.DrawLine(pen, x, y - 4, x, y + 4);
        pages.Pen.DrawString(FormattableString.Invariant($"scale 1 : {scale}   the bar is {feet} ft, {length / Pages.Millimetre:0.0} mm on paper"), Typeface.Of(10), XBrushes.Black, pages.Left + length + 10, y + 3.5);
        pages.At = y + 14;
    }

    private static void List(Pages pages, StakeOut sheet, string under)
    {
        void Begin() => pages.Begin("Stake-out sheet", under);
        void Put(string text, double size = 11, bool bold = false, double inset = 0)
        {
            // a heading keeps two lines of its list on its page
            if ((!bold || pages.At + 5 * size < pages.Bottom) && pages.TryLine(text, size, bold, inset, hang: 12)) return;
            Begin();
            pages.TryLine(text, size, bold, inset, hang: 12);
        }
        Begin();
        Put("Order of work: two people, one tape, a string, nails", 12, bold: true);
        foreach (var (step, at) in sheet.Work.Select((s, i) => (s, i + 1))) Put($"{at}. {step}");
        pages.At += 6;
        Put("Must come out", 12, bold: true);
        foreach (var diagonal in sheet.Diagonals) Put(diagonal.InWords, inset: 8);
        foreach (var pair in sheet.Stakes.GroupBy(s => (s.From, s.AndFrom)))
        {
            pages.At += 6;
            Put($"From {pair.Key.From} and {pair.Key.AndFrom}, {sheet.Fineness}", 12, bold: true);
            foreach (var s in pair) Put($"{s.Mark}: {sheet.Told(s.Reading)} and {sheet.Told(s.AndReading)}; check {sheet.Told(s.CheckReading)} from {s.Check}", inset: 8);
        }
    }
}
