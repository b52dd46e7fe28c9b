#!/usr/bin/env python3
"""Compares the cheapest way back in with a constraint solver on random machines.

    cargo build --release -p order --example way_back
    python3 tests/peers/way_back_agreement.py target/release/examples/way_back [MACHINES [SEED]]

Needs only ortools. Ends with a non-zero status on any disagreement.

The solver is given the question in another way than the core sees it: every
thing has a place in the order of removal, and a route counts only if all of it
comes off at an earlier place. So nothing can support itself in a circle.
"""

import json
import random
import subprocess
import sys

from ortools.sat.python import cp_model


def routes(rng, things, most, free):
    """Routes of one condition over some of the things; some nobody needs."""
    if rng.random() < free:
        return [[]]
    out = []
    for _ in range(rng.randint(1, most)):
        size = rng.choice([1, 1, 2, 2, 3])
        out.append(rng.sample(things, min(size, len(things))))
    return out


def random_machine(rng):
    """Costs, what is gone, conditions by thing, targets."""
    n = rng.choice([3, 6, 10, 20, 35, 60])
    cost = [rng.choice([rng.randint(0, 3), rng.randint(1, 9), rng.randint(5, 60)]) for _ in range(n)]
    depth = list(range(n))
    rng.shuffle(depth)
    shape = rng.randrange(3)
    conditions = [[] for _ in range(n)]
    for place, thing in enumerate(depth):
        outer = depth[max(0, place - 12) : place]
        near = depth[max(0, place - 10) : place + 4]
        pool = {0: outer, 1: near, 2: depth}[shape]
        pool = [t for t in pool if t != thing] or depth
        for _ in range(rng.choice([0, 1, 1, 1, 2])):
            conditions[thing].append(routes(rng, pool, 3, 0.15 if shape == 0 else 0.3))
        if rng.random() < 0.02:
            conditions[thing].append([])
    gone = [t for t in range(n) if rng.random() < 0.03]
    deep = depth[n // 2 :]
    targets = [routes(rng, deep, 3, 0.02) for _ in range(rng.randint(1, 4))]
    return cost, gone, conditions, targets


def as_text(machine):
    cost, gone, conditions, targets = machine

    def listed(condition):
        return " | ".join("+".join(map(str, route)) if route else "free" for route in condition)

    lines = [f"question {len(cost)}", " ".join(map(str, cost))]
    lines += [f"gone {t}" for t in gone]
    for thing, list_ in enumerate(conditions):
        lines += [f"condition {thing}: {listed(condition)}" for condition in list_]
    lines += [f"target: {listed(condition)}" for condition in targets]
    return "\n".join(lines) + "\n"


def comes_off(machine, allowed):
    """Everything that comes off when only these things may."""
    _, gone, conditions, _ = machine
    off = set(gone)
    while True:
        more = {
            t
            for t in allowed - off
            if all(any(off.issuperset(route) for route in c) for c in conditions[t])
        }
        if not more:
            return off
        off |= more


def reaches(machine, off):
    return all(any(off.issuperset(route) for route in target) for target in machine[3])


def least_cost(machine):
    """None if the targets cannot be reached."""
    cost, gone, conditions, targets = machine
    n = len(cost)
    model = cp_model.CpModel()
    off = [model.new_bool_var("") for _ in range(n)]
    place = [model.new_int_var(0, n, "") for _ in range(n)]
    for t in gone:
        model.add(off[t] == 1)
        model.add(place[t] == 0)

    def ask(condition, subject):
        taken = []
        for route in condition:
            way = model.new_bool_var("")
            for t in route:
                model.add_implication(way, off[t])
                if subject is not None:
                    model.add(place[t] < place[subject]).only_enforce_if(way)
            taken.append(way)
        model.add_bool_or(taken if subject is None else [*taken, ~off[subject]])

    for t in range(n):
        if t not in gone:
            for condition in conditions[t]:
                ask(condition, t)
    for condition in targets:
        ask(condition, None)
    model.minimize(sum(cost[t] * off[t] for t in range(n) if t not in gone))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return None
    if status != cp_model.OPTIMAL:
        sys.exit(f"the solver ended with {solver.status_name(status)}")
    return round(solver.objective_value)


def least_meeting(cost, landmarks):
    """What it costs at least to take something of each landmark."""
    model = cp_model.CpModel()
    off = [model.new_bool_var("") for _ in cost]
    for landmark in landmarks:
        model.add_bool_or([off[t] for t in landmark])
    model.minimize(sum(c * v for c, v in zip(cost, off)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.solve(model)
    return round(solver.best_objective_bound)


def compare(machine, ours):
    """Yields a name and whether it agrees."""
    cost, gone, conditions, _ = machine
    theirs = least_cost(machine)
    if theirs is None:
        yield "blocked", "blocked" in ours
        if "blocked" in ours:
            # Were any one of the things gone, or all others, it would show.
            shut = set(ours["shut"])
            freed = (cost, sorted(set(range(len(cost))) - shut), conditions, machine[3])
            still = comes_off(freed, shut)
            first = machine[3][ours["blocked"][0]]
            yield "shut", not any(still.issuperset(route) for route in first)
        return
    yield "reached", "order" in ours
    if "order" not in ours:
        return
    off = set(gone)
    for t in ours["order"]:
        free = all(any(off.issuperset(route) for route in c) for c in conditions[t])
        yield "comes off", free and t not in off
        off.add(t)
    yield "reaches", reaches(machine, off)
    yield "paid", ours["cost"] == sum(cost[t] for t in ours["order"])
    yield "least", ours["cost"] == theirs
    yield "proved", ours["bound"] == theirs
    everything = set(range(len(cost)))
    for landmark in ours["landmarks"]:
        without = comes_off(machine, everything - set(landmark))
        yield "landmark", not reaches(machine, without)
    yield "explained", least_meeting(cost, ours["landmarks"]) == theirs


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    machines = int(sys.argv[2]) if len(sys.argv) > 2 else 1000
    rng = random.Random(int(sys.argv[3]) if len(sys.argv) > 3 else 1)
    drawn = [random_machine(rng) for _ in range(machines)]
    run = subprocess.run(
        [sys.argv[1]],
        input="".join(map(as_text, drawn)),
        capture_output=True,
        text=True,
        check=False,
    )
    lines = run.stdout.splitlines()
    if run.returncode != 0 or len(lines) != machines:
        sys.exit(f"expected {machines} answers, got {len(lines)}: {run.stderr}")
    passed = failed = 0
    for number, (machine, line) in enumerate(zip(drawn, lines)):
        wrong = [name for name, agrees in compare(machine, json.loads(line)) if not agrees]
        if wrong:
            failed += 1
            print(f"machine {number}: {', '.join(wrong)}", file=sys.stderr)
            print(as_text(machine), line, file=sys.stderr)
        else:
            passed += 1
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
