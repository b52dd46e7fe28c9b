#!/usr/bin/env python3
"""Compares the ordering core with networkx on random graphs.

    cargo build --release -p order --example graph_facts
    python3 tests/peers/networkx_agreement.py target/release/examples/graph_facts [GRAPHS [SEED]]

Needs only networkx. Ends with a non-zero status on any disagreement.
"""

import json
import random
import subprocess
import sys

import networkx as nx


def random_graph(rng):
    """Steps, weights and arcs; most graphs have an order, some do not."""
    n = rng.choice([1, 2, 5, 10, 20, 40, 80])
    hidden = list(range(n))
    shape = rng.randrange(3)
    if shape == 0:
        rng.shuffle(hidden)
    elif shape == 1:
        for _ in range(1 + n // 10):
            hidden.insert(rng.randrange(n), hidden.pop(rng.randrange(n)))
    arcs = []
    for _ in range(rng.randrange(3 * n)):
        i, j = rng.randrange(n), rng.randrange(n)
        if i == j:
            continue
        if rng.random() < 0.5:
            j = min(n - 1, max(0, i + rng.randint(-6, 6)))
            if i == j:
                continue
        arcs.append((hidden[min(i, j)], hidden[max(i, j)]))
    if rng.random() < 0.25:
        for _ in range(rng.randint(1, 3)):
            arcs.append((rng.randrange(n), rng.randrange(n)))
    rng.shuffle(arcs)
    weights = [rng.randint(1, 9) for _ in range(n)]
    return n, weights, arcs


def as_text(graph):
    n, weights, arcs = graph
    lines = [f"graph {n}", " ".join(map(str, weights))]
    lines += [f"{a} {b}" for a, b in arcs]
    return "\n".join(lines) + "\n"


def is_order(order, n, arcs):
    place = {step: i for i, step in enumerate(order)}
    return sorted(order) == list(range(n)) and all(place[a] < place[b] for a, b in arcs)


def shortest_cycle(graph):
    best = None
    for a, b in graph.edges:
        if a == b:
            return 1
        try:
            length = nx.shortest_path_length(graph, b, a) + 1
        except nx.NetworkXNoPath:
            continue
        best = length if best is None else min(best, length)
    return best


def least_cost(conflicts, weights):
    """Cheapest set of steps that meets every conflict: a minimum cut."""
    network = nx.DiGraph()
    network.add_node("source")
    network.add_node("sink")
    for a, b in conflicts:
        network.add_edge("source", ("upper", a), capacity=weights[a])
        network.add_edge(("upper", a), ("lower", b))
        network.add_edge(("lower", b), "sink", capacity=weights[b])
    return nx.maximum_flow_value(network, "source", "sink")


def compare(graph, ours):
    """Yields a name and whether it agrees."""
    n, weights, arcs = graph
    theirs = nx.DiGraph()
    theirs.add_nodes_from(range(n))
    theirs.add_edges_from(arcs)

    components = sorted(sorted(c) for c in nx.strongly_connected_components(theirs))
    yield "components", sorted(ours["components"]) == components
    of = {step: i for i, component in enumerate(ours["components"]) for step in component}
    yield "components in order", all(of[a] <= of[b] for a, b in arcs)

    if not nx.is_directed_acyclic_graph(theirs):
        cycle = ours.get("cycle", [])
        closes = all(cycle[i][1] == cycle[(i + 1) % len(cycle)][0] for i in range(len(cycle)))
        yield "cycle closes", bool(cycle) and closes
        yield "cycle is of arcs", all(tuple(arc) in set(arcs) for arc in cycle)
        yield "cycle is shortest", len(cycle) == shortest_cycle(theirs)
        return

    yield "order", is_order(ours["order"], n, arcs)
    yield "topological order", ours["topological"] == list(
        nx.lexicographical_topological_sort(theirs)
    )
    closure = nx.transitive_closure_dag(theirs)
    yield "closure", all(sorted(closure[a]) == ours["behind"][a] for a in range(n))

    reduced = set(nx.transitive_reduction(theirs).edges)
    seen, implied = set(), []
    for i, arc in enumerate(arcs):
        if arc not in reduced or arc in seen:
            implied.append(i)
        seen.add(arc)
    yield "implied arcs", sorted(ours["implied"]) == implied

    chain = nx.dag_longest_path_length(theirs) + 1 if n else 0
    yield "longest chain", ours["longest_chain"] == chain

    sides = nx.Graph()
    top = [("upper", a) for a in range(n)]
    sides.add_nodes_from(top)
    sides.add_nodes_from(("lower", b) for b in range(n))
    sides.add_edges_from((("upper", a), ("lower", b)) for a, b in closure.edges)
    matching = nx.bipartite.hopcroft_karp_matching(sides, top)
    yield "width", ours["width"] == n - len(matching) // 2

    conflicts = [(a, b) for a, b in closure.edges if b < a]
    for name, price in [("nearest", [1] * n), ("nearest_weighted", weights)]:
        found = ours[name]
        moved = set(found["moved"])
        kept = [step for step in found["order"] if step not in moved]
        yield f"{name}: order", is_order(found["order"], n, arcs)
        yield f"{name}: kept", kept == sorted(kept)
        yield f"{name}: paid", found["cost"] == sum(price[step] for step in moved)
        yield f"{name}: least", found["cost"] == least_cost(conflicts, price)


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    graphs = int(sys.argv[2]) if len(sys.argv) > 2 else 1000
    rng = random.Random(int(sys.argv[3]) if len(sys.argv) > 3 else 1)
    drawn = [random_graph(rng) for _ in range(graphs)]
    run = subprocess.run(
        [sys.argv[1]],
        input="".join(map(as_text, drawn)),
        capture_output=True,
        text=True,
        check=False,
    )
    lines = run.stdout.splitlines()
    if run.returncode != 0 or len(lines) != graphs:
        sys.exit(f"expected {graphs} answers, got {len(lines)}: {run.stderr}")
    passed = failed = 0
    for number, (graph, line) in enumerate(zip(drawn, lines)):
        for name, agrees in compare(graph, json.loads(line)):
            if agrees:
                passed += 1
            else:
                failed += 1
                print(f"graph {number}: {name} disagrees", file=sys.stderr)
                print(as_text(graph), line, file=sys.stderr)
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
