using System.Text;
using Umpirage.Cli;

Console.OutputEncoding = new UTF8Encoding(false);
using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false), 1 << 16);
Console.SetOut(output);
try
{
    return Verb.Run(args);
}
finally
{
    output.Flush();
}
