"""The comparisons pass on a program that tells the truth and notice every lie.

    /usr/bin/python3 -m unittest self_test_comparisons
"""
from __future__ import annotations

import argparse
import tempfile
import unittest
from pathlib import Path
from types import ModuleType

import compare_fields
import compare_tables
import conditions
import networkx_routes
import networkx_water
import symmetry
from drawing import Drawing
from leat_program import Difference, Leat, expect_equal
from random_designs import random_design
from stand_in import StandIn
from symmetry import wide_pair


def said_by(comparison: ModuleType, leat: Leat, count: int, seed: int = 1) -> str:
    given = argparse.Namespace(count=count, seed=seed, examples="")
    with tempfile.TemporaryDirectory() as folder:
        return str(comparison.compare(leat, given, Path(folder)))


def is_wide(drawing: Drawing) -> bool:
    return wide_pair(drawing, 7) is not None and any(body.footprint == 2 for body in drawing.bodies)


class Comparisons(unittest.TestCase):
    def expect_agreement(self, comparison: ModuleType, count: int) -> None:
        self.assertIn("agree", said_by(comparison, StandIn(), count))

    def expect_lies_noticed(self, comparison: ModuleType, count: int, *lies: str) -> None:
        for lie in lies:
            with self.subTest(lie=lie), self.assertRaises(Difference):
                said_by(comparison, StandIn(lie), count)

    def test_fields(self) -> None:
        self.expect_agreement(compare_fields, 10)
        self.expect_lies_noticed(compare_fields, 10, "cell", "strength", "current", "spill", "dry")

    def test_tables(self) -> None:
        self.expect_agreement(compare_tables, 10)
        self.expect_lies_noticed(compare_tables, 10, "trapped", "verdict", "row")

    def test_symmetry_and_that_it_reaches_wide_bodies(self) -> None:
        wide = next(seed for seed in range(1, 1000) if is_wide(random_design(seed)))
        said = said_by(symmetry, StandIn(), 4, wide)
        self.assertIn("turns agree", said)
        self.assertNotIn(" 0 routes of footprint 2", said)
        self.expect_lies_noticed(symmetry, 4, "compass")

    def test_networkx_water(self) -> None:
        self.expect_agreement(networkx_water, 10)
        self.expect_lies_noticed(networkx_water, 10, "strength", "dry")

    def test_networkx_routes(self) -> None:
        self.expect_agreement(networkx_routes, 10)
        self.expect_lies_noticed(networkx_routes, 10, "dominator", "component", "saved", "rule")

    def test_conditions(self) -> None:
        self.expect_agreement(conditions, 10)
        self.expect_lies_noticed(conditions, 10, "condition", "wordy", "finding", "silence")


class Program(unittest.TestCase):
    def test_no_answer_is_a_difference(self) -> None:
        with self.assertRaisesRegex(Difference, "line 1 column 1"):
            Leat("/bin/true").resolve(Path("any.leat"))

    def test_output_that_is_no_document_is_a_difference(self) -> None:
        with self.assertRaisesRegex(Difference, "exit code 0"):
            Leat("/bin/echo").table(Path("any.leat"))

    def test_a_wrong_exit_code_is_a_difference(self) -> None:
        with tempfile.TemporaryDirectory() as folder:
            program = Path(folder) / "fails"
            program.write_text("#!/bin/sh\necho '{}'\nexit 4\n", encoding="utf-8")
            program.chmod(0o755)
            with self.assertRaisesRegex(Difference, "exit code 4"):
                Leat(str(program)).check(Path("any.leat"))


class Differences(unittest.TestCase):
    def test_names_the_first_place(self) -> None:
        with self.assertRaisesRegex(Difference, r"here / a \[1\]: printed 3, expected 2"):
            expect_equal({"a": [1, 3]}, {"a": [1, 2]}, "here")

    def test_lengths_and_types_count(self) -> None:
        for got, expected in (([1, 2], [1]), ([1], [1, 2]), (True, 1), (1, 1.0), ({"a": 1}, {"b": 1})):
            with self.subTest(got=got), self.assertRaises(Difference):
                expect_equal(got, expected, "here")


if __name__ == "__main__":
    unittest.main()
