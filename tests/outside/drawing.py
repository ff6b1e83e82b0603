"""A design as a value: what the generators make, written out as `.leat` text, turned and mirrored.

A Drawing also gives the `leat-design` document that it should resolve to, so that reading, checking and
lowering of the program are compared too.
"""
from __future__ import annotations

import json
import string
from dataclasses import dataclass, field, replace
from typing import Any, NamedTuple, Optional

from model_document import Place
from netlist import Signal

ROCK, OPEN, WATER, SIGN, PLATE = "rock", "open", "water", "sign", "plate"

BUILT_IN_TRAITS: dict[str, tuple[str, ...]] = {
    "rock": ("carries", "bears_sources"),
    "open": ("water_enters", "body_enters", "shows_slope"),
    "water": ("is_source", "water_enters", "body_enters", "shows_slope"),
    "sign": ("body_enters", "bears_sources"),
    "plate": ("body_enters", "is_plate"),
}
TRAIT_WORDS = {
    "water_enters": "passes water",
    "body_enters": "passes bodies",
    "carries": "carries",
    "bears_sources": "bears sources",
    "shows_slope": "shows slope",
    "is_source": "is source",
}
TRAITS = ("is_source", "water_enters", "body_enters", "carries", "bears_sources", "shows_slope", "is_plate")
PRACTICE = {
    "source_strength": 8, "source_makers": 2, "eager_makers": 3, "hole_search": 4, "step_ticks": 5,
    "falling_slope": 37, "drift_after": 2, "sink_cells": 3, "longest_drop": 3, "cushion": 2,
    "cushion_advised": 3, "pit_width": 2, "head_run": 2, "lift_sources": 1, "edge_drop": 2,
    "swimmer_pool": 16, "ticks_per_second": 20, "gravity": 80, "air_drag": 980, "water_drag": 800,
    "water_gravity": 20, "upward_stroke": 40, "stroke_chance": 800, "water_push": 14,
    "body_width": 600, "body_height": 1950,
}


class Fill(NamedTuple):
    powered: str
    unpowered: str
    control: Any = None


class Port(NamedTuple):
    role: str  # "inlet", "outlet" or "plate"
    name: str


class BodyLine(NamedTuple):
    name: str
    footprint: int
    height: int
    floats: bool


def plain(material: str) -> Fill:
    return Fill(material, material)


@dataclass
class Drawing:
    """One junction. Cells that are not named are rock."""

    size: Place
    origin: str  # how to draw it again: "KIND seed N turn T"
    name: str = "yard_turn"
    outside: str = "rock"
    levers: list[str] = field(default_factory=list)
    wires: dict[str, Any] = field(default_factory=dict)
    more_signals: list[Signal] = field(default_factory=list)  # all but levers that start off, and wires
    materials: dict[str, tuple[str, ...]] = field(default_factory=dict)
    cells: dict[Place, Fill] = field(default_factory=dict)
    ports: dict[Place, Port] = field(default_factory=dict)
    bodies: list[BodyLine] = field(default_factory=list)
    practice: dict[str, int] = field(default_factory=dict)

    def fill(self, place: Place) -> Fill:
        return self.cells.get(place, plain(ROCK))

    def is_inside(self, place: Place) -> bool:
        return all(0 <= at < most for at, most in zip(place, self.size))

    def places(self) -> list[Place]:
        width, depth, height = self.size
        return [(x, y, z) for z in range(height) for y in range(depth) for x in range(width)]

    # -- turned and mirrored ---------------------------------------------------------------------

    def turned(self, turn: int) -> "Drawing":
        """The same design seen after one of the 8 turns and mirrors (0 is the design itself)."""
        width, depth, height = self.size
        size = (depth, width, height) if turn & 4 else (width, depth, height)
        return replace(
            self,
            size=size,
            origin=self.origin.rsplit(" ", 1)[0] + f" {turn}",
            cells={turned_place(at, self.size, turn): f for at, f in self.cells.items()},
            ports={turned_place(at, self.size, turn): p for at, p in self.ports.items()},
        )

    # -- the document ----------------------------------------------------------------------------

    def document(self) -> dict[str, Any]:
        """As `leat resolve` should print it; the numbering of fills is ours."""
        fills = list(dict.fromkeys(self.fill(place) for place in self.places()))
        number = {fill: i for i, fill in enumerate(fills)}
        width, depth, height = self.size
        traits = {**BUILT_IN_TRAITS, **self.materials}
        junction = {
            "name": self.name,
            "title": "",
            "size": {"x": width, "y": depth, "z": height},
            "outside": self.outside,
            "practice": {**PRACTICE, **self.practice},
            "materials": [
                {"name": name, **{trait: trait in listed for trait in TRAITS}}
                for name, listed in traits.items()
            ],
            "signals": [
                *({"name": n, "kind": "lever", "starts_on": False} for n in self.levers),
                *({"name": n, "kind": "wire", "definition": e} for n, e in self.wires.items()),
                *map(signal_entry, self.more_signals),
            ],
            "fills": [{"mark": "?", **fill._asdict()} for fill in fills],
            "cells": [
                [[number[self.fill((x, y, z))] for x in range(width)] for y in range(depth)]
                for z in range(height)
            ],
            "inlets": self.port_list("inlet"),
            "outlets": self.port_list("outlet"),
            "plates": [
                {"signal": plate["name"], "cells": plate["cells"]} for plate in self.port_list("plate")
            ],
            "bodies": [
                {**body._asdict(), "breath": 300, "safe_fall": 3} for body in self.bodies
            ],
        }
        document = {"format": "leat-design", "version": 1, "junctions": [junction]}
        return json.loads(json.dumps(document))

    def port_list(self, role: str) -> list[dict[str, Any]]:
        names = dict.fromkeys(port.name for port in self.ports.values() if port.role == role)
        return [
            {"name": name, "cells": [list(at) for at in self.places() if self.ports.get(at) == (role, name)]}
            for name in sorted(names)
        ]

    # -- the text --------------------------------------------------------------------------------

    def text(self) -> str:
        marks = self.marks()
        lines = ["leat 1", f"# {self.origin}", ""]
        if self.levers or self.wires or self.more_signals:
            lines += ["signals {", *(f"  lever {name}" for name in self.levers)]
            lines += [f"  wire {name} = {expression_text(e)}" for name, e in self.wires.items()]
            lines += [f"  {signal.line()}" for signal in self.more_signals]
            lines += ["}", ""]
        if self.materials:
            lines += ["materials {", *(material_line(n, t) for n, t in self.materials.items()), "}", ""]
        lines += ["marks {", *(mark_line(glyph, *meaning) for meaning, glyph in marks.items()), "}", ""]
        lines += self.junction_lines(marks)
        lines += ["", *(body_line(body) for body in self.bodies)]
        if self.practice:
            lines += ["practice {", *(f"  {n} {value}" for n, value in self.practice.items()), "}"]
        return "\n".join(lines) + "\n"

    def junction_lines(self, marks: dict[tuple[Fill, Optional[Port]], str]) -> list[str]:
        lines = [f"junction {self.name} {{"]
        if self.outside == "open":
            lines += ["  outside open"]
        width, depth, height = self.size
        for z in range(height):
            lines += [f"  level {z} {{"]
            for y in range(depth):
                lines += ["    |" + "".join(marks[self.meaning((x, y, z))] for x in range(width)) + "|"]
            lines += ["  }"]
        return [*lines, "}"]

    def meaning(self, place: Place) -> tuple[Fill, Optional[Port]]:
        return (self.fill(place), self.ports.get(place))

    def marks(self) -> dict[tuple[Fill, Optional[Port]], str]:
        """A glyph for each meaning; ports in the order of their names, so that a turn keeps it."""
        meanings = dict.fromkeys(self.meaning(place) for place in self.places())
        ordered = sorted(meanings, key=lambda m: (m[1] is not None, repr(m[1]), repr(m[0])))
        glyphs = (string.ascii_uppercase + string.ascii_lowercase)[::-1]
        if len(ordered) > len(glyphs):
            raise ValueError("too many kinds of cell")
        return dict(zip(ordered, glyphs))


def turned_place(place: Place, size: Place, turn: int, footprint: int = 1) -> Place:
    """Bit 0 mirrors east-west, bit 1 north-south, bit 2 swaps x and y (after the mirrors).

    For a body of that footprint the lowest north-west corner is carried over to the new one.
    """
    x, y, z = place
    if turn & 1:
        x = size[0] - footprint - x
    if turn & 2:
        y = size[1] - footprint - y
    return (y, x, z) if turn & 4 else (x, y, z)


def turned_vector(east: int, south: int, turn: int) -> tuple[int, int]:
    x = -east if turn & 1 else east
    y = -south if turn & 2 else south
    return (y, x) if turn & 4 else (x, y)


def expression_text(expression: Any) -> str:
    if isinstance(expression, bool):
        return "on" if expression else "off"
    if isinstance(expression, str):
        return expression
    operator, *operands = expression
    if operator == "not":
        return f"not {bracketed(operands[0])}"
    return f" {operator} ".join(bracketed(operand) for operand in operands)


def bracketed(expression: Any) -> str:
    text = expression_text(expression)
    return f"({text})" if isinstance(expression, (list, tuple)) else text


def signal_entry(signal: Signal) -> dict[str, Any]:
    entry: dict[str, Any] = {"name": signal.name, "kind": signal.kind}
    if signal.kind != "wire":
        entry["starts_on"] = signal.starts_on
    if signal.kind in ("wire", "latch", "toggle", "delay"):
        entry["definition"] = signal.on
    if signal.kind == "latch":
        entry["reset"] = signal.off
    if signal.kind in ("button", "clock", "delay"):
        entry["ticks"] = signal.ticks
    return entry


def material_line(name: str, traits: tuple[str, ...]) -> str:
    return f"  {name} " + ", ".join(TRAIT_WORDS[trait] for trait in traits)


def fill_text(fill: Fill) -> str:
    if fill.control is None:
        return fill.powered
    return f"{fill.powered} when {expression_text(fill.control)} else {fill.unpowered}"


def mark_line(glyph: str, fill: Fill, port: Optional[Port]) -> str:
    if port is None:
        return f"  {glyph} {fill_text(fill)}"
    if port.role == "plate":
        return f"  {glyph} plate {port.name}"
    material = "" if fill == plain(OPEN) else f" in {fill_text(fill)}"
    return f"  {glyph} {port.role} {port.name}{material}"


def body_line(body: BodyLine) -> str:
    floats = "floats" if body.floats else "sinks"
    return f"body {body.name} {{ footprint {body.footprint}  height {body.height}  {floats} }}"
