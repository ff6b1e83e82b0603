"""Random small works, the same for the same seed.

One or two small junctions are dug as for random_histories, for signals that all of them share; two to four
stand in a works, turned and mirrored, beside each other or apart, with signals of their own, some of them in
a works in a works or in a row; outlets are joined to inlets as it comes. What is drawn is invented.

    /usr/bin/python3 random_works.py SEED     prints one design
"""
from __future__ import annotations

import sys
from copy import copy
from random import Random
from typing import Any, Optional

from drawing import OPEN, PLATE, ROCK, SIGN, WATER, Drawing, Fill, Port, plain
from model_document import Place, evaluate, junctions, moved, names_in
from model_oracle import Scene, route
from netlist import Signal
from random_designs import BODIES
from random_histories import HistoryCrew
from works_drawing import TURNS, Clash, Design, Flat, Join, Named, Placing, Works, followed, standing

MOST_VARIABLES = 5
DESIGNS = ("turn", "gate")
LEVERS = ("high", "low", "market")


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


class Builder:
    """Puts one Design together."""

    def __init__(self, seed: int, origin: str) -> None:
        self.dice = Random(seed)
        self.design = Design(origin)
        self.shared: list[Signal] = []

    # -- signals ---------------------------------------------------------------------------------

    def joined(self, names: list[str]) -> Any:
        if len(names) == 1:
            return ("not", names[0]) if self.dice.random() < 0.3 else names[0]
        operator = self.dice.choice(("and", "or", "xor"))
        return (operator, self.joined(names[:1]), self.joined(names[1:]))

    def looked_at(self, names: list[str], most: int = 2) -> Any:
        return self.joined(self.dice.sample(names, self.dice.randint(1, min(most, len(names)))))

    def declare(self) -> None:
        """Those that the junctions are drawn for: one or two levers, and what may follow from them."""
        dice = self.dice
        signals = [Signal("divert", "lever", dice.random() < 0.15)]
        if dice.random() < 0.5:
            signals.append(Signal("flush", dice.choice(("lever", "lever", "button")), False, 20))
        names = [signal.name for signal in signals]
        if dice.random() < 0.12:
            signals.append(Signal("passed", "plate"))
            names.append("passed")
        kind = dice.random()
        if kind < 0.15:
            signals.append(Signal("held", "latch", False, 0, self.looked_at(names), self.looked_at(names)))
        elif kind < 0.22:
            signals.append(Signal("held", "toggle", False, 0, self.looked_at(names)))
        elif kind < 0.5:
            signals.append(Signal("held", "wire", False, 0, self.looked_at(names)))
        self.shared = signals

    def controls(self) -> list[Any]:
        names = [signal.name for signal in self.shared]
        return [*names, self.looked_at(names)]

    # -- junctions -------------------------------------------------------------------------------

    def dig(self) -> None:
        breadth = self.dice.choice((1, 1, 1, 2))
        for name in DESIGNS[: self.dice.choice((1, 2, 2))]:
            while name not in self.design.drawings:
                kind = self.dice.choice((CanalCrew, CanalCrew, CanalCrew, JunctionCrew)) if breadth == 1 else JunctionCrew
                crew = kind(self.dice.randrange(1 << 30), self.shared, self.controls(), breadth)
                crew.drawn()
                if crew.is_fit():
                    crew.drawing.name, crew.drawing.outside = name, "rock"
                    self.design.drawings[name] = crew.drawing
        ports = [port for drawing in self.design.drawings.values() for port in drawing.ports.values()]
        if not any(port.role == "plate" for port in ports):
            for signal in self.shared:
                signal.kind = "lever" if signal.kind == "plate" else signal.kind
        others = [body for body in BODIES[1:] if body.footprint == breadth]
        self.design.bodies = [BODIES[0], *self.dice.sample(others, self.dice.choice((0, 0, 0, 1)))]

    def used(self, design: str) -> set[str]:
        """The signals that something which can be placed depends on."""
        if design in self.design.drawings:
            fills = self.design.drawings[design].cells.values()
            controls = [fill.control for fill in fills if fill.control is not None]
            return followed(self.shared, set().union(*map(names_in, controls)))
        names: set[str] = set()
        for place in self.design.works[design].places:
            names |= self.used(place.design) - set(place.settings)
            names |= set().union(*map(names_in, place.settings.values()))
        return names & {signal.name for signal in self.shared}

    # -- works -----------------------------------------------------------------------------------

    def settings(self, design: str, names: list[str]) -> dict[str, Any]:
        own = sorted(self.used(design) - {"passed"})
        if not own or self.dice.random() < 0.3:
            return {}
        chosen = self.dice.sample(own, self.dice.randint(1, min(2, len(own))))
        return {name: self.dice.random() < 0.5 if self.dice.random() < 0.05 else self.looked_at(names)
                for name in chosen}

    def posture(self) -> tuple[str, bool]:
        return self.dice.choice(TURNS), self.dice.random() < 0.4

    def beside(self, flat: Flat, size: Place) -> tuple[int, int, int]:
        """Where something may stand: against a face of all that is there, apart, or below or above it."""
        width, depth, height = flat.junction.size
        apart = self.dice.choice((0, 0, 0, 1, 2))
        level = self.dice.choice((0, 0, 0, 1, -1))
        across = self.dice.randint(-2, 2)
        return self.dice.choice((
            (width + apart, across, level), (across, depth + apart, level),
            (-max(size[0], size[1]) - apart, across, level), (across, -max(size[0], size[1]) - apart, level),
            (across, self.dice.randint(-1, 1), height + apart)))

    def continuing(self, flat: Flat, placing: Placing) -> Optional[Place]:
        """Where an inlet of it is the very cell of an outlet that is there."""
        drawing = self.design.drawings.get(placing.design)
        outlets = sorted(cells[0] for cells in flat.every_outlet.values())
        if drawing is None or not outlets:
            return None
        inlets = sorted(at for at, port in drawing.ports.items() if port.role == "inlet")
        outlet, inlet = self.dice.choice(outlets), self.dice.choice(inlets)
        x, y, z = standing(inlet, drawing.size, placing.turn, placing.is_mirrored)
        return moved(outlet, (-x, -y, -z))

    def size_of(self, design: str) -> Place:
        if design in self.design.drawings:
            return self.design.drawings[design].size
        return self.flat_of(design).junction.size

    def flat_of(self, works: str) -> Flat:
        main, self.design.main = self.design.main, works
        try:
            return self.design.flat()
        finally:
            self.design.main = main

    def flat_of_all_but_the_last(self, works: Works) -> Flat:
        last = works.places.pop()
        try:
            return self.flat_of(works.name)
        finally:
            works.places.append(last)

    def place(self, works: Works, name: str, design: str, names: list[str]) -> None:
        """Places it where it gets on with what stands there already."""
        turn, is_mirrored = self.posture()
        numbers = {"gap": self.dice.randint(7, 9)} if design == "wing" and self.dice.random() < 0.5 else {}
        placing = Placing(name, design, (0, 0, 0), turn, is_mirrored, self.settings(design, names), numbers)
        if not works.places:
            placing.at = (self.dice.choice((0, 0, 3, -4)), self.dice.choice((0, 1, -3)), 0)
        works.places.append(placing)
        is_first = len(works.places) == 1
        flat = None if is_first else self.flat_of_all_but_the_last(works)
        goes_on = self.dice.random() < 0.6
        for attempt in range(40):
            if flat is not None:
                placing.turn, placing.is_mirrored = self.posture()
                at = self.continuing(flat, placing) if goes_on and attempt < 32 else None
                x, y, z = at or self.beside(flat, self.size_of(design))
                placing.at = (x - flat.shift[0], y - flat.shift[1], z - flat.shift[2])
            try:
                self.flat_of(works.name)
                return
            except Clash:
                pass
        works.places.pop()

    def row(self, works: Works, design: str) -> None:
        """Some in a row, each with a lever of its own."""
        size, count = self.size_of(design), self.dice.choice((2, 2, 3))
        step = max(size[0], size[1]) + self.dice.choice((0, 0, 1))
        along = self.dice.choice(((step, 0, 0), (0, step, 0), (-step, 0, 0), (0, -step, 1)))
        turn, is_mirrored = self.posture()
        own = sorted(self.used(design) - {"passed"})
        settings = {self.dice.choice(own): "lane[n]"} if own and self.dice.random() < 0.8 else {}
        at = (self.dice.randint(-3, 3), self.dice.randint(-3, 3), 0)
        placing = Placing("lane", design, at, turn, is_mirrored, settings, {}, count, along)
        if self.dice.random() < 0.3:
            ports = list(self.design.drawings[design].ports.values())
            outlets = sorted({port.name for port in ports if port.role == "outlet"})
            inlets = sorted({port.name for port in ports if port.role == "inlet"})
            placing.to_the_next = (self.dice.choice(outlets), self.dice.choice(inlets))
        works.places.append(placing)

    def join(self, works: Works, likelihood: float) -> None:
        """Outlets to inlets as it comes, mostly onward, but that one outlet and one inlet are left."""
        flat = self.flat_of(works.name)
        outlets, inlets = list(flat.junction.outlets), list(flat.junction.inlets)
        if not outlets or not inlets:
            return
        order = [name for place in works.places for name in place.names()]
        is_onward = self.dice.random() < 0.7
        kept = min(inlets, key=lambda name: order.index(name.split(".")[0]))
        goals = [inlet for inlet in inlets if inlet != kept and self.dice.random() < 0.7]
        self.dice.shuffle(outlets)
        for outlet in outlets[1:]:
            here = order.index(outlet.split(".")[0])
            likely = [goal for goal in goals if not is_onward or order.index(goal.split(".")[0]) > here]
            if likely and self.dice.random() < likelihood:
                works.joins.append(Join(outlet, self.dice.choice(likely), self.dice.choice((0, 0, 7))))

    def name_ports(self, works: Works) -> None:
        flat = self.flat_of(works.name)
        for role, ports in (("inlet", flat.junction.inlets), ("outlet", flat.junction.outlets)):
            for number, port in enumerate(ports):
                if self.dice.random() < 0.4:
                    works.ports.append(Named(role, f"{'mine' if role == 'inlet' else 'dairy'}_{number}", port))

    def build(self) -> Design:
        self.declare()
        self.dig()
        design, dice = self.design, self.dice
        outside = "open" if dice.random() < 0.12 else "rock"
        levers = [Signal(name, "lever") for name in LEVERS[: dice.choice((1, 2, 2, 3))]]
        rows = [Signal(f"lane[{n}]", "lever") for n in range(3)]
        design.signals = [*self.shared, *levers, *rows]
        names = [signal.name for signal in (*levers, *self.shared) if signal.name != "passed"]
        drawn = list(design.drawings)
        if dice.random() < 0.25:
            wing = design.works["wing"] = Works("wing", numbers={"gap": dice.randint(7, 9)})
            inner = [signal.name for signal in self.shared if signal.name != "passed"]
            wing.places = [Placing("near", dice.choice(drawn), (0, 0, 0), *self.posture()),
                           Placing("far", dice.choice(drawn), ("gap", dice.choice((0, 0, 1, -1)), 0),
                                   *self.posture())]
            for place in wing.places:
                place.settings = self.settings(place.design, inner) if dice.random() < 0.3 else {}
            self.join(wing, 0.5)
            self.name_ports(wing)
            drawn.append("wing")
        yard = design.works["yard"] = Works("yard", outside)
        if dice.random() < 0.25:
            self.row(yard, dice.choice(list(design.drawings)))
        wings = 0
        for number in range(dice.randint(2, 4)):
            chosen = "wing" if "wing" in drawn and not wings else dice.choice(drawn)
            wings += chosen == "wing"
            self.place(yard, f"{'abcd'[number]}", chosen, names)
        self.join(yard, 0.6)
        self.name_ports(yard)
        if dice.random() < 0.15:
            design.nevers.append(self.looked_at([n for n in names if n != "held" or dice.random() < 0.5]))
        self.leave_out_what_is_not_used()
        return design

    def leave_out_what_is_not_used(self) -> None:
        design = self.design
        names = set().union(*map(names_in, design.nevers))
        for drawing in design.drawings.values():
            names |= self.used(drawing.name)
            names |= {port.name for port in drawing.ports.values() if port.role == "plate"}
        for works in design.works.values():
            for place in works.places:
                for expression in place.settings.values():
                    listed = {name.replace("[n]", f"[{n}]") for name in names_in(expression)
                              for n in range(max(place.count, 1))}
                    names |= listed
        kept = followed(design.signals, names)
        design.signals = [signal for signal in design.signals if signal.name in kept]


def random_works(seed: int) -> tuple[Design, Flat]:
    """Builds again, under a seed made from this one, where nothing could be laid out or too much switches."""
    for attempt in range(200):
        try:
            design = Builder(seed + attempt * 1_000_003, f"works seed {seed}").build()
            flat = design.flat()
        except Clash:
            continue
        is_fine = flat.junction.inlets and flat.junction.outlets and design.signals
        if is_fine and len(flat.junction.variables) <= MOST_VARIABLES:
            return design, flat
    raise RuntimeError(f"no works from seed {seed}")


if __name__ == "__main__":
    print(random_works(int(sys.argv[1]))[0].text(), end="")
