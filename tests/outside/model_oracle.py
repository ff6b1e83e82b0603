"""A second, independent implementation of docs/model.md, sections 1 to 3 and its appendix.

Slow and literal on purpose: it reads the resolved design (`leat resolve FILE`) and computes again every
settled field (`leat show`), every route (`leat table --full`) and every position and move (`leat follow`).
It shares no code with the program.

    /usr/bin/python3 model_oracle.py field DESIGN.json a=1,b=0
    /usr/bin/python3 model_oracle.py table DESIGN.json
    /usr/bin/python3 model_oracle.py trail DESIGN.json a=1,b=0

Where the model's text is silent, these are the project's choices:
 1. Outside `rock`: the cells around the drawing are rock (they carry, and bear sources above them).
    Outside `open`: they are open, never wet, carry nothing, and have a hole below them, so D of an
    outside side neighbour is 0.
 2. Water spills from a wet cell whose lower neighbour is outside, and from a wet cell of strength at
    least 2 that offers an outside side (water of strength 1 enters no further cell, so none leaves).
 3. A body has left once its feet cell p (lowest north-west corner) is outside; that ends the trip.
    Such ends are not listed as trapped; positions from which only they can be reached are.
 4. A body starts at every inlet cell, as p, where it fits, with no side and nothing fallen. Several
    starts: R is the union. No start: lost, with no positions.
 5. An outlet is reached when p is one of its cells.
 6. Sinking into a cell needs room there; a stop on the way down ends the sinking.
 7. Footprint 2: 'feet wet', 'the cell at p+h wet' and 'a cell below its feet wet' mean any column.
 8. A current of zero pushes nothing; its unit vector is zero.
 9. Rule 5 of the appendix replaces rule 3's rise and climb only for a body in water; a body above the
    water falls by rule 1, sinking included.
10. `practice`: the 8 of a current over an edge is source_strength; a flow is 1..source_strength-1.
    drift_after stands for the '2' of drift and of forgetting; the depth of a sink hangs on sink_cells
    alone: min(m-1, sink_cells).
11. The second target of rule 1 is called drift only where it is dry; into water both are falls.
12. Verdict: lost without outlet; split with more than one; certain when nothing is trapped or spilled
    and no reached position has moves that are all unsure; else doubtful.
"""
from __future__ import annotations

import json
import sys
from collections import deque
from dataclasses import dataclass
from typing import Any

from model_body import BodyRules, Move, Position
from model_document import SIDE_NAMES, Assignment, Body, Junction, Place, drawing_order, junctions
from model_water import Field, WaterRules


@dataclass(frozen=True)
class Scene:
    """One junction under one assignment, its water settled from dry."""

    junction: Junction
    assignment: Assignment
    water: WaterRules
    field: Field

    @staticmethod
    def of(junction: Junction, assignment: Assignment) -> "Scene":
        water = WaterRules(junction.arrangement(assignment), junction.practice)
        return Scene(junction, assignment, water, water.settled())

    def body_rules(self, body: Body) -> BodyRules:
        return BodyRules(self.junction, self.water.arrangement, self.water, self.field, body)


@dataclass(frozen=True)
class Route:
    """Everything that can happen to one body from one inlet in one scene."""

    inlet: str
    rules: BodyRules
    starts: list[Position]
    moves: dict[Position, list[Move]]
    saved: set[Position]  # B: an outlet can be reached

    @property
    def outlets(self) -> list[str]:
        reached = {self.rules.outlet(p) for p in self.moves} - {None}
        return [name for name in dict.fromkeys(self.rules.outlet_at.values()) if name in reached]

    @property
    def trapped(self) -> list[Place]:
        lost = {p.at for p in self.moves if self.is_trapped(p)}
        return sorted(lost, key=drawing_order)

    def is_trapped(self, position: Position) -> bool:
        return position not in self.saved and not self.rules.has_left(position)

    @property
    def does_spill(self) -> bool:
        return any(self.rules.has_left(p) for p in self.moves)

    @property
    def is_unsure(self) -> bool:
        return any(ms and not any(m.is_sure for m in ms) for ms in self.moves.values())

    @property
    def verdict(self) -> str:
        if len(self.outlets) != 1:
            return "split" if self.outlets else "lost"
        is_clean = not self.trapped and not self.does_spill and not self.is_unsure
        return "certain" if is_clean else "doubtful"


def route(scene: Scene, inlet: str, body: Body) -> Route:
    return followed(scene.junction, inlet, scene.body_rules(body))


def followed(junction: Junction, inlet: str, rules: BodyRules) -> Route:
    starts = [Position(cell) for cell in junction.inlets[inlet] if rules.fits(cell)]
    moves: dict[Position, list[Move]] = {}
    waiting = deque(starts)
    while waiting:
        position = waiting.popleft()
        if position not in moves:
            moves[position] = rules.moves(position)
            waiting.extend(move.to for move in moves[position])
    return Route(inlet, rules, starts, moves, saved_positions(rules, moves))


def saved_positions(rules: BodyRules, moves: dict[Position, list[Move]]) -> set[Position]:
    comes_from: dict[Position, list[Position]] = {position: [] for position in moves}
    for position, found in moves.items():
        for move in found:
            comes_from[move.to].append(position)
    saved = {position for position in moves if rules.outlet(position) is not None}
    waiting = deque(saved)
    while waiting:
        for position in comes_from[waiting.popleft()]:
            if position not in saved:
                saved.add(position)
                waiting.append(position)
    return saved


# -- the documents ---------------------------------------------------------------------------------


def document(kind: str, listed: list[dict[str, Any]]) -> dict[str, Any]:
    return {"format": kind, "version": 1, "junctions": listed}


def field_of(scene: Scene) -> dict[str, Any]:
    wet = sorted(scene.field, key=drawing_order)
    cells = [
        {
            "at": list(place),
            "strength": scene.field[place].strength,
            "falling": scene.field[place].is_falling,
            "source": scene.field[place].is_source,
            "current": list(scene.water.current(scene.field, place)),
        }
        for place in wet
    ]
    spills = [list(place) for place in wet if scene.water.spills(scene.field, place)]
    return {
        "name": scene.junction.name,
        "assignment": scene.assignment,
        "done": [],
        "cells": cells,
        "spills": spills,
    }


def route_of(found: Route) -> dict[str, Any]:
    return {
        "inlet": found.inlet,
        "body": found.rules.body.name,
        "verdict": found.verdict,
        "outlets": found.outlets,
        "trapped": [list(place) for place in found.trapped],
        "spills": found.does_spill,
        "unsure": found.is_unsure,
    }


def table_of(junction: Junction) -> dict[str, Any]:
    rows = []
    for assignment in junction.assignments():
        scene = Scene.of(junction, assignment)
        routes = [
            route_of(route(scene, inlet, body))
            for inlet in junction.inlets
            for body in junction.bodies
        ]
        rows.append({"assignment": assignment, "routes": routes})
    return {"name": junction.name, "signals": junction.inputs, "rows": rows}


def trail_of(found: Route, name: str, assignment: Assignment) -> dict[str, Any]:
    """Positions and moves; components and dominators are left to the graph library's check."""
    index = {position: i for i, position in enumerate(found.moves)}
    positions = [
        {
            "at": list(p.at),
            "side": "none" if p.side is None else SIDE_NAMES[p.side],
            "fallen": p.fallen,
            "end": None if found.moves[p] else found.rules.rest(p),
            "outlet": found.rules.outlet(p),
            "trapped": found.is_trapped(p),
        }
        for p in index
    ]
    moves = [
        {"from": index[p], "to": index[m.to], "rule": m.rule, "sure": m.is_sure}
        for p, listed in found.moves.items()
        for m in listed
    ]
    return {
        "name": name,
        "inlet": found.inlet,
        "body": found.rules.body.name,
        "assignment": assignment,
        "done": [],
        "positions": positions,
        "moves": moves,
        "starts": [index[p] for p in found.starts],
        "paces": [],  # the model counts no time
        "arrivals": [],
    }


def parse_assignment(text: str) -> Assignment:
    pairs = [pair.split("=") for pair in text.split(",") if pair]
    return {name.strip(): value.strip() == "1" for name, value in pairs}


def main(arguments: list[str]) -> int:
    if len(arguments) < 2 or arguments[0] not in ("field", "table", "trail"):
        print(__doc__, file=sys.stderr)
        return 2
    kind, path = arguments[:2]
    with open(path, encoding="utf-8") as file:
        read = junctions(json.load(file))
    assignment = parse_assignment(arguments[2] if len(arguments) > 2 else "")
    if kind == "table":
        listed = [table_of(junction) for junction in read]
    elif kind == "field":
        listed = [field_of(Scene.of(junction, assignment)) for junction in read]
    else:
        scenes = [Scene.of(junction, assignment) for junction in read]
        listed = [
            trail_of(route(scene, inlet, body), scene.junction.name, assignment)
            for scene in scenes
            for inlet in scene.junction.inlets
            for body in scene.junction.bodies
        ]
    json.dump(document("leat-" + kind, listed), sys.stdout, indent=1)
    print()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
