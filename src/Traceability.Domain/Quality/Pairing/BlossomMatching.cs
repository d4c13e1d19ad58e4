namespace Traceability.Domain.Quality.Pairing;

/// <summary>
/// Maximum-weight matching in a general graph by Edmonds' blossom method, O(n^3), in whole numbers.
/// </summary>
/// <remarks>
/// <para>
/// Every vertex carries a dual value, every blossom (an odd ring of tight edges shrunk to one node) another one. Trees of tight edges
/// grow from the unmatched vertices; an edge between two trees augments the matching, one within a tree makes a blossom, and when
/// nothing is tight the duals move until something is. Weights count twice against the duals, so that all halves stay whole numbers.
/// </para>
/// <para>
/// Vertices are 1 to n, blossoms lie above, 0 is none. An edge of weight 0 does not exist. Edges of a blossom are kept as the tightest ones
/// of its children, which makes the whole O(n^3).
/// </para>
/// </remarks>
internal sealed partial class BlossomMatching
{
    private const sbyte Free = -1,
        Outer = 0,
        Inner = 1;

    private readonly int _count;
    private readonly Edge[,] _edges;
    private readonly long[] _dual;
    private readonly int[] _mate;
    private readonly int[] _closest;
    private readonly int[] _top;
    private readonly int[] _parent;
    private readonly sbyte[] _label;
    private readonly int[] _seen;
    private readonly int[,] _childWith;
    private readonly List<int>[] _ring;
    private readonly Queue<int> _toScan = new();
    private int _highest;
    private int _search;

    private readonly record struct Edge(int From, int To, long Weight);

    public BlossomMatching(int count, Func<int, int, long> weight)
    {
        _count = _highest = count;
        var size = count + count / 2 + 2;
        _edges = new Edge[size, size];
        _dual = new long[size];
        (_mate, _closest, _top, _parent, _seen) = (new int[size], new int[size], new int[size], new int[size], new int[size]);
        _label = new sbyte[size];
        _childWith = new int[size, count + 1];
        _ring = [.. Enumerable.Range(0, size).Select(_ => new List<int>())];

        var greatest = 0L;
        for (var a = 1; a <= count; a++)
        {
            _top[a] = _childWith[a, a] = a;
            for (var b = a + 1; b <= count; b++)
            {
                var value = weight(a - 1, b - 1);
                _edges[a, b] = new(a, b, value);
                _edges[b, a] = new(b, a, value);
                greatest = Math.Max(greatest, value);
            }
        }
        Array.Fill(_dual, greatest, 1, count);
    }

    /// <summary>The mate of every vertex, counted from 0; -1 for a vertex without one.</summary>
    public int[] Mates()
    {
        while (Augments()) { }
        return [.. Enumerable.Range(1, _count).Select(v => _mate[v] - 1)];
    }

    /// <summary>One stage: grows trees from all unmatched nodes until the matching has one edge more; false when it cannot gain.</summary>
    private bool Augments()
    {
        Array.Fill(_label, Free);
        Array.Clear(_closest);
        _toScan.Clear();
        for (var node = 1; node <= _highest; node++)
        {
            if (!IsTop(node) || _mate[node] != 0)
                continue;
            _parent[node] = 0;
            _label[node] = Outer;
            Enqueue(node);
        }
        if (_toScan.Count == 0)
            return false;

        while (true)
        {
            while (_toScan.TryDequeue(out var vertex))
                if (Scan(vertex))
                    return true;
            if (!MoveDuals())
                return false;
            _toScan.Clear();
            for (var node = 1; node <= _highest; node++)
            {
                var from = _closest[node];
                if (!IsTop(node) || from == 0 || _top[from] == node)
                    continue;
                if (Slack(_edges[from, node]) == 0 && Follow(_edges[from, node]))
                    return true;
            }
            for (var blossom = _count + 1; blossom <= _highest; blossom++)
                if (IsTop(blossom) && _label[blossom] == Inner && _dual[blossom] == 0)
                    Expand(blossom);
        }
    }

    private bool Scan(int vertex)
    {
        if (_label[_top[vertex]] == Inner)
            return false;
        for (var other = 1; other <= _count; other++)
        {
            var edge = _edges[vertex, other];
            if (edge.Weight <= 0 || _top[vertex] == _top[other])
                continue;
            if (Slack(edge) != 0)
                Offer(vertex, _top[other]);
            else if (Follow(edge))
                return true;
        }
        return false;
    }

    /// <summary>Takes up a tight edge: it lengthens a tree, shrinks a ring or, between two trees, augments (true).</summary>
    private bool Follow(Edge edge)
    {
        int here = _top[edge.From],
            there = _top[edge.To];
        if (_label[there] == Free)
        {
            _parent[there] = edge.From;
            _label[there] = Inner;
            var beyond = _top[_mate[there]];
            _closest[there] = _closest[beyond] = 0;
            _label[beyond] = Outer;
            Enqueue(beyond);
        }
        else if (_label[there] == Outer)
        {
            if (CommonAncestor(here, there) is var ancestor and not 0)
            {
                Shrink(here, ancestor, there);
                return false;
            }
            AugmentFrom(here, there);
            AugmentFrom(there, here);
            return true;
        }
        return false;
    }

    /// <summary>Moves the duals as far as nothing breaks; false when an unmatched vertex has none left, which is the optimum.</summary>
    private bool MoveDuals()
    {
        var step = long.MaxValue;
        for (var blossom = _count + 1; blossom <= _highest; blossom++)
            if (IsTop(blossom) && _label[blossom] == Inner)
                step = Math.Min(step, _dual[blossom] / 2);
        for (var node = 1; node <= _highest; node++)
        {
            if (!IsTop(node) || _closest[node] == 0)
                continue;
            var slack = Slack(_edges[_closest[node], node]);
            if (_label[node] == Free)
                step = Math.Min(step, slack);
            else if (_label[node] == Outer)
                step = Math.Min(step, slack / 2);
        }
        for (var vertex = 1; vertex <= _count; vertex++)
        {
            if (_label[_top[vertex]] == Inner)
            {
                _dual[vertex] += step;
            }
            else if (_label[_top[vertex]] == Outer)
            {
                if (_dual[vertex] <= step)
                    return false;
                _dual[vertex] -= step;
            }
        }
        for (var blossom = _count + 1; blossom <= _highest; blossom++)
        {
            if (!IsTop(blossom) || _label[blossom] == Free)
                continue;
            _dual[blossom] += _label[blossom] == Outer ? 2 * step : -2 * step;
        }
        return true;
    }

    private bool IsTop(int node) => _top[node] == node;

    private long Slack(Edge edge) => _dual[edge.From] + _dual[edge.To] - 2 * edge.Weight;

    private void Offer(int vertex, int node)
    {
        if (_closest[node] == 0 || Slack(_edges[vertex, node]) < Slack(_edges[_closest[node], node]))
            _closest[node] = vertex;
    }

    private void FindClosest(int node)
    {
        _closest[node] = 0;
        for (var vertex = 1; vertex <= _count; vertex++)
            if (_edges[vertex, node].Weight > 0 && _top[vertex] != node && _label[_top[vertex]] == Outer)
                Offer(vertex, node);
    }

    private void Enqueue(int node)
    {
        if (node <= _count)
            _toScan.Enqueue(node);
        else
            _ring[node].ForEach(Enqueue);
    }
}
