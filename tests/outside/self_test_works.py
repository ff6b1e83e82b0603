"""Self tests of works laid out and run as one drawing, derived by hand from docs/language.md and docs/model.md.

Then compare_works on a program that tells the truth, and on one that lies.

    /usr/bin/python3 -m unittest self_test_works
"""
from __future__ import annotations

import copy
import functools
import tempfile
import unittest
from collections import Counter
from dataclasses import replace
from pathlib import Path
from typing import Any, Callable, Iterable

import compare_works
from compare_works import drawn_clauses
from drawing import OPEN, ROCK, Drawing, Fill, expression_text
from hand_made import WALKER, hand_drawn
from leat_program import Difference, Leat
from model_document import Assignment
from model_histories import Key
from model_works import ABOUT_HISTORY, ONE_HISTORY, TWICE, WorksHistories, leeway
from netlist import Signal
from random_works import random_works
from stand_in import document, findings_document, judged_junction
from works_drawing import Design, Join, Named, Placing, Works
from works_laying import Clash, Flat, flat_of, standing

TURN = {"a": Fill(ROCK, OPEN, "divert"), "b": Fill(OPEN, ROCK, "divert")}


def design_of(drawings: dict[str, Drawing], *places: Placing, **more: Any) -> Design:
    signals = more.pop("signals", [Signal("divert", "lever")])
    nevers = more.pop("nevers", [])
    for name, drawing in drawings.items():
        drawing.name = name
    return Design("hand", signals, nevers, drawings, {"yard": Works("yard", places=list(places), **more)},
                  bodies=[WALKER])


def laid_out(*what: Any, **more: Any) -> Flat:
    return flat_of(design_of(*what, **more))


def straight() -> Drawing:
    """Five cells of water, from mill to kiln."""
    return hand_drawn("I...k", ".....")


def fork() -> Drawing:
    """On to the kiln, or with the lever on to the press."""
    return hand_drawn("I..ak ##b## ##q##", "...a. ##b## ##.##", marks=TURN)


def routes_of(flat: Flat, **values: bool) -> dict[str, dict[str, Any]]:
    histories = WorksHistories(flat)
    rows = [key for key in histories.waters_of_row if values.items() <= histories.state(key).items()]
    assert len(rows) == 1
    return {route["inlet"]: route for route in histories.routes(histories.waters_of_row[rows[0]])}


class Laying(unittest.TestCase):
    def test_turns_as_seen_from_above(self) -> None:
        """Of a drawing of 3 by 2, the cell in the north-east, and the one south of it."""
        size = (3, 2, 1)
        east, below = (2, 0, 0), (2, 1, 0)
        for turn, is_mirrored, expected in (
                ("", False, ((2, 0, 0), (2, 1, 0))), ("", True, ((0, 0, 0), (0, 1, 0))),
                ("turned left", False, ((0, 0, 0), (1, 0, 0))), ("turned right", False, ((1, 2, 0), (0, 2, 0))),
                ("turned about", False, ((0, 1, 0), (0, 0, 0))),
                ("turned left", True, ((0, 2, 0), (1, 2, 0)))):
            got = tuple(standing(at, size, turn, is_mirrored) for at in (east, below))
            self.assertEqual(got, expected, f"{turn} {is_mirrored}")

    def test_what_lies_west_of_all_moves_all(self) -> None:
        flat = laid_out({"run": straight()}, Placing("a", "run", (0, 0, 0)),
                         Placing("b", "run", (-9, 2, 1)))
        self.assertEqual(flat.junction.size, (14, 3, 3))
        self.assertEqual(flat.every_inlet, {"a.mill": [(9, 0, 0)], "b.mill": [(0, 2, 1)]})

    def test_a_works_in_a_works_is_put_down_by_its_own_corner(self) -> None:
        design = design_of({"run": straight()}, Placing("west", "wing", (1, 0, 0), "turned right"))
        design.works["wing"] = Works("wing", numbers={"gap": 4}, places=[
            Placing("near", "run", (2, 3, 0)), Placing("far", "run", (2, "gap", 1))],
            ports=[Named("inlet", "mine", "near.mill")])
        flat = flat_of(design)
        self.assertEqual(flat.junction.size, (3, 5, 3))
        self.assertEqual(flat.every_inlet, {"west.mine": [(2, 0, 0)], "west.far.mill": [(1, 0, 1)]})

    def test_places_that_differ_clash(self) -> None:
        places = [Placing("a", "run", (0, 0, 0)), Placing("b", "run", (3, 0, 0))]
        with self.assertRaises(Clash):
            laid_out({"run": straight()}, *places)

    def test_ports_that_are_the_same_cells_are_no_ends(self) -> None:
        onward = hand_drawn("i...k", ".....")
        flat = laid_out({"run": straight(), "more": onward}, Placing("a", "run", (0, 0, 0)),
                         Placing("b", "more", (4, 0, 0)))
        self.assertEqual((list(flat.junction.inlets), list(flat.junction.outlets)), (["a.mill"], ["b.kiln"]))
        self.assertEqual(routes_of(flat)["a.mill"]["outlets"], ["b.kiln"])

    def test_outlets_that_are_the_same_cells_are_one(self) -> None:
        meeting = [Placing("a", "run", (0, 0, 0)), Placing("b", "run", (4, 0, 0), "turned about")]
        flat = laid_out({"run": straight()}, *meeting)
        self.assertEqual(list(flat.every_outlet), ["a.kiln"])
        self.assertEqual([routes_of(flat)[inlet]["outlets"] for inlet in ("a.mill", "b.mill")], [["a.kiln"]] * 2)

    def test_outlets_that_share_some_cells_clash(self) -> None:
        wide = hand_drawn("i..kk", ".....")
        with self.assertRaises(Clash):
            laid_out({"wide": wide}, Placing("a", "wide", (0, 0, 0)),
                     Placing("b", "wide", (4, 0, 0), "turned about"))

    def test_what_follows_from_what_is_replaced_is_the_places_own(self) -> None:
        signals = [Signal("divert", "lever"), Signal("high", "lever"),
                   Signal("held", "latch", on="divert", off="high")]
        held = {"a": Fill(ROCK, OPEN, "held")}
        gate = hand_drawn("I.ak", "..a.", marks=held)
        flat = laid_out({"gate": gate}, Placing("a", "gate", (0, 0, 0), settings={"divert": ("not", "divert")}),
                         Placing("b", "gate", (0, 3, 0)), signals=signals)
        self.assertEqual(flat.junction.variables, ["divert", "high", "a.held", "held"])
        self.assertEqual(flat.junction.wires, {"a.divert": ["not", "divert"]})


class Following(unittest.TestCase):
    def joined(self, *joins: Join, places: int = 2) -> Flat:
        here = [Placing(name, "fork", (0, 6 * n, 0), settings={"divert": f"lane[{n}]"})
                for n, name in enumerate("abc"[:places])]
        signals = [Signal("divert", "lever"), *(Signal(f"lane[{n}]", "lever") for n in range(places))]
        return laid_out({"fork": fork()}, *here, signals=signals, joins=list(joins))

    def test_joins_lead_on(self) -> None:
        flat = self.joined(Join("a.kiln", "b.mill"))
        self.assertEqual(sorted(flat.junction.outlets), ["a.press", "b.kiln", "b.press"])
        for first, second, outlet in ((False, False, "b.kiln"), (False, True, "b.press"),
                                      (True, False, "a.press")):
            route = routes_of(flat, **{"lane[0]": first, "lane[1]": second})["a.mill"]
            self.assertEqual((route["verdict"], route["outlets"]), ("certain", [outlet]))

    def test_a_circle_without_a_way_out_is_a_trap(self) -> None:
        flat = self.joined(Join("a.kiln", "b.mill"), Join("b.kiln", "b.mill"))
        held = routes_of(flat, **{"lane[0]": False, "lane[1]": False})["a.mill"]
        self.assertEqual((held["verdict"], bool(held["trapped"])), ("lost", True))
        out = routes_of(flat, **{"lane[0]": False, "lane[1]": True})["a.mill"]
        self.assertEqual((out["verdict"], out["outlets"]), ("certain", ["b.press"]))

    def test_a_circle_with_a_way_out_is_left(self) -> None:
        """At the corner the current is diagonal: half of all go round again, and in the end all are out."""
        corner = hand_drawn("### ###", "Ik# q##", "..# .##")
        flat = laid_out({"corner": corner}, Placing("a", "corner", (0, 0, 0)),
                        Placing("b", "corner", (0, 3, 0)), signals=[],
                        joins=[Join("a.kiln", "b.mill"), Join("b.press", "b.mill")])
        route = routes_of(flat)["a.mill"]
        self.assertEqual((route["outlets"], route["trapped"]), (["a.press", "b.kiln"], []))

    def test_who_does_not_get_in_further_on_is_held(self) -> None:
        shut = hand_drawn("i..k", "####")
        flat = laid_out({"run": straight(), "shut": shut}, Placing("a", "run", (0, 0, 0)),
                         Placing("b", "shut", (0, 3, 0)), signals=[], joins=[Join("a.kiln", "b.mill")])
        route = routes_of(flat)["a.mill"]
        self.assertEqual((route["verdict"], bool(route["trapped"])), ("lost", True))


class Leeway(unittest.TestCase):
    """The floor closes under flowing water and opens again: what has spread past it meanwhile stays."""

    def laid(self, *settings: str, joins: tuple[Join, ...] = (), **more: Any) -> set[str]:
        gate = hand_drawn("#######", "###x###", "..I...k", ".......", marks={"x": Fill(ROCK, OPEN, "divert")})
        memory = more.pop("memory", [])
        levers = {*settings, "divert"} - {signal.name for signal in memory}
        signals = [*(Signal(name, "lever") for name in sorted(levers)), *memory]
        places = [Placing(f"g{n}", "gate", (0, 3 * n, 0), settings={} if name == "divert" else {"divert": name})
                  for n, name in enumerate(settings)]
        return leeway(WorksHistories(laid_out({"gate": gate}, *places, signals=signals, joins=list(joins),
                                               **more)))

    def test_islands_with_histories_of_their_own_are_exact(self) -> None:
        self.assertEqual(self.laid("divert", "high"), set())

    def test_one_history_of_two(self) -> None:
        self.assertEqual(self.laid("divert", "divert"), {ONE_HISTORY})

    def test_promises(self) -> None:
        self.assertEqual(self.laid("divert", "high", nevers=[("and", "divert", "high")]), {ABOUT_HISTORY})

    def test_circles(self) -> None:
        self.assertEqual(self.laid("divert", "high", joins=(Join("g0.kiln", "g0.mill"),)), {TWICE})


# -- a stand-in for the program --------------------------------------------------------------------


@functools.lru_cache(maxsize=64)
def true_answers(seed: int) -> tuple[Design, Flat, WorksHistories]:
    design, flat = random_works(seed)
    return design, flat, WorksHistories(flat)


def without_turns(design: Design) -> None:
    other = {"turned left": "turned right", "turned right": "turned left"}
    for works in design.works.values():
        for place in works.places:
            place.turn = other.get(place.turn, place.turn)


def without_settings(design: Design) -> None:
    for works in design.works.values():
        for place in works.places:
            place.settings = {}


def without_promises(design: Design) -> None:
    design.nevers = []


# What is misunderstood about the design.
SLIPS: dict[str, Callable[[Design], None]] = {
    "turn": without_turns, "with": without_settings, "never": without_promises}


def slipped(lie: str, design: Design, flat: Flat) -> Flat:
    """The true one where the slip makes places clash."""
    if lie == "join":
        return replace(flat, onward={cell: [] for cell in flat.onward})
    design = copy.deepcopy(design)
    SLIPS[lie](design)
    try:
        return flat_of(design)
    except Clash:
        return flat


class StandIn(Leat):
    """Answers for random_works with the model, and can tell one lie: a slip in the answers to some command,
    or a false answer."""

    def __init__(self, lie: str = "", command: str = "") -> None:
        super().__init__("stand-in")
        self.lie, self.command = lie, command

    def printed(self, kind: str, *arguments: str) -> dict[str, Any]:
        seed = int(Path(arguments[1]).read_text(encoding="utf-8").splitlines()[1].split()[-1])
        design, flat, histories = true_answers(seed)
        if arguments[0] == self.command:
            flat = slipped(self.lie, design, flat)
            histories = WorksHistories(flat)
        said = self.answer(arguments, flat, histories, seed)
        self.validator(kind).validate(said)
        return said

    def answer(self, arguments: tuple[str, ...], flat: Flat, histories: WorksHistories,
               seed: int) -> dict[str, Any]:
        if arguments[0] == "resolve":
            return flat.document
        if arguments[0] == "table":
            return document("leat-table", [self.table_told(histories)])
        true = true_answers(seed)[2]
        asked = drawn_clauses(true, seed)
        mine = asked if histories is true else drawn_clauses(histories, seed)
        judged = judged_junction(flat.junction.name, len(histories.waters_of_row), [],
                                 [self.judged(true, clause, mine) for clause in asked])
        return findings_document(arguments[1], judged)

    def table_told(self, histories: WorksHistories) -> dict[str, Any]:
        rows: dict[str, tuple[dict[str, Any], set[Key]]] = {}
        for key, waters in histories.waters_of_row.items():
            told = histories.routes([histories.fresh(key)] if self.lie == "fresh" else waters)
            for route in told:
                answer = {name: route[name] for name in ("inlet", "body", "verdict", "outlets")}
                rows.setdefault(repr(answer), (answer, set()))[1].add(key)
        entries = [{**answer, "condition": sum_of(map(histories.state, sorted(keys))), "combinations": len(keys)}
                   for answer, keys in rows.values()]
        if self.lie == "condition":
            entries[-1]["condition"] = f"not ({entries[-1]['condition']})"
        if self.lie == "count":
            entries[-1]["combinations"] += 1
        if self.lie == "verdict":
            entries[-1]["verdict"] = "doubtful" if entries[-1]["verdict"] != "doubtful" else "certain"
        return {"name": histories.junction.name, "signals": histories.junction.variables, "rows": [],
                "conditions": entries}

    def judged(self, true: WorksHistories, clause: Any, mine: list[Any]) -> dict[str, Any]:
        verdict = next((one.verdict for one in mine if one.text == clause.text), clause.verdict)
        if self.lie == "violated":
            verdict = {"violated": "holds"}.get(verdict, verdict)
        if self.lie == "undecided":
            verdict = "undecided"
        way, example = None, None
        if clause.verdict == "violated":
            way, example = next((way, true.state(key)) for (key, water), way in true.ways.items()
                                if clause.breaks(key, water))
            if self.lie == "example":
                example = {name: not value for name, value in example.items()}
            if self.lie == "way":
                way = [*way, true.junction.inputs[0]]
        return {"title": "", "clause": clause.text, "verdict": verdict, "line": 1, "column": 1,
                "example": example, "way": way, "ticks": None, "dealt": []}


def sum_of(assignments: Any) -> str:
    def product(assignment: Assignment) -> str:
        terms = [name if value else ("not", name) for name, value in assignment.items()]
        return "(" + " and ".join(map(expression_text, terms)) + ")" if terms else "on"

    return " or ".join(map(product, assignments))


SEEDS = range(1, 11)


def said_by(leat: Leat, seeds: Iterable[int] = SEEDS) -> Counter[str]:
    with tempfile.TemporaryDirectory() as folder:
        return compare_works.compare_designs(leat, Path(folder), seeds)


class Comparison(unittest.TestCase):
    def test_the_truth_agrees(self) -> None:
        found = said_by(StandIn())
        self.assertEqual(found["routes told wider"], 0)
        self.assertIn("works agree", compare_works.told(found))

    def test_every_slip_is_noticed(self) -> None:
        with_promises = [seed for seed in range(1, 50) if random_works(seed)[0].nevers]
        for lie, seeds, commands in (
                ("turn", SEEDS, ("resolve", "table")), ("with", SEEDS, ("resolve", "table")),
                ("join", SEEDS, ("table", "check")), ("never", with_promises, ("table", "check"))):
            for command in commands:
                with self.subTest(lie=lie, command=command), self.assertRaises(Difference):
                    said_by(StandIn(lie, command), seeds)

    def test_every_false_answer_is_noticed(self) -> None:
        for lie in ("fresh", "condition", "count", "verdict", "violated", "undecided", "example", "way"):
            with self.subTest(lie=lie), self.assertRaises(Difference):
                said_by(StandIn(lie))

    def test_too_little_is_noticed(self) -> None:
        enough = Counter(dict.fromkeys(("designs", "decided", *compare_works.NUMEROUS), 100))
        compare_works.expect_enough(enough)
        for kind in ("decided", *compare_works.NUMEROUS):
            with self.subTest(kind=kind), self.assertRaises(Difference):
                compare_works.expect_enough(enough - Counter({kind: 99}))


if __name__ == "__main__":
    unittest.main()
