using Umpirage.District.People;

namespace Umpirage.Web;

/// <summary>Addresses that open a message on the reader's own phone or in their own mail, with everybody on it who has to be. Nothing is sent from here.</summary>
internal static class LetterLinks
{
    /// <summary>A text message to everybody of the letter who has a phone (RFC 5724); null when one of them has none, since nobody may be left out.</summary>
    public static string? Text(Letter letter, string text)
    {
        List<Person> all = [.. letter.To, .. letter.Copy];
        return all.Any(p => p.Phone is null) ? null : $"sms:{string.Join(',', all.Select(p => Number(p.Phone!)))}?body={Uri.EscapeDataString(text)}";
    }

    public static string Mail(Letter letter, string subject, string text) =>
        $"mailto:{Addresses(letter.To)}?cc={Addresses(letter.Copy)}&subject={Uri.EscapeDataString(subject)}&body={Uri.EscapeDataString(text)}";

    public static string Call(string phone) => $"tel:{Number(phone)}";

    private static string Addresses(IEnumerable<Person> people) => string.Join(',', people.Select(p => p.Mail).OfType<string>().Select(Uri.EscapeDataString));

    private static string Number(string phone) => string.Concat(phone.Where(c => char.IsAsciiDigit(c) || c == '+'));
}
