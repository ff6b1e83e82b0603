"""Holds `leat compare` against the oracle, on designs and mutants of them.

A random design and the same with planted changes (a cell filled otherwise, a control turned round): for every inlet and body, the combinations in which the oracle's routes of the two differ must be
those that the conditions of the listed differences name, each difference must show in the combination that its
replay commands put, and where the oracle sees no difference none may be listed and equality must be proved. A
design compared with itself is the same. Designs whose water or memory remembers are left aside: the oracle
here has fresh water only.

Source: docs/model.md, section 3 and its appendix, implemented a second time without shared code.

    /usr/bin/python3 compare_mutants.py --leat build/leat --count 500
"""
from __future__ import annotations

import argparse
import copy
import re
import sys
from collections import Counter
from pathlib import Path
from random import Random
from typing import Any

from drawing import OPEN, ROCK, SIGN, WATER, Drawing, plain
from expression_text import read_expression
from leat_program import Difference, Leat, drawn_case, expect_equal, options, read_design, run
from model_document import Junction, evaluate
from model_oracle import table_of
from random_designs import random_design

Row = tuple[bool, ...]
Answers = dict[str, dict[Row, Any]]  # by "body from inlet", then by assignment


def change_cell(mutant: Drawing, dice: Random) -> None:
    drawn = sorted(at for at in mutant.cells if at not in mutant.ports)
    switched = [at for at in drawn if mutant.cells[at].control is not None]
    place = dice.choice(switched if switched and dice.random() < 0.5 else drawn)
    fill = mutant.cells[place]
    turned = fill._replace(powered=fill.unpowered, unpowered=fill.powered)
    others = [plain(material) for material in (ROCK, OPEN, WATER, SIGN)] + [turned]
    mutant.cells[place] = dice.choice([other for other in others if other != fill])


def mutated(drawing: Drawing, dice: Random) -> Drawing:
    """One to four cells of what was dug are filled otherwise."""
    mutant = copy.deepcopy(drawing)
    mutant.origin = drawing.origin.replace("seed", "mutant of seed")
    for _ in range(dice.randint(1, 4)):
        change_cell(mutant, dice)
    return mutant


def behaviour(route: dict[str, Any]) -> Any:
    """What `compare` calls the same: where the body can end, and what else can happen to it."""
    return (tuple(sorted(route["outlets"])), bool(route["trapped"]), route["spills"], route["unsure"])


def answers_of(junction: Junction, signals: list[str]) -> Answers:
    answers: Answers = {}
    for row in table_of(junction)["rows"]:
        key = tuple(row["assignment"][name] for name in signals)
        for route in row["routes"]:
            answers.setdefault(f"{route['body']} from {route['inlet']}", {})[key] = behaviour(route)
    return answers


def differing(before: Answers, after: Answers) -> dict[str, set[Row]]:
    return {lane: {row for row, answer in rows.items() if before[lane][row] != answer}
            for lane, rows in after.items() if lane in before}


def rows_where(condition: str | None, signals: list[str], rows: set[Row]) -> set[Row]:
    if condition is None:
        return rows
    expression = read_expression(condition)
    return {row for row in rows if evaluate(expression, dict(zip(signals, row)))}


def put_row(command: str, signals: list[str]) -> Row:
    """The combination that a replay command puts; levers of random designs start off."""
    said = re.search(r'--when "([^"]*)"', command)
    settings = dict(part.split("=") for part in said.group(1).split(", ")) if said else {}
    return tuple(settings.get(name) == "on" for name in signals)


def remembers(leat: Leat, path: Path) -> bool:
    """Whether what the water remembers of earlier combinations changes any route."""
    return leat.table(path)["junctions"] != leat.table(path, is_fresh=True)["junctions"]


def compare_pair(leat: Leat, before: Path, after: Path, where: str) -> str:
    was, now = (read_design(leat.resolve(path))[0] for path in (before, after))
    if was.memory or now.memory or remembers(leat, before) or remembers(leat, after):
        return "remembering"
    expect_equal(now.inputs, was.inputs, f"{where}: signals")
    told = leat.printed("leat-comparison", "compare", str(before), str(after), "--as", "json")["junctions"][0]
    expected = differing(answers_of(was, was.inputs), answers_of(now, was.inputs))
    every = {row for rows in answers_of(now, was.inputs).values() for row in rows}
    found: dict[str, set[Row]] = {}
    for entry in told["differences"]:
        if entry["topic"] != "route":
            continue
        lane = f"{entry['body']} from {entry['name']}"
        rows = rows_where(entry["condition"], was.inputs, every)
        for command in entry["replay"]:
            if put_row(command, was.inputs) not in rows & expected[lane]:
                raise Difference(f"{where}: {command} shows no difference of the {lane}")
        found.setdefault(lane, set()).update(rows)
    for lane, rows in expected.items():
        expect_equal(sorted(found.get(lane, set())), sorted(rows), f"{where}: rows in which the {lane} differs")
    if not told["proved"]:
        raise Difference(f"{where}: nothing remembers, but the comparison is not proved")
    return "different" if any(expected.values()) else "the same"


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    counts: Counter[str] = Counter()
    for seed in range(given.seed, given.seed + given.count):
        drawing = random_design(seed)
        before = drawn_case(folder, drawing).path
        after = drawn_case(folder, mutated(drawing, Random(seed))).path
        counts[compare_pair(leat, before, after, f"{before.name} and {after.name}")] += 1
        itself = leat.printed("leat-comparison", "compare", str(before), str(before), "--as", "json")
        expect_equal(itself["junctions"][0]["differences"], [], f"{before.name} and itself")
        before.unlink()
        after.unlink()
    if not counts["different"]:
        raise Difference("no mutant of all differs: the test tries nothing")
    return f"comparisons agree: {', '.join(f'{n} {what}' for what, n in sorted(counts.items()))}"


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 500), compare))
