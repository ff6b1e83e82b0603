"""Random clauses about one junction, each with the verdict that the oracle gives it.

`after ...: ...` for sequences of events from as built, and `... when ...` for all combinations that can be
reached.
"""
from __future__ import annotations

from random import Random
from typing import Any, Callable, NamedTuple

from drawing import expression_text
from model_document import evaluate
from model_histories import Histories, Key
from model_signals import flips_of

SEQUENCES, CONDITIONS, MOST_EVENTS = 8, 4, 7
Route = dict[str, Any]
Kept = Callable[[list[Route]], bool]
STATES: dict[str, Callable[[Route], bool]] = {
    "trapped": lambda route: bool(route["trapped"]),
    "spilled": lambda route: bool(route["spills"]),
    "split": lambda route: route["verdict"] == "split",
    "doubtful": lambda route: route["verdict"] == "doubtful",
    "lost": lambda route: route["verdict"] == "lost",
}


class Clause(NamedTuple):
    text: str
    verdict: str
    events: list[str]  # that it speaks after
    breaks: Callable[[Key, int], bool]  # whether a state breaks it, in one water or in all together


class Claims:
    """Random clauses about a junction, each with the verdict that the oracle gives it."""

    def __init__(self, histories: Histories, seed: int) -> None:
        self.dice = Random(seed)
        self.histories = histories
        self.junction = histories.junction

    def claim(self, likely: list[str]) -> tuple[str, Callable[[Route], bool]]:
        """What is said of a route, and whether a route keeps it."""
        outlet = self.dice.choice(likely or list(self.junction.outlets))
        if self.dice.random() < 0.3:
            outlet = self.dice.choice(list(self.junction.outlets))
        state = self.dice.choice(sorted(STATES))
        return self.dice.choice((
            (f"reaches {outlet}", lambda r: r["verdict"] == "certain" and r["outlets"] == [outlet]),
            (f"may reach {outlet}", lambda r: outlet in r["outlets"]),
            (f"never reaches {outlet}", lambda r: outlet not in r["outlets"]),
            ("reaches nothing", lambda r: not r["outlets"]),
            (f"never {state}", lambda r: not STATES[state](r)),
            (f"never {state}", lambda r: not STATES[state](r)),
        ))

    def clause(self, rows: list[list[Route]]) -> tuple[str, Kept]:
        """A clause about all these rows of routes, and whether the routes of a row keep it."""
        inlet = self.dice.choice(list(self.junction.inlets))
        body = self.dice.choice([None, *(body.name for body in self.junction.bodies)])

        def told(row: list[Route]) -> list[Route]:
            return [route for route in row if route["inlet"] == inlet and body in (None, route["body"])]

        said, is_kept = self.claim(sorted({n for row in rows for route in told(row) for n in route["outlets"]}))
        subject = inlet if body is None else f"{body} from {inlet}"
        return f"{subject} {said}", lambda row: all(map(is_kept, told(row)))

    def after(self) -> Clause:
        events = self.dice.choices(self.junction.inputs, k=self.dice.randint(1, MOST_EVENTS))
        walked = self.histories.walk(flips_of(self.junction.kinds, events))
        routes = [] if walked is None else [self.histories.routes([walked.water])]
        said, is_kept = self.clause(routes)
        verdict = "undecided" if walked is None else "holds" if all(map(is_kept, routes)) else "violated"
        return Clause(f"after {', '.join(events)}: {said}", verdict, events,
                      lambda key, water: not is_kept(self.histories.routes([water])))

    def expression(self) -> Any:
        names = [name for name in (*self.junction.variables, *self.junction.wires) if self.dice.random() < 0.5]
        joined: Any = None
        for name in names[:3] or [self.dice.choice(self.junction.variables)]:
            term = ("not", name) if self.dice.random() < 0.4 else name
            joined = term if joined is None else (self.dice.choice(("and", "and", "or", "xor")), joined, term)
        return joined

    def when(self) -> Clause:
        histories, condition = self.histories, self.expression()
        rows = {
            key: histories.routes(waters)
            for key, waters in histories.waters_of_row.items()
            if evaluate(condition, self.junction.signal_values(histories.state(key)))
        }
        said, is_kept = self.clause(list(rows.values()))
        verdict = "empty" if not rows else "holds" if all(map(is_kept, rows.values())) else "violated"
        verdict = "undecided" if histories.start is None else verdict
        return Clause(f"{said} when {expression_text(condition)}", verdict, [],
                      lambda key, water: key in rows and not is_kept(rows[key]))

    def drawn(self) -> list[Clause]:
        return [*(self.after() for _ in range(SEQUENCES)), *(self.when() for _ in range(CONDITIONS))]
