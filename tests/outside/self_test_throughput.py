"""The comparison of throughput passes on a case worked out by hand and notices every lie.

Two lanes of standard water pass 1.4 / 0.6 bodies a second each, 2 333 333 in a million seconds, and join in one
cell that passes as many; a lift passes 1.2 / 1.95. Ticks by docs/model.md, "trips".

    /usr/bin/python3 -m unittest self_test_throughput
"""
from __future__ import annotations

import math
import unittest
from typing import Any, Callable

from drawing import PRACTICE
from leat_program import Difference
from networkx_throughput import compare_case

LANE, LIFT, ALONG = 2_333_333, 615_385, 19
TWO_PARTS, SLANTING = 2_086_997, 20  # 2 / sqrt(5) of a lane


def position(cell: int, push: tuple[float, float], level: int = 1, outlet: Any = None) -> dict[str, Any]:
    """Cells count ten to a row and a hundred to a level."""
    return {"cell": cell, "at": [cell % 10, cell // 10 % 10, level], "wet": True, "push": list(push),
            "outlet": outlet}


def case(positions: list[dict[str, Any]], moves: list[list[Any]], starts: list[int], **answer: Any) -> dict[str, Any]:
    return {"seed": 0, "practice": PRACTICE, "footprint": 1, "height": 2, "positions": positions, "moves": moves,
            "starts": starts, "answers": [{"outlet": 0, **answer}]}


def joining(**lies: Any) -> dict[str, Any]:
    positions = [position(10, (1, 0)), position(12, (-1, 0)), position(11, (0, 1)), position(21, (0, 0), 1, 0)]
    truth = {"rate": LANE, "narrowest": [[11, LANE]], "quickest": 2 * ALONG, "longest": 2 * ALONG}
    return case(positions, [[0, 2, "push"], [1, 2, "push"], [2, 3, "push"]], [0, 1], **{**truth, **lies})


def lifting(**lies: Any) -> dict[str, Any]:
    positions = [position(10, (1, 0)), position(11, (0, 0)), position(111, (0, 0), 2, 0)]
    truth = {"rate": LIFT, "narrowest": [[11, LIFT]], "quickest": ALONG + 21, "longest": ALONG + 21}
    return case(positions, [[0, 1, "push"], [1, 2, "rise"]], [0], **{**truth, **lies})


def slanting(**lies: Any) -> dict[str, Any]:
    """A current of one part east and two parts south, whose southern way alone leads to the outlet."""
    part = 1 / math.sqrt(5)
    positions = [position(10, (part, 2 * part)), position(11, (0, 0)), position(20, (0, 0), 1, 0)]
    truth = {"rate": TWO_PARTS, "narrowest": [[10, TWO_PARTS]], "quickest": SLANTING, "longest": SLANTING}
    return case(positions, [[0, 1, "push"], [0, 2, "push"]], [0], **{**truth, **lies})


class Throughput(unittest.TestCase):
    def test_hand_made_cases_agree(self) -> None:
        self.assertEqual(compare_case(joining())["flows"], 1)
        self.assertEqual(compare_case(lifting())["flows"], 1)
        self.assertEqual(compare_case(slanting())["flows"], 1)

    def expect_noticed(self, made: Callable[..., dict[str, Any]], **lies: Any) -> None:
        for name, lie in lies.items():
            with self.subTest(lie=name), self.assertRaises(Difference):
                compare_case(made(**{name: lie}))

    def test_lies_are_noticed(self) -> None:
        self.expect_noticed(joining, rate=2 * LANE, narrowest=[[10, LANE]], quickest=ALONG, longest=None)
        self.expect_noticed(slanting, rate=TWO_PARTS // 2, quickest=ALONG, longest=36)
        self.expect_noticed(lifting, rate=LANE, narrowest=[[10, LIFT]], quickest=None, longest=ALONG)

    def test_a_loop_on_the_way_has_no_longest_trip(self) -> None:
        looping = joining()
        looping["moves"].append([2, 0, "push"])
        with self.assertRaisesRegex(Difference, "longest"):
            compare_case(looping)

    def test_what_enters_at_its_outlet_has_no_limit(self) -> None:
        entering = joining(rate=None, narrowest=[], quickest=0)
        entering["starts"].append(3)
        compare_case(entering)


if __name__ == "__main__":
    unittest.main()
