"""Random small junctions with memory, whose water may remember, the same for the same seed.

A crew digs as for random_designs, then wires up latches, toggles and delays, lets holes open under
running water, takes sources away, and switches floors between two sources so that one forms or stays.
What it draws is invented.

    /usr/bin/python3 random_histories.py SEED     prints one design
"""
from __future__ import annotations

import sys
from random import Random
from typing import Any, Callable, Optional

from drawing import OPEN, PLATE, ROCK, SIGN, WATER, Drawing, Fill, Port, plain
from model_document import DOWN, EAST, SIDES, SOUTH, UP, Place, junctions, moved
from model_oracle import Scene
from model_water import Field
from netlist import Signal
from random_designs import BODIES, Crew

INPUT_NAMES = {"lever": "divert", "button": "ring", "plate": "passed", "clock": "beat"}
MOST_SWITCHED = 6


class HistoryCrew(Crew):
    """Digs one Drawing with memory."""

    def __init__(self, seed: int) -> None:
        super().__init__(seed)
        dice = Random(seed)
        size = (dice.randint(5, 9), dice.randint(3, 5), dice.randint(3, 4))
        self.drawing = Drawing(size, f"history seed {seed} turn 0")
        self.controls: list[Any] = []

    # -- signals ---------------------------------------------------------------------------------

    def looked_at(self, names: list[str], most: int = 2) -> Any:
        """An expression of some of these, each at most once."""
        return self.joined(self.dice.sample(names, self.dice.randint(1, min(most, len(names)))))

    def input_signals(self) -> list[Signal]:
        kinds = self.dice.choices(("lever", "lever", "lever", "button", "button", "plate", "clock"),
                                  k=self.dice.choice((1, 2, 2, 3)))
        signals = []
        for number, kind in enumerate(kinds):
            at = self.place_of_plate() if kind == "plate" else None
            kind = "lever" if kind == "plate" and at is None else kind
            name = f"{INPUT_NAMES[kind]}_{number}"
            signals.append(Signal(name, kind, self.dice.random() < 0.2, self.dice.randint(2, 30)))
            if at is not None:
                self.put(at, plain(PLATE))
                self.drawing.ports[at] = Port("plate", name)
        return signals

    def place_of_plate(self) -> Optional[Place]:
        """On a rock floor, in what was dug."""
        places = [at for at in self.dug() if self.drawing.fill(at) == plain(OPEN)
                  and at[2] and self.drawing.fill(moved(at, DOWN)) == plain(ROCK)]
        return self.dice.choice(places) if places else None

    def wire_up(self) -> None:
        signals = self.input_signals()
        names = [signal.name for signal in signals]
        count = self.dice.choice((1, 1, 2, 2, 3))
        kinds = self.dice.choices(("latch", "latch", "toggle", "toggle", "delay"), k=count)
        memory = [f"{kind}_{number}" for number, kind in enumerate(kinds)]
        for name, kind in zip(memory, kinds):
            known = names + [other for other in memory if self.dice.random() < 0.4]
            on, off = self.looked_at(known), self.looked_at(known)
            starts_on = kind != "delay" and self.dice.random() < 0.2
            signals.append(Signal(name, kind, starts_on, self.dice.randint(1, 40), on, off))
        names += memory
        if self.dice.random() < 0.4:
            signals.append(Signal("shut", "wire", on=self.looked_at(names, 3)))
        self.dice.shuffle(signals)
        self.drawing.more_signals = signals
        self.controls = [self.looked_at(memory), self.looked_at(names)]
        if any(signal.name == "shut" for signal in signals):
            self.controls.append("shut")

    # -- cells that change -----------------------------------------------------------------------

    def running(self) -> Field:
        """The water of what is drawn so far, with all that changes unpowered."""
        cells = {at: plain(fill.unpowered) for at, fill in self.drawing.cells.items()}
        bare = Drawing(self.drawing.size, self.drawing.origin, outside=self.drawing.outside, cells=cells)
        return Scene.of(junctions(bare.document())[0], {}).field

    def is_taken(self, place: Place) -> bool:
        """By a port, or by what a plate lies on."""
        over = self.drawing.ports.get(moved(place, UP))
        return place in self.drawing.ports or (over is not None and over.role == "plate")

    def switch(self, place: Place, one: str, other: str) -> None:
        if self.is_taken(place) or not self.drawing.is_inside(place):
            return
        powered, unpowered = self.dice.sample((one, other), 2)
        self.put(place, Fill(powered, unpowered, self.dice.choice(self.controls)))

    def wet_cell(self) -> Optional[Place]:
        flowing = sorted(place for place, water in self.running().items() if not water.is_source)
        return self.dice.choice(flowing) if flowing else None

    def hole_under_water(self) -> None:
        at = self.wet_cell()
        if at is not None:
            self.switch(moved(at, DOWN), OPEN, self.dice.choice((ROCK, ROCK, SIGN)))

    def gate_in_water(self) -> None:
        at = self.wet_cell()
        if at is not None:
            self.switch(at, OPEN, self.dice.choice((ROCK, SIGN)))

    def floor_between_sources(self) -> None:
        at = self.wet_cell()
        if at is None:
            return
        side = self.dice.choice((EAST, SOUTH))
        for neighbour in (moved(at, side), moved(at, (-side[0], -side[1], 0))):
            if not self.is_taken(neighbour):
                self.put(neighbour, plain(WATER))
        self.switch(moved(at, DOWN), OPEN, ROCK)

    def spring_that_stops(self) -> None:
        springs = [at for at in self.dug() if self.drawing.fill(at) == plain(WATER)]
        if springs:
            self.switch(self.dice.choice(springs), WATER, self.dice.choice((OPEN, OPEN, ROCK, SIGN)))

    def gate_beside_source(self) -> None:
        springs = [at for at in self.dug() if self.drawing.fill(at) == plain(WATER)]
        if springs:
            self.switch(moved(self.dice.choice(springs), self.dice.choice((*SIDES, UP))), OPEN, WATER)

    def switch_cells(self) -> None:
        deeds: tuple[Callable[[], None], ...] = (
            self.hole_under_water, self.hole_under_water, self.gate_in_water, self.floor_between_sources,
            self.spring_that_stops, self.gate_beside_source)
        for _ in range(self.dice.randint(2, MOST_SWITCHED)):
            self.dice.choice(deeds)()

    # -- the whole -------------------------------------------------------------------------------

    def drawn(self) -> Drawing:
        if self.dice.random() < 0.2:
            self.drawing.outside = "open"
        self.dig_works()
        while len(self.dug()) < 8:
            self.chamber(self.start())
        self.wire_up()
        self.switch_cells()
        others = [body for body in BODIES[1:] if body.footprint == self.breadth]
        self.drawing.bodies = [BODIES[0], *self.dice.sample(others, self.dice.choice((0, 0, 1)))]
        self.set_ports()
        return self.drawing

    def does_switch(self) -> bool:
        return any(fill.control is not None for fill in self.drawing.cells.values())


def random_history(seed: int) -> Drawing:
    """Draws again, under a seed made from this one, until there are ports and a cell that changes."""
    for attempt in range(100):
        crew = HistoryCrew(seed + attempt * 1_000_003)
        drawing = crew.drawn()
        roles = {port.role for port in drawing.ports.values()}
        if roles >= {"inlet", "outlet"} and crew.does_switch():
            drawing.origin = f"history seed {seed} turn 0"
            return drawing
    raise RuntimeError(f"no design from seed {seed}")


if __name__ == "__main__":
    print(random_history(int(sys.argv[1])).text(), end="")
