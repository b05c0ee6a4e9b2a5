using Umpirage.District.Cases;
using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Demo;

/// <summary>A question as somebody asks it, with the ruling under that code: a line of demo/oslemoor/questions.txt. A test has every line ruled again.</summary>
public sealed record Ruled(string Words, string Sheet, string Code, string Facts, string Ruling, string Rules);

/// <summary>Rule questions asked at the desk since the season began, some subjects far more often than others; a few of the last days are still open. Has dice of its own.</summary>
internal sealed class Questions(Plan plan, Folk folk, DateTime now, Dice dice)
{
    public const int Asked = 340;
    private const int Days = 40, OpenDays = 2;

    public IEnumerable<AskedQuestion> Make()
    {
        List<string> people = [.. folk.Officials.Select(o => o.Person), .. folk.Roles.Where(r => r.Role is Role.Manager or Role.President).Select(r => r.Person)];
        for (var i = 1; i <= Asked; i++)
        {
            // the smaller of two throws: what stands first in the table is asked most
            var ruled = plan.Ruled[Math.Min(dice.Below(plan.Ruled.Count), dice.Below(plan.Ruled.Count))];
            var at = now.Date.AddDays(-1 - dice.Below(Days)).AddMinutes(dice.Between(12 * 60, 23 * 60));
            yield return new($"q-demo-{i:000}", DateTime.SpecifyKind(at, DateTimeKind.Utc), dice.Of(people), ruled.Words, ruled.Sheet, ruled.Code, ruled.Facts, ruled.Ruling,
                $"{CodeAddress.Day(DateOnly.FromDateTime(at))} | {ruled.Code} | {ruled.Sheet} | {ruled.Ruling} | {ruled.Rules}", at > now.AddDays(-OpenDays) && dice.In(4));
        }
    }
}
