using Umpirage.District.People;

namespace Umpirage.Web;

/// <summary>What somebody has to be allowed to do to come in here. Every door has one; a test sees to it.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
public sealed class NeedsAttribute(Deed deed) : Attribute
{
    public Deed Deed => deed;
}

/// <summary>A door that is open to those who have not signed in because it is where they do.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
public sealed class ForAnybodyAttribute : Attribute;
