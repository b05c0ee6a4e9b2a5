using System.Diagnostics;
using System.Numerics.Tensors;
using Umpirage.Finder;
using Umpirage.Rules.Codes;
using Umpirage.Tune;

// tune CODES CASEBOOK [held-out]: learns from nine tenths and measures on the rest; then, unless only that was asked for, from all, and writes CODES/finder.weights
if (args.Length < 2) { Console.Error.WriteLine("say where the codes and the casebook lie: dotnet run --project tools/Tune -c Release -- codes casebook"); return 2; }
const int Seed = 1;
var clock = Stopwatch.StartNew();
void Tell(string words) => Console.WriteLine($"{clock.Elapsed.TotalSeconds,6:f0} s  {words}");

var material = Material.Read(args[0], args[1]);
// what is measured by is not learned from
material = material with { Plays = [.. material.Plays.Where(p => !p.File.StartsWith("SB-", StringComparison.Ordinal) && !p.File.StartsWith("BB-", StringComparison.Ordinal))] };
IEnumerable<SourceText> Texts(string folder, string kind) => Directory.EnumerateFiles(Path.Combine(args[0], folder), kind).Order(StringComparer.Ordinal).Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f)));
var book = Codebook.Read(("roster.txt", File.ReadAllText(Path.Combine(args[0], "roster.txt"))), Texts("sheets", "*.sheet").Concat(Texts("layers", "*.layer")));
IReadOnlyList<Sheet> sheets = [.. book.Sheets.OrderBy(s => s.Name, StringComparer.Ordinal)];
var synonyms = Synonyms.Read(material.Synonyms.File, material.Synonyms.Text, []);
var (model, course) = (Encoder.Bare(), new Course());
LabelBook labels;
List<Lesson> lessons;
using (var layers = new LowerLayers(model))
{
    labels = new(sheets, synonyms, layers);
    lessons = Lessons.Of(book, sheets, material, synonyms, File.ReadLines(Path.Combine(args[0], "unrelated.txt")), layers);
}
Tell($"{lessons.Count} lessons of {sheets.Count} subjects, {labels.Count} values of facts");

Learned Learn(IReadOnlyList<Lesson> from)
{
    var network = new Network(course, model, labels, from, Seed);
    network.Learn(from, Seed, Tell);
    network.Subjects.HearTermsAlone(from, Seed);
    return Take.From(network, sheets, material.ForLearning().Key(), "", new(0, 1, 0, 0));
}
float[] Middle(Learned learned, IEnumerable<Lesson> of)
{
    using var encoder = new Encoder(learned.Changes);
    var sum = new float[Encoder.Size];
    foreach (var lesson in of) TensorPrimitives.Add<float>(sum, encoder.Of(lesson.Said).Whole, sum);
    TensorPrimitives.Divide(sum, TensorPrimitives.Norm<float>(sum), sum);
    return sum;
}

List<Lesson> out_ = [.. lessons.Where(l => l.HeldOut)];
var tried = Learn([.. lessons.Where(l => !l.HeldOut)]);
var measures = new Measures(tried, out_);
var floors = measures.Floors(Middle(tried, out_.Where(l => l.Source == Source.Asked)));
var figures = $"{measures.Figures()}limits: a subject from {floors.Fit:f3}, a fact from {floors.Fact:f3}\n";
Console.Write(figures);
if (args.Contains("held-out")) return 0;
var learned = Learn(lessons);
learned = learned with { Figures = figures, Floors = floors, Middle = Middle(learned, lessons.Where(l => l.Source == Source.Asked && l.HeldOut)) };
using (var file = File.Create(Path.Combine(args[0], LearnedFile.Name))) LearnedFile.Write(file, learned);
Tell($"written to {Path.Combine(args[0], LearnedFile.Name)}");
return 0;
