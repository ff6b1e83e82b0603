"""Random small works, the same for the same seed.

One or two small junctions are dug as for random_histories, for signals that all of them share; two to four
stand in a works, turned and mirrored, beside each other or apart, with signals of their own, some of them in
a works in a works or in a row; outlets are joined to inlets as it comes. What is drawn is invented.

    /usr/bin/python3 random_works.py SEED     prints one design
"""
from __future__ import annotations

import sys
from random import Random
from typing import Any, Optional

from model_document import Place, moved, names_in
from model_works import carries_somebody
from netlist import Signal
from random_canals import CanalCrew, JunctionCrew
from random_designs import BODIES
from works_drawing import TURNS, Design, Join, Named, Placing, Works
from works_laying import Clash, Flat, flat_of, followed, standing

MOST_VARIABLES = 5
DESIGNS = ("turn", "gate")
LEVERS = ("high", "low", "market")


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
                kinds = (CanalCrew, CanalCrew, CanalCrew, JunctionCrew) if breadth == 1 else (JunctionCrew,)
                kind = self.dice.choice(kinds)
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
        return flat_of(self.design, works)

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

    def wing(self) -> None:
        """A works to be placed in the works: two junctions, the second as far off as its number says."""
        inner = [signal.name for signal in self.shared if signal.name != "passed"]
        wing = self.design.works["wing"] = Works("wing", numbers={"gap": self.dice.randint(7, 9)})
        for name, x, y in (("near", 0, 0), ("far", "gap", self.dice.choice((0, 0, 1, -1)))):
            design = self.dice.choice(list(self.design.drawings))
            settings = self.settings(design, inner) if self.dice.random() < 0.3 else {}
            wing.places.append(Placing(name, design, (x, y, 0), *self.posture(), settings))
        self.join(wing, 0.5)
        self.name_ports(wing)

    def yard(self, names: list[str]) -> None:
        drawn = list(self.design.drawings)
        yard = self.design.works["yard"] = Works("yard", "open" if self.dice.random() < 0.12 else "rock")
        if self.dice.random() < 0.25:
            self.row(yard, self.dice.choice(drawn))
        chosen = [self.dice.choice(drawn) for _ in range(self.dice.randint(2, 4))]
        if "wing" in self.design.works:
            chosen[0] = "wing"
        for name, design in zip("abcd", chosen):
            self.place(yard, name, design, names)
        self.join(yard, 0.6)
        self.name_ports(yard)

    def build(self) -> Design:
        self.declare()
        self.dig()
        levers = [Signal(name, "lever") for name in LEVERS[: self.dice.choice((1, 2, 2, 3))]]
        rows = [Signal(f"lane[{n}]", "lever") for n in range(3)]
        self.design.signals = [*self.shared, *levers, *rows]
        names = [signal.name for signal in (*levers, *self.shared) if signal.name != "passed"]
        if self.dice.random() < 0.25:
            self.wing()
        self.yard(names)
        if self.dice.random() < 0.15:
            promised = [name for name in names if name != "held" or self.dice.random() < 0.5]
            self.design.nevers.append(self.looked_at(promised))
        self.leave_out_what_is_not_used()
        return self.design

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
    """Builds again, under a seed made from this one, where places clash, too much switches or nobody gets
    through."""
    for attempt in range(200):
        try:
            design = Builder(seed + attempt * 1_000_003, f"works seed {seed}").build()
            flat = flat_of(design)
        except Clash:
            continue
        is_fine = flat.junction.inlets and flat.junction.outlets and design.signals
        if is_fine and len(flat.junction.variables) <= MOST_VARIABLES and carries_somebody(flat):
            return design, flat
    raise RuntimeError(f"no works from seed {seed}")


if __name__ == "__main__":
    print(random_works(int(sys.argv[1]))[0].text(), end="")
