"""Compares works with a model that runs each of them as one drawing.

On random works: what `leat resolve` makes of places, turns, names and signals against works_laying.py; for
every entrance, body and combination `leat table --as json` against model_works.py (which combinations can
come about, which outlets are reached, certain, doubtful, split or lost, over all water that the combination
can come with); and clauses made with the model, in each combination one by one: `never trapped when ...`,
`never spilled when ...`, and random others, against `leat check --as json`, with the way told to see each
violation. Where docs/model.md lets routes be told wider than they are, the truth has to lie within what is
said, and what fails there may be left undecided; in the others, of which there have to be enough,
everything has to be exact.

Source: docs/language.md and docs/model.md, implemented a second time without shared code. The designs are
invented.

    /usr/bin/python3 compare_works.py --leat build/leat --count 180
"""
from __future__ import annotations

import argparse
import sys
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from random import Random
from typing import Any, Iterable

from compare_fields import sorted_ports
from drawing import expression_text
from expression_text import read_expression
from history_claims import STATES, Claims, Clause
from leat_program import Difference, Leat, expect_equal, options, read_design, run
from model_document import Assignment, Junction, evaluate
from model_histories import Key, Restless
from model_works import REASONS, Islands, TooLong, WorksHistories, leeway
from random_works import random_works
from works_drawing import Design
from works_laying import Flat

PROCESSES = 2
DECIDED = 0.5  # of all designs, at least
MOST_ROWS = 16  # of a design in which each clause is asked by itself
CLAUSES = 8  # about many combinations at once
# One design in so many, at least.
NUMEROUS = {
    "with several waters": 5, "with memory": 15, "with promises": 15, "that carry bodies": 2, "that switch": 2,
    "with joins": 2, "with joins in a circle": 10, "with joined islands": 5, "with a works in it": 8,
    "with a row": 12, "with ports that are the same cells": 15, "open outside": 20}


# -- the drawing -----------------------------------------------------------------------------------


def values_of(junction: Junction, expression: Any, rows: list[Assignment]) -> Any:
    """What it is in each combination."""
    if expression is None:
        return None
    return [evaluate(expression, junction.signal_values(row)) for row in rows]


def drawn_cells(junction: Junction, rows: list[Assignment]) -> dict[str, Any]:
    meanings = [[fill.powered._asdict(), fill.unpowered._asdict(), values_of(junction, fill.control, rows)]
                for fill in junction.fills]
    return {str([x, y, z]): meanings[fill] for z, level in enumerate(junction.cells)
            for y, row in enumerate(level) for x, fill in enumerate(row)}


def memory_meanings(junction: Junction, names: list[str], rows: list[Assignment]) -> dict[str, Any]:
    return {one.name: [one.kind, *(values_of(junction, e, rows) for e in (one.definition, one.reset))]
            for one in junction.memory if one.name in names}


def compare_drawing(read: Junction, flat: Flat, where: str) -> None:
    drawn = flat.junction
    expect_equal(list(read.size), list(drawn.size), f"{where} / size")
    expect_equal(read.is_outside_open, drawn.is_outside_open, f"{where} / outside open")
    others = dict.fromkeys(read.variables, False)
    rows = [{**others, **row} for row in drawn.assignments()]
    expect_equal(drawn_cells(read, rows), drawn_cells(drawn, rows), f"{where} / cells")
    expect_equal(sorted_ports(read.inlets), sorted_ports(flat.every_inlet), f"{where} / inlets")
    expect_equal(sorted_ports(read.outlets), sorted_ports(flat.every_outlet), f"{where} / outlets")
    expect_equal(sorted_ports(read.plates), sorted_ports(drawn.plates), f"{where} / plates")
    names = drawn.variables
    expect_equal(memory_meanings(read, names, rows), memory_meanings(drawn, names, rows), f"{where} / memory")
    for name in names:
        got = [read.kinds.get(name), name in read.starting_on]
        expect_equal(got, [drawn.kinds[name], name in drawn.starting_on], f"{where} / {name}")


# -- the table -------------------------------------------------------------------------------------


def is_within(told: dict[str, Any], true: dict[str, Any]) -> bool:
    """Whether what is true of a route is no more than what is told of it."""
    outlets = set(true["outlets"]) <= set(told["outlets"])
    return outlets and (told["verdict"] != "certain" or true["verdict"] == "certain")


def is_the_same(told: dict[str, Any], true: dict[str, Any]) -> bool:
    return (told["verdict"], sorted(told["outlets"])) == (true["verdict"], true["outlets"])


def compare_table(printed: dict[str, Any], histories: WorksHistories, is_exact: bool,
                  where: str) -> Counter[str]:
    """Of each entrance and body, one entry is true in each combination: the one that tells its route."""
    found: Counter[str] = Counter()
    signals = printed["signals"]
    extra = set(signals) - set(histories.junction.variables)
    expect_equal(sorted(extra), [], f"{where} / signals that nothing follows from")
    entries: dict[tuple[str, str], list[tuple[dict[str, Any], Any]]] = {}
    for entry in printed["conditions"]:
        told = (entry, read_expression(entry["condition"]))
        entries.setdefault((entry["inlet"], entry["body"]), []).append(told)
    lanes = {(inlet, body.name) for inlet in histories.junction.inlets for body in histories.junction.bodies}
    expect_equal(sorted(entries), sorted(lanes), f"{where} / entrances and bodies")
    rows_of: dict[int, set[tuple[bool, ...]]] = {}
    for key, waters in histories.waters_of_row.items():
        values = histories.junction.signal_values(histories.state(key))
        for route in histories.routes(waters):
            here = f"{where} / {route['body']} from {route['inlet']} when {histories.state(key)}"
            true = [entry for entry, condition in entries[route["inlet"], route["body"]]
                    if evaluate(condition, values)]
            expect_equal(len(true), 1, f"{here} / number of entries")
            rows_of.setdefault(id(true[0]), set()).add(tuple(values[name] for name in signals))
            found["routes"] += 1
            found["routes told wider"] += not is_the_same(true[0], route)
            if not (is_the_same if is_exact else is_within)(true[0], route):
                raise Difference(f"{here}: told {true[0]}, but it is {route}")
    if is_exact:
        for entry in printed["conditions"]:
            expect_equal(int(entry["combinations"]), len(rows_of.get(id(entry), ())),
                         f"{where} / {entry} / combinations")
    return found


# -- clauses ---------------------------------------------------------------------------------------


def row_clauses(histories: WorksHistories, dice: Random) -> list[Clause]:
    """In one combination after the other, for every entrance and body: is it trapped, does it spill?"""
    keys = sorted(histories.waters_of_row)
    clauses = []
    for key in dice.sample(keys, min(MOST_ROWS, len(keys))):
        terms = [name if value else ("not", name) for name, value in histories.state(key).items()]
        condition = " and ".join(map(expression_text, terms))
        for route in histories.routes(histories.waters_of_row[key]):
            for state in ("trapped", "spilled"):
                text = f"{route['body']} from {route['inlet']} never {state} when {condition}"
                clauses.append(row_clause(histories, text, key, route, state))
    return clauses


def row_clause(histories: WorksHistories, text: str, row: Key, route: dict[str, Any], state: str) -> Clause:
    def breaks(key: Key, _: int) -> bool:
        lane = (route["inlet"], route["body"])
        return key == row and any(STATES[state](one) for one in histories.routes(histories.waters_of_row[key])
                                  if (one["inlet"], one["body"]) == lane)

    return Clause(text, "violated" if STATES[state](route) else "holds", [], breaks)


def drawn_clauses(histories: WorksHistories, seed: int) -> list[Clause]:
    if not histories.junction.variables:
        return []
    claims = Claims(histories, seed)
    return [*row_clauses(histories, Random(seed)), *(claims.when() for _ in range(CLAUSES))]


def with_clauses(design: Design, clauses: list[Clause]) -> str:
    heading = f'expect "what the model says" of {design.main} {{'
    lines = ["", heading, *(f"  {clause.text}" for clause in clauses), "}"]
    return design.text() + "\n".join(lines) + "\n"


def compare_clauses(printed: dict[str, Any], clauses: list[Clause], histories: WorksHistories,
                    reasons: set[str], where: str) -> Counter[str]:
    judged = [j for j in printed["files"][0]["junctions"] if j["name"] == histories.junction.name]
    judged = judged[0]["expectations"]
    expect_equal(len(judged), len(clauses), f"{where} / number of expectations")
    found: Counter[str] = Counter()
    for one, clause in zip(judged, clauses):
        found[one["verdict"]] += 1
        if one["verdict"] == "undecided" and reasons:
            continue
        expect_equal(one["verdict"], clause.verdict, f"{where} / {clause.text}")
        if clause.verdict == "violated":
            expect_shown(one, clause, histories, f"{where} / {clause.text}")
    return found


def expect_shown(one: dict[str, Any], clause: Clause, histories: WorksHistories, where: str) -> None:
    """The example is a combination in which it is violated, and the way told leads there."""
    keys = [key for key in histories.waters_of_row
            if {**histories.state(key), **one["example"]} == histories.state(key) and clause.breaks(key, 0)]
    if not keys:
        raise Difference(f"{where}: it is not violated in its example {one['example']}")
    if one["way"] is not None:
        walked = histories.walk(one["way"])
        if walked is None or not clause.breaks(histories.key(walked.state), walked.water):
            raise Difference(f"{where}: it is not violated after {one['way']}")


# -- a design --------------------------------------------------------------------------------------


def kinds_of(design: Design, flat: Flat, histories: WorksHistories, reasons: set[str]) -> Counter[str]:
    routes = [histories.routes(waters) for waters in histories.waters_of_row.values()]
    is_remembering = any(len(waters) > 1 for waters in histories.waters_of_row.values())
    islands = Islands(histories)
    numbers = range(len(islands.cells))
    return Counter({
        "designs": 1,
        "decided": not reasons,
        "with several waters": is_remembering,
        "with several waters, decided": is_remembering and not reasons,
        "with memory": bool(flat.junction.memory),
        "with promises": bool(design.nevers),
        "that carry bodies": any(route["outlets"] for row in routes for route in row),
        "that switch": any(row != routes[0] for row in routes),
        "with joins": bool(flat.onward),
        "with joins in a circle": any(map(islands.leads_back, numbers)),
        "with joined islands": any(len({flat.piece_at.get(at) for at in cells}) > 1 for cells in islands.cells),
        "with ports that are the same cells": flat.walked_through > 0,
        "with a works in it": len(design.works) > 1,
        "with a row": any(place.count for place in design.works[design.main].places),
        "open outside": flat.junction.is_outside_open,
    })


def compare_design(leat: Leat, seed: int, folder: Path) -> Counter[str]:
    design, flat = random_works(seed)
    try:
        histories = WorksHistories(flat)
        reasons = leeway(histories)
    except (Restless, TooLong) as error:
        return Counter({f"left out, {type(error).__name__}": 1})
    if histories.unquiet or histories.start is None:
        return Counter({"never quiet": 1})
    path = folder / f"works_seed_{seed}.leat"
    path.write_text(design.text(), encoding="utf-8")
    read = next(j for j in read_design(leat.resolve(path)) if j.name == design.main)
    compare_drawing(read, flat, f"{design.origin} / resolve")
    table = leat.printed("leat-table", "table", str(path), "--junction", design.main, "--as", "json")
    found = kinds_of(design, flat, histories, reasons)
    found += compare_table(table["junctions"][0], histories, not reasons, f"{design.origin} / table")
    clauses = drawn_clauses(histories, seed)
    if not clauses:
        return found + Counter(reasons)
    path.write_text(with_clauses(design, clauses), encoding="utf-8")
    found += compare_clauses(leat.check(path), clauses, histories, reasons, f"{design.origin} / check")
    return found + Counter(reasons)


def compare_designs(leat: Leat, folder: Path, seeds: Iterable[int]) -> Counter[str]:
    found: Counter[str] = Counter()
    for seed in seeds:
        found += compare_design(leat, seed, folder)
    return found


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    last = given.seed + given.count
    with ProcessPoolExecutor(PROCESSES) as pool:
        seeds = [range(given.seed + first, last, PROCESSES) for first in range(PROCESSES)]
        shares = [pool.submit(compare_designs, leat, folder, share) for share in seeds]
        found = sum((share.result() for share in shares), Counter())
    expect_enough(found)
    return told(found)


def expect_enough(found: Counter[str]) -> None:
    if found["decided"] < DECIDED * found["designs"]:
        raise Difference(f"only {found['decided']} of {found['designs']} designs have to be exact")
    for kind, among in NUMEROUS.items():
        if found[kind] < found["designs"] // among:
            raise Difference(f"only {found[kind]} of {found['designs']} designs {kind}: this shows too little")


def told(found: Counter[str]) -> str:
    kinds = [f"{count} {kind}" for kind, count in found.items() if kind in NUMEROUS]
    reasons = [f"{count} {kind}" for kind, count in found.items() if kind in REASONS]
    left_out = [f"{count} {kind}" for kind, count in found.items() if kind.startswith("left out")]
    verdicts = [f"{found[name]} {name}" for name in ("holds", "violated", "empty", "undecided")]
    return (f"works agree: {found['designs']} designs ({', '.join(kinds)}), {found['decided']} of them exact, "
            f"{found['with several waters, decided']} of these with several waters; the others may be told wider "
            f"({', '.join(reasons)}), {found['routes told wider']} of {found['routes']} routes are; clauses: "
            f"{', '.join(verdicts)}; {', '.join(left_out) or 'nothing left out'}")


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 180), compare))
