namespace Umpirage.Finder;

/// <summary>Reads and writes what was learned: codes/finder.weights, a few million bytes of half-long numbers.</summary>
internal static class LearnedFile
{
    public const string Name = "finder.weights";
    private const string Version = "umpirage finder weights 1";

    public static void Write(Stream to, Learned learned)
    {
        using var file = new BinaryWriter(to, System.Text.Encoding.UTF8, true);
        file.Write(Version);
        file.Write(learned.Key);
        file.Write(learned.Figures);
        file.Write(learned.Changes.Count);
        foreach (var change in learned.Changes)
        {
            file.Write(change.Table);
            file.Write(change.Rank);
            foreach (var numbers in new[] { change.Tall, change.Wide }) { file.Write(numbers.Length); Stored.WriteHalves(file, numbers); }
        }
        learned.Facts.Write(file);
        file.Write(learned.Subjects.Count);
        foreach (var subject in learned.Subjects)
        {
            file.Write(subject.Name);
            Stored.WriteHalves(file, subject.Takes);
            file.Write(subject.Bias);
            file.Write(subject.Labels.Count);
            foreach (var label in subject.Labels)
            {
                file.Write(label.Fact);
                file.Write(label.Value);
                Stored.WriteHalves(file, label.Listens);
                Stored.WriteHalves(file, label.Takes);
                file.Write(label.Bias);
            }
        }
        learned.Terms.Write(file);
        Stored.WriteHalves(file, learned.Middle);
        foreach (var floor in new[] { learned.Floors.Fit, learned.Floors.Fact, learned.Floors.Pull, learned.Floors.Start }) file.Write(floor);
        file.Write(Version);
    }

    /// <summary>Null when the file is of another version or broken; the finder then goes by likeness alone.</summary>
    public static Learned? Read(Stream from)
    {
        try
        {
            using var file = new BinaryReader(from, System.Text.Encoding.UTF8, true);
            if (file.ReadString() != Version) return null;
            var (key, figures) = (file.ReadString(), file.ReadString());
            var changes = new LowRank[file.ReadInt32()];
            for (var c = 0; c < changes.Length; c++) changes[c] = new(file.ReadString(), file.ReadInt32(), Numbers(file), Numbers(file));
            var facts = FactHead.Read(file);
            var subjects = new LearnedSubject[file.ReadInt32()];
            for (var s = 0; s < subjects.Length; s++)
            {
                var (name, takes, bias, labels) = (file.ReadString(), Stored.ReadHalves(file, Encoder.Size), file.ReadSingle(), new FactLabel[file.ReadInt32()]);
                for (var l = 0; l < labels.Length; l++) labels[l] = new(file.ReadString(), file.ReadString(), Stored.ReadHalves(file, facts.Width), Stored.ReadHalves(file, facts.Width), file.ReadSingle());
                subjects[s] = new(name, takes, bias, labels);
            }
            var terms = TermBook.Read(file, subjects.Length);
            var middle = Stored.ReadHalves(file, Encoder.Size);
            var floors = new Floors(file.ReadSingle(), file.ReadSingle(), file.ReadSingle(), file.ReadSingle());
            if (file.ReadString() != Version) return null;
            return new() { Key = key, Figures = figures, Changes = changes, Subjects = subjects, Terms = terms, Facts = facts, Floors = floors, Middle = middle };
        }
        catch (Exception broken) when (broken is EndOfStreamException or FormatException or ArgumentException or OverflowException or IndexOutOfRangeException)
        {
            return null;
        }
    }

    private static float[] Numbers(BinaryReader from) => Stored.ReadHalves(from, from.ReadInt32());
}
