"""Works laid out as one drawing, by rules of our own.

What docs/language.md says of works is done here a second time, cell by cell and name by name: turned and
mirrored drawings, places in places, numbers, signals that are a place's own, ports and joins. What comes out
is one flat junction, as if all had been drawn in one plan, and the joins that lead on from its outlets.
"""
from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any, Optional

from drawing import OPEN, ROCK, Drawing, Fill, plain
from model_document import Junction, Place, junctions, moved, names_in
from netlist import Signal
from works_drawing import Design, Placing, Works, all_joins


class Clash(Exception):
    """Two places draw different things in one cell, or outlets that cannot be there together."""


# -- signals that are a place's own ----------------------------------------------------------------


@dataclass
class Scope:
    """What names mean where something stands. What `own` holds is called by the path, the rest is the
    outer scope's."""

    path: str
    outer: Optional["Scope"]
    replaced: dict[str, Any]
    own: set[str]

    def home(self, name: str) -> "Scope":
        return self if self.outer is None or name in self.own else self.outer.home(name)

    def full_name(self, name: str) -> str:
        path = self.home(name).path
        return f"{path}.{name}" if path else name

    def full(self, expression: Any) -> Any:
        if expression is None or isinstance(expression, bool):
            return expression
        if isinstance(expression, str):
            return self.full_name(expression)
        operator, *operands = expression
        return (operator, *map(self.full, operands))


def looks_at(signal: Signal) -> set[str]:
    return names_in(signal.on) | names_in(signal.off)


def followers(signals: list[Signal], first: set[str]) -> set[str]:
    """These, and all signals that follow from one of them."""
    found = set(first)
    while True:
        more = {signal.name for signal in signals if looks_at(signal) & found} - found
        if not more:
            return found
        found |= more


def followed(signals: list[Signal], first: set[str]) -> set[str]:
    """These, and all signals that they follow from."""
    named = {signal.name: signal for signal in signals}
    found, waiting = set(first), list(first)
    while waiting:
        for name in looks_at(named[waiting.pop()]) - found:
            found.add(name)
            waiting.append(name)
    return found


# -- what stands where ----------------------------------------------------------------------------


@dataclass(eq=False)
class PlacedPort:
    role: str
    name: str
    piece: int  # of which junction that stands somewhere
    cells: list[Place]
    is_joined: bool = False


@dataclass
class Block:
    """Something laid out: cells, also those of rock, and the ports by all names they have here."""

    cells: dict[Place, Fill] = field(default_factory=dict)
    ports: dict[tuple[str, str], PlacedPort] = field(default_factory=dict)
    plates: dict[str, list[Place]] = field(default_factory=dict)
    piece_at: dict[Place, int] = field(default_factory=dict)  # which junction that stands somewhere
    joins: list[tuple[PlacedPort, PlacedPort]] = field(default_factory=list)

    def every_port(self) -> list[PlacedPort]:
        return list({id(port): port for port in self.ports.values()}.values())

    def bounds(self) -> tuple[Place, Place]:
        """The least place, and one past the greatest."""
        least = [min(at[axis] for at in self.cells) for axis in range(3)]
        most = [max(at[axis] for at in self.cells) + 1 for axis in range(3)]
        return (least[0], least[1], least[2]), (most[0], most[1], most[2])

    def carried(self, to: dict[Place, Place]) -> None:
        """Each cell goes to its new place; ports are the same ports, elsewhere."""
        self.cells = {to[at]: fill for at, fill in self.cells.items()}
        self.piece_at = {to[at]: piece for at, piece in self.piece_at.items()}
        self.plates = {name: [to[at] for at in cells] for name, cells in self.plates.items()}
        for port in self.every_port():
            port.cells = [to[at] for at in port.cells]

    def add(self, other: "Block", name: str) -> None:
        for at, fill in other.cells.items():
            if self.cells.setdefault(at, fill) != fill:
                raise Clash(f"{name} at {at}")
        self.piece_at.update(other.piece_at)
        for (role, port_name), port in other.ports.items():
            self.ports[role, f"{name}.{port_name}"] = port
        for signal, cells in other.plates.items():
            self.plates[signal] = [*self.plates.get(signal, []), *cells]
        self.joins += other.joins


def standing(place: Place, size: Place, turn: str, is_mirrored: bool) -> Place:
    """Where a cell of a drawing of that size comes to lie: west and east change places, then the turn, as
    seen from above, with x to the east and y to the south."""
    x, y, z = place
    width, depth, _ = size
    if is_mirrored:
        x = width - 1 - x
    if turn == "turned left":
        return (y, width - 1 - x, z)
    if turn == "turned right":
        return (depth - 1 - y, x, z)
    if turn == "turned about":
        return (width - 1 - x, depth - 1 - y, z)
    return (x, y, z)


@dataclass
class Flat:
    """The works as one junction. Bodies enter by the junction's inlets and have arrived at its outlets;
    `onward` leads from each cell of a joined outlet to the cells of the inlet it is joined to."""

    junction: Junction
    document: dict[str, Any]
    onward: dict[Place, list[Place]]
    nevers: list[Any]
    every_outlet: dict[str, list[Place]]
    every_inlet: dict[str, list[Place]]
    piece_at: dict[Place, int]  # which of the junctions has drawn a cell
    shift: Place  # what 0 0 0 of the works became
    walked_through: int  # ports that bodies walk through


def flat_of(design: Design, works: str = "") -> Flat:
    """The design's works, or one that is placed in it."""
    return Laying(design, works or design.main).flat()


class Laying:
    """Lays out one works."""

    def __init__(self, design: Design, main: str) -> None:
        self.design = design
        self.main = main
        self.file = Scope("", None, {}, set())
        self.scopes = {"": self.file}
        self.pieces = 0

    def junction(self, drawing: Drawing, scope: Scope) -> Block:
        block = Block()
        for at in drawing.places():
            fill = drawing.fill(at)
            block.cells[at] = fill._replace(control=scope.full(fill.control))
            block.piece_at[at] = self.pieces
        for at, port in drawing.ports.items():
            if port.role == "plate":
                block.plates.setdefault(scope.full_name(port.name), []).append(at)
            else:
                key = (port.role, port.name)
                new = PlacedPort(port.role, f"{scope.path}.{port.name}", self.pieces, [])
                block.ports.setdefault(key, new).cells.append(at)
        self.pieces += 1
        return block

    def works(self, works: Works, scope: Scope, numbers: dict[str, int]) -> Block:
        block = Block()
        for place in works.places:
            for number, name in enumerate(place.names()):
                block.add(self.placed(place, number, name, scope, {**works.numbers, **numbers}), name)
        for join in all_joins(works):
            outlet, inlet = block.ports["outlet", join.outlet], block.ports["inlet", join.inlet]
            outlet.is_joined = inlet.is_joined = True
            block.joins.append((outlet, inlet))
        for named in works.ports:
            port = block.ports[named.role, named.port]
            port.name = f"{scope.path}.{named.name}" if scope.path else named.name
            block.ports[named.role, named.name] = port
        return block

    def placed(self, place: Placing, number: int, name: str, outer: Scope, numbers: dict[str, int]) -> Block:
        path = f"{outer.path}.{name}" if outer.path else name
        settings = {signal: numbered(e, number) for signal, e in place.settings.items()}
        drawing = self.design.drawings.get(place.design)
        plates = {p.name for p in drawing.ports.values() if p.role == "plate"} if drawing else set()
        own = followers(self.design.signals, {*settings, *plates})
        scope = self.scopes[path] = Scope(path, outer, settings, own)
        if drawing:
            block, size = self.junction(drawing, scope), drawing.size
        else:
            block = self.works(self.design.works[place.design], scope, place.numbers)
            (west, north, low), (east, south, high) = block.bounds()
            block.carried({at: moved(at, (-west, -north, -low)) for at in block.cells})
            size = (east - west, south - north, high - low)
        corner = [numbers[v] if isinstance(v, str) else v for v in place.at]
        corner = [v + number * step for v, step in zip(corner, place.step)]
        shift = (corner[0], corner[1], corner[2])
        block.carried({at: moved(standing(at, size, place.turn, place.is_mirrored), shift)
                       for at in block.cells})
        return block

    # -- the whole -------------------------------------------------------------------------------

    def flat(self) -> Flat:
        works = self.design.works[self.main]
        block = self.works(works, self.file, {})
        least, most = block.bounds()
        shift = (-min(least[0], 0), -min(least[1], 0), -min(least[2], 0))
        block.carried({at: moved(at, shift) for at in block.cells})
        size = (most[0] + shift[0], most[1] + shift[1], most[2] + shift[2])
        flat = Drawing(size, self.design.origin, self.main, works.outside, bodies=self.design.bodies,
                       practice=self.design.practice, more_signals=self.signals(block))
        around = plain(OPEN if works.outside == "open" else ROCK)
        flat.cells = {at: block.cells.get(at, around) for at in flat.places()}
        unite(block)
        walked_through = walk_through(block)
        ports = block.every_port()
        document = flat.document()
        document["junctions"][0].update(
            inlets=port_list(ends(ports, "inlet", True)), outlets=port_list(ends(ports, "outlet", True)),
            plates=[{"signal": name, "cells": sorted(map(list, at))} for name, at in block.plates.items()])
        junction = junctions(document)[0]
        junction.inlets = ends(ports, "inlet")
        junction.outlets = ends(ports, "outlet")
        junction.outlet_at = {cell: name for name, cells in junction.outlets.items() for cell in cells}
        onward = {cell: inlet.cells for outlet, inlet in block.joins for cell in outlet.cells}
        return Flat(junction, document, onward, self.design.nevers, ends(ports, "outlet", True),
                    ends(ports, "inlet", True), block.piece_at, shift, walked_through)

    def signals(self, block: Block) -> list[Signal]:
        """Those that some cell follows from, or a promise, under the names they have here."""
        waiting = [*set().union(*(names_in(fill.control) for fill in block.cells.values()
                                  if fill.control is not None), *map(names_in, self.design.nevers))]
        found: dict[str, Signal] = {}
        while waiting:
            name = waiting.pop()
            if name not in found:
                found[name] = self.signal(name)
                waiting += looks_at(found[name])
        return [found[name] for name in sorted(found)]

    def signal(self, full_name: str) -> Signal:
        path, _, name = full_name.rpartition(".")
        scope = self.scopes[path]
        if name in scope.replaced:
            assert scope.outer is not None
            return Signal(full_name, "wire", on=scope.outer.full(scope.replaced[name]))
        signal = next(signal for signal in self.design.signals if signal.name == name)
        return replace(signal, name=full_name, on=scope.full(signal.on), off=scope.full(signal.off))


def numbered(expression: Any, number: int) -> Any:
    if isinstance(expression, str):
        return expression.replace("[n]", f"[{number}]")
    if isinstance(expression, tuple):
        return (expression[0], *(numbered(operand, number) for operand in expression[1:]))
    return expression


def unite(block: Block) -> None:
    """Outlets that are the very same cells become the first of them, under the name given outermost. Those
    that share only some cells clash, and so do two joins of what is one."""
    at: dict[Place, PlacedPort] = {}
    one: dict[int, PlacedPort] = {}
    for port in block.every_port():
        if port.role != "outlet":
            continue
        met = {id(at[cell]): at[cell] for cell in port.cells if cell in at}
        for other in met.values():
            if sorted(other.cells) != sorted(port.cells) or (other.is_joined and port.is_joined):
                raise Clash(f"{other.name} and {port.name}")
            other.is_joined = other.is_joined or port.is_joined
            other.name = min(other.name, port.name, key=lambda name: name.count("."))
            one[id(port)] = other
        at.update({} if met else dict.fromkeys(port.cells, port))
    block.ports = {key: one.get(id(port), port) for key, port in block.ports.items()}
    block.joins = [(one.get(id(outlet), outlet), inlet) for outlet, inlet in block.joins]


def walk_through(block: Block) -> int:
    """Takes away an outlet, and the inlets of other places that are the very same cells, but for inlets that
    something is joined to."""
    gone: set[int] = set()
    inlets = [port for port in block.every_port() if port.role == "inlet"]
    for outlet in block.every_port():
        if outlet.role == "outlet" and not outlet.is_joined:
            same = [inlet for inlet in inlets if sorted(inlet.cells) == sorted(outlet.cells)]
            gone |= {id(port) for port in [outlet, *same] if same and not port.is_joined}
    block.ports = {key: port for key, port in block.ports.items() if id(port) not in gone}
    return len(gone)


def ends(ports: list[PlacedPort], role: str, are_all: bool = False) -> dict[str, list[Place]]:
    """By name: those where bodies come from outside or have arrived, or all."""
    return {port.name: sorted(port.cells) for port in ports
            if port.role == role and (are_all or not port.is_joined)}


def port_list(ports: dict[str, list[Place]]) -> list[dict[str, Any]]:
    return [{"name": name, "cells": [list(at) for at in cells]} for name, cells in ports.items()]
