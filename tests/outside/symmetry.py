"""Turns and mirrors: the answer turns with the design.

The water and the bodies of docs/model.md know no compass, so each of the 8 turns and mirrors of a random
design must give the same fields, currents and routes, turned. A body of footprint 2 is named by its
north-west corner, which a turn hands to another cell: for it the ports are moved to that cell, and
designs whose ports cannot be moved (or whose outside is open, where a body has left once its corner has)
are judged for the other bodies only.

Source: the symmetry group of the square (any textbook of group theory); the program is compared with itself.

    /usr/bin/python3 symmetry.py --leat build/leat --count 60
"""
from __future__ import annotations

import argparse
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any, Optional

from drawing import OPEN, SIGN, WATER, Drawing, plain, turned_place, turned_vector
from leat_program import Leat, assignments_of, drawn_case, expect_equal, options, read_design, run
from model_document import Place, drawing_order
from random_designs import random_design

TURNS = range(1, 8)


def turned_cells(places: list[list[int]], size: Place, turn: int, footprint: int = 1) -> list[list[int]]:
    turned = [turned_place((x, y, z), size, turn, footprint) for x, y, z in places]
    return [list(place) for place in sorted(turned, key=drawing_order)]


def turned_field(field: dict[str, Any], size: Place, turn: int) -> dict[str, Any]:
    cells = {}
    for cell in field["cells"]:
        at = turned_place((cell["at"][0], cell["at"][1], cell["at"][2]), size, turn)
        east, south = cell["current"]
        cells[str(list(at))] = {**cell, "at": list(at), "current": list(turned_vector(east, south, turn))}
    return {"cells": cells, "spills": turned_cells(field["spills"], size, turn)}


def turned_table(table: dict[str, Any], drawing: Drawing, turn: int, footprint: int) -> list[dict[str, Any]]:
    """The routes of the bodies with that footprint, their places turned."""
    wide = {body.name for body in drawing.bodies if body.footprint == footprint}
    return [
        {
            **route,
            "assignment": row["assignment"],
            "outlets": sorted(route["outlets"]),
            "trapped": turned_cells(route["trapped"], drawing.size, turn, footprint),
        }
        for row in table["rows"]
        for route in sorted(row["routes"], key=lambda r: (r["inlet"], r["body"]))
        if route["body"] in wide
    ]


def wide_pair(drawing: Drawing, turn: int) -> Optional[tuple[Drawing, Drawing]]:
    """The design and its turn for footprint 2: ports go to the body's new north-west corner.

    Port cells that cannot go there are left out of both; None where a port would lose its last cell.
    """
    turned = drawing.turned(turn)
    free = [plain(material) for material in (OPEN, WATER, SIGN)]
    kept = {}
    for at, port in drawing.ports.items():
        there = turned_place(at, drawing.size, turn, 2)
        if turned.is_inside(there) and turned.fill(there) in free:
            kept[at] = port
    if set(kept.values()) != set(drawing.ports.values()) or drawing.outside == "open":
        return None
    moved = {turned_place(at, drawing.size, turn, 2): port for at, port in kept.items()}
    return (replace(drawing, ports=kept, origin=f"{drawing.origin} wide {turn}"),
            replace(turned, ports=moved, origin=f"{turned.origin} wide {turn}"))


class Pair:
    """A design and one of its turns."""

    def __init__(self, leat: Leat, folder: Path, drawing: Drawing, turned: Drawing, turn: int) -> None:
        self.leat, self.drawing, self.turn = leat, drawing, turn
        self.one = drawn_case(folder, drawing)
        self.other = drawn_case(folder, turned)
        self.where = f"{drawing.origin}, turn {turn}"

    def compare_fields(self) -> int:
        count = 0
        for assignment in assignments_of(read_design(self.drawing.document())):
            one = self.leat.show(self.one.path, assignment)["junctions"][0]
            other = self.leat.show(self.other.path, assignment)["junctions"][0]
            got = turned_field(other, self.other_size(), 0)
            expected = turned_field(one, self.drawing.size, self.turn)
            expect_equal(got, expected, f"{self.where} when {assignment}")
            count += 1
        return count

    def compare_tables(self, footprint: int) -> int:
        one = self.leat.table(self.one.path)["junctions"][0]
        other = self.leat.table(self.other.path)["junctions"][0]
        got = turned_table(other, self.drawing, 0, footprint)
        expected = turned_table(one, self.drawing, self.turn, footprint)
        expect_equal(got, expected, f"{self.where}, footprint {footprint}")
        return len(expected)

    def other_size(self) -> Place:
        assert self.other.drawing is not None
        return self.other.drawing.size


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    fields, routes, wide_routes = 0, 0, 0
    for seed in range(given.seed, given.seed + given.count):
        drawing = random_design(seed)
        for turn in TURNS:
            pair = Pair(leat, folder, drawing, drawing.turned(turn), turn)
            fields += pair.compare_fields()
            routes += pair.compare_tables(1)
            wide = wide_pair(drawing, turn)
            if wide is not None and any(body.footprint == 2 for body in drawing.bodies):
                wide_routes += Pair(leat, folder, *wide, turn).compare_tables(2)
    return (f"turns agree: {given.count} random designs under {len(TURNS)} turns and mirrors, "
            f"{fields} fields, {routes} routes, {wide_routes} routes of footprint 2")


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 25), compare))
