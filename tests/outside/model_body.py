"""Bodies of docs/model.md, section 3, by the letter of its appendix 'the moves to the letter'."""
from __future__ import annotations

from typing import Iterator, NamedTuple, Optional

from model_document import DOWN, UP, Arrangement, Body, Junction, Place, moved
from model_water import Field, WaterRules

MOST_CELLS_FALLEN = 4
LEAST_PUSH = 1e-9


class Position(NamedTuple):
    at: Place
    side: Optional[Place] = None
    fallen: int = 0


class Move(NamedTuple):
    to: Position
    rule: str
    is_sure: bool = True


class BodyRules:
    """The moves of one body in one settled field."""

    def __init__(self, junction: Junction, arrangement: Arrangement, water: WaterRules,
                 field: Field, body: Body) -> None:
        self.arrangement = arrangement
        self.water = water
        self.field = field
        self.body = body
        self.outlet_at = junction.outlet_at
        self.drift_after = junction.practice["drift_after"]
        self.sink_cells = junction.practice["sink_cells"]

    # -- the body's cells ------------------------------------------------------------------------

    def footprint(self, place: Place) -> list[Place]:
        """The cells of one level that the body takes, lowest north-west corner at `place`."""
        span = range(self.body.footprint)
        return [moved(place, (x, y, 0)) for y in span for x in span]

    def cells(self, place: Place) -> Iterator[Place]:
        for level in range(self.body.height):
            yield from self.footprint(moved(place, (0, 0, level)))

    def fits(self, place: Place) -> bool:
        return all(self.arrangement.material(cell).body_enters for cell in self.cells(place))

    def is_wet(self, place: Place) -> bool:
        return any(cell in self.field for cell in self.cells(place))

    def is_level_wet(self, place: Place) -> bool:
        """Is any column wet at the level of `place`?"""
        return any(cell in self.field for cell in self.footprint(place))

    def is_wet_above_feet(self, place: Place) -> bool:
        levels = range(1, self.body.height)
        return any(self.is_level_wet(moved(place, (0, 0, level))) for level in levels)

    def is_carried(self, place: Place) -> bool:
        under = [self.arrangement.material(c) for c in self.footprint(moved(place, DOWN))]
        return any(material.carries or not material.body_enters for material in under)

    def push(self, place: Place) -> tuple[float, float]:
        vectors = [self.water.cell_push(self.field, c) for c in self.cells(place) if c in self.field]
        return (sum(x for x, _ in vectors), sum(y for _, y in vectors))

    # -- the moves -------------------------------------------------------------------------------

    def outlet(self, position: Position) -> Optional[str]:
        return self.outlet_at.get(position.at)

    def has_left(self, position: Position) -> bool:
        return not self.arrangement.is_inside(position.at)

    def moves(self, position: Position) -> list[Move]:
        if self.outlet(position) is not None or self.has_left(position):
            return []
        if self.is_wet(position.at):
            found = self.moves_in_water(position)
        elif self.is_carried(position.at):
            found = []
        else:
            found = list(self.falls(position))
        return [move._replace(to=self.forgotten(move.to)) for move in found]

    def falls(self, position: Position) -> Iterator[Move]:
        """Rule 1."""
        at, side, fallen = position
        fallen = min(fallen + 1, MOST_CELLS_FALLEN)
        below = moved(at, DOWN)
        yield from self.falls_to(below, side, fallen, "fall")
        if side is not None and fallen >= self.drift_after and self.fits(moved(below, side)):
            yield from self.falls_to(moved(below, side), None, fallen, "drift")

    def falls_to(self, below: Place, side: Optional[Place], fallen: int, rule: str) -> Iterator[Move]:
        """`rule` names a target that is dry; into water each is a fall, by the appendix's sentence."""
        is_wet = self.is_level_wet(below)
        yield Move(Position(below, side, fallen), "fall" if is_wet else rule)
        if not is_wet:
            return
        deeper = below
        for _ in range(min(fallen - 1, self.sink_cells)):
            deeper = moved(deeper, DOWN)
            if not self.is_level_wet(deeper) or not self.fits(deeper):
                return
            yield Move(Position(deeper, side, fallen), "sink")

    def moves_in_water(self, position: Position) -> list[Move]:
        """Rules 3 and 5."""
        at, side, _ = position
        if not self.body.floats:
            below = moved(at, DOWN)
            if self.is_level_wet(below) and self.fits(below):
                return [Move(Position(below), "sink")]
        found = self.rises(position) if self.body.floats else []
        east, south = self.push(at)
        is_pushed = False
        for size, axis in ((east, (1, 0, 0)), (south, (0, 1, 0))):
            if abs(size) > LEAST_PUSH:
                is_pushed = True
                sign = 1 if size > 0 else -1
                found += self.pushes(at, (sign * axis[0], sign * axis[1], 0))
        if not found and not is_pushed and side is not None and self.fits(moved(at, side)):
            found.append(Move(Position(moved(at, side)), "drift"))
        return found

    def rises(self, position: Position) -> list[Move]:
        """Rule 3a."""
        at, side, fallen = position
        higher = moved(at, UP)
        if not self.fits(higher):
            return []
        if self.is_wet_above_feet(at):
            return [Move(Position(higher, side, fallen), "rise")]
        over_head = moved(at, (0, 0, self.body.height))
        if self.body.height >= 2 and self.is_level_wet(at) and self.is_level_wet(over_head):
            return [Move(Position(higher, side, fallen), "rise", not self.is_carried(at))]
        return []

    def pushes(self, at: Place, side: Place) -> list[Move]:
        """Rule 3b."""
        there = moved(at, side)
        if self.fits(there):
            return [Move(Position(there, side), "push")]
        may_climb = self.body.floats and self.is_level_wet(at)
        if may_climb and self.fits(moved(there, UP)) and self.fits(moved(at, UP)):
            return [Move(Position(moved(there, UP), side), "climb", False)]
        return []

    def forgotten(self, position: Position) -> Position:
        """Rule 4."""
        at, side, fallen = position
        if self.is_wet(at):
            if side is not None and fallen >= self.drift_after:
                return Position(at, side, self.drift_after)
            return Position(at)
        if self.is_carried(at):
            return Position(at)
        return position

    def rest(self, position: Position) -> str:
        """What a position without moves is called."""
        if self.outlet(position) is not None:
            return "outlet"
        if self.has_left(position):
            return "spill"
        if not self.is_wet(position.at):
            return "dry"
        is_pushed = any(abs(size) > LEAST_PUSH for size in self.push(position.at))
        return "pinned" if is_pushed else "still"
