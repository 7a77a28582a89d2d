"""Small houses with joints and the least cost of the boards they take, by HiGHS over all joints and all patterns.

    python3 -m venv target/peers && target/peers/bin/pip install -r tests/peers/requirements.txt \
        && target/peers/bin/python tests/peers/small_lists.py > tests/peers/small_lists.json

Two walls side by side on one axis, 12 runs or a few more, studs 16 in apart on one wall and 24 in on the other. The model is
written from the rules in words and knows nothing of the core's planner: a binary variable for every way to piece every
run, a whole one for every set of pieces that fills a board, and no two joints of neighbouring courses closer than the
stagger. Where none keep it, as few runs as possible take one joint more. Lengths are whole 32nds of an inch; pieces are cut
on 16ths. The lists are those among some thousand by chance on which a search stayed a board too dear, or its bound a unit too
low, that chose joints first and cut their pieces then; and some by chance.
"""

import json
import random
import sys
from importlib.metadata import version

import highspy
import numpy as np

SEEDS = {
    "one": [1, 2, 3, 41, 97, 119, 179, 303, 308, 398, 402, 427, 462, 515, 561, 604],
    "two": [1, 3, 4, 13, 14, 97, 101, 105, 142, 148, 173, 201, 214, 225, 283],
    "four": [1, 2, 3, 4],
}
STOCK = {"one": [120], "two": [120, 144], "four": [96, 120, 144, 192]}
INCH = 32
MARK = 2  # the tape's division
BETWEEN = 2000 * INCH
MOST_PATTERNS = 4_000
SECONDS = 60


def instance(dice, kind):
    inches = lambda least, most: dice.randint(16 * least, 16 * most) * MARK
    spacings = dice.sample([16, 24], 2)
    runs, studs = [], []
    for wall, spacing in enumerate(spacings):
        start, width = wall * BETWEEN, inches(60, 330)
        first = inches(0, 16)
        studs += [start + at for at in range(first, width, spacing * INCH)]
        shape, slope = dice.choice(["plain", "gable", "window"]), inches(4, 14)
        left = inches(20, max(21, width // INCH - 20))
        right = left + inches(20, 50)
        for course in range(6):
            inset = slope * course if shape == "gable" else 0
            spans = [(inset, width - inset)]
            if shape == "window" and course in (2, 3) and right + 8 * INCH < width:
                spans = [(0, left), (right, width)]
            for begin, end in spans:
                if end - begin >= 20 * INCH:
                    runs.append({"wall": wall, "course": course, "from": start + begin, "to": start + end})
    return {
        "runs": runs,
        "studs": studs,
        "stock": [{"length": length * INCH, "cost": length, "count": None} for length in STOCK[kind]],
        "offcuts": [],
        "kerf": INCH // 8,
        "end_gap": INCH // 8,
        "joint_gap": 0,
        "stagger": 24 * INCH,
        "piece_min": 24 * INCH,
        "extra_joints": 0,
        "avoid": [],
    }


def ways(task, run, more):
    """Every way to piece a run with the fewest joints that it needs by itself, and `more`: its joints and its pieces."""
    longest = max(stock["length"] for stock in task["stock"])
    start, end = run["from"] + task["end_gap"], run["to"] - task["end_gap"]
    cut = lambda length: length // MARK * MARK
    if cut(end - start) <= longest:
        return [((), (cut(end - start),), 0)]
    studs = [at for at in task["studs"] if start < at < end]
    fits = lambda length: task["piece_min"] <= cut(length) <= longest
    found, fewest, open_ways = [], None, [((), start)]
    for count in range(1, 40):
        open_ways = [(path + (at,), at) for path, last in open_ways for at in studs if at > last and fits(at - last)]
        whole = [path for path, last in open_ways if fits(end - last)]
        if whole and fewest is None:
            fewest = count
        for path in whole:
            ends = (start, *path, end)
            found.append((path, tuple(cut(b - a) for a, b in zip(ends, ends[1:])), count - fewest))
        if fewest is not None and count >= fewest + more:
            return found
    return []


def fillings(sizes, room, most):
    """Every set of pieces that leaves no room for a further one on a board; none where there are more than `most`."""
    sizes, found = sorted(sizes, reverse=True), []

    def go(at, room, pieces):
        fitting = [index for index in range(at, len(sizes)) if sizes[index] <= room]
        if not fitting and pieces and not any(size <= room for size in sizes):
            found.append(pieces)
        for index in fitting:
            if len(found) > most:
                return
            go(index, room - sizes[index], pieces + (sizes[index],))

    go(0, room, ())
    return None if len(found) > most else found


class Model:
    """Rows and columns for HiGHS."""

    def __init__(self):
        self.rows, self.columns = [], []

    def row(self, low, high):
        self.rows.append((low, high))
        return len(self.rows) - 1

    def column(self, cost, most, entries):
        self.columns.append([cost, most, dict(entries)])
        return self.columns[-1][2]

    def solve(self):
        highs = highspy.Highs()
        for option, value in [("output_flag", False), ("threads", 1), ("time_limit", float(SECONDS))]:
            highs.setOptionValue(option, value)
        highs.setOptionValue("mip_rel_gap", 0.0)
        for low, high in self.rows:
            highs.addRow(low, high, 0, [], [])
        for cost, most, entries in self.columns:
            places = np.array(sorted(entries), dtype=np.int32)
            values = np.array([float(entries[place]) for place in places])
            highs.addCol(float(cost), 0.0, most, len(places), places, values)
        count = len(self.columns)
        kinds = np.array([highspy.HighsVarType.kInteger] * count)
        highs.changeColsIntegrality(count, np.arange(count, dtype=np.int32), kinds)
        highs.run()
        if highs.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            return None
        return highs.getObjectiveValue()


def joints(task, model, pieced):
    """One way for every run, in keeping with the stagger: the entries of each way's column, and its excess."""
    entries = []
    for run in pieced:
        one = model.row(1.0, 1.0)
        entries.append([(model.column(0.0, 1.0, {one: 1.0}), way) for way in run])
    for a, lower in enumerate(task["runs"]):
        for b, upper in enumerate(task["runs"]):
            overlap = lower["from"] < upper["to"] and upper["from"] < lower["to"]
            if lower["wall"] != upper["wall"] or upper["course"] != lower["course"] + 1 or not overlap:
                continue
            at = lambda run: sorted({stud for _, (path, _, _) in entries[run] for stud in path})
            for x in at(a):
                for y in [y for y in at(b) if abs(x - y) < task["stagger"]]:
                    row = model.row(-highspy.kHighsInf, 1.0)
                    for run, stud in ((a, x), (b, y)):
                        for column, (path, _, _) in entries[run]:
                            if stud in path:
                                column[row] = 1.0
    return entries


def optimum(task):
    """The least number of runs with a joint more, and the least cost; none where HiGHS does not prove them in time."""
    over = 0
    for more in (0, 1):
        pieced = [ways(task, run, more) for run in task["runs"]]
        if not all(pieced):
            return None
        model = Model()
        entries = joints(task, model, pieced)
        for column, (index, (_, (_, _, excess))) in zip(model.columns, enumerate(sum(entries, []))):
            column[0] = float(excess)
        least = model.solve()
        if least is not None:
            over = round(least)
            break
    else:
        return None
    kerf = task["kerf"]
    sizes = sorted({piece + kerf for run in pieced for _, pieces, _ in run for piece in pieces})
    model = Model()
    place = {size: model.row(0.0, highspy.kHighsInf) for size in sizes}
    cheapest = {}
    for stock in sorted(task["stock"], key=lambda stock: stock["length"]):
        found = fillings(sizes, stock["length"] + kerf, MOST_PATTERNS)
        if found is None:
            return None
        for pieces in found:
            cheapest.setdefault(pieces, stock["cost"])
    for pieces, cost in cheapest.items():
        model.column(cost, highspy.kHighsInf, {place[size]: pieces.count(size) for size in set(pieces)})
    excess_row = model.row(float(over), float(over))
    for run in joints(task, model, pieced):
        for column, (_, pieces, excess) in run:
            for piece in pieces:
                column[place[piece + kerf]] = column.get(place[piece + kerf], 0.0) - 1.0
            column[excess_row] = float(excess)
    cost = model.solve()
    return None if cost is None else (over, round(cost))


def main():
    found = []
    for kind, seeds in SEEDS.items():
        for seed in seeds:
            task = instance(random.Random(f"{kind} {seed}"), kind)
            best = optimum(task)
            if best is None:
                print(f"{kind}-{seed} is not proved", file=sys.stderr)
                continue
            over, cost = best
            found.append({"name": f"{kind}-{seed}", **task, "least": {"cost": cost, "runs_with_one_more": over}})
    head = {
        "what": "Houses by chance; `least` is the optimum that the solver proved, not an answer of this project's planner.",
        "solver": f"HiGHS {version('highspy')}",
        "made_by": "tests/peers/small_lists.py",
        "unit": "1/32 in",
    }
    lines = ",\n".join(json.dumps(task) for task in found)
    print(json.dumps(head)[:-1] + ', "walls": [\n' + lines + "\n]}")


main()
