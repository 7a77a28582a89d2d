"""Cutting plans of the core beside those of peers, on the same lists and the same machine.

Reads the lines of `cargo bench --bench planner -- --lines` on standard input: for each list the core's own first plan,
time, cost and bound. The peers are column generation over HiGHS, with dual prices in whole numbers, a bounded knapsack by
dynamic programming, diving and an integer master over the columns; first fit decreasing; and, on small lists, CP-SAT on
an assignment model. One thread each, processor time.

Prints for each family how many lists were proved within 0.1, 1 and 5 s, the median of the time until the proof or the
limit, and how far the worst plan lies over the best bound that anybody gave.
"""

import json
import statistics
import sys
import time
from math import gcd, log2

import highspy
import numpy as np
from ortools.sat.python import cp_model


class List:
    """A list in whole steps: a piece takes its length and a kerf, a board gives its length and a kerf."""

    def __init__(self, line):
        kerf = line["kerf"]
        self.name = line["name"]
        self.sizes = [length + kerf for length, _ in line["pieces"]]
        self.counts = [count for _, count in line["pieces"]]
        self.boards = [length + kerf for length, _ in line["stock"]]
        self.unit = gcd(*(cost for _, cost in line["stock"]))
        self.costs = [cost // self.unit for _, cost in line["stock"]]
        step = gcd(*self.sizes)
        self.weights = [size // step for size in self.sizes]
        self.cells = [board // step for board in self.boards]


def knapsack(task, duals):
    """The best pattern of every board at these prices, and its worth: a bounded knapsack for all boards in one table."""
    top = max(task.cells)
    value = np.zeros(top + 1)
    taken = []
    for size, (weight, count, dual) in enumerate(zip(task.weights, task.counts, duals)):
        if dual <= 0:
            continue
        count, bundle = min(count, top // weight), 1
        while count > 0:
            bundle = min(bundle, count)
            count -= bundle
            if weight * bundle <= top:
                better = np.zeros(top + 1, dtype=bool)
                with_it = value[: top + 1 - weight * bundle] + dual * bundle
                better[weight * bundle :] = with_it > value[weight * bundle :]
                value[weight * bundle :] = np.maximum(value[weight * bundle :], with_it)
                taken.append((size, bundle, weight * bundle, better))
            bundle *= 2
    patterns = []
    for kind, cell in enumerate(task.cells):
        pattern, at = {}, cell
        for size, bundle, weight, better in reversed(taken):
            if better[at]:
                pattern[size] = pattern.get(size, 0) + bundle
                at -= weight
        patterns.append((kind, pattern, value[cell]))
    return patterns


class Columns:
    """A linear programme over patterns that HiGHS solves."""

    def __init__(self, task, counts):
        self.task, self.patterns = task, []
        self.highs = highspy.Highs()
        self.highs.setOptionValue("output_flag", False)
        self.highs.setOptionValue("threads", 1)
        for count in counts:
            self.highs.addRow(float(count), highspy.kHighsInf, 0, [], [])

    def add(self, kind, pattern):
        rows = sorted(pattern)
        values = [float(pattern[row]) for row in rows]
        cost = float(self.task.costs[kind])
        self.highs.addCol(cost, 0.0, highspy.kHighsInf, len(rows), np.array(rows, dtype=np.int32), np.array(values))
        self.patterns.append((kind, pattern))

    def solve(self):
        self.highs.run()
        solution = self.highs.getSolution()
        return self.highs.getObjectiveValue(), list(solution.col_value), list(solution.row_dual)


def greedy(task, counts):
    """First fit decreasing on the longest board, each board then exchanged for the cheapest that holds its pieces."""
    room, boards, longest = [], [], max(task.boards)
    for size in sorted(range(len(counts)), key=lambda size: -task.sizes[size]):
        for _ in range(counts[size]):
            place = next((at for at, left in enumerate(room) if left >= task.sizes[size]), None)
            if place is None:
                place = len(room)
                room.append(longest)
                boards.append({})
            room[place] -= task.sizes[size]
            boards[place][size] = boards[place].get(size, 0) + 1
    out = []
    for pattern in boards:
        used = sum(task.sizes[size] * count for size, count in pattern.items())
        fitting = [kind for kind in range(len(task.boards)) if task.boards[kind] >= used]
        out.append((min(fitting, key=lambda kind: task.costs[kind]), pattern))
    return out


def generate(task, limit):
    """Plan, bound and time of column generation; costs in the list's unit."""
    start = time.process_time()
    spent = lambda: time.process_time() - start
    best = greedy(task, task.counts)
    cost = lambda boards: sum(task.costs[kind] for kind, _ in boards)
    lp = Columns(task, task.counts)
    for kind, pattern in best:
        lp.add(kind, pattern)
    dearest = max(range(len(task.boards)), key=lambda kind: task.boards[kind])
    for size in range(len(task.sizes)):
        lp.add(dearest, {size: min(task.counts[size], task.boards[dearest] // task.sizes[size])})
    # Whole prices: sums over all pieces stay under 2^51, exact in the floats of the table.
    scale = 2.0 ** int(50 - log2(max(task.costs) * sum(task.counts)))
    bound = 0
    while spent() < limit:
        value, _, duals = lp.solve()
        whole = [max(0, int(dual * scale)) for dual in duals]
        found = knapsack(task, whole)
        total = sum(price * count for price, count in zip(whole, task.counts))
        above, below = 1, 1
        for kind, _, worth in found:
            if int(worth) * below > int(task.costs[kind] * scale) * above:
                above, below = int(worth), int(task.costs[kind] * scale)
        bound = max(bound, -(-total * below // (above * int(scale))))
        fresh = [(kind, pattern) for kind, pattern, worth in found if worth > task.costs[kind] * scale * (1 + 1e-9)]
        if bound >= cost(best) or not fresh or -int(-(value - 1e-6)) <= bound - 1:
            break
        for kind, pattern in fresh:
            lp.add(kind, pattern)
    if bound < cost(best):
        best = min([best, dive(task, lp.patterns, limit - spent())], key=cost)
    if bound < cost(best) and spent() < limit:
        best = min([best, integer(task, lp.patterns, limit - spent(), best)], key=cost)
    return cost(best), bound, spent()


def dive(task, patterns, limit):
    """Rounds the programme down and its surest column up, then solves what is left anew, to the end."""
    start, left, boards = time.process_time(), list(task.counts), []
    while any(left) and time.process_time() - start < limit:
        lp = Columns(task, left)
        for kind, pattern in patterns:
            if all(left[size] >= count for size, count in pattern.items()):
                lp.add(kind, pattern)
        for size, count in enumerate(left):
            if count:
                fitting = [kind for kind in range(len(task.boards)) if task.boards[kind] >= task.sizes[size]]
                lp.add(min(fitting, key=lambda kind: task.costs[kind]), {size: 1})
        _, values, _ = lp.solve()
        order = sorted(range(len(values)), key=lambda at: -values[at])
        for rank, at in enumerate(order):
            kind, pattern = lp.patterns[at]
            for _ in range(max(int(values[at] + 1e-6), int(rank == 0))):
                if all(left[size] >= count for size, count in pattern.items()):
                    boards.append((kind, pattern))
                    for size, count in pattern.items():
                        left[size] -= count
    rest = greedy(task, left) if any(left) else []
    return boards + rest


def integer(task, patterns, limit, best):
    """The best plan over the columns at hand."""
    model = Columns(task, task.counts)
    for kind, pattern in patterns:
        model.add(kind, pattern)
    count = len(model.patterns)
    kinds = np.array([highspy.HighsVarType.kInteger] * count)
    model.highs.changeColsIntegrality(count, np.arange(count, dtype=np.int32), kinds)
    model.highs.setOptionValue("time_limit", max(0.1, limit))
    _, values, _ = model.solve()
    left, boards = list(task.counts), []
    for (kind, pattern), value in zip(model.patterns, values):
        for _ in range(round(value)):
            cut = {size: min(count, left[size]) for size, count in pattern.items() if left[size]}
            for size, amount in cut.items():
                left[size] -= amount
            boards.append((kind, cut))
    return boards if not any(left) else best


def assign(task, limit):
    """Plan, bound and time of CP-SAT, every piece put on one of the boards."""
    start = time.process_time()
    model, known = cp_model.CpModel(), greedy(task, task.counts)
    places = range(len(known))
    step = gcd(*task.sizes)
    kind = [[model.new_bool_var("") for _ in task.boards] for _ in places]
    put = [[model.new_int_var(0, count, "") for count in task.counts] for _ in places]
    for size, count in enumerate(task.counts):
        model.add(sum(put[place][size] for place in places) == count)
    for place in places:
        model.add_at_most_one(kind[place])
        room = sum(board // step * own for board, own in zip(task.boards, kind[place]))
        model.add(sum(size // step * own for size, own in zip(task.sizes, put[place])) <= room)
    model.minimize(sum(cost * own for place in places for cost, own in zip(task.costs, kind[place])))
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds, solver.parameters.num_workers = limit, 1
    if solver.solve(model) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return sum(task.costs[own] for own, _ in known), 0, time.process_time() - start
    return round(solver.objective_value), round(solver.best_objective_bound), time.process_time() - start


def first_fit(task):
    """Plan and time of first fit decreasing, which has no bound."""
    start = time.process_time()
    boards = greedy(task, task.counts)
    return sum(task.costs[kind] for kind, _ in boards), 0, time.process_time() - start


# The most pieces for a model with a variable for each board and length, and its seconds: it proves next to nothing.
SMALL, SMALL_SECONDS = 60, 2.0


def solve(line, limit):
    """What everybody makes of a list: cost, bound and seconds by name."""
    task = List(line)
    ours = (line["cost"] // task.unit, -(-line["bound"] // task.unit), line["milliseconds"] / 1e3)
    found = {"ours": ours, "columns": generate(task, limit), "first fit": first_fit(task)}
    if sum(task.counts) <= SMALL:
        found["assignment"] = assign(task, min(limit, SMALL_SECONDS))
    least = max(bound for _, bound, _ in found.values())
    for name, (cost, _, _) in found.items():
        if cost < least:
            sys.exit(f"{task.name}: the plan of {name} lies under a bound: {found}")
    return {
        name: {"seconds": seconds, "proved": bound >= cost, "gap": (cost - least) / max(least, 1) * 100}
        for name, (cost, bound, seconds) in found.items()
    }


def show(family, lists):
    """One line for each solver."""
    for name in ("ours", "columns", "first fit", "assignment"):
        own = [found[name] for found in lists if name in found]
        if not own:
            continue
        within = lambda limit: sum(one["proved"] and one["seconds"] <= limit for one in own)
        counts = "".join(f"{within(limit) if name != 'first fit' else '-':>7}" for limit in (0.1, 1, 5))
        median = statistics.median(one["seconds"] for one in own) * 1e3
        print(f"{family:<20}{name:<12}{len(own):>4}{counts}{median:>12.1f}{max(one['gap'] for one in own):>14.4f}", flush=True)
        family = ""


def main():
    limit = float(sys.argv[1]) if len(sys.argv) > 1 else 10.0
    families = {}
    for line in map(json.loads, sys.stdin):
        families.setdefault(line["name"].split("#")[0], []).append(line)
    print(f"{'family':<20}{'solver':<12}{'n':>4}{'0.1 s':>7}{'1 s':>7}{'5 s':>7}{'median ms':>12}{'worst gap %':>14}")
    for family, lines in families.items():
        show(family, [solve(line, limit) for line in lines])


main()
