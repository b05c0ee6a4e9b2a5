using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>The crews as a plan, as far as somebody sees them, with what the desk's rule code says of umpires.</summary>
internal static class CrewDesk
{
    /// <param name="heat">The heat index of one day, degrees Fahrenheit, as somebody typed it.</param>
    public static CrewPlan Plan(DistrictStore store, Shelf shelf, CrewSight sight, (DateOnly Day, double Index)? heat = null) =>
        CrewPlan.Of(sight.Of(CrewReader.Read(store, heat is { } h ? new Dictionary<DateOnly, double> { [h.Day] = h.Index } : null)), UmpiresCodes.For(shelf.Book));

    /// <summary>Whether an open swap waits for this viewer's own yes.</summary>
    public static bool Waits(Viewer viewer, AskedSwap swap, Func<string, Person?> person) => swap.IsOpen
        && ((swap.Yes is null && person(swap.Person) is { } own && viewer.AnswersFor(own)) || (swap.OtherYes is null && person(swap.Other) is { } other && viewer.AnswersFor(other)));

    /// <summary>A name as the viewer may read it: who sets crews sees it as on lists, everybody else the first name with an initial.</summary>
    public static string NameFor(Viewer viewer, CrewPerson who) => viewer.May(Deed.SetCrews) ? who.Name : who.Person.Family == "" ? who.Person.Given : $"{who.Person.Given} {who.Person.Family[0]}.";
}
