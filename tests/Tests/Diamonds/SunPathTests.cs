using NodaTime;
using Umpirage.District.Clock;
using Umpirage.District.Diamonds;

namespace Umpirage.Tests.Diamonds;

/// <summary>The sun over a diamond: its place against a published position, and in whose eyes it stands against plain geometry.</summary>
public class SunPathTests
{
    private static readonly DateTimeZone Mountain = DateTimeZone.ForOffset(Offset.FromHours(-7));

    /// <summary>Of the worked example in NREL/TP-560-34302 (Reda and Andreas, revised 2008 | from memory): 39.742476 N 105.1786 W, 17 October 2003, 12:30:30 at UTC-7.</summary>
    private static readonly Spot Site = new(39.742476, -105.1786, Mountain);

    private static Layout Field(string code = "softball/12U") => LayoutTests.Of(code);

    private static Instant At(int year, int month, int day, int hour, int minute, int second = 0, DateTimeZone? zone = null) =>
        new LocalDateTime(year, month, day, hour, minute, second).InZoneStrictly(zone ?? Mountain).ToInstant();

    private static SunPath Over(double bearing, Instant from, Instant until) => SunPath.Of(Field(), Site, new(2003, 10, 17), from, until, bearing);

    [Fact]
    public void The_published_position_is_met()
    {
        var at = At(2003, 10, 17, 12, 30, 30);
        var stand = Over(0, at, at).Stands.Single();
        // zenith 50.11162 and azimuth 194.34024 at 820 mbar and 11 C; at the usual air of the program refraction differs by 0.004 degrees
        Assert.InRange(stand.Azimuth, 194.34024 - 0.01, 194.34024 + 0.01);
        Assert.InRange(stand.Elevation, 90 - 50.11162 - 0.015, 90 - 50.11162 + 0.015);
    }

    [Theory]
    // the way to the sun over the field: the sun at azimuth 194.34 seen on fields that look north, south, east and at the sun itself
    [InlineData(0, -0.2477, -0.9688)]
    [InlineData(180, 0.2477, 0.9688)]
    [InlineData(90, 0.9688, -0.2477)]
    [InlineData(194.34024, 0, 1)]
    public void The_way_to_the_sun_turns_with_the_field(double bearing, double right, double up)
    {
        // right and up are sine and cosine of 194.34024 less the bearing
        var at = At(2003, 10, 17, 12, 30, 30);
        var way = Over(bearing, at, at).Stands.Single().Toward(bearing);
        Assert.InRange(way.X, right - 0.001, right + 0.001);
        Assert.InRange(way.Y, up - 0.001, up + 0.001);
    }

    [Fact]
    public void On_a_field_that_looks_into_the_setting_sun_the_batter_has_it_in_the_eyes_and_the_pitcher_in_the_back()
    {
        var set = Almanac.Day(Site, new(2003, 10, 17)).Set.At!.Value;
        var west = Almanac.At(Site, set).Azimuth;
        var path = Over(west, set - Duration.FromHours(2), set);
        var batter = path.Glares.Single(g => g.Who.StartsWith("batter", StringComparison.Ordinal));
        Assert.InRange((set - batter.Until.At).TotalMinutes, 0, 2);
        Assert.InRange(batter.Nearest, 0, 1);
        Assert.DoesNotContain(path.Glares, g => g.Who == "pitcher");
        // turned round, it is the other way about
        var turned = Over(west + 180, set - Duration.FromHours(2), set);
        Assert.Contains(turned.Glares, g => g.Who == "pitcher");
        Assert.Contains(turned.Glares, g => g.Who == "centre fielder");
        Assert.DoesNotContain(turned.Glares, g => g.Who.StartsWith("batter", StringComparison.Ordinal));
    }

    [Fact]
    public void A_time_in_the_eyes_begins_and_ends_where_the_angle_is_the_codes()
    {
        // 25 degrees between a level line and the sun: cos 25 = cos(height) x cos(turn), worked out apart from the program's minutes
        var (from, until) = (At(2003, 10, 17, 6, 15), At(2003, 10, 17, 17, 0));
        var path = Over(130, from, until);
        Assert.Equal(25, path.Within); // common practice, no source (codes/sheets/field.sheet)
        var batter = Assert.Single(path.Glares, g => g.Who.StartsWith("batter", StringComparison.Ordinal));
        double Angle(Instant at)
        {
            var sun = Almanac.At(Site, at);
            var height = (sun.Elevation + Almanac.Refraction(sun.Elevation)) * Math.PI / 180;
            // the dot product of two unit vectors, east, north and up
            var (e, n) = (Math.Cos(height) * Math.Sin(sun.Azimuth * Math.PI / 180), Math.Cos(height) * Math.Cos(sun.Azimuth * Math.PI / 180));
            return Math.Acos(e * Math.Sin(130 * Math.PI / 180) + n * Math.Cos(130 * Math.PI / 180)) * 180 / Math.PI;
        }
        foreach (var (edge, outward) in new[] { (batter.From.At, -1), (batter.Until.At, 1) })
        {
            Assert.True(Angle(edge) <= 25);
            Assert.True(Angle(edge + Duration.FromMinutes(outward)) > 25);
        }
    }

    [Fact]
    public void Where_the_sun_is_down_nobody_has_it_in_the_eyes()
    {
        var path = Over(270, At(2003, 10, 17, 20, 0), At(2003, 10, 17, 22, 0));
        Assert.Empty(path.Glares);
        Assert.Empty(path.Stands);
        Assert.Contains("The sun is down", Assert.Single(path.InWords));
    }

    [Theory]
    // OBR 2.01 (2016 text): east-north-east is desirable; that wind lies at 67.5 degrees of the compass
    [InlineData("baseball/18U+OBR", 67, "as advised")]
    [InlineData("baseball/18U+OBR", 79, "12° off")]
    [InlineData("baseball/18U+OBR", 247.5, "180° off")]
    [InlineData("baseball/18U+OBR", 350, "78° off")]
    public void A_diamond_is_held_against_the_direction_the_book_calls_desirable(string code, double bearing, string told)
    {
        var at = At(2003, 10, 17, 12, 0);
        var looks = SunPath.Of(Field(code), Site, new(2003, 10, 17), at, at, bearing).Looks;
        Assert.Contains("OBR 2.01", looks);
        Assert.Contains("east-north-east", looks);
        Assert.EndsWith(told, looks);
    }

    [Theory]
    [InlineData(0, "north"), InlineData(22.5, "north-north-east"), InlineData(67.5, "east-north-east"), InlineData(90, "east"), InlineData(292, "west-north-west"), InlineData(359, "north"), InlineData(-90, "west")]
    public void The_winds_have_their_names(double degrees, string wind) => Assert.Equal(wind, Compass.Wind(degrees));

    [Fact]
    public void Everybody_looks_where_they_would_on_a_field()
    {
        double Turn(string who) => Sight.All.First(s => s.Who.StartsWith(who, StringComparison.Ordinal)).Turn;
        Assert.Equal(0, Turn("batter"), 6);
        Assert.Equal(180, Math.Abs(Turn("pitcher")), 6);
        Assert.Equal(180, Math.Abs(Turn("centre")), 6);
        // the right fielder looks down and to the left, the left fielder down and to the right
        Assert.InRange(Turn("right"), -170, -90);
        Assert.InRange(Turn("left"), 90, 170);
    }
}
