"""Water on floors without holes against distances of a graph library.

On a floor with no way down a cell's strength is 8 minus its distance to the nearest source, through cells
that water may enter, and at least 1; everything further is dry. The floors are drawn so that no source
forms (no enterable cell has two sources beside it).

Source: networkx.multi_source_dijkstra_path_length (https://networkx.org), as independent distance field.

    /usr/bin/python3 networkx_water.py --leat build/leat --count 60
"""
from __future__ import annotations

import argparse
import sys
from pathlib import Path
from random import Random
from typing import Any

import networkx

from drawing import OPEN, ROCK, SIGN, WATER, BodyLine, Drawing, Fill, Port, plain
from leat_program import Leat, assignments_of, drawn_cases, expect_equal, options, read_design, run
from model_document import SIDES, Assignment, Junction, Place, moved

FULL_STRENGTH = 8
FLOOR = 1


def draw_floor(seed: int) -> Drawing:
    """Level 0 rock, level 1 walls, signs, switched walls and sources, level 2 open."""
    dice = Random(seed)
    drawing = Drawing((dice.randint(3, 24), dice.randint(2, 24), 3), f"floor seed {seed} turn 0")
    width, depth, _ = drawing.size
    drawing.levers = ["amber", "birch"][: dice.randint(0, 2)]
    walls = dice.choice((0.0, 0.1, 0.25, 0.4))
    for x in range(width):
        for y in range(depth):
            drawing.cells[(x, y, FLOOR)] = floor_fill(dice, walls, drawing.levers)
            drawing.cells[(x, y, FLOOR + 1)] = plain(OPEN)
    for _ in range(dice.randint(1, 6)):
        at = (dice.randrange(width), dice.randrange(depth), FLOOR)
        if is_free_for_source(drawing, at):
            drawing.cells[at] = plain(WATER)
    drawing.ports = {(0, 0, FLOOR + 1): Port("inlet", "millhouse"),
                     (width - 1, depth - 1, FLOOR + 1): Port("outlet", "granary")}
    drawing.bodies = [BodyLine("walker", 1, 2, True)]
    return drawing


def floor_fill(dice: Random, walls: float, levers: list[str]) -> Fill:
    if dice.random() >= walls:
        return plain(OPEN)
    if levers and dice.random() < 0.4:
        return Fill(*dice.choice(((ROCK, OPEN), (OPEN, SIGN))), dice.choice(levers))
    return plain(dice.choice((ROCK, ROCK, SIGN)))


def is_free_for_source(drawing: Drawing, at: Place) -> bool:
    """No other source within two steps: then no cell has two of them beside it."""
    near = [moved(at, one) for one in SIDES] + [moved(at, one, other) for one in SIDES for other in SIDES]
    return all(drawing.fill(place) != plain(WATER) for place in near)


def expected_strengths(junction: Junction, assignment: Assignment) -> dict[Place, int]:
    arrangement = junction.arrangement(assignment)
    enterable = {p for p in arrangement.places() if p[2] == FLOOR and arrangement.material(p).water_may_enter}
    graph = networkx.Graph()
    graph.add_nodes_from(enterable)
    graph.add_edges_from(
        (p, moved(p, side)) for p in enterable for side in SIDES if moved(p, side) in enterable)
    sources = {p for p in enterable if arrangement.material(p).is_source}
    if not sources:
        return {}
    distances = networkx.multi_source_dijkstra_path_length(graph, sources)
    return {p: FULL_STRENGTH - d for p, d in distances.items() if d < FULL_STRENGTH}


def compare_floor(printed: dict[str, Any], junction: Junction, assignment: Assignment, where: str) -> int:
    expected = expected_strengths(junction, assignment)
    got = {str(cell["at"]): cell["strength"] for cell in printed["cells"]}
    expect_equal(got, {str(list(p)): strength for p, strength in expected.items()}, where)
    for cell in printed["cells"]:
        expect_equal(cell["falling"], False, f"{where} / {cell['at']} / falling")
        is_source = cell["strength"] == FULL_STRENGTH
        expect_equal(cell["source"], is_source, f"{where} / {cell['at']} / source")
    return len(expected)


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    fields, cells = 0, 0
    for case in drawn_cases(given, folder, draw_floor):
        assert case.drawing is not None
        read = read_design(case.drawing.document())
        for assignment in assignments_of(read):
            printed = leat.show(case.path, assignment)["junctions"][0]
            cells += compare_floor(printed, read[0], assignment, f"{case.label} when {assignment}")
            fields += 1
    return f"floors agree with networkx distances: {given.count} floors, {fields} fields, {cells} wet cells"


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 60), compare))
