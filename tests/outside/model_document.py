"""Reading of one `leat-design` document (docs/schemas/leat-design.schema.json) for the oracle.

Only what docs/model.md calls the design: sizes, materials as bundles of traits (section 1), signals and
the expressions over them (section 4), ports, bodies and the practice numbers.
"""
from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import Any, Iterator, NamedTuple

Place = tuple[int, int, int]
Assignment = dict[str, bool]

EAST: Place = (1, 0, 0)
SOUTH: Place = (0, 1, 0)
WEST: Place = (-1, 0, 0)
NORTH: Place = (0, -1, 0)
UP: Place = (0, 0, 1)
DOWN: Place = (0, 0, -1)
SIDES: tuple[Place, ...] = (EAST, SOUTH, WEST, NORTH)
SIDE_NAMES: dict[Place, str] = {EAST: "east", SOUTH: "south", WEST: "west", NORTH: "north"}


def moved(place: Place, *steps: Place) -> Place:
    """The place after taking all the steps."""
    x, y, z = place
    for step in steps:
        x, y, z = x + step[0], y + step[1], z + step[2]
    return (x, y, z)


def drawing_order(place: Place) -> Place:
    """Sort key: ascending z, then y, then x."""
    return (place[2], place[1], place[0])


class Material(NamedTuple):
    name: str
    is_source: bool
    water_enters: bool
    body_enters: bool
    carries: bool
    bears_sources: bool
    shows_slope: bool
    is_plate: bool

    @property
    def water_may_enter(self) -> bool:
        """A placed source holds water already: the table of section 1 says 'is a source' there."""
        return self.water_enters or self.is_source


ROCK_OUTSIDE = Material("rock", False, False, False, True, True, False, False)
OPEN_OUTSIDE = Material("open", False, True, True, False, False, True, False)


class Body(NamedTuple):
    name: str
    footprint: int
    height: int
    floats: bool


INPUT_KINDS = ("lever", "button", "plate", "clock")
MEMORY_KINDS = ("latch", "toggle", "delay")


class Memory(NamedTuple):
    """A signal that keeps a value between events. `definition` sets, flips or feeds it."""

    name: str
    kind: str
    definition: Any
    reset: Any  # of a latch


class Fill(NamedTuple):
    powered: Material
    unpowered: Material
    control: Any


@dataclass(frozen=True)
class Arrangement:
    """Every cell's material under one assignment, and what lies outside."""

    size: Place
    material_of: dict[Place, Material]
    is_outside_open: bool

    def is_inside(self, place: Place) -> bool:
        return place in self.material_of

    def material(self, place: Place) -> Material:
        outside = OPEN_OUTSIDE if self.is_outside_open else ROCK_OUTSIDE
        return self.material_of.get(place, outside)

    def places(self) -> Iterator[Place]:
        return iter(self.material_of)


def evaluate(expression: Any, values: Assignment) -> bool:
    """An EXPR of the document under values for all signals it names."""
    if isinstance(expression, bool):
        return expression
    if isinstance(expression, str):
        return values[expression]
    operator, *operands = expression
    truths = [evaluate(operand, values) for operand in operands]
    if operator == "not":
        return not truths[0]
    if operator == "and":
        return all(truths)
    if operator == "or":
        return any(truths)
    if operator == "xor":
        return truths[0] != truths[1]
    raise ValueError(f"no such operator: {operator}")


class Junction:
    """One junction of the document."""

    def __init__(self, document: dict[str, Any]) -> None:
        self.name: str = document["name"]
        size = document["size"]
        self.size: Place = (size["x"], size["y"], size["z"])
        self.is_outside_open: bool = document["outside"] == "open"
        self.practice: dict[str, int] = document["practice"]
        materials = {m["name"]: Material(**m) for m in document["materials"]}
        self.fills = [
            Fill(materials[f["powered"]], materials[f["unpowered"]], f["control"])
            for f in document["fills"]
        ]
        self.cells: list[list[list[int]]] = document["cells"]
        signals = document["signals"]
        self.inputs: list[str] = [s["name"] for s in signals if s["kind"] in INPUT_KINDS]
        self.kinds: dict[str, str] = {s["name"]: s["kind"] for s in signals}
        self.starting_on: set[str] = {s["name"] for s in signals if s.get("starts_on", False)}
        self.memory: list[Memory] = [memory_of(s) for s in signals if s["kind"] in MEMORY_KINDS]
        self.wires: dict[str, Any] = {
            s["name"]: s["definition"] for s in signals if s["kind"] == "wire"
        }
        self.inlets = ports(document["inlets"])
        self.outlets = ports(document["outlets"])
        self.plates: dict[str, list[Place]] = {
            plate["signal"]: [(x, y, z) for x, y, z in plate["cells"]] for plate in document["plates"]
        }
        self.outlet_at: dict[Place, str] = {
            cell: name for name, cells in self.outlets.items() for cell in cells
        }
        self.bodies = [
            Body(b["name"], b["footprint"], b["height"], b["floats"]) for b in document["bodies"]
        ]

    @property
    def variables(self) -> list[str]:
        """Everything that does not follow from the rest: inputs, then memory."""
        return [*self.inputs, *(memory.name for memory in self.memory)]

    def assignments(self) -> Iterator[Assignment]:
        """All of them in binary order, the first input slowest; with memory, also those never reached."""
        for values in itertools.product((False, True), repeat=len(self.variables)):
            yield dict(zip(self.variables, values))

    def signal_values(self, assignment: Assignment) -> Assignment:
        """Inputs, memory and wires; a wire may use wires written after it."""
        values = {name: assignment[name] for name in self.variables}
        waiting = dict(self.wires)
        while waiting:
            ready = [n for n, e in waiting.items() if names_in(e) <= values.keys()]
            if not ready:
                raise ValueError(f"wires in a loop: {sorted(waiting)}")
            for name in ready:
                values[name] = evaluate(waiting.pop(name), values)
        return values

    def present(self, values: Assignment) -> tuple[Material, ...]:
        """The material of each fill under the values of all signals."""
        return tuple(
            f.powered if f.control is None or evaluate(f.control, values) else f.unpowered
            for f in self.fills
        )

    def arrangement(self, assignment: Assignment) -> Arrangement:
        present = self.present(self.signal_values(assignment))
        material_of = {
            (x, y, z): present[fill]
            for z, level in enumerate(self.cells)
            for y, row in enumerate(level)
            for x, fill in enumerate(row)
        }
        return Arrangement(self.size, material_of, self.is_outside_open)


def memory_of(signal: dict[str, Any]) -> Memory:
    return Memory(signal["name"], signal["kind"], signal["definition"], signal.get("reset", False))


def ports(listed: list[dict[str, Any]]) -> dict[str, list[Place]]:
    return {port["name"]: [(x, y, z) for x, y, z in port["cells"]] for port in listed}


def names_in(expression: Any) -> set[str]:
    if isinstance(expression, bool):
        return set()
    if isinstance(expression, str):
        return {expression}
    return set().union(*(names_in(operand) for operand in expression[1:]))


def junctions(document: dict[str, Any]) -> list[Junction]:
    if document["format"] != "leat-design" or document["version"] != 1:
        raise ValueError("not a leat-design document of version 1")
    return [Junction(junction) for junction in document["junctions"]]
