using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>A sign-in names its person and nothing else: roles are looked up at each request.</summary>
public sealed class PersonClaims(UserManager<Account> users, IOptions<IdentityOptions> options) : UserClaimsPrincipalFactory<Account>(users, options)
{
    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(Account user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        identity.AddClaim(new(Sitting.PersonClaim, user.Person));
        return identity;
    }
}
