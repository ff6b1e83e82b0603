"""A works as a value, written out as `.leat` text."""
from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any, Iterator, Optional, Union

from drawing import BodyLine, Drawing, Fill, Port, body_line, expression_text, mark_line
from model_document import Place
from netlist import Signal

TURNS = ("", "turned left", "turned right", "turned about")
Number = Union[int, str]  # the name of a number of the works


@dataclass
class Placing:
    """`place DESIGN as NAME at X Y Z ...`; `count` of them in a row by `for`, where that is not 0."""

    name: str
    design: str
    at: tuple[Number, Number, Number]
    turn: str = ""
    is_mirrored: bool = False
    settings: dict[str, Any] = field(default_factory=dict)  # `with`; names may end in [n] in a row
    numbers: dict[str, int] = field(default_factory=dict)  # `where`
    count: int = 0
    step: Place = (0, 0, 0)
    to_the_next: Optional[tuple[str, str]] = None  # in a row: this outlet is joined to the next one's inlet

    def names(self) -> list[str]:
        return [f"{self.name}[{n}]" for n in range(self.count)] if self.count else [self.name]


@dataclass
class Join:
    outlet: str
    inlet: str
    ticks: int = 0


@dataclass
class Named:
    role: str
    name: str
    port: str


@dataclass
class Works:
    name: str
    outside: str = "rock"
    numbers: dict[str, int] = field(default_factory=dict)
    places: list[Placing] = field(default_factory=list)
    joins: list[Join] = field(default_factory=list)
    ports: list[Named] = field(default_factory=list)

    def lines(self) -> list[str]:
        lines = ["  outside open"] if self.outside == "open" else []
        lines += [f"  number {name} = {value}" for name, value in self.numbers.items()]
        for place in self.places:
            lines += place_lines(place)
        lines += [f"  join {j.outlet} -> {j.inlet}" + (f" taking {j.ticks} ticks" if j.ticks else "")
                  for j in self.joins]
        lines += [f"  {port.role} {port.name} = {port.port}" for port in self.ports]
        return [f"works {self.name} {{", *lines, "}"]


def place_lines(place: Placing) -> list[str]:
    more = [place.turn] if place.turn else []
    more += ["mirrored"] if place.is_mirrored else []
    if place.numbers:
        more.append("where " + ", ".join(f"{name} = {value}" for name, value in place.numbers.items()))
    if place.settings:
        more.append("with " + ", ".join(f"{n} = {expression_text(e)}" for n, e in place.settings.items()))
    if not place.count:
        at = " ".join(map(str, place.at))
        return ["  " + " ".join([f"place {place.design} as {place.name} at {at}", *more])]
    at = " ".join(f"({start} + {step} * n)" for start, step in zip(place.at, place.step))
    lines = ["    " + " ".join([f"place {place.design} as {place.name}[n] at {at}", *more])]
    if place.to_the_next:
        outlet, inlet = place.to_the_next
        lines += [f"    join {place.name}[n].{outlet} -> {place.name}[(n + 1) mod {place.count}].{inlet}"]
    return [f"  for n in 0..{place.count - 1} {{", *lines, "  }"]


def all_joins(works: Works) -> Iterator[Join]:
    for place in works.places:
        if place.to_the_next:
            outlet, inlet = place.to_the_next
            names = place.names()
            for name, following in zip(names, names[1:] + names[:1]):
                yield Join(f"{name}.{outlet}", f"{following}.{inlet}")
    yield from works.joins


@dataclass
class Design:
    """A whole file: junctions, works, and what they share."""

    origin: str
    signals: list[Signal] = field(default_factory=list)
    nevers: list[Any] = field(default_factory=list)
    drawings: dict[str, Drawing] = field(default_factory=dict)
    works: dict[str, Works] = field(default_factory=dict)
    main: str = "yard"
    bodies: list[BodyLine] = field(default_factory=list)
    practice: dict[str, int] = field(default_factory=dict)

    # -- the text --------------------------------------------------------------------------------

    def text(self) -> str:
        marks = self.marks()
        lines = ["leat 1", f"# {self.origin}", "", "signals {", *(f"  {s.line()}" for s in self.signals)]
        lines += [f"  never {expression_text(e)}" for e in self.nevers] + ["}", ""]
        lines += ["marks {", *(mark_line(glyph, *meaning) for meaning, glyph in marks.items()), "}", ""]
        for drawing in self.drawings.values():
            lines += [*drawing.junction_lines(marks), ""]
        for works in self.works.values():
            lines += [*works.lines(), ""]
        lines += map(body_line, self.bodies)
        if self.practice:
            lines += ["practice {", *(f"  {n} {value}" for n, value in self.practice.items()), "}"]
        return "\n".join(lines) + "\n"

    def marks(self) -> dict[tuple[Fill, Optional[Port]], str]:
        """One glyph for each meaning, over all drawings."""
        meanings = {drawing.meaning(at): None for drawing in self.drawings.values() for at in drawing.places()}
        glyphs = [chr(code) for code in range(0x21, 0x17f) if chr(code).isalnum()]
        return dict(zip(meanings, glyphs))
