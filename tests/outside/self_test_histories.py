"""Self tests of settled signals, switched water and histories, derived by hand from docs/model.md.

Then compare_histories on a program that tells the truth, and on one that lies.

    /usr/bin/python3 -m unittest self_test_histories
"""
from __future__ import annotations

import argparse
import tempfile
import unittest
from pathlib import Path
from typing import Any, Optional

import compare_histories
from compare_histories import answer_of
from drawing import OPEN, ROCK, WATER, Drawing, Fill
from hand_made import hand_drawn, junction_of
from history_claims import Claims, Clause
from leat_program import Difference, Leat
from model_document import Assignment, Place
from model_histories import Histories, Key, united
from model_oracle import document, field_of
from model_signals import Logic, delays_in_loops, flips_of
from netlist import Signal
from random_histories import random_history
from stand_in import condition_of, finding, findings_document, judged_junction

LEVER, OTHER = Signal("a", "lever"), Signal("b", "lever")


def logic_of(*signals: Signal) -> Logic:
    return Logic(junction_of(hand_drawn("###", "ik.", more_signals=list(signals))))


def on_after(logic: Logic, *flips: str) -> Optional[set[str]]:
    """What is on after flips from as built; None where it is never quiet."""
    state = logic.as_built()
    for flip in flips:
        state = None if state is None else logic.after(state, flip)
    return None if state is None else {name for name, is_on in state.items() if is_on}


class Signals(unittest.TestCase):
    def test_a_latch_looks_at_levels_and_set_wins(self) -> None:
        logic = logic_of(LEVER, OTHER, Signal("held", "latch", on="a", off="b"))
        self.assertEqual(on_after(logic, "a", "a"), {"held"})
        self.assertEqual(on_after(logic, "a", "b"), {"a", "b", "held"})
        self.assertEqual(on_after(logic, "a", "b", "a"), {"b"})

    def test_a_toggle_changes_when_its_trigger_goes_on_and_only_then(self) -> None:
        logic = logic_of(LEVER, OTHER, Signal("turn", "toggle", on="a"))
        self.assertEqual(on_after(logic, "a", "b", "a"), {"b", "turn"})
        self.assertEqual(on_after(logic, "a", "a", "a"), {"a"})

    def test_toggles_that_drive_each_other_count(self) -> None:
        logic = logic_of(LEVER, Signal("one", "toggle", on="a"), Signal("two", "toggle", on=("not", "one")),
                         Signal("four", "toggle", on=("not", "two")))
        for presses in range(1, 9):
            number = sum(1 << i for i in range(3) if presses >> i & 1)
            found = on_after(logic, *["a", "a"] * presses) or set()
            self.assertEqual(sum({"one": 1, "two": 2, "four": 4}[n] for n in found), number % 8)

    def test_memory_that_is_triggered_at_once_changes_together(self) -> None:
        swap = logic_of(LEVER, Signal("left", "toggle", True, on=("and", "a", "left")),
                        Signal("right", "toggle", on=("and", "a", "left")))
        self.assertEqual(on_after(swap, "a"), {"a", "right"})

    def test_a_delay_lags_one_round_and_so_makes_a_pulse(self) -> None:
        logic = logic_of(LEVER, Signal("late", "delay", on="a", ticks=3),
                         Signal("turn", "toggle", on=("xor", "a", "late")))
        self.assertEqual(on_after(logic, "a"), {"a", "late", "turn"})
        self.assertEqual(on_after(logic, "a", "a"), set())

    def test_what_never_gets_quiet(self) -> None:
        logic = logic_of(LEVER, Signal("late", "delay", on=("and", "a", ("not", "late")), ticks=3))
        self.assertIsNone(on_after(logic, "a"))
        fight = logic_of(LEVER, Signal("held", "latch", on=("and", "a", ("not", "held")), off="held"))
        self.assertIsNone(on_after(fight, "a"))
        self.assertIsNone(on_after(logic_of(Signal("late", "delay", on=("not", "late"), ticks=1))))

    def test_as_built(self) -> None:
        on = Signal("a", "lever", True)
        held, turn = Signal("held", "latch", on="a", off=("not", "a")), Signal("turn", "toggle", on="held")
        self.assertEqual(on_after(logic_of(on, held, turn)), {"a", "held"})
        late, more = Signal("late", "delay", on="a", ticks=2), Signal("more", "delay", on="late", ticks=2)
        self.assertEqual(on_after(logic_of(on, more, late)), {"a", "late", "more"})

    def test_delays_in_loops(self) -> None:
        junction = logic_of(
            LEVER, Signal("p", "delay", on="r", ticks=1), Signal("q", "delay", on=("or", "p", "a"), ticks=1),
            Signal("r", "wire", on="q"), Signal("tail", "delay", on="q", ticks=1),
            Signal("safe", "delay", on="held", ticks=1), Signal("held", "latch", on="safe", off="a")).junction
        self.assertEqual(delays_in_loops(junction), {"p", "q"})
        self.assertEqual(delays_in_loops(junction, {"q"}), set())

    def test_events_are_pressed_and_let_go(self) -> None:
        kinds = {"a": "lever", "ring": "button", "passed": "plate", "beat": "clock"}
        self.assertEqual(flips_of(kinds, ["ring", "a", "beat", "passed"]),
                         ["ring", "ring", "a", "beat", "passed", "passed"])


def opening(powered: str, unpowered: str) -> dict[str, Fill]:
    return {"x": Fill(powered, unpowered, "a")}


def histories_of(drawing: Drawing) -> Histories:
    drawing.levers = ["a"]
    return Histories(junction_of(drawing))


def wet_after(histories: Histories, *flips: str) -> dict[Place, tuple[int, bool]]:
    walked = histories.walk(flips)
    assert walked is not None
    field = histories.waters[walked.water].field
    return {place: (water.strength, water.is_source) for place, water in field.items()}


def waters_when(histories: Histories, is_on: bool) -> int:
    """How many waters come with the lever so."""
    return len(histories.waters_of_row[(is_on,)])


class SwitchedWater(unittest.TestCase):
    def test_a_formed_source_stays_when_its_floor_opens(self) -> None:
        """Open as built: over the hole no source can form. Then the floor closes, and opens again."""
        histories = histories_of(hand_drawn("###", "#x#", "w.w", marks=opening(ROCK, OPEN)))
        between = (1, 0, 2)
        self.assertEqual(wet_after(histories)[between], (7, False))
        self.assertEqual(wet_after(histories, "a")[between], (8, True))
        self.assertEqual(wet_after(histories, "a", "a")[between], (8, True))
        self.assertEqual((waters_when(histories, False), waters_when(histories, True)), (2, 1))

    def test_what_spread_before_a_hole_opened_stays(self) -> None:
        """With the hole open from the start, the water would go to it only."""
        histories = histories_of(hand_drawn("#######", "###x###", ".w.....", marks=opening(OPEN, ROCK)))
        west = (0, 0, 2)
        self.assertEqual(wet_after(histories)[west], (7, False))
        self.assertIn(west, wet_after(histories, "a"))
        fresh = histories.waters[histories.fresh((True,))].field
        self.assertNotIn(west, fresh)

    def test_water_past_a_hole_that_opens_keeps_flowing(self) -> None:
        histories = histories_of(hand_drawn("######", "###x##", "w.....", marks=opening(OPEN, ROCK)))
        self.assertEqual([wet_after(histories).get((x, 0, 2), (0, False))[0] for x in range(6)],
                         [8, 7, 6, 5, 4, 3])
        self.assertEqual([wet_after(histories, "a").get((x, 0, 2), (0, False))[0] for x in range(6)],
                         [8, 7, 6, 5, 4, 3], "the cells past the hole still have a wet neighbour")

    def test_a_cell_that_takes_water_away_and_gives_it_back(self) -> None:
        gate = histories_of(hand_drawn("####", "w.x.", marks=opening(ROCK, OPEN)))
        self.assertEqual(set(wet_after(gate, "a")), {(0, 0, 1), (1, 0, 1)})
        self.assertEqual(wet_after(gate, "a", "a"), wet_after(gate))

    def test_a_source_that_is_taken_away_leaves_no_water(self) -> None:
        histories = histories_of(hand_drawn("####", "x...", marks=opening(OPEN, WATER)))
        self.assertEqual(wet_after(histories, "a"), {})
        self.assertEqual(wet_after(histories, "a", "a")[(0, 0, 1)], (8, True))

    def test_two_sources_keep_a_third_that_starts_dry(self) -> None:
        """A placed source between two others on rock: when it is taken away, one forms in its place."""
        histories = histories_of(hand_drawn("###", "wxw", marks=opening(OPEN, WATER)))
        self.assertEqual(wet_after(histories, "a")[(1, 0, 1)], (8, True))


def found_route(verdict: str, outlets: list[str], trapped: list[list[int]], **more: bool) -> dict[str, Any]:
    return {"inlet": "mill", "body": "walker", "verdict": verdict, "outlets": outlets, "trapped": trapped,
            "spills": False, "unsure": False, **more}


class Unions(unittest.TestCase):
    def expect(self, verdict: str, *routes: dict[str, Any]) -> dict[str, Any]:
        union = united(list(routes))
        self.assertEqual(union["verdict"], verdict)
        return union

    def test_verdicts(self) -> None:
        kiln, press = found_route("certain", ["kiln"], []), found_route("certain", ["press"], [])
        nothing, doubt = found_route("lost", [], []), found_route("doubtful", ["kiln"], [])
        self.expect("certain", kiln, kiln)
        self.expect("split", kiln, press)
        self.expect("doubtful", kiln, nothing)
        self.expect("doubtful", kiln, doubt)
        self.expect("lost", nothing, nothing)

    def test_what_happens_is_united(self) -> None:
        union = self.expect("split", found_route("doubtful", ["press"], [[1, 0, 1], [0, 0, 0]], spills=True),
                            found_route("doubtful", ["kiln"], [[1, 0, 0], [0, 0, 0]], unsure=True))
        self.assertEqual(union["trapped"], [[0, 0, 0], [1, 0, 0], [1, 0, 1]])
        self.assertEqual((union["outlets"], union["spills"], union["unsure"]), (["kiln", "press"], True, True))


# -- a stand-in for the program --------------------------------------------------------------------


class StandIn(Leat):
    """Answers for random_history with the oracle, and can tell one lie."""

    def __init__(self, lie: str = "") -> None:
        super().__init__("stand-in")
        self.lie = lie
        self.known: dict[str, tuple[Drawing, Histories, list[Clause]]] = {}

    def drawn(self, file: str) -> tuple[Drawing, Histories, list[Clause]]:
        if file not in self.known:
            seed = int(Path(file).read_text(encoding="utf-8").splitlines()[1].split()[3])
            drawing = random_history(seed)
            histories = Histories(junction_of(drawing))
            self.known[file] = (drawing, histories, Claims(histories, seed).drawn())
        return self.known[file]

    def printed(self, kind: str, *arguments: str) -> dict[str, Any]:
        drawing, histories, clauses = self.drawn(arguments[1])
        said = self.answer(arguments, drawing, histories, clauses)
        self.validator(kind).validate(said)
        return said

    def answer(self, arguments: tuple[str, ...], drawing: Drawing, histories: Histories,
               clauses: list[Clause]) -> dict[str, Any]:
        if arguments[0] == "resolve":
            return drawing.document()
        if arguments[0] == "table":
            is_fresh = ("--fresh" in arguments) != (self.lie == "fresh")
            return document("leat-table", [self.table_told(histories, is_fresh)])
        if arguments[0] == "show":
            return document("leat-field", [self.field(histories, arguments[3].split(", "))])
        judged = judged_junction(histories.junction.name, len(histories.waters_of_row), self.findings(histories),
                                 [self.judged(histories, clause) for clause in clauses])
        return findings_document(arguments[1], judged)

    def condition(self, histories: Histories, keys: set[Key]) -> tuple[str, int]:
        states: list[Assignment] = [histories.state(key) for key in sorted(keys)]
        return condition_of(states) or "off", len(states)

    def table_told(self, histories: Histories, is_fresh: bool) -> dict[str, Any]:
        variables = histories.junction.variables
        loops = delays_in_loops(histories.junction)
        delays = {memory.name for memory in histories.junction.memory if memory.kind == "delay"} - loops
        table = histories.table([name for name in variables if name not in delays], is_fresh)
        answers: dict[str, tuple[dict[str, Any], set[Key]]] = {}
        for key in histories.waters_of_row:
            for route in histories.routes(histories.row_waters(key, is_fresh)):
                answers.setdefault(answer_of(route), (route, set()))[1].add(key)
        table["conditions"] = []
        for route, keys in answers.values():
            condition, count = self.condition(histories, keys)
            if self.lie == "condition":
                condition = f"not ({condition})"
            answer = {name: route[name] for name in ("inlet", "body", "verdict", "outlets")}
            table["conditions"].append({**answer, "condition": condition, "combinations": count})
        if self.lie == "row" and table["rows"]:
            table["rows"].pop()
        return table

    def field(self, histories: Histories, events: list[str]) -> dict[str, Any]:
        walked = histories.walk(flips_of(histories.junction.kinds, events))
        assert walked is not None
        water = histories.fresh(histories.key(walked.state)) if self.lie == "forgets" else walked.water
        return {**field_of(histories.waters[water]), "assignment": walked.state}

    def findings(self, histories: Histories) -> list[dict[str, Any]]:
        found = []
        for key, waters in histories.waters_of_row.items():
            if len(waters) > 1 and self.lie != "silence":
                severity = "warning" if histories.is_felt(key) != (self.lie == "severity") else "note"
                ways = [histories.ways[key, water] for water in waters[:2]]
                ways = [ways[0], ways[0]] if self.lie == "one way" else ways
                named = finding("remembering-water", *self.condition(histories, {key}))
                found.append({**named, "severity": severity, "ways": ways})
        for key, event in histories.unquiet:
            if self.lie != "quiet":
                way = next(way for (at, _), way in histories.ways.items() if at == key)
                found.append({**finding("oscillation", *self.condition(histories, {key})),
                              "event": event, "ways": [way], "switched_by": [event]})
        if histories.start is None:
            found.append(finding("oscillation", "off", 0))
        return found

    def judged(self, histories: Histories, clause: Clause) -> dict[str, Any]:
        verdict, way = clause.verdict, None
        if self.lie == "verdict":
            verdict = {"holds": "violated", "violated": "holds"}.get(verdict, verdict)
        if clause.verdict == "violated":
            way = flips_of(histories.junction.kinds, clause.events) or next(
                way for node, way in histories.ways.items() if clause.breaks(*node))
            way = [*way, histories.junction.inputs[0]] if self.lie == "way" else way
        walked = None if way is None else histories.walk(way)
        return {"title": "", "clause": clause.text, "verdict": verdict, "line": 1, "column": 1,
                "example": walked.state if walked else None, "way": way, "ticks": None, "dealt": []}


def said_by(leat: Leat, count: int) -> str:
    given = argparse.Namespace(count=count, seed=1, examples="")
    with tempfile.TemporaryDirectory() as folder:
        return compare_histories.compare(leat, given, Path(folder))


class Comparison(unittest.TestCase):
    def test_the_truth_agrees(self) -> None:
        said = said_by(StandIn(), 25)
        self.assertIn("histories agree", said)
        for kind in ("with several waters", "with routes that fresh water does not give", "with oscillations",
                     "with combinations never reached"):
            self.assertIn(kind, said)

    def test_every_lie_is_noticed(self) -> None:
        for lie in ("fresh", "row", "condition", "forgets", "silence", "severity", "one way", "quiet", "verdict",
                    "way"):
            with self.subTest(lie=lie), self.assertRaises(Difference):
                said_by(StandIn(lie), 25)


if __name__ == "__main__":
    unittest.main()
