namespace Umpirage.District.Diamonds;

/// <summary>The last survey kept of a diamond, as it was typed, and the day on which it was taped. Who kept it stands in the trail.</summary>
public sealed record LastSurvey(string Diamond, DateOnly On, string Text);
