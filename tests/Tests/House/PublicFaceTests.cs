using System.Reflection;
using System.Text;

namespace Umpirage.Tests.House;

/// <summary>The public face of the rules, as text: a change of it is seen in review.</summary>
public class PublicFaceTests
{
    [Fact]
    public void The_public_verbs_and_nouns_are_the_listed_ones()
    {
        var text = new StringBuilder();
        foreach (var type in typeof(Codebook).Assembly.GetExportedTypes().OrderBy(t => t.FullName, StringComparer.Ordinal))
        {
            text.AppendLine(type.FullName);
            var verbs = type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
                .Where(m => !m.IsSpecialName).Select(m => $"  {m.Name}({string.Join(", ", m.GetParameters().Select(p => p.Name))})").Distinct().Order(StringComparer.Ordinal);
            foreach (var verb in verbs) text.AppendLine(verb);
        }
        Golden.Golden.Compare(text.ToString(), "tests", "Tests", "House", "public-face.txt");
    }
}
