"""Junctions drawn by hand for the self tests of the oracle."""
from __future__ import annotations

from typing import Any, Optional

from drawing import OPEN, ROCK, SIGN, WATER, BodyLine, Drawing, Fill, Port, plain
from model_document import Junction, Place, junctions
from model_oracle import Route, Scene, route

WALKER = BodyLine("walker", 1, 2, True)
MARKS: dict[str, Fill] = {"#": plain(ROCK), ".": plain(OPEN), "w": plain(WATER), "s": plain(SIGN)}
PORTS: dict[str, Port] = {
    "i": Port("inlet", "mill"), "k": Port("outlet", "kiln"), "q": Port("outlet", "press"),
}


def hand_drawn(*levels: str, marks: Optional[dict[str, Fill]] = None, **more: Any) -> Drawing:
    """Levels from the lowest up, rows parted by blanks. i k q are ports in open cells, I K Q in water."""
    rows = [level.split() for level in levels]
    drawing = Drawing((len(rows[0][0]), len(rows[0]), len(rows)), "hand seed 0 turn 0", **more)
    drawing.bodies = drawing.bodies or [WALKER]
    known = {**MARKS, **(marks or {})}
    for place in drawing.places():
        x, y, z = place
        glyph = rows[z][y][x]
        if glyph.lower() in PORTS and glyph not in known:
            drawing.ports[place] = PORTS[glyph.lower()]
            drawing.cells[place] = plain(WATER if glyph.isupper() else OPEN)
        else:
            drawing.cells[place] = known[glyph]
    return drawing


def junction_of(drawing: Drawing) -> Junction:
    return junctions(drawing.document())[0]


def scene_of(drawing: Drawing, **values: bool) -> Scene:
    return Scene.of(junction_of(drawing), values)


def strengths(drawing: Drawing, y: int, z: int, **values: bool) -> list[int]:
    """Strengths along one row, 0 where dry."""
    field = scene_of(drawing, **values).field
    row = [(x, y, z) for x in range(drawing.size[0])]
    return [field[place].strength if place in field else 0 for place in row]


def route_in(drawing: Drawing, **values: bool) -> Route:
    scene = scene_of(drawing, **values)
    return route(scene, "mill", scene.junction.bodies[0])


def moves_in(drawing: Drawing) -> dict[tuple[Place, Optional[Place], int], list[tuple[str, Place, bool]]]:
    """The route graph: position -> (rule, place, sure)."""
    return {
        (position.at, position.side, position.fallen): [(m.rule, m.to.at, m.is_sure) for m in found]
        for position, found in route_in(drawing).moves.items()
    }
