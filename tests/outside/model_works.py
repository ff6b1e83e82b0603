"""Works of docs/model.md, run as one drawing: everything in one field, bodies followed along joins.

The program takes a works apart into islands; this does not. The water of the whole drawing is stepped from
event to event, and a body goes from position to position, from a joined outlet on to the inlet it is joined
to, whatever time that takes, in one settled water. What it cannot get out of, over the whole way, is a trap.

What the model leaves to the program is told by `leeway`: where the waters of several islands depend on one
history, routes may be told wider than they are.
"""
from __future__ import annotations

from collections import deque
from copy import copy
from dataclasses import replace
from typing import Any, Optional

from model_body import BodyRules, Move, Position
from model_document import DOWN, SIDES, UP, Body, Material, Place, evaluate, moved, names_in
from model_histories import Histories, Key
from model_oracle import Route, Scene, followed, route_of
from works_laying import Flat

MOST_CHANGES = 120
REASONS = ABOUT_HISTORY, TWICE, ONE_HISTORY = (
    "with promises about a history", "with circles into a history", "with one history of several")


class WayOn(BodyRules):
    """The moves of a body that goes on from joined outlets."""

    onward: dict[Place, list[Place]]

    def moves(self, position: Position) -> list[Move]:
        if position.at not in self.onward:
            return super().moves(position)
        return [Move(Position(cell), "join") for cell in self.onward[position.at] if self.fits(cell)]


def followed_on(flat: Flat, scene: Scene, inlet: str, body: Body) -> Route:
    rules = WayOn(flat.junction, scene.water.arrangement, scene.water, scene.field, body)
    rules.onward = flat.onward
    return followed(flat.junction, inlet, rules)


def carries_somebody(flat: Flat) -> bool:
    """Whether a body gets through, as built or with all inputs the other way round."""
    junction = flat.junction
    for is_other in (False, True):
        combination = {name: (name in junction.starting_on) != is_other for name in junction.variables}
        scene = Scene.of(junction, combination)
        for inlet in junction.inlets:
            if followed_on(flat, scene, inlet, junction.bodies[0]).outlets:
                return True
    return False


class TooLong(Exception):
    """More changes of the water than this slow model is to run."""


class WorksHistories(Histories):
    """Everything a works can be in."""

    def __init__(self, flat: Flat) -> None:
        self.laid = flat
        super().__init__(flat.junction)

    def after(self, key: Key, event: str) -> Optional[Key]:
        """What is promised never to come about is not done."""
        after = super().after(key, event)
        return None if after is not None and self.is_promised_away(after) else after

    def is_promised_away(self, key: Key) -> bool:
        values = self.junction.signal_values(self.state(key))
        return any(evaluate(never, values) for never in self.laid.nevers)

    def change(self, water: int, key: Key, setting: Any) -> int:
        if len(self.changed) > MOST_CHANGES:
            raise TooLong
        return super().change(water, key, setting)

    def followed(self, scene: Scene, inlet: str, body: Body) -> Route:
        return followed_on(self.laid, scene, inlet, body)


# -- islands ---------------------------------------------------------------------------------------


def is_joining(material: Material) -> bool:
    return material.water_may_enter or material.body_enters or material.shows_slope


class Islands:
    """What hangs together over faces of cells that water or bodies can be in, or that change."""

    def __init__(self, histories: WorksHistories) -> None:
        self.histories = histories
        self.flat = histories.laid
        self.fill_at = {
            (x, y, z): fill
            for z, level in enumerate(self.flat.junction.cells)
            for y, row in enumerate(level)
            for x, fill in enumerate(row)
        }
        fills = self.flat.junction.fills
        self.joining = {
            at for at, fill in self.fill_at.items()
            if fills[fill].control is not None or is_joining(fills[fill].powered)
        }
        self.known: dict[tuple[int, int], list[dict[str, Any]]] = {}
        self.whole = copy(self.flat.junction)  # where every outlet is an end
        self.whole.inlets, self.whole.outlets = self.flat.every_inlet, self.flat.every_outlet
        self.whole.outlet_at = {at: name for name, cells in self.whole.outlets.items() for at in cells}
        self.number: dict[Place, int] = {}
        self.cells: list[list[Place]] = []
        for at in sorted(self.joining):
            if at not in self.number:
                self.flood(at)

    def flood(self, start: Place) -> None:
        found, waiting = [start], deque([start])
        self.number[start] = len(self.cells)
        while waiting:
            at = waiting.popleft()
            for side in (*SIDES, UP, DOWN):
                beside = moved(at, side)
                if beside in self.joining and beside not in self.number:
                    self.number[beside] = len(self.cells)
                    found.append(beside)
                    waiting.append(beside)
        self.cells.append(found)

    def variables(self, island: int) -> set[str]:
        """Inputs and memory that the island's cells follow from."""
        junction = self.flat.junction
        controls = [junction.fills[self.fill_at[at]].control for at in self.cells[island]]
        waiting = [*set().union(*(names_in(control) for control in controls if control is not None))]
        definitions = {**{name: [e] for name, e in junction.wires.items()},
                       **{memory.name: [memory.definition, memory.reset] for memory in junction.memory}}
        found: set[str] = set()
        while waiting:
            name = waiting.pop()
            if name not in found:
                found.add(name)
                waiting += set().union(*map(names_in, definitions.get(name, [])))
        return found & set(junction.variables)

    def remembers(self, island: int) -> bool:
        """Whether bodies notice, in one combination of its own signals, which water it is."""
        own = self.variables(island)
        routes: dict[Any, Any] = {}
        for key, waters in self.histories.waters_of_row.items():
            combination = tuple(v for name, v in zip(self.flat.junction.variables, key) if name in own)
            for water in waters:
                here = self.routes_within(water, island)
                if routes.setdefault(combination, here) != here:
                    return True
        return False

    def routes_within(self, water: int, island: int) -> list[dict[str, Any]]:
        """What becomes of bodies up to the outlets of the island, from each of its inlets."""
        if (water, island) not in self.known:
            inlets = [name for name, cells in self.whole.inlets.items() if self.number[cells[0]] == island]
            scene = self.histories.waters[water]
            self.known[water, island] = [
                route_of(followed(self.whole, inlet, BodyRules(self.whole, scene.water.arrangement, scene.water,
                                                               scene.field, body)))
                for inlet in inlets for body in self.whole.bodies
            ]
        return self.known[water, island]

    def leads_back(self, island: int) -> bool:
        """Whether joins lead from the island, through whatever others, back into it."""
        onward = {(self.number[outlet], self.number[inlet])
                  for outlet, inlets in self.flat.onward.items() for inlet in inlets}
        met, waiting = set(), [island]
        while waiting:
            here = waiting.pop()
            for there in {b for a, b in onward if a == here} - met:
                met.add(there)
                waiting.append(there)
        return island in met


def leeway(histories: WorksHistories) -> set[str]:
    """Why the program may tell routes wider than they are, or leave open what fails: docs/model.md, works.
    Empty where it has to be exact. What is promised away is in an island's own history all the same."""
    nevers = histories.laid.nevers
    islands = Islands(WorksHistories(replace(histories.laid, nevers=[])) if nevers else histories)
    memory = {memory.name for memory in histories.junction.memory}
    reasons: set[str] = set()
    followed_by_another: set[str] = set()
    for island in range(len(islands.cells)):
        if not islands.remembers(island):
            continue
        own = islands.variables(island)
        if nevers:
            reasons.add(ABOUT_HISTORY)
        if islands.leads_back(island):
            reasons.add(TWICE)
        if own & followed_by_another or memory - own:
            reasons.add(ONE_HISTORY)
        followed_by_another |= own
    return reasons
