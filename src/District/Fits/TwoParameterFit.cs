namespace Umpirage.District.Fits;

/// <summary>Questions fitted together: each one's slope and intercept, the marginal log-likelihood, and how the search ended.</summary>
public sealed record TwoParameterFit(IReadOnlyList<string> Names, IReadOnlyList<Item> Items, double LogLikelihood, int Rounds, bool Settled);
