namespace Umpirage.District.Crews;

/// <summary>A small network and the greatest flow through it (shortest augmenting paths; Edmonds and Karp 1972).</summary>
public sealed class Flow
{
    private readonly List<List<int>> from = [];
    private readonly List<(int To, int Left)> edges = [];

    /// <summary>Adds a node and tells its number.</summary>
    public int Node() { from.Add([]); return from.Count - 1; }

    /// <summary>An edge from one node to another that so much may flow through; tells its number.</summary>
    public int Edge(int a, int b, int capacity)
    {
        from[a].Add(edges.Count);
        edges.Add((b, capacity));
        from[b].Add(edges.Count);
        edges.Add((a, 0));
        return edges.Count - 2;
    }

    /// <summary>How much flows through an edge, once the greatest flow was asked for.</summary>
    public int Through(int edge) => edges[edge + 1].Left;

    /// <summary>The most that can flow from source to sink. Asked once.</summary>
    public int Greatest(int source, int sink)
    {
        var total = 0;
        var by = new int[from.Count];
        while (Path(source, sink, by))
        {
            var push = int.MaxValue;
            for (var at = sink; at != source; at = edges[by[at] ^ 1].To) push = Math.Min(push, edges[by[at]].Left);
            for (var at = sink; at != source; at = edges[by[at] ^ 1].To)
            {
                edges[by[at]] = (edges[by[at]].To, edges[by[at]].Left - push);
                edges[by[at] ^ 1] = (edges[by[at] ^ 1].To, edges[by[at] ^ 1].Left + push);
            }
            total += push;
        }
        return total;
    }

    private bool Path(int source, int sink, int[] by)
    {
        Array.Fill(by, -1);
        var queue = new Queue<int>([source]);
        while (queue.TryDequeue(out var at))
            foreach (var e in from[at])
            {
                var (to, left) = edges[e];
                if (left <= 0 || to == source || by[to] >= 0) continue;
                by[to] = e;
                if (to == sink) return true;
                queue.Enqueue(to);
            }
        return false;
    }
}
