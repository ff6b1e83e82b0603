"""What water remembers: docs/model.md, section 2 (switching) and section 4 (the machine's state).

A state of the machine is the value of every input and memory element together with the settled field.
From as built, with the water that comes from dry, every single flip of an input is followed, breadth
first. A row of the table is one reachable combination of inputs and memory; its routes are the union
over all fields it can come with.
"""
from __future__ import annotations

from collections import deque
from dataclasses import dataclass
from typing import Any, Iterable, Optional

from model_document import Arrangement, Assignment, Body, Junction, drawing_order
from model_oracle import Route, Scene, route, route_of
from model_signals import Logic
from model_water import Field, Water, WaterRules

Key = tuple[bool, ...]


class Restless(Exception):
    """Water that comes back to an earlier field without having settled."""


def settled_from(rules: WaterRules, field: Field) -> Field:
    seen: set[frozenset[Any]] = set()
    while True:
        following = rules.step(field)
        if following == field:
            return field
        field = following
        key = frozenset(field.items())
        if key in seen:
            raise Restless
        seen.add(key)


def switched(before: Arrangement, field: Field, after: WaterRules) -> Field:
    """The field at the moment of a change: a cell that changes material is dry, or a source if it is
    placed water now; cells that stay keep their water."""
    following: Field = {}
    for place in after.arrangement.places():
        material = after.arrangement.material(place)
        if material != before.material(place):
            if material.is_source:
                following[place] = Water(after.full, is_source=True)
        elif place in field and material.water_may_enter:
            following[place] = field[place]
    return following


def united(routes: list[dict[str, Any]]) -> dict[str, Any]:
    """All that can happen to a body, over the routes of one combination in each of its waters."""
    first = routes[0]
    outlets = sorted({name for one in routes for name in one["outlets"]})
    trapped = sorted({tuple(place) for one in routes for place in one["trapped"]}, key=drawing_order)
    if len(outlets) > 1:
        verdict = "split"
    elif not outlets:
        verdict = "lost"
    elif all(one["verdict"] == "certain" for one in routes):
        verdict = "certain"
    else:
        verdict = "doubtful"
    return {
        "inlet": first["inlet"], "body": first["body"], "verdict": verdict, "outlets": outlets,
        "trapped": [list(place) for place in trapped],
        "spills": any(one["spills"] for one in routes), "unsure": any(one["unsure"] for one in routes),
    }


@dataclass(frozen=True)
class Walked:
    """Where a list of flips leads."""

    state: Assignment
    water: int


class Histories:
    """Everything one junction can be in."""

    def __init__(self, junction: Junction) -> None:
        self.junction = junction
        self.logic = Logic(junction)
        self.waters: list[Scene] = []
        self.unquiet: list[tuple[Key, str]] = []  # states and the event after which nothing gets quiet
        self.number: dict[tuple[Any, frozenset[Any]], int] = {}
        self.changed: dict[tuple[int, Any], int] = {}
        self.fields: dict[Any, int] = {}  # fresh water of an arrangement
        self.known_routes: dict[tuple[int, str, str], dict[str, Any]] = {}
        self.waters_of_row: dict[Key, list[int]] = {}
        self.ways: dict[tuple[Key, int], list[str]] = {}  # a shortest list of flips to each state and water
        start = self.logic.as_built()
        self.start = None if start is None else self.key(start)
        self.explore()

    # -- states ----------------------------------------------------------------------------------

    def key(self, state: Assignment) -> Key:
        return tuple(state[name] for name in self.junction.variables)

    def state(self, key: Key) -> Assignment:
        return dict(zip(self.junction.variables, key))

    def setting(self, state: Assignment) -> Any:
        """Which material every kind of cell has."""
        values = self.junction.signal_values(state)
        return self.junction.present(values)

    # -- waters ----------------------------------------------------------------------------------

    def enter(self, setting: Any, scene: Scene) -> int:
        water = self.number.setdefault((setting, frozenset(scene.field.items())), len(self.waters))
        if water == len(self.waters):
            self.waters.append(scene)
        return water

    def fresh(self, key: Key) -> int:
        state = self.state(key)
        setting = self.setting(state)
        if setting not in self.fields:
            self.fields[setting] = self.enter(setting, self.scene(state, None))
        return self.fields[setting]

    def scene(self, state: Assignment, before: Optional[Scene]) -> Scene:
        rules = WaterRules(self.junction.arrangement(state), self.junction.practice)
        field = {} if before is None else switched(before.water.arrangement, before.field, rules)
        return Scene(self.junction, state, rules, settled_from(rules, field))

    def change(self, water: int, key: Key, setting: Any) -> int:
        if (water, setting) not in self.changed:
            following = self.scene(self.state(key), self.waters[water])
            self.changed[water, setting] = self.enter(setting, following)
        return self.changed[water, setting]

    # -- the search ------------------------------------------------------------------------------

    def after(self, key: Key, event: str) -> Optional[Key]:
        """None where the event brings no quiet, or is not done."""
        state = self.logic.after(self.state(key), event)
        if state is None:
            self.unquiet.append((key, event))
        return None if state is None else self.key(state)

    def explore(self) -> None:
        if self.start is None:
            return
        settings = {self.start: self.setting(self.state(self.start))}
        following: dict[tuple[Key, str], Optional[Key]] = {}
        first = (self.start, self.fresh(self.start))
        self.ways[first] = []
        waiting = deque([first])
        while waiting:
            key, water = waiting.popleft()
            self.waters_of_row.setdefault(key, []).append(water)
            for event in self.junction.inputs:
                if (key, event) not in following:
                    following[key, event] = self.after(key, event)
                after = following[key, event]
                if after is None:
                    continue
                if after not in settings:
                    settings[after] = self.setting(self.state(after))
                is_same = settings[after] == settings[key]
                node = (after, water if is_same else self.change(water, after, settings[after]))
                if node not in self.ways:
                    self.ways[node] = [*self.ways[key, water], event]
                    waiting.append(node)

    def walk(self, flips: Iterable[str]) -> Optional[Walked]:
        """One flip after the other from as built; None where the signals never get quiet."""
        if self.start is None:
            return None
        state = self.state(self.start)
        water = self.fresh(self.start)
        for flip in flips:
            after = self.logic.after(state, flip)
            if after is None:
                return None
            setting = self.setting(after)
            if setting != self.setting(state):
                water = self.change(water, self.key(after), setting)
            state = after
        return Walked(state, water)

    # -- answers ---------------------------------------------------------------------------------

    def route_in(self, water: int, inlet: str, body: Body) -> dict[str, Any]:
        name = (water, inlet, body.name)
        if name not in self.known_routes:
            self.known_routes[name] = route_of(self.followed(self.waters[water], inlet, body))
        return self.known_routes[name]

    def followed(self, scene: Scene, inlet: str, body: Body) -> Route:
        return route(scene, inlet, body)

    def routes(self, waters: list[int]) -> list[dict[str, Any]]:
        return [
            united([self.route_in(water, inlet, body) for water in waters])
            for inlet in self.junction.inlets
            for body in self.junction.bodies
        ]

    def is_felt(self, key: Key) -> bool:
        """Whether some body notices which water it is."""
        alone = [self.routes([water]) for water in self.waters_of_row[key]]
        return any(routes != alone[0] for routes in alone)

    def row_waters(self, key: Key, is_fresh: bool) -> list[int]:
        return [self.fresh(key)] if is_fresh else self.waters_of_row[key]

    def table(self, signals: list[str], is_fresh: bool = False) -> dict[str, Any]:
        """The reachable combinations in binary order, told by `signals`, the first one slowest."""
        rows = []
        for key in list(self.waters_of_row):
            state = self.state(key)
            assignment = {name: state[name] for name in signals}
            rows.append({"assignment": assignment, "routes": self.routes(self.row_waters(key, is_fresh))})
        rows.sort(key=lambda row: list(row["assignment"].values()))
        return {"name": self.junction.name, "signals": signals, "rows": rows}
