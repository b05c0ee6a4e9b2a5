using Umpirage.District.Crews;
using Umpirage.Store;

namespace Umpirage.Tests.Crews;

/// <summary>The demonstration with its Saturday, read once from a store.</summary>
internal static class Demo
{
    public static CrewRecords Records => Read.Value;

    private static readonly Lazy<CrewRecords> Read = new(() =>
    {
        using var own = Store.OwnStore.Oslemoor(Store.Kept.Sqlite);
        using var store = own.Open();
        return CrewReader.Read(store);
    });

    public static CrewPlan Plan(double? heat = null) => CrewPlan.Of(
        heat is { } f ? Records with { Heat = new Dictionary<DateOnly, double> { [Town.Saturday] = f } } : Records, Town.Codes);
}
