"""Random small junctions in which something happens, the same for the same seed.

A crew digs through rock: runs, corners, drops (some into two-wide pits of water), lifts, chambers with
pools; then hangs in sources, signs, plugs, holes and switched cells near what it dug.

    /usr/bin/python3 random_designs.py SEED     prints one design
"""
from __future__ import annotations

import sys
from random import Random
from typing import Any, Callable

from drawing import OPEN, ROCK, SIGN, WATER, BodyLine, Drawing, Fill, Port, plain
from model_document import DOWN, SIDES, UP, Place, junctions, moved, names_in
from model_oracle import Scene, route

LEVERS = ("amber", "birch", "cedar", "dogwood")
OUTLETS = ("granary", "press", "cellar")
INLETS = ("millhouse", "kiln")
BODIES = (
    BodyLine("walker", 1, 2, True),
    BodyLine("hopper", 1, 1, True),
    BodyLine("crawler", 2, 1, True),
    BodyLine("ox", 2, 2, True),
    BodyLine("stone", 1, 2, False),
    BodyLine("pebble", 1, 1, False),
    BodyLine("millstone", 2, 1, False),
)
MATERIALS: dict[str, tuple[str, ...]] = {
    "grating": ("water_enters", "carries", "shows_slope"),
    "web": ("body_enters", "water_enters", "carries"),
    "glass": ("carries",),
    "curtain": ("body_enters", "shows_slope"),
    "sieve": ("water_enters", "bears_sources"),
}


class Crew:
    """Digs one Drawing."""

    def __init__(self, seed: int) -> None:
        self.dice = Random(seed)
        width, depth = self.dice.randint(4, 12), self.dice.randint(3, 12)
        self.drawing = Drawing((width, depth, self.dice.randint(3, 6)), f"random seed {seed} turn 0")
        self.ends: list[Place] = []
        self.headroom = self.dice.choice((1, 2, 2, 2, 2, 3))
        self.breadth = self.dice.choice((1, 2))
        self.side = self.dice.choice(SIDES)

    # -- digging ---------------------------------------------------------------------------------

    def put(self, place: Place, fill: Fill) -> None:
        if self.drawing.is_inside(place):
            self.drawing.cells[place] = fill

    def dig(self, place: Place) -> None:
        """Opens the place with headroom and breadth; water and signs that are there stay."""
        for level in range(self.headroom):
            for x in range(self.breadth):
                for y in range(self.breadth):
                    cell = moved(place, (x, y, level))
                    if self.drawing.fill(cell) == plain(ROCK):
                        self.put(cell, plain(OPEN))

    def start(self) -> Place:
        width, depth, height = self.drawing.size
        level = max(self.dice.randint(1, height - 1), self.dice.randint(1, height - 1))
        return (self.dice.randrange(width), self.dice.randrange(depth), level)

    def run(self, at: Place) -> Place:
        if self.dice.random() < 0.7:
            self.side = self.dice.choice(SIDES)
        for _ in range(self.dice.randint(2, 9)):
            following = moved(at, self.side)
            if not self.drawing.is_inside(following):
                break
            at = following
            self.dig(at)
        return at

    def drop(self, at: Place) -> Place:
        """Down, perhaps two wide (mostly the way the run went), perhaps into water."""
        levels = self.dice.randint(1, 5)
        aside = self.side if self.dice.random() < 0.7 else self.dice.choice(SIDES)
        if self.dice.random() < 0.7:
            at = moved(at, self.side) if self.drawing.is_inside(moved(at, self.side)) else at
            self.dig(at)
        if self.dice.random() < 0.5:
            self.put(at, plain(SIGN))  # ends the flow at the edge: what goes over it falls dry
        twin = moved(at, aside) if self.dice.random() < 0.7 else at
        bottom = at
        for _ in range(levels):
            if bottom[2] <= self.dice.choice((0, 1)):
                break
            bottom = moved(bottom, DOWN)
            self.dig(bottom)
            self.dig((twin[0], twin[1], bottom[2]))
        if self.dice.random() < 0.4:
            deep = self.dice.randint(1, 3)
            for column in (bottom, (twin[0], twin[1], bottom[2])):
                for level in range(deep):
                    if column[2] + level < at[2]:
                        self.put(moved(column, (0, 0, level)), plain(WATER))
        return bottom

    def leap(self, at: Place) -> Place:
        """A short run that ends in a sign over a shaft: what goes over the edge falls dry and drifts."""
        self.side = self.dice.choice(SIDES)
        for material in (WATER, OPEN, SIGN):
            self.dig(at)
            self.put(at, plain(material))
            edge, at = at, moved(at, self.side)
        bottom = edge
        while bottom[2] > 1:
            bottom = moved(bottom, DOWN)
            for width in range(self.dice.choice((1, 2, 2, 3))):
                self.dig(moved(bottom, *[self.side] * width))
        for depth in range(self.dice.choice((0, 0, 1, 2))):
            for width in range(3):
                cell = moved(bottom, (0, 0, depth), *[self.side] * width)
                if self.drawing.fill(cell) == plain(OPEN):
                    self.put(cell, plain(WATER))
        return bottom if self.drawing.is_inside(bottom) else edge

    def lift(self, at: Place) -> Place:
        levels = self.dice.randint(1, 4)
        first = self.dice.choice((0, 1, 1))
        for level in range(levels + 1):
            cell = moved(at, (0, 0, level))
            if not self.drawing.is_inside(cell):
                break
            self.dig(cell)
            if level >= first and level < levels:
                self.put(cell, plain(WATER))
            elif level == 0:
                self.put(cell, plain(SIGN))
        top = min(at[2] + levels, self.drawing.size[2] - 1)
        return (at[0], at[1], top)

    def chamber(self, at: Place) -> Place:
        wide, deep = self.dice.randint(2, 5), self.dice.randint(2, 5)
        for x in range(wide):
            for y in range(deep):
                cell = moved(at, (x, y, 0))
                if self.drawing.is_inside(cell):
                    self.dig(cell)
                    if self.dice.random() < 0.15:
                        self.put(cell, plain(self.dice.choice((ROCK, SIGN, WATER))))
        return self.dice.choice([c for c in self.drawing.cells if c[2] == at[2]] or [at])

    def spring(self, at: Place) -> Place:
        """A source here, perhaps on a sign, perhaps with another one two cells on."""
        if self.dice.random() < 0.3:
            self.put(at, plain(SIGN))
            self.put(moved(at, UP), plain(WATER))
        else:
            self.put(at, plain(WATER))
        if self.dice.random() < 0.3:
            side = self.dice.choice(SIDES)
            self.dig(moved(at, side))
            self.put(moved(at, side, side), plain(WATER))
        return at

    def dig_works(self) -> None:
        deeds: tuple[Callable[[Place], Place], ...] = (
            self.run, self.run, self.run, self.drop, self.drop, self.lift, self.chamber, self.leap)
        for _ in range(self.dice.randint(1, 3)):
            at = self.dice.choice(self.ends) if self.ends and self.dice.random() < 0.6 else self.start()
            self.dig(at)
            self.ends.append(at)
            if self.dice.random() < 0.8:
                self.spring(at)
            for _ in range(self.dice.randint(2, 7)):
                at = self.dice.choice(deeds)(at)
                if self.dice.random() < 0.2:
                    self.spring(at)
            self.ends.append(at)

    # -- fitting out -----------------------------------------------------------------------------

    def expression(self) -> Any:
        """Never constant, since each lever occurs at most once."""
        levers = self.dice.sample(self.drawing.levers, len(self.drawing.levers))
        return self.joined(levers[: self.dice.randint(1, min(3, len(levers)))])

    def joined(self, levers: list[str]) -> Any:
        if len(levers) == 1:
            return ("not", levers[0]) if self.dice.random() < 0.3 else levers[0]
        cut = self.dice.randint(1, len(levers) - 1)
        operator = self.dice.choice(("and", "or", "xor"))
        joined = (operator, self.joined(levers[:cut]), self.joined(levers[cut:]))
        return ("not", joined) if self.dice.random() < 0.15 else joined

    def dug(self) -> list[Place]:
        return sorted(self.drawing.cells)

    def some_place(self) -> Place:
        """In or right beside what was dug."""
        at = self.dice.choice(self.dug())
        if self.dice.random() < 0.4:
            near = moved(at, self.dice.choice((*SIDES, DOWN, DOWN, UP)))
            return near if self.drawing.is_inside(near) else at
        return at

    def wire_up(self) -> None:
        count = self.dice.choice((0, 1, 1, 2, 2, 3, 4))
        self.drawing.levers = list(LEVERS[:count])
        if count and self.dice.random() < 0.5:
            self.drawing.wires["shut"] = self.expression()
        if len(self.drawing.wires) and count >= 2 and self.dice.random() < 0.5:
            used = names_in(self.drawing.wires["shut"])
            apart = [lever for lever in self.drawing.levers if lever not in used]
            if apart:
                self.drawing.wires["late"] = self.joined(["shut", apart[0]])

    def hang_in(self) -> None:
        for _ in range(self.dice.randint(0, 5)):
            material = self.dice.choice((OPEN, OPEN, WATER, SIGN, ROCK))
            self.put(self.some_place(), plain(material))
        if self.dice.random() < 0.25:
            name = self.dice.choice(sorted(MATERIALS))
            self.drawing.materials[name] = MATERIALS[name]
            for _ in range(self.dice.randint(1, 4)):
                self.put(self.some_place(), plain(name))

    def switch_cells(self) -> None:
        choices = [ROCK, ROCK, OPEN, OPEN, WATER, SIGN, *self.drawing.materials]
        count = self.dice.randint(1, 6) if self.drawing.levers else 0
        for _ in range(count):
            powered = self.dice.choice(choices)
            unpowered = self.dice.choice([m for m in choices if m != powered])
            control = self.expression()
            if self.drawing.wires and self.dice.random() < 0.4:
                control = self.dice.choice(sorted(self.drawing.wires))
            self.put(self.some_place(), Fill(powered, unpowered, control))

    # -- ports where a trip leads somewhere --------------------------------------------------------

    def free_cells(self) -> list[Place]:
        return [at for at in self.dug() if at not in self.drawing.ports
                and self.drawing.fill(at).control is None
                and self.drawing.fill(at).powered in (OPEN, WATER, SIGN)]

    def trips(self, cells: list[Place]) -> list[set[Place]]:
        """For each cell: where a body of the design can get to from there in some combinations."""
        junction = junctions(self.drawing.document())[0]
        assignments = list(junction.assignments())
        body = self.dice.choice(junction.bodies)
        scenes = [Scene.of(junction, a) for a in self.dice.sample(assignments, min(3, len(assignments)))]
        found: list[set[Place]] = []
        for cell in cells:
            junction.inlets = {"here": [cell]}
            routes = [route(scene, "here", body) for scene in scenes]
            found.append({position.at for r in routes for position in r.moves})
        return found

    def set_ports(self) -> None:
        for name in INLETS[: self.dice.choice((1, 1, 1, 2))]:
            free = self.free_cells()
            tried = self.dice.sample(free, min(14, len(free)))
            trips = self.trips(tried)
            if not trips:
                return
            longest = max(range(len(tried)), key=lambda i: len(trips[i]))
            chosen = longest if self.dice.random() < 0.9 else 0
            self.set_port(Port("inlet", name), tried[chosen])
            self.set_outlets(sorted(trips[chosen] - {tried[chosen]}))

    def set_outlets(self, trip: list[Place]) -> None:
        for name in OUTLETS[: self.dice.randint(1, 3)]:
            free = self.free_cells()
            likely = [at for at in trip if at in free]
            pool = likely if likely and self.dice.random() < 0.8 else free
            if pool:
                self.set_port(Port("outlet", name), self.dice.choice(pool))

    def set_port(self, port: Port, at: Place) -> None:
        cells = [at]
        if self.dice.random() < 0.3:
            cells += [moved(at, side) for side in self.dice.sample((*SIDES, UP), 2)]
        free = self.free_cells()
        for cell in cells:
            if cell in free:
                self.drawing.ports[cell] = port

    def set_practice(self) -> None:
        if self.dice.random() < 0.15:
            self.drawing.practice = dict(self.dice.sample((
                ("source_strength", self.dice.randint(2, 12)), ("source_makers", self.dice.randint(1, 4)),
                ("eager_makers", self.dice.randint(1, 4)), ("hole_search", self.dice.randint(0, 7)),
                ("falling_slope", self.dice.randint(1, 99)), ("sink_cells", self.dice.randint(0, 3)),
                ("drift_after", self.dice.randint(1, 3))), 2))

    def drawn(self) -> Drawing:
        if self.dice.random() < 0.25:
            self.drawing.outside = "open"
        self.dig_works()
        self.hang_in()
        while len(self.dug()) < 8:
            self.chamber(self.start())
        self.wire_up()
        self.switch_cells()
        self.set_practice()
        others = [body for body in BODIES[1:] if body.footprint == self.breadth]
        self.drawing.bodies = [BODIES[0], *self.dice.sample(others, self.dice.randint(0, 2))]
        self.set_ports()
        return self.drawing


def random_design(seed: int) -> Drawing:
    """Draws again, under a seed made from this one, when the dig left no place for a port."""
    for attempt in range(100):
        drawing = Crew(seed + attempt * 1_000_003).drawn()
        roles = {port.role for port in drawing.ports.values()}
        if roles == {"inlet", "outlet"}:
            drawing.origin = f"random seed {seed} turn 0"
            return drawing
    raise RuntimeError(f"no design from seed {seed}")


def main() -> int:
    print(random_design(int(sys.argv[1])).text(), end="")
    return 0


if __name__ == "__main__":
    sys.exit(main())
