"""Compares resolved designs and settled water with the oracle.

On random designs and on every example: `leat resolve` against what was drawn, and `leat show --as json`
under every assignment against model_oracle.py (strength, falling, source, current, spills).

Source: docs/model.md, sections 1 to 3, implemented a second time without shared code.

    /usr/bin/python3 compare_fields.py --leat build/leat --count 200
"""
from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import Any

from drawing import Drawing
from leat_program import (Case, Leat, assignments_of, drawn_cases, example_cases, expect_equal,
                          is_remembering, options, read_design, run, same_junctions)
from model_document import Assignment, Junction
from model_oracle import Scene, field_of
from random_designs import random_design


def meaning(junction: Junction) -> dict[str, Any]:
    """What a junction says, free of how its document numbers and orders things."""
    combinations = list(junction.assignments())
    arrangements = [junction.arrangement(a) for a in combinations]
    cells = {
        str(list(place)): [a.material(place)._asdict() for a in arrangements]
        for place in arrangements[0].places()
    }
    return {
        "name": junction.name,
        "size": list(junction.size),
        "outside open": junction.is_outside_open,
        "practice": junction.practice,
        "inputs": junction.inputs,
        "wires": {
            name: [junction.signal_values(a)[name] for a in combinations] for name in junction.wires
        },
        "cells, by combination": cells,
        "memory": [memory._asdict() for memory in junction.memory],
        "as built": sorted(junction.starting_on),
        "plates": sorted_ports(junction.plates),
        "inlets": sorted_ports(junction.inlets),
        "outlets": sorted_ports(junction.outlets),
    }


def sorted_ports(ports: dict[str, list[Any]]) -> dict[str, list[Any]]:
    return {name: sorted(map(list, cells)) for name, cells in ports.items()}


def compare_with_drawing(read: list[Junction], drawing: Drawing) -> None:
    drawn = read_design(drawing.document())
    where = f"{drawing.origin}: resolved"
    for got, expected in zip(read, drawn):
        expect_equal(meaning(got), meaning(expected), where)
        bodies = {body.name: body for body in got.bodies}
        for body in expected.bodies:
            expect_equal(bodies.get(body.name), body, f"{where} / body {body.name}")
    expect_equal(len(read), len(drawn), f"{where}: number of junctions")


def compare_field(printed: dict[str, Any], junction: Junction, assignment: Assignment, label: str) -> int:
    own = {name: assignment[name] for name in junction.inputs}
    expected = field_of(Scene.of(junction, own))
    where = f"{label} / {junction.name} when {assignment}"
    for name, value in own.items():
        expect_equal(printed["assignment"].get(name), value, f"{where} / assignment / {name}")
    expect_equal(by_place(printed), by_place(expected), f"{where} / cells")
    expect_equal(printed["cells"], expected["cells"], f"{where} / order of cells")
    expect_equal(sorted(printed["spills"]), sorted(expected["spills"]), f"{where} / spills")
    return len(expected["cells"])


def by_place(field: dict[str, Any]) -> dict[str, Any]:
    return {str(cell["at"]): cell for cell in field["cells"]}


def compare_case(leat: Leat, case: Case) -> tuple[int, int]:
    """Numbers of fields and of wet cells compared."""
    read = read_design(leat.resolve(case.path))
    if case.drawing is not None:
        compare_with_drawing(read, case.drawing)
    fields, cells = 0, 0
    if is_remembering(read, case.label):
        return fields, cells
    for assignment in assignments_of(read):
        printed = leat.show(case.path, assignment)
        for one, junction in zip(same_junctions(printed, read, case.label), read):
            cells += compare_field(one, junction, assignment, case.label)
            fields += 1
    return fields, cells


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    designs, examples, fields, cells = 0, 0, 0, 0
    for case in [*drawn_cases(given, folder, random_design), *example_cases(given)]:
        more_fields, more_cells = compare_case(leat, case)
        fields, cells = fields + more_fields, cells + more_cells
        designs += case.drawing is not None
        examples += case.drawing is None
    return f"fields agree: {designs} random designs, {examples} examples, {fields} fields, {cells} wet cells"


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 150), compare))
