"""Water of docs/model.md, section 2, and the currents of section 3, said as literally as Python allows.

A field maps each wet cell to its Water; a cell that is missing is dry. Nothing is remembered between
steps but the previous field, and no cell is treated in a special way.
"""
from __future__ import annotations

import math
from typing import NamedTuple, Optional

from model_document import DOWN, SIDES, UP, Arrangement, Place, moved


class Water(NamedTuple):
    strength: int
    is_source: bool = False
    is_falling: bool = False


Field = dict[Place, Water]


class WaterRules:
    """The rules for one arrangement and one set of practice numbers."""

    def __init__(self, arrangement: Arrangement, practice: dict[str, int]) -> None:
        self.arrangement = arrangement
        self.full = practice["source_strength"]
        self.makers = practice["source_makers"]
        self.eager = practice["eager_makers"]
        self.search = practice["hole_search"]
        self.falling_slope = practice["falling_slope"]
        self.enterable = [at for at in arrangement.places() if self.may_enter(at)]

    # -- questions about the arrangement -------------------------------------------------------

    def may_enter(self, place: Place) -> bool:
        return self.arrangement.material(place).water_may_enter

    def has_hole_below(self, place: Place) -> bool:
        if not self.arrangement.is_inside(place):
            return True  # asked of enterable cells only, so the outside is open here
        return self.may_enter(moved(place, DOWN))

    # -- questions about a field ---------------------------------------------------------------

    def source_neighbours(self, field: Field, place: Place) -> int:
        return sum(is_source(field, moved(place, side)) for side in SIDES)

    def intrinsic(self, field: Field, place: Place) -> Optional[Water]:
        below = moved(place, DOWN)
        bears = self.arrangement.material(below).bears_sources or is_source(field, below)
        if self.source_neighbours(field, place) >= self.makers and bears:
            return Water(self.full, is_source=True)
        if moved(place, UP) in field:
            return Water(self.full, is_falling=True)
        strengths = [field[n].strength for n in sides_of(place) if n in field]
        strength = max(strengths, default=0) - 1
        return Water(strength) if strength >= 1 else None

    def spreads_sideways(self, field: Field, place: Place) -> bool:
        below = moved(place, DOWN)
        if is_source(field, place):
            is_poured_into = self.may_enter(below) and below not in field
            return not is_poured_into or self.source_neighbours(field, place) >= self.eager
        return not self.may_enter(below)

    def way_to_hole(self, field: Field, start: Place) -> Optional[int]:
        """D(start): side steps to the nearest cell with a hole below it; None past the search."""
        reached, ring = {start}, [start]
        for steps in range(self.search + 1):
            if any(self.has_hole_below(place) for place in ring):
                return steps
            following: list[Place] = []
            for place in ring:
                for side in sides_of(place):
                    if side not in reached and self.is_passable(field, side):
                        reached.add(side)
                        following.append(side)
            ring = following
        return None

    def is_passable(self, field: Field, place: Place) -> bool:
        return self.may_enter(place) and not is_source(field, place)

    def preferred_sides(self, field: Field, place: Place) -> list[Place]:
        sides = [side for side in sides_of(place) if self.is_passable(field, side)]
        ways = {side: self.way_to_hole(field, side) for side in sides}
        known = [way for way in ways.values() if way is not None]
        if not known:
            return sides
        return [side for side in sides if ways[side] == min(known)]

    def offered_sides(self, field: Field, place: Place) -> list[Place]:
        if not self.spreads_sideways(field, place):
            return []
        return self.preferred_sides(field, place)

    # -- steps ---------------------------------------------------------------------------------

    def step(self, field: Field) -> Field:
        offered = {
            side
            for place, water in field.items()
            if water.strength >= 2
            for side in self.offered_sides(field, place)
        }
        following: Field = {}
        for place in self.enterable:
            water = self.stepped_cell(field, place, place in offered)
            if water is not None:
                following[place] = water
        return following

    def stepped_cell(self, field: Field, place: Place, is_offered: bool) -> Optional[Water]:
        """Of a cell that water may enter."""
        if self.arrangement.material(place).is_source or is_source(field, place):
            return Water(self.full, is_source=True)
        if place in field or moved(place, UP) in field or is_offered:
            return self.intrinsic(field, place)
        return None

    def settled(self, field: Optional[Field] = None) -> Field:
        """The field after which a step changes nothing; from dry unless one is given."""
        field = dict(field or {})
        limit = 10 * (len(self.arrangement.material_of) + self.full) + 100
        for _ in range(limit):
            following = self.step(field)
            if following == field:
                return field
            field = following
        raise RuntimeError(f"the water does not settle within {limit} steps")

    # -- what follows from a settled field -------------------------------------------------------

    def spills(self, field: Field, place: Place) -> bool:
        """Does water leave the drawing from this wet cell?"""
        if not self.arrangement.is_outside_open:
            return False
        if not self.arrangement.is_inside(moved(place, DOWN)):
            return True
        if field[place].strength < 2:
            return False
        offered = self.offered_sides(field, place)
        return any(not self.arrangement.is_inside(side) for side in offered)

    def current(self, field: Field, place: Place) -> tuple[int, int]:
        east, south = 0, 0
        for side in SIDES:
            slope = self.slope(field, place, moved(place, side))
            east, south = east + slope * side[0], south + slope * side[1]
        return (east, south)

    def slope(self, field: Field, place: Place, neighbour: Place) -> int:
        strength = field[place].strength
        if neighbour in field:
            return strength - field[neighbour].strength
        below = moved(neighbour, DOWN)
        if self.arrangement.material(neighbour).shows_slope and below in field:
            return strength - field[below].strength + self.full
        return 0

    def cell_push(self, field: Field, place: Place) -> tuple[float, float]:
        """The unit vector of the current, weakened for falling water beside a wall."""
        east, south = self.current(field, place)
        length = math.hypot(east, south)
        if length == 0:
            return (0.0, 0.0)
        weight = 1.0
        if field[place].is_falling and self.is_beside_a_wall(place):
            weight = 1.0 / math.sqrt(self.falling_slope)
        return (weight * east / length, weight * south / length)

    def is_beside_a_wall(self, place: Place) -> bool:
        return any(
            self.arrangement.material(wall).carries
            for side in sides_of(place)
            for wall in (side, moved(side, UP))
        )


def sides_of(place: Place) -> list[Place]:
    return [moved(place, side) for side in SIDES]


def is_source(field: Field, place: Place) -> bool:
    return place in field and field[place].is_source
