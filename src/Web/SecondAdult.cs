using Microsoft.EntityFrameworkCore;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>Who may be copied on a letter about a minor: adults with a post in the district, not the writer.</summary>
internal static class SecondAdult
{
    public static List<Person> Of(DistrictStore store, Person? writer) =>
        [.. store.People.AsNoTracking().Where(p => store.Roles.Any(r => r.Person == p.Key && (r.Role == Role.Chief || r.Role == Role.Assigner || r.Role == Role.Coordinator || r.Role == Role.SafetyOfficer))).AsEnumerable().Where(p => p.Key != writer?.Key && !p.IsMinor)];
}
