"""Self tests of the checks that rest on libraries and published tables, on hand-made documents.

    /usr/bin/python3 -m unittest self_test_libraries
"""
from __future__ import annotations

import copy
import json
import unittest
from itertools import product
from typing import Any

import jsonschema

from conditions import compare_findings, compare_table, expect_rows
from decoders import DECODER_74X138, DECODER_74X139, compare_sorter, function_table
from expression_text import read_expression
from hand_made import hand_drawn, junction_of
from leat_program import ROOT, Difference, schema
from networkx_routes import compare_graph
from networkx_water import draw_floor
from stand_in import finding, judged_junction, summary

KINDS = ("leat-design", "leat-field", "leat-table", "leat-findings", "leat-trail", "leat-waves",
         "leat-machine", "leat-guard", "leat-train", "leat-comparison", "leat-record", "leat-bill",
         "leat-page")


def position(end: Any, trapped: bool, component: int, dominator: Any) -> dict[str, Any]:
    outlet = "kiln" if end == "outlet" else None
    return {"at": [0, 0, 0], "side": "none", "fallen": 0, "end": end, "outlet": outlet,
            "trapped": trapped, "component": component, "dominator": dominator}


def hand_made_trail() -> dict[str, Any]:
    """0 forks to 1 and 2, which circle (1-2) and meet in 3, an outlet; 2 may also end dry in 4."""
    moves = [(0, 1), (0, 2), (1, 2), (2, 1), (1, 3), (2, 3), (2, 4)]
    return {
        "name": "yard", "inlet": "mill", "body": "walker", "assignment": {}, "done": [], "starts": [0], "paces": [], "arrivals": [],
        "positions": [
            position(None, False, 0, None), position(None, False, 1, 0), position(None, False, 1, 0),
            position("outlet", False, 2, 0), position("dry", True, 3, 2)],
        "moves": [{"from": a, "to": b, "rule": "push", "sure": True} for a, b in moves],
    }


class RouteGraphs(unittest.TestCase):
    def test_a_true_graph_passes_and_fits_its_schema(self) -> None:
        trail = hand_made_trail()
        compare_graph(trail, "hand made")
        document = {"format": "leat-trail", "version": 1, "junctions": [trail]}
        jsonschema.Draft202012Validator(schema("leat-trail")).validate(document)

    def test_each_false_statement_is_noticed(self) -> None:
        false = (("dominator", 3, 1), ("dominator", 4, 0), ("dominator", 1, None), ("component", 2, 2),
                 ("component", 4, 2), ("trapped", 4, False), ("trapped", 1, True), ("end", 4, None))
        for key, index, value in false:
            trail = copy.deepcopy(hand_made_trail())
            trail["positions"][index][key] = value
            with self.subTest(key=key, index=index), self.assertRaises(Difference):
                compare_graph(trail, "hand made")

    def test_a_position_that_nothing_reaches_is_noticed(self) -> None:
        trail = hand_made_trail()
        trail["positions"].append(position("dry", True, 4, None))
        with self.assertRaisesRegex(Difference, "reachable"):
            compare_graph(trail, "hand made")


def sorter(levers: int, outlet_of: dict[tuple[bool, ...], str]) -> dict[str, Any]:
    names = ["amber", "birch", "cedar"][:levers]
    rows = []
    for setting in product((False, True), repeat=levers):
        found = {"inlet": "mill", "body": "walker", "verdict": "certain", "outlets": [outlet_of[setting]],
                 "trapped": [], "spills": False, "unsure": False}
        rows.append({"assignment": dict(zip(names, setting)), "routes": [found]})
    return {"name": "sorter", "signals": names, "rows": rows}


def right_sorter(text: str) -> dict[str, Any]:
    selects, table = function_table(text)
    return sorter(len(selects), {setting: f"bin_{pin}" for setting, pin in table.items()})


class Decoders(unittest.TestCase):
    def test_the_tables_are_one_hot(self) -> None:
        for text, outputs in ((DECODER_74X139, 4), (DECODER_74X138, 8)):
            selects, table = function_table(text)
            self.assertEqual((2 ** len(selects), len(table), len(set(table.values()))), (outputs,) * 3)
            for setting, pin in table.items():
                value = sum(bit << place for place, bit in enumerate(reversed(setting)))
                self.assertEqual(pin, f"Y{value}")

    def test_right_sorters_pass(self) -> None:
        four = compare_sorter(right_sorter(DECODER_74X139), DECODER_74X139, "four")
        self.assertIn("bin_Y2=Y2", four)
        eight = compare_sorter(right_sorter(DECODER_74X138), DECODER_74X138, "eight")
        self.assertIn("amber=C, birch=B", eight)

    def test_wrong_sorters_do_not(self) -> None:
        merged = right_sorter(DECODER_74X139)
        merged["rows"][0]["routes"][0]["outlets"] = merged["rows"][1]["routes"][0]["outlets"]
        doubtful = right_sorter(DECODER_74X138)
        doubtful["rows"][5]["routes"][0]["verdict"] = "doubtful"
        short = right_sorter(DECODER_74X139)
        short["rows"].pop()
        for wrong in (merged, doubtful, short):
            text = DECODER_74X138 if wrong is doubtful else DECODER_74X139
            with self.assertRaises(Difference):
                compare_sorter(wrong, text, "wrong")


class Conditions(unittest.TestCase):
    def setUp(self) -> None:
        self.junction = junction_of(hand_drawn("###", "IK#", "..#", levers=["amber", "birch", "cedar"]))

    def test_precedence(self) -> None:
        self.assertEqual(read_expression("a or b xor not c and d"),
                         ["or", "a", ["xor", "b", ["and", ["not", "c"], "d"]]])
        self.assertEqual(read_expression("not (a or on)"), ["not", ["or", "a", True]])

    def test_malformed_conditions(self) -> None:
        for text in ("", "a b", "a and", "(a", "a)", "not", "or a"):
            with self.subTest(text=text), self.assertRaises(ValueError):
                read_expression(text)

    def test_rows_are_told_apart(self) -> None:
        rows = [False, False, False, True, True, True, True, False]  # amber xor (birch and cedar)
        expect_rows("amber xor birch and cedar", rows, self.junction, "hand made")
        longer = "amber and not (birch and cedar) or not amber and birch and cedar"
        expect_rows(longer, rows, self.junction, "hand made")
        for text in ("amber or birch and cedar", "on", "amber xor birch", "amber xor birch and ceder"):
            with self.subTest(text=text), self.assertRaises(Difference):
                expect_rows(text, rows, self.junction, "hand made")

    def test_condensed_rows_must_say_what_the_full_rows_say(self) -> None:
        full = right_sorter(DECODER_74X139)
        self.assertEqual(compare_table(full, full, self.junction, "hand made"), 0)
        condensed = {"rows": [copy.deepcopy(full["rows"][0])]}
        condensed["rows"][0]["assignment"].pop("birch")
        with self.assertRaises(Difference):
            compare_table(condensed, full, self.junction, "hand made")

    def test_combinations_are_counted(self) -> None:
        still = finding("still-water", "on", 8)
        with self.assertRaisesRegex(Difference, "combinations"):
            compare_findings([finding("diagonal-current", "amber", 3)], self.junction, "hand made")
        compare_findings([finding("diagonal-current", "amber", 4), still], self.junction, "hand made")
        with self.assertRaisesRegex(Difference, "no finding"):
            compare_findings([], self.junction, "hand made")


class Schemas(unittest.TestCase):
    def test_each_is_a_schema_of_its_draft(self) -> None:
        for kind in KINDS:
            jsonschema.Draft202012Validator.check_schema(schema(kind))
        files = sorted(path.name for path in (ROOT / "docs" / "schemas").glob("leat-*.json"))
        self.assertEqual(files, sorted(f"{kind}.schema.json" for kind in KINDS))

    def test_each_is_strict(self) -> None:
        """Every object of every schema either names its keys or gives the form of their values."""
        def walk(node: Any, where: str) -> None:
            if isinstance(node, dict):
                if node.get("type") == "object":
                    self.assertIn("additionalProperties", node, where)
                for key, value in node.items():
                    walk(value, f"{where}/{key}")
            elif isinstance(node, list):
                for item in node:
                    walk(item, where)
        for kind in KINDS:
            walk(schema(kind), kind)

    def test_a_design_is_held_to_its_form(self) -> None:
        validator = jsonschema.Draft202012Validator(schema("leat-design"))
        right = hand_drawn("###", "IK#", levers=["amber"], wires={"shut": ("not", "amber")}).document()
        validator.validate(right)
        changes = (("outside", "water"), ("cells", [[[-1]]]), ("size", {"x": 1, "y": 1}), ("mood", "good"),
                   ("signals", [{"name": "a", "kind": "wire", "definition": ["and", "a"]}]),
                   ("signals", [{"name": "a", "kind": "lever", "definition": "b"}]),
                   ("inlets", [{"name": "mill", "cells": [[0, 0]]}]))
        for key, value in changes:
            wrong = json.loads(json.dumps(right))
            wrong["junctions"][0][key] = value
            with self.subTest(key=key, value=value):
                self.assertFalse(validator.is_valid(wrong))

    def test_places_and_expectations_of_findings(self) -> None:
        validator = jsonschema.Draft202012Validator(schema("leat-findings"))
        expectation = {"title": "routes", "clause": "never trapped", "verdict": "violated",
                       "line": 3, "column": 1, "example": {"amber": True}, "way": ["amber"],
                       "ticks": None, "dealt": []}
        judged = judged_junction("yard", 2, [finding("pinned", "on", 1)], [expectation])
        fault = {"name": "open-row", "line": 1, "column": 2, "headline": "A row is open", "remedy": ""}
        right: dict[str, Any] = {"format": "leat-findings", "version": 1, "interrupted": False,
                                 "files": [{"file": "a.leat", "verdict": "violated", "diagnostics": [fault],
                                            "junctions": [judged]}],
                                 "summary": summary("violated"), "exit": 1}
        validator.validate(right)
        expectation["verdict"] = "passed"
        self.assertFalse(validator.is_valid(right))


class Floors(unittest.TestCase):
    def test_floors_hold_sources_walls_and_switched_walls(self) -> None:
        kinds = {fill for seed in range(20) for fill in draw_floor(seed).cells.values()}
        self.assertTrue({"water", "rock", "sign", "open"} <= {fill.powered for fill in kinds})
        self.assertTrue(any(fill.control for fill in kinds))


if __name__ == "__main__":
    unittest.main()
