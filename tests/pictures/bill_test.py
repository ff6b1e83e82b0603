"""Bills of the examples, counted again by a count of our own from `leat resolve`.

    /usr/bin/python3 bill_test.py --leat build/leat

- the cells that are needed, by material and level, and those around the drawing;
- the CSV, read by Python's csv module, says the same as the JSON;
- the pools of the building steps hold the water that `leat show` tells as built, each cell once, with its
  sources, and what holds it: every cell beside or below that water may not enter, but switched ones;
- each pool comes after its own levels, and the lists of sources are complete.
"""
from __future__ import annotations

import argparse
import csv
import io
import json
import os
import subprocess
import sys
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SIDES = [(1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1)]
HOLDING = [side for side in SIDES if side != (0, 0, 1)]

faults: list[str] = []


def check(holds: bool, what: str) -> None:
    if not holds:
        faults.append(what)


def run(leat: str, *arguments: str) -> str:
    done = subprocess.run([leat, *arguments], cwd=ROOT, capture_output=True, timeout=120, check=True)
    return done.stdout.decode("utf-8")


class Drawing:
    def __init__(self, junction: dict):
        self.fills, self.cells = junction["fills"], junction["cells"]
        self.traits = {material["name"]: material for material in junction["materials"]}
        self.size = [junction["size"][axis] for axis in "xyz"]
        self.is_open_outside = junction["outside"] == "open"

    def is_inside(self, at: tuple) -> bool:
        return all(0 <= n < size for n, size in zip(at, self.size))

    def fill(self, at: tuple) -> dict:
        return self.fills[self.cells[at[2]][at[1]][at[0]]]

    def places(self):
        width, depth, height = self.size
        return ((x, y, z) for z in range(height) for y in range(depth) for x in range(width))

    def beside(self, at: tuple, sides: list) -> list:
        return [tuple(a + b for a, b in zip(at, side)) for side in sides]

    def is_free(self, at: tuple) -> bool:
        """Whether water or bodies can ever be there, or something switches it."""
        if not self.is_inside(at):
            return False
        fill = self.fill(at)
        material = self.traits[fill["powered"]]
        return fill["control"] is not None or material["water_enters"] or material["body_enters"]

    def is_needed(self, at: tuple) -> bool:
        return self.is_free(at) or any(self.is_free(n) for n in self.beside(at, SIDES))

    def around(self) -> int:
        if self.is_open_outside:
            return 0
        return len({n for at in self.places() if self.is_free(at) for n in self.beside(at, SIDES)
                    if not self.is_inside(n)})


def control_words(control: str | list) -> str:
    """`a`, `not a`, `a and b`: enough for the examples."""
    if isinstance(control, str):
        return control
    operator, *operands = control
    words = [control_words(operand) for operand in operands]
    return f"not {words[0]}" if operator == "not" else f" {operator} ".join(words)


def words_of(fill: dict) -> str:
    if fill["control"] is None:
        return fill["powered"]
    return f"{fill['powered']} when {control_words(fill['control'])} else {fill['unpowered']}"


def check_counts(name: str, drawing: Drawing, bill: dict) -> None:
    needed, drawn = Counter(), Counter()
    for at in drawing.places():
        drawn[words_of(drawing.fill(at))] += 1
        if drawing.is_needed(at):
            needed[words_of(drawing.fill(at)), at[2]] += 1
    told = {line["what"]: line for line in bill["lines"] if line["kind"] != "part"}
    check(set(told) == set(drawn), f"{name}: {sorted(told)} instead of {sorted(drawn)}")
    for what, line in told.items():
        levels = [needed[what, z] for z in range(drawing.size[2])]
        check(line["levels"] == levels, f"{name}: {what} {line['levels']} instead of {levels}")
        check(line["count"] == sum(levels), f"{name}: {what} in all")
        check(line["spare"] == drawn[what] - sum(levels), f"{name}: {what} besides")
    check(bill["around"] == drawing.around(), f"{name}: {bill['around']} around instead of {drawing.around()}")


def check_csv(leat: str, example: str, bills: list) -> None:
    rows = list(csv.DictReader(io.StringIO(run(leat, "bill", example, "--as", "csv"), newline="")))
    read = {(r["junction"], r["kind"], r["what"], r["level"]): int(r["count"]) for r in rows}
    expected = {}
    for bill in bills:
        for line in bill["lines"]:
            expected[bill["name"], line["kind"], line["what"], ""] = line["count"]
            for z, count in enumerate(line.get("levels", [])):
                if count:
                    expected[bill["name"], line["kind"], line["what"], str(z)] = count
        if bill["around"]:
            expected[bill["name"], "around", "rock", ""] = bill["around"]
    check(read == expected and len(rows) == len(read), f"{example}: the CSV says something else than the JSON")


def check_pools(name: str, drawing: Drawing, bill: dict, shown: dict) -> int:
    pools = [step for step in bill["steps"] if step["step"] == "water"]
    check(bill["each_source_tried"], f"{name}: not each source was tried")
    wet = [tuple(at) for pool in pools for at in pool["wet"]]
    check(len(wet) == len(set(wet)), f"{name}: pools overlap")
    as_built = {tuple(cell["at"]) for cell in shown["cells"]}
    check(as_built <= set(wet), f"{name}: wet and in no pool: {sorted(as_built - set(wet))[:3]}")
    sources = {at for at in as_built if drawing.fill(at)["control"] is None
               and drawing.traits[drawing.fill(at)["powered"]]["is_source"]}
    told = {tuple(at) for pool in pools for at in pool["sources"]}
    check(sources <= told, f"{name}: sources that are never placed: {sorted(sources - told)[:3]}")
    built = -1
    for step in bill["steps"]:
        if step["step"] == "level":
            built = step["level"]
        if step["step"] != "water":
            continue
        own = {tuple(at) for at in step["wet"]}
        check(step["after_level"] == built == max(z for _, _, z in own), f"{name}: water after level {built}")
        holders = {n for at in own for n in drawing.beside(at, HOLDING) if drawing.is_inside(n)
                   and drawing.fill(n)["control"] is None
                   and not drawing.traits[drawing.fill(n)["powered"]]["water_enters"]}
        plain = {tuple(at) for at in step["holders"] if drawing.fill(tuple(at))["control"] is None}
        check(plain == holders, f"{name}: holders {sorted(plain ^ holders)[:3]}")
    return len(pools)


def main() -> int:
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    leat = os.path.abspath(parser.parse_args().leat)
    junctions = pools = 0
    for path in sorted((ROOT / "examples").glob("*.leat")):
        example = f"examples/{path.name}"
        bills = json.loads(run(leat, "bill", example, "--as", "json"))["junctions"]
        designs = json.loads(run(leat, "resolve", example))["junctions"]
        fields = json.loads(run(leat, "show", example, "--as", "json"))["junctions"]
        check([b["name"] for b in bills] == [d["name"] for d in designs], f"{example}: names")
        check_csv(leat, example, bills)
        for bill, design, shown in zip(bills, designs, fields):
            drawing = Drawing(design)
            check_counts(f"{example} {bill['name']}", drawing, bill)
            pools += check_pools(f"{example} {bill['name']}", drawing, bill, shown)
            junctions += 1
    check(pools > 40, f"only {pools} pools looked at")
    print(*faults[:40], sep="\n", end="\n" if faults else "")
    print(f"{junctions} junctions, {pools} pools, {len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
