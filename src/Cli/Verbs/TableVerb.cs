using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

internal static class TableVerb
{
    public static int Run(Request request)
    {
        if (request.Words.Count == 0) { Console.Error.WriteLine("name a sheet: ./umpirage table \"double first base\" softball/12U"); return Verb.Unusable; }
        var name = request.Words[0];
        var book = Library.Codes(request, [name]);
        var findings = new List<Finding>(book.Findings);
        var address = request.Address(book, book.Sheet(name));
        var table = Casebook.Table(book, address, name, request.Today, "table", findings);
        if (table is null)
        {
            foreach (var finding in findings) Console.Error.WriteLine(finding);
            return Verb.Unusable;
        }
        var view = TableView.Of(table);
        if (request.Json) Json.Write(new { sheet = table.Sheet.Bound.Sheet.Name, code = table.Sheet.Code.Address.ToString(), view.Values, view.Columns, view.Rows });
        else Console.Write(view.Text);
        return Verb.Fine;
    }
}
