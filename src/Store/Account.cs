using Microsoft.AspNetCore.Identity;

namespace Umpirage.Store;

/// <summary>A sign-in. What its holder may do comes from the roles of the person it belongs to, never from here.</summary>
public sealed class Account : IdentityUser<Guid>
{
    public string Person { get; set; } = "";
}
