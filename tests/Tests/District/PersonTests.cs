using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;
using CsCheck;
using Umpirage.District.People;

namespace Umpirage.Tests.District;

/// <summary>A minor with a phone or mail cannot be made.</summary>
public class PersonTests
{
    private static readonly AgeBand[] Minors = [AgeBand.Under13, AgeBand.From13To15, AgeBand.From16To17], Adults = [AgeBand.Adult, AgeBand.Over70];
    private static readonly DateOnly Day = new(2029, 3, 1);

    [Fact]
    public void The_bands_below_eighteen_are_minors_and_no_others() =>
        Assert.Equal([("under 13", true), ("13-15", true), ("16-17", true), ("adult", false), ("over 70", false)], Enum.GetValues<AgeBand>().Select(b => (b.Words(), b.IsMinor())));

    [Fact]
    public void A_minor_with_a_phone_or_mail_is_refused()
    {
        foreach (var band in Minors)
            foreach (var (phone, mail) in new[] { ("200 555 0100", null), (null, "finn@tarnholt.example"), ("200 555 0100", "finn@tarnholt.example"), ("", null), (null, "") })
            {
                var faults = new List<FieldFault>();
                Assert.Null(Person.Of("y-1", "Finn", "Lark", band, Day, null, phone, mail, faults));
                Assert.All(faults, f => Assert.Contains(f.Field, new[] { "phone", "mail" }));
                Assert.Contains(faults, f => f.Allowed == "nothing: a minor is reached through a guardian");
                // the address itself is not repeated in the fault
                Assert.DoesNotContain(faults, f => f.Allowed.StartsWith("nothing") && (f.Found.Contains("555") || f.Found.Contains('@')));
            }
    }

    [Fact]
    public void A_minor_has_a_day_of_coming_of_age_and_an_adult_has_none()
    {
        foreach (var band in Minors)
        {
            Assert.Null(Person.Of("y-1", "Finn", "Lark", band, null, null, null, null, []));
            Assert.Equal(Day, Person.Of("y-1", "Finn", "Lark", band, Day, null, null, null, [])!.AdultOn);
        }
        foreach (var band in Adults)
        {
            Assert.Null(Person.Of("a-1", "Ada", "Lark", band, Day, null, null, null, []));
            Assert.Null(Person.Of("a-1", "Ada", "Lark", band, null, null, "200 555 0100", "ada@tarnholt.example", [])!.AdultOn);
        }
    }

    [Fact]
    public void Every_reason_is_told_at_once()
    {
        var faults = new List<FieldFault> { new("before", "", "stays") };
        Assert.Null(Person.Of("", "", "Lark", AgeBand.From13To15, null, null, "200 555 0100", "no address", faults));
        Assert.Equal(["before", "person", "given name", "adult on", "phone", "mail", "mail"], faults.Select(f => f.Field));
    }

    [Fact]
    public void Whatever_is_entered_no_person_breaks_the_rule()
    {
        var text = Gen.OneOf(Gen.Const(""), Gen.Const("x"), Gen.Const("a@b.example"), Gen.String[Gen.Char["ab@ .+"], 0, 6]);
        var day = Gen.Select(Gen.Int[0, 4000], Gen.Bool, (d, some) => some ? (DateOnly?)new DateOnly(2020, 1, 1).AddDays(d) : null);
        var made = 0;
        Gen.Select(text, text, Gen.Enum<AgeBand>(), day, text.Null(), text.Null()).Sample((key, given, band, adultOn, phone, mail) =>
        {
            if (Person.Of(key, given, "Lark", band, adultOn, null, phone, mail, []) is not { } person) return;
            Interlocked.Increment(ref made);
            Assert.Equal(person.IsMinor, person.AdultOn is not null);
            if (person.IsMinor) Assert.Equal((null, null), (person.Phone, person.Mail));
            Assert.NotEqual("", person.Key);
        }, iter: Folder.Count(20_000, 500_000));
        Assert.True(made > 300, $"{made} persons made");
    }

    [Fact]
    public void There_is_no_other_way_to_make_or_change_a_person()
    {
        var type = typeof(Person);
        Assert.True(type.IsSealed);
        Assert.Empty(type.GetConstructors(BindingFlags.Public | BindingFlags.Instance));
        Assert.All(type.GetConstructors(BindingFlags.NonPublic | BindingFlags.Instance), c => Assert.True(c.IsPrivate));
        Assert.Empty(type.GetFields(BindingFlags.Public | BindingFlags.Instance));
        // 'with' sets what is public to set: nothing is
        Assert.All(type.GetProperties(), p => Assert.True(p.SetMethod is null or { IsPrivate: true }, p.Name));
        string[] makers = ["Of", "<Clone>$"];
        Assert.All(type.GetMethods().Where(m => m.ReturnType == type), m => Assert.Contains(m.Name, makers));
        var assembly = type.Assembly.GetTypes().SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(m => m.ReturnType == type && !m.DeclaringType!.IsDefined(typeof(CompilerGeneratedAttribute)));
        Assert.Equal(["Of"], assembly.Where(m => m.DeclaringType!.IsPublic).Select(m => m.Name));
    }

    [Fact]
    public void Text_from_outside_does_not_become_a_person_either()
    {
        Person? read = null;
        try { read = JsonSerializer.Deserialize<Person>("""{"Key":"y-1","Given":"Finn","Band":1,"Phone":"200 555 0100","Mail":"finn@tarnholt.example"}"""); }
        catch (NotSupportedException) { }
        Assert.True(read is null or { Phone: null, Mail: null });
    }

    [Fact]
    public void On_lists_a_minor_s_family_name_is_an_initial()
    {
        Assert.Equal("Finn L.", Person.Of("y-1", "Finn", "Lark", AgeBand.From16To17, Day, null, null, null, [])!.ListName);
        Assert.Equal("Ada Lark", Person.Of("a-1", "Ada", "Lark", AgeBand.Adult, null, null, null, null, [])!.ListName);
        Assert.Equal("Finn", Person.Of("y-1", "Finn", "", AgeBand.From16To17, Day, null, null, null, [])!.ListName);
    }
}
