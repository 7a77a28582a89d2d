"""Small walls with joints and the least cost of the boards they take, by OR-Tools CP-SAT.

    python3 -m venv target/peers && target/peers/bin/pip install -r tests/peers/requirements.txt \
        && target/peers/bin/python tests/peers/joints.py > tests/peers/joints.json

The model is written from the rules in words (joints on studs, stagger between neighbouring courses, the fewest joints
that a run needs by itself, pieces cut with kerfs from stock and offcuts) and knows nothing of the core's planner: a run
is a path from its left to its right end over the studs, each arc a piece; each piece lies in a board. Where no joints
keep the stagger, as few runs as possible take one joint more. Lengths are whole 32nds of an inch; pieces are cut on
16ths. Only instances whose optimum CP-SAT proved are written.
"""

import json
import random
import sys
from importlib.metadata import version

from ortools.sat.python import cp_model

WANTED = 100
INCH = 32
MARK = 2  # the tape's division
SECONDS = 60


def instance(dice):
    inches = lambda least, most: INCH * dice.randint(least, most)
    spacing = dice.choice([12, 16, 24]) * INCH
    stock = []
    for length in dice.sample([6, 7, 8, 9, 10, 12], dice.randint(1, 3)):
        cost = dice.randint(1, 30) if dice.random() < 0.3 else 12 * length
        count = dice.randint(1, 4) if stock and dice.random() < 0.3 else None
        stock.append({"length": 12 * length * INCH, "cost": cost, "count": count})
    runs = []
    for wall in range(dice.randint(1, 2)):
        for course in range(dice.randint(1, 3)):
            start = inches(0, 20)
            end = start + inches(40, 210) + dice.randint(0, 31)
            runs.append({"wall": wall, "course": course, "from": start, "to": end})
    avoid = []
    if dice.random() < 0.4:
        start = inches(10, 100)
        avoid.append({"from": start, "to": start + inches(8, 30), "courses": sorted(dice.sample(range(3), 2))})
    return {
        "runs": runs,
        "studs": {"first": inches(0, 15), "spacing": spacing},
        "stock": stock,
        "offcuts": [inches(20, 70) for _ in range(dice.randint(0, 3))],
        "kerf": dice.randint(0, 8),
        "end_gap": dice.randint(0, 6),
        "joint_gap": 2 * dice.randint(0, 2),
        "stagger": dice.choice([0, 1, 1, 2]) * spacing,
        "piece_min": dice.choice([0, 8, 16, 20]) * INCH,
        "extra_joints": dice.choice([0, 0, 0, 1]),
        "avoid": avoid,
    }


def arcs(task, run, longest):
    """The pieces that a run may be made of, as (left node, right node, length); nodes are its ends and studs."""
    start, end = run["from"] + task["end_gap"], run["to"] - task["end_gap"]
    half = task["joint_gap"] // 2
    cut = lambda left, right: (right - left) // MARK * MARK
    if cut(start, end) <= longest:
        return [("start", "end", cut(start, end))], []
    first, spacing = task["studs"]["first"], task["studs"]["spacing"]
    barred = lambda at: any(
        zone["from"] < at < zone["to"] and run["course"] in zone["courses"] for zone in task["avoid"]
    )
    studs = [at for at in range(first % spacing, end, spacing) if start < at and not barred(at)]
    lefts = [("start", start)] + [(at, at + half) for at in studs]
    rights = [(at, at - half) for at in studs] + [("end", end)]
    pieces = []
    for left, begin in lefts:
        for right, stop in rights:
            length = cut(begin, stop)
            if begin < stop and (left, right) != ("start", "end") and max(task["piece_min"], 1) <= length <= longest:
                pieces.append((left, right, length))
    return pieces, studs


def fewest(pieces):
    """The fewest joints of a run by itself; none where it cannot be pieced."""
    reached, count = {"start"}, 0
    while reached:
        if any(left in reached and right == "end" for left, right, _ in pieces):
            return count
        reached = {right for left, right, _ in pieces if left in reached}
        count += 1
        if count > 50:
            return None
    return None


class Wall:
    """The model: paths with their stagger, and on demand the boards they are cut from."""

    def __init__(self, task, most_over=None):
        self.model = model = cp_model.CpModel()
        boards = [stock["length"] for stock in task["stock"] if stock["count"] != 0] + task["offcuts"]
        self.pieces, joints, self.over = [], [], []
        for run in task["runs"]:
            pieces, studs = arcs(task, run, max(boards))
            least = fewest(pieces)
            if least is None:
                raise ValueError("no joints")
            take = [model.NewBoolVar("") for _ in pieces]
            into = lambda node: sum(t for t, piece in zip(take, pieces) if piece[1] == node)
            out = lambda node: sum(t for t, piece in zip(take, pieces) if piece[0] == node)
            model.Add(out("start") == 1)
            model.Add(into("end") == 1)
            for stud in studs:
                model.Add(into(stud) == out(stud))
            over = model.NewBoolVar("")
            if len(pieces) > 1:
                model.Add(sum(take) - 1 <= least + task["extra_joints"] + over)
            else:
                model.Add(over == 0)
            self.over.append(over)
            joints.append({stud: into(stud) for stud in studs})
            self.pieces += [(t, piece[2]) for t, piece in zip(take, pieces)]
        for a, x in enumerate(task["runs"]):
            for b, y in enumerate(task["runs"]):
                overlap = x["from"] < y["to"] and y["from"] < x["to"]
                if x["wall"] == y["wall"] and y["course"] == x["course"] + 1 and overlap:
                    for p, at in joints[a].items():
                        for q, other in joints[b].items():
                            if abs(p - q) < task["stagger"]:
                                model.Add(at + other <= 1)
        if most_over is not None:
            model.Add(sum(self.over) == most_over)

    def cut_from(self, task, most):
        """Boards for the pieces, and their cost: offcuts one by one, at most `most` new ones of any length."""
        model, kerf = self.model, task["kerf"]
        inside = [[] for _ in self.pieces]
        taken = {stock: [] for stock in range(len(task["stock"]))}
        cost = 0
        bins = [[(None, length)] for length in task["offcuts"]]
        bins += [[(at, stock["length"]) for at, stock in enumerate(task["stock"])]] * most
        before = None
        for kinds in bins:
            room = 0
            picked = [model.NewBoolVar("") for _ in kinds]
            model.AddAtMostOne(picked)
            for pick, (stock, length) in zip(picked, kinds):
                room += pick * (length + kerf)
                if stock is not None:
                    taken[stock].append(pick)
                    cost += pick * task["stock"][stock]["cost"]
            held = []
            for slot, (take, length) in zip(inside, self.pieces):
                here = model.NewBoolVar("")
                slot.append(here)
                held.append(here * (length + kerf))
            model.Add(sum(held) <= room)
            if kinds[0][0] is not None:
                if before is not None:
                    model.Add(room <= before)
                before = room
        for slot, (take, _) in zip(inside, self.pieces):
            model.Add(sum(slot) == take)
        for stock, picks in taken.items():
            if task["stock"][stock]["count"] is not None:
                model.Add(sum(picks) <= task["stock"][stock]["count"])
        return cost


def solve(model):
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 2
    solver.parameters.max_time_in_seconds = SECONDS
    status = solver.Solve(model)
    return {cp_model.OPTIMAL: "optimal", cp_model.INFEASIBLE: "infeasible"}.get(status, "open"), solver


def optimum(task):
    """The least number of runs with one joint more than their own, and the least cost; none where it is not proved."""
    try:
        wall = Wall(task)
    except ValueError:
        return None
    wall.model.Minimize(sum(wall.over))
    status, solver = solve(wall.model)
    if status != "optimal":
        return None
    over = int(solver.ObjectiveValue())
    # As many new boards as there can be pieces.
    wall = Wall(task, over)
    wall.model.Maximize(sum(take for take, _ in wall.pieces))
    status, solver = solve(wall.model)
    if status != "optimal":
        return None
    most = int(solver.ObjectiveValue())
    wall = Wall(task, over)
    wall.model.Minimize(wall.cut_from(task, most))
    status, solver = solve(wall.model)
    return (over, int(round(solver.ObjectiveValue())), most) if status == "optimal" else None


def main():
    found, start = [], 0
    while len(found) < WANTED:
        start += 1
        task = instance(random.Random(start))
        boards = [stock["length"] for stock in task["stock"]]
        # At least one run must be longer than every board.
        if max(run["to"] - run["from"] for run in task["runs"]) <= max(boards) + 2 * task["end_gap"]:
            continue
        best = optimum(task)
        if best is None or best[2] > 14:
            continue
        over, cost, _ = best
        found.append({"name": f"wall-{start}", **task, "least": {"cost": cost, "runs_with_one_more": over}})
        print(f"{len(found)}: {start} costs {cost}", file=sys.stderr)
    head = {
        "what": "Walls by chance; `least` is the optimum that the solver proved, not an answer of this project's planner.",
        "solver": f"OR-Tools CP-SAT {version('ortools')}",
        "made_by": "tests/peers/joints.py",
        "unit": "1/32 in",
    }
    lines = ",\n".join(json.dumps(task) for task in found)
    print(json.dumps(head)[:-1] + ', "walls": [\n' + lines + "\n]}")


main()
