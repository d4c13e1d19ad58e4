namespace Traceability.Domain.Quality.Pairing;

internal sealed partial class BlossomMatching
{
    private void SetTop(int node, int top)
    {
        _top[node] = top;
        if (node > _count)
            _ring[node].ForEach(child => SetTop(child, top));
    }

    /// <summary>The lowest blossom or vertex on both tree paths; 0 when the two nodes hang in different trees.</summary>
    private int CommonAncestor(int a, int b)
    {
        for (_search++; a != 0 || b != 0; (a, b) = (b, a))
        {
            if (a == 0)
                continue;
            if (_seen[a] == _search)
                return a;
            _seen[a] = _search;
            a = _top[_mate[a]];
            if (a != 0)
                a = _top[_parent[a]];
        }
        return 0;
    }

    /// <summary>Makes one node of the odd ring that the edge between two outer nodes of a tree closes.</summary>
    private void Shrink(int left, int ancestor, int right)
    {
        var blossom = _count + 1;
        while (blossom <= _highest && _top[blossom] != 0)
            blossom++;
        _highest = Math.Max(_highest, blossom);
        _dual[blossom] = 0;
        _label[blossom] = Outer;
        _mate[blossom] = _mate[ancestor];

        var ring = _ring[blossom];
        ring.Clear();
        ring.Add(ancestor);
        Climb(left);
        ring.Reverse(1, ring.Count - 1);
        Climb(right);
        SetTop(blossom, blossom);
        InheritEdges(blossom);
        FindClosest(blossom);

        void Climb(int node)
        {
            while (node != ancestor)
            {
                var inner = _top[_mate[node]];
                ring.Add(node);
                ring.Add(inner);
                Enqueue(inner);
                node = _top[_parent[inner]];
            }
        }
    }

    private void InheritEdges(int blossom)
    {
        for (var node = 1; node <= _highest; node++)
            _edges[blossom, node] = _edges[node, blossom] = default;
        for (var vertex = 1; vertex <= _count; vertex++)
            _childWith[blossom, vertex] = 0;
        foreach (var child in _ring[blossom])
        {
            for (var node = 1; node <= _highest; node++)
            {
                var candidate = _edges[child, node];
                if (candidate.Weight <= 0)
                    continue;
                if (_edges[blossom, node].Weight != 0 && Slack(candidate) >= Slack(_edges[blossom, node]))
                    continue;
                _edges[blossom, node] = candidate;
                _edges[node, blossom] = _edges[node, child];
            }
            for (var vertex = 1; vertex <= _count; vertex++)
                if (_childWith[child, vertex] != 0)
                    _childWith[blossom, vertex] = child;
        }
    }

    /// <summary>Opens an inner blossom without dual: the even way round its ring stays in the tree, the rest goes free.</summary>
    private void Expand(int blossom)
    {
        var ring = _ring[blossom];
        foreach (var child in ring)
            SetTop(child, child);
        var entry = _childWith[blossom, _edges[blossom, _parent[blossom]].From];
        var length = EvenWayTo(blossom, entry);
        for (var i = 0; i < length; i += 2)
        {
            int inner = ring[i],
                outer = ring[i + 1];
            _parent[inner] = _edges[outer, inner].From;
            _label[inner] = Inner;
            _label[outer] = Outer;
            _closest[inner] = 0;
            FindClosest(outer);
            Enqueue(outer);
        }
        _label[entry] = Inner;
        _parent[entry] = _parent[blossom];
        for (var i = length + 1; i < ring.Count; i++)
        {
            _label[ring[i]] = Free;
            FindClosest(ring[i]);
        }
        _top[blossom] = 0;
    }

    /// <summary>Place of a child in the ring, turned round if need be so that an even number of steps leads to it from the base.</summary>
    private int EvenWayTo(int blossom, int child)
    {
        var ring = _ring[blossom];
        var place = ring.IndexOf(child);
        if (place % 2 == 0)
            return place;
        ring.Reverse(1, ring.Count - 1);
        return ring.Count - place;
    }

    /// <summary>Flips matched and unmatched edges from a node up to the root of its tree.</summary>
    private void AugmentFrom(int node, int mate)
    {
        while (true)
        {
            var former = _top[_mate[node]];
            Match(node, mate);
            if (former == 0)
                return;
            var next = _top[_parent[former]];
            Match(former, next);
            (node, mate) = (next, former);
        }
    }

    private void Match(int node, int mate)
    {
        var edge = _edges[node, mate];
        _mate[node] = edge.To;
        if (node <= _count)
            return;
        var entry = _childWith[node, edge.From];
        var length = EvenWayTo(node, entry);
        var ring = _ring[node];
        for (var i = 0; i < length; i++)
            Match(ring[i], ring[i ^ 1]);
        Match(entry, mate);
        List<int> turned = [.. ring[length..], .. ring[..length]];
        ring.Clear();
        ring.AddRange(turned);
    }
}
