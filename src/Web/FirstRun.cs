using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Web.Deeds;

namespace Umpirage.Web;

/// <summary>The first run of a new district: whoever can read the code printed where the desk was started becomes its umpire-in-chief. Needs no mail.</summary>
public sealed class FirstRun
{
    public string Code { get; } = RandomNumberGenerator.GetString("abcdefghijkmnpqrstuvwxyz23456789", 8);

    /// <summary>True until somebody has a sign-in.</summary>
    public static bool Due(DistrictStore store) => !store.Users.Any();

    internal async Task<IReadOnlyList<FieldFault>> Begin(DistrictStore store, UserManager<Account> users, string code, string district, string zone, string given, string family, string name, string password)
    {
        if (!Due(store)) return [new("code", code, "nothing: the district has its umpire-in-chief already")];
        if (!CryptographicOperations.FixedTimeEquals(System.Text.Encoding.UTF8.GetBytes(code.Trim()), System.Text.Encoding.UTF8.GetBytes(Code))) return [new("code", code, "the code printed where the desk was started")];
        var faults = new List<FieldFault>();
        if (district == "") faults.Add(new("district", "", "a name"));
        if (!TimeZoneInfo.TryFindSystemTimeZoneById(zone, out _)) faults.Add(new("time zone", zone, "an IANA name such as America/Chicago"));
        var chief = Person.Of("chief", given, family, AgeBand.Adult, null, null, null, null, faults);
        if (chief is null || faults.Count > 0) return faults;
        store.Actor = "first run";
        using var transaction = await store.Database.BeginTransactionAsync();
        store.Put(new DistrictFacts(DistrictFacts.Only, district, zone, 0, 0));
        store.Put(chief);
        store.Put(new RoleHeld(chief.Key, Role.Chief, "", ""));
        await store.SaveChangesAsync();
        var made = await users.CreateAsync(new() { UserName = name, Person = chief.Key }, password);
        if (!made.Succeeded) { store.ChangeTracker.Clear(); return AccountDeeds.Faults(made); }
        await transaction.CommitAsync();
        return [];
    }
}
