"""Random small junctions to be placed in works: dug for signals that several of them share.

Half of them are canals that begin and end at the faces of their drawing, so that the water and the bodies of
one can go on in the next. What is drawn is invented.
"""
from __future__ import annotations

from copy import copy
from typing import Any

from drawing import OPEN, PLATE, ROCK, SIGN, WATER, Drawing, Fill, Port, plain
from model_document import evaluate, junctions
from model_oracle import Scene, route
from netlist import Signal
from random_histories import HistoryCrew


class JunctionCrew(HistoryCrew):
    """Digs one junction for signals that are already there."""

    def __init__(self, seed: int, signals: list[Signal], controls: list[Any], breadth: int) -> None:
        super().__init__(seed)
        self.drawing.size = (self.dice.randint(4, 7), self.dice.randint(3, 5), self.dice.choice((3, 3, 4)))
        self.given, self.usable = signals, controls
        self.breadth = breadth
        self.headroom = 2

    def wire_up(self) -> None:
        self.drawing.more_signals = self.given
        self.controls = self.usable
        at = self.place_of_plate()
        if any(signal.kind == "plate" for signal in self.given) and at is not None:
            self.put(at, plain(PLATE))
            self.drawing.ports[at] = Port("plate", "passed")

    def is_fit(self) -> bool:
        roles = {port.role for port in self.drawing.ports.values()}
        return roles >= {"inlet", "outlet"} and carries(self.drawing)


class CanalCrew(JunctionCrew):
    """Digs a canal through rock, from one side of the drawing to the other, with a side arm or a hole."""

    def __init__(self, seed: int, signals: list[Signal], controls: list[Any], breadth: int) -> None:
        super().__init__(seed, signals, controls, breadth)
        width, depth = self.dice.randint(5, 8), self.dice.randint(3, 5)
        self.drawing.size = (width, depth, self.dice.choice((3, 3, 4)))
        self.bed = self.drawing.size[2] - 2
        self.lane = self.dice.randrange(depth)
        self.arm = self.dice.randint(2, width - 2)

    def dig_works(self) -> None:
        """Where the canal begins without a source, the water of another one has to come in."""
        self.breadth = 1
        width = self.drawing.size[0]
        for x in range(width):
            self.dig((x, self.lane, self.bed))
        source, inlet = self.dice.choice(((None, 0), (None, 0), (None, 0), (0, 0), (0, 0), (0, 1), (1, 1)))
        self.has_source = source is not None
        if source is not None:
            self.put((source, self.lane, self.bed), plain(WATER))
        self.drawing.ports[inlet, self.lane, self.bed] = Port("inlet", "millhouse")
        self.drawing.ports[width - 1, self.lane, self.bed] = Port("outlet", "granary")
        if self.dice.random() < 0.2:
            self.put((self.arm, self.lane, self.bed), plain(SIGN))

    def switch_cells(self) -> None:
        if self.dice.random() < 0.4:
            self.switch((self.arm, self.lane, self.bed - 1), OPEN, self.dice.choice((ROCK, ROCK, SIGN)))
            if self.dice.random() < 0.7:
                self.drawing.ports[self.arm, self.lane, self.bed - 1] = Port("outlet", "cellar")
        else:
            self.dig_arm()
        for _ in range(self.dice.choice((0, 0, 0, 1, 2))):
            self.dice.choice((self.hole_under_water, self.gate_in_water, self.floor_between_sources,
                              self.spring_that_stops, self.gate_beside_source))()

    def dig_arm(self) -> None:
        """An arm to a side, shut while the canal is open, and the other way round."""
        depth, control = self.drawing.size[1], self.dice.choice(self.controls)
        aside = 1 if self.lane < depth // 2 or self.lane == 0 else -1
        at = (self.arm, self.lane + aside, self.bed)
        while self.drawing.is_inside(at):
            self.dig(at)
            end, at = at, (at[0], at[1] + aside, at[2])
        if end not in self.drawing.ports:
            self.drawing.ports[end] = Port("outlet", "press")
        for level in (0, 1):
            gate = (self.arm, self.lane + aside, self.bed + level)
            if gate not in self.drawing.ports:
                self.put(gate, Fill(OPEN, ROCK, control))
            beyond = (self.arm + 1, self.lane, self.bed + level)
            if self.dice.random() < 0.8 and beyond not in self.drawing.ports:
                self.put(beyond, Fill(ROCK, OPEN, control))

    def is_fit(self) -> bool:
        """Without a source of its own: with one where another water would come in."""
        fed = copy(self.drawing)
        if not self.has_source:
            fed.cells = {**self.drawing.cells, (0, self.lane, self.bed): plain(WATER)}
        return carries(fed)

    def set_ports(self) -> None:
        if self.dice.random() < 0.2:
            free = self.free_cells()
            if free:
                self.set_port(Port("inlet", "kiln"), self.dice.choice(free))


def carries(drawing: Drawing) -> bool:
    """Whether somewhere a body gets to an outlet, but not in the same way in all combinations."""
    junction = junctions(drawing.document())[0]
    combinations = list(junction.assignments())
    settings = [junction.signal_values(assignment) for assignment in combinations]
    for fill in junction.fills:
        if fill.control is not None and len({evaluate(fill.control, values) for values in settings}) < 2:
            return False  # a mark that never switches is a fault
    routes = []
    for assignment in combinations:
        scene = Scene.of(junction, assignment)
        routes.append([route(scene, inlet, junction.bodies[0]).outlets for inlet in junction.inlets])
    return any(any(row) for row in routes) and any(row != routes[0] for row in routes)
