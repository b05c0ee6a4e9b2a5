using System.Reflection;
using CsCheck;
using Umpirage.District.People;

namespace Umpirage.Tests.District;

/// <summary>Nobody writes to a minor alone, whoever is on record as what.</summary>
public class LetterTests
{
    private static Person Adult(string key, bool reached = true) => Person.Of(key, key, "Lark", AgeBand.Adult, null, null, reached ? "200 555 0100" : null, null, [])!;
    private static Person Minor(string key) => Person.Of(key, key, "Lark", AgeBand.From13To15, new(2029, 3, 1), null, null, null, [])!;

    private static readonly Person Chief = Adult("chief"), Mother = Adult("mother"), Father = Adult("father"), Trainer = Adult("trainer"), Finn = Minor("finn"),
        Gwen = Minor("gwen");

    private static (Letter? Letter, string Faults) Make(Person[] people, Person writer, Person? second, params (Person Child, Person[] Guardians)[] families)
    {
        var faults = new List<FieldFault>();
        var letter = Letter.For(people, writer, second, child => families.FirstOrDefault(f => f.Child.Key == child.Key).Guardians ?? [], faults);
        Assert.Equal(letter is null, faults.Count > 0);
        return (letter, string.Join("\n", faults));
    }

    [Fact]
    public void A_letter_to_a_minor_goes_to_every_guardian_with_a_copy_to_a_second_adult()
    {
        var letter = Make([Finn], Chief, Trainer, (Finn, [Mother, Father])).Letter!;
        Assert.Equal([Mother, Father], letter.To);
        Assert.Equal([Trainer], letter.Copy);
        Assert.Equal([Finn], letter.About);
    }

    [Fact]
    public void A_letter_to_adults_needs_no_second()
    {
        var letter = Make([Mother, Trainer], Chief, null).Letter!;
        Assert.Equal([Mother, Trainer], letter.To);
        Assert.Empty(letter.Copy);
        Assert.Empty(letter.About);
    }

    [Fact]
    public void A_minor_without_a_guardian_cannot_be_written_to() => Assert.Contains("add the guardian first", Make([Finn], Chief, Trainer).Faults);

    [Fact]
    public void A_guardian_who_is_a_minor_is_none() => Assert.Contains("add the guardian first", Make([Finn], Chief, Trainer, (Finn, [Gwen])).Faults);

    [Fact]
    public void The_second_adult_is_neither_missing_nor_a_minor_nor_the_writer_nor_a_guardian()
    {
        // the same person read twice is one person, also when something on record changed between
        var motherAgain = Person.Of("mother", "Dora", "Lark", AgeBand.Adult, null, null, "200 555 0199", null, [])!;
        foreach (var second in new[] { null, Gwen, Chief, Mother, motherAgain })
            Assert.Contains("an adult who is neither the writer nor a guardian", Make([Finn], Chief, second, (Finn, [Mother])).Faults);
    }

    [Fact]
    public void A_minor_does_not_write_to_a_minor() => Assert.Contains("an adult, when a minor is written to", Make([Finn], Gwen, Trainer, (Finn, [Mother])).Faults);

    [Fact]
    public void A_writer_who_is_the_only_guardian_would_be_alone_with_the_second()
    {
        Assert.Contains("a guardian who is not the writer", Make([Finn], Mother, Trainer, (Finn, [Mother])).Faults);
        Assert.NotNull(Make([Finn], Mother, Trainer, (Finn, [Mother, Father])).Letter);
    }

    [Fact]
    public void A_copy_or_a_letter_that_reaches_nobody_is_none()
    {
        Assert.Contains("second adult: found 'far Lark'; allowed is somebody with a phone or mail", Make([Finn], Chief, Adult("far", reached: false), (Finn, [Mother])).Faults);
        Assert.Contains("to: found 'far Lark'; allowed is somebody with a phone or mail", Make([Finn], Chief, Trainer, (Finn, [Mother, Adult("far", reached: false)])).Faults);
    }

    [Fact]
    public void A_letter_to_nobody_is_none() => Assert.Contains("at least one person", Make([], Chief, Trainer).Faults);

    [Fact]
    public void A_letter_cannot_be_readdressed()
    {
        Assert.Empty(typeof(Letter).GetConstructors(BindingFlags.Public | BindingFlags.Instance));
        Assert.All(typeof(Letter).GetProperties(), p => Assert.True(p.SetMethod is null or { IsPrivate: true }, p.Name));
    }

    private sealed record Case(Person[] People, Person Writer, Person? Second, Dictionary<string, Person[]> Guardians);

    [Fact]
    public void Whatever_is_on_record_no_letter_has_a_minor_or_a_lone_adult_in_it()
    {
        var person = Gen.Select(Gen.Int[0, 6], Gen.Int[0, 3], (key, kind) => kind switch { 0 => Minor($"p{key}"), 1 => Adult($"p{key}", reached: false), _ => Adult($"p{key}") });
        var cases = Gen.Select(person.Array[0, 4], person, person.Null(), Gen.Dictionary(Gen.Int[0, 6].Select(i => $"p{i}"), person.Array[0, 3])[0, 7], (p, w, s, g) =>
            new Case(p, w, s, g));
        var (made, aboutMinors) = (0, 0);
        cases.Sample(c =>
        {
            var faults = new List<FieldFault>();
            var letter = Letter.For(c.People, c.Writer, c.Second, child => c.Guardians.GetValueOrDefault(child.Key, []), faults);
            Assert.Equal(letter is null, faults.Count > 0);
            if (letter is null) return;
            Interlocked.Increment(ref made);
            List<Person> everybody = [.. letter.To, .. letter.Copy];
            Assert.DoesNotContain(everybody, p => p.IsMinor);
            Assert.All(everybody, p => Assert.True(p.Phone is not null || p.Mail is not null));
            Assert.Equal(c.People.Where(p => p.IsMinor), letter.About);
            if (letter.About.Count == 0) return;
            Interlocked.Increment(ref aboutMinors);
            Assert.False(c.Writer.IsMinor);
            Assert.True(everybody.Select(p => p.Key).Where(k => k != c.Writer.Key).Distinct().Count() >= 2, string.Join(", ", everybody.Select(p => p.Key)));
            foreach (var minor in letter.About)
                Assert.Contains(c.Guardians[minor.Key], g => letter.To.Any(t => t.Key == g.Key) && g.Key != c.Writer.Key);
        }, iter: Folder.Count(100_000, 1_000_000));
        Assert.True(made > 1000 && aboutMinors > 500, $"{made} letters made, {aboutMinors} of them about minors: too few to try anything");
    }
}
