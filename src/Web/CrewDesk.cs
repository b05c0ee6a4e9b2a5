using Umpirage.District.Crews;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>The crews on record as a plan, with what the desk's rule code says of umpires. Games played count, since they fill a day as any other.</summary>
internal static class CrewDesk
{
    /// <param name="heat">The heat index of one day, degrees Fahrenheit, as somebody typed it.</param>
    public static CrewPlan Plan(DistrictStore store, Shelf shelf, (DateOnly Day, double Index)? heat = null) =>
        CrewPlan.Of(CrewReader.Read(store, heat is { } h ? new Dictionary<DateOnly, double> { [h.Day] = h.Index } : null), UmpiresCodes.For(shelf.Book), alsoPast: true);
}
