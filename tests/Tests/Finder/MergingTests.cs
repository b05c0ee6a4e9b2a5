using System.Runtime.InteropServices;
using Umpirage.Finder;

namespace Umpirage.Tests.Finder;

/// <summary>What was learned is added to the model's tables where they lie, and to nothing else. The small model is written by hand, field by field.</summary>
public class MergingTests
{
    /// <summary>A field with a length: its number and the kind (2), then how long it is.</summary>
    private static byte[] Field(int number, params byte[] inside) => [(byte)(number << 3 | 2), (byte)inside.Length, .. inside];

    /// <summary>One graph (7) with a table (5) of two rows and three columns: name (8) "t", numbers (9); before it a version (1) as a plain number.</summary>
    private static byte[] Model() => [1 << 3, 6, .. Field(7, [.. Field(1, 1, 2, 3), .. Field(5, [.. Field(8, (byte)'t'), .. Field(9, Numbers(1, 2, 3, 4, 5, 6))])])];

    private static byte[] Numbers(params float[] numbers) => MemoryMarshal.AsBytes(numbers.AsSpan()).ToArray();

    [Fact]
    public void A_table_is_found_by_its_name()
    {
        var tables = ModelFile.Tables(Model());
        Assert.Equal(["t"], tables.Keys);
        Assert.Equal([1f, 2, 3, 4, 5, 6], MemoryMarshal.Cast<byte, float>(Model()[tables["t"]]).ToArray());
    }

    [Fact]
    public void The_product_is_added_in_place()
    {
        var model = Model();
        LowRank.Merge(model, [new("t", 1, [1, 10], [1, 0, -1])]);
        Assert.Equal([2f, 2, 2, 14, 5, -4], MemoryMarshal.Cast<byte, float>(model[ModelFile.Tables(model)["t"]]).ToArray());
        Assert.Equal(Model().Length, model.Length);
        Assert.Equal(Model()[..12], model[..12]);
    }

    [Fact]
    public void A_change_that_does_not_fit_is_told()
    {
        Assert.Contains("no table 'u'", Assert.Throws<FormatException>(() => LowRank.Merge(Model(), [new("u", 1, [1, 1], [1, 1, 1])])).Message);
        Assert.Contains("has 6 numbers", Assert.Throws<FormatException>(() => LowRank.Merge(Model(), [new("t", 1, [1, 1], [1, 1])])).Message);
    }

    [Fact]
    public void Bytes_that_are_no_model_are_told()
    {
        Assert.Throws<FormatException>(() => ModelFile.Tables(Model()[..^1]));
        Assert.Throws<FormatException>(() => ModelFile.Tables([7]));
    }

    [Fact]
    public void Every_change_kept_fits_the_model()
    {
        using var file = File.OpenRead(Folder.Of("codes", LearnedFile.Name));
        var learned = LearnedFile.Read(file)!;
        LowRank.Merge(Encoder.Bare(), learned.Changes);
        Assert.True(file.Length < 8_000_000, $"{file.Length} bytes");
    }
}
