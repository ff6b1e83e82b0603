"""One drawing twice: as it is, judged as a whole, and with 17 gates beside it that change nothing, judged by regions.

What is looked at there lies in the excerpt of no neighbour unless it is asked for: under a fall beside another one,
down a shaft beyond the edge, under a net that carries.

    /usr/bin/python3 excerpts_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import json
import os
import sys
import unittest
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))
import cli_test  # noqa: E402
from cli_test import leat  # noqa: E402
from regions_test import Files  # noqa: E402

# Levels from the lowest one up, rows from north to south.
SHELTERED = (
    "XXXXXXX XXXXXXX XXX_XXX XXXX_KX XXXXXXX XXXXXXX XXXXXXX XXXXXXX XXXXXXX",
    "XXXXXXX XXXXKXX XXLikXX XXXX_KX XXXXXXX XXXXXXX XXXXXXX XXXXXXX XXXXXXX",
    "XXXXXXX XXXXKXX XXL__XX XXXX_KX XXXXXXX XXXXXXX XXXXXXX XXXXXXX XXXXXXX",
    "XXXXXXX XXXXKXX XXL__XX XXXX_KX XXXXXXX XXXXXXX XXXXXXX XXXXXXX XXXXXXX",
    "XXXXXXX XXXXKXX XXL__XX XXXX_KX XXXXXXX XXXXXXX XXXXXXX XXXXXXX XXXXXXX",
    "XXXXXXX XXXXKXX XXL__XX XXXX_KX XXXXXXX XXXXXXX XXXXXXX XXXXXXX XXXXXXX",
    "XXXXXXX XXXXXXX XXXwXXX XXXX_XX XXXXoXX XXXXGXX XXXXjXX XXXXwXX XXXXXXX",
    "XXXXXXX XXXXXXX XXXXXXX XXXX_XX XXXX_XX XXXX_XX XXXX_XX XXXXXXX XXXXXXX",
)

SHAFT = (
    "XXXXXXXXX XXXXXkLXX XXXXXXXXX",
    "XXXXXXXXX XXXXX_LXX XXXXXXXXX",
    "XXXXXXXXX XXXXX_LXX XXXXXXXXX",
    "XXXXXXXXX XXXXX_LXX XXXXXXXXX",
    "XXXXXXXXX XXXXX_LXX XXXXXXXXX",
    "XXXXXXXXX XXXXX_LXX XXXXXXXXX",
    "XXXXXXXXX wi____LXX XXXXXXXXX",
    "XXXXXXXXX X_____LXX XXXXXXXXX",
    "XXXXXXXXX X_____LXX XXXXXXXXX",
    "XXXXXXXXX XXXXXXXXX XXXXXXXXX",
)

NET = (
    "XXXXX XXXXX XXXXX",
    "XXXXX Xk_XX XXXXX",
    "XXXXX XX_XX XXXXX",
    "XXXXX XX_XX XXXXX",
    "XXXXX XXnXX XXXXX",
    "XXXXX XXwLX XXXXX",
    "XXXXX XX_LX XXXXX",
    "XXXXX XX_XX XXXXX",
    "XXXXX XX_XX XXXXX",
    "XXXXX XX_XX XXXXX",
    "XXXXX XXiXX XXXXX",
    "XXXXX XX_XX XXXXX",
    "XXXXX XXXXX XXXXX",
)

RUN = (
    "wi__sss___k XXXXXXXXXXX",
    "___sw______ XXXXXLXXXXX",
)

# Water remembers in several places of it, and its walkers may come round.
ROUND = (
    "XXXXXXXXXXX XXXXXXXXXXX XXXXXXXXXXX XXXXXXXXXXX",
    "XXXXXXXXXXX X___scaX_XX X___kfj__po XXXXXXXXXXX",
    "XXXXXXXXXXX X_w__Xb_fX_ X_X_ea_f_di XXXXXXXXXXX",
    "XXXXXXXXXXX XXXXXXXXXXX XXXXXXXXXXX XXXXXXXXXXX",
)

GATES = "ABCDEFHIJMNOPQRST"


def drawn(levels: tuple[str, ...], gates_before: int, level: int, row: int) -> str:
    """With a gap of as many cells as there are gates in each row, before a column; the gates stand in one row of it."""
    text = ""
    for number, rows in enumerate(levels):
        text += f"  level {number} {{\n"
        for at, cells in enumerate(rows.split()):
            gap = GATES if (number, at) == (level, row) else "X" * len(GATES)
            text += f"    |{cells[:gates_before]}{gap}{cells[gates_before:]}|\n"
        text += "  }\n"
    return text


class Excerpts(Files):
    def design(self, head: str, levels: str, expected: str, has_gates: bool) -> str:
        levers = "".join(f"  lever gate{gate}\n" for gate in GATES) if has_gates else ""
        marks = "".join(f"  {gate} sign when gate{gate} else rock\n" for gate in GATES) if has_gates else ""
        return self.file("leat 1\n" + head.replace("signals {\n", "signals {\n" + levers).replace(
            "marks {\n", "marks {\n  X rock\n  _ open\n  w water\n  i inlet mill\n  k outlet kiln\n" + marks)
            + "junction run {\n" + levels + "}\nexpect \"all\" {\n" + expected + "}\n")

    def both(self, head: str, levels: tuple[str, ...], gap: tuple[int, int, int], expected: str) -> list[object]:
        """What is found, but for the columns and while cells change, and what becomes of the clauses."""
        as_it_is = "".join(f"  level {number} {{\n" + "".join(f"    |{cells}|\n" for cells in rows.split()) + "  }\n"
                           for number, rows in enumerate(levels))
        told = []
        for text, has_gates in ((as_it_is, False), (drawn(levels, *gap), True)):
            done = leat("check", "--as", "json", self.design(head, text, expected, has_gates))
            junction = json.loads(done.out)["files"][0]["junctions"][0]
            found = sorted((finding["name"], finding["severity"], len(finding["cells"]))
                           for finding in junction["findings"]
                           if finding["name"] != "idle-signal" and not finding["name"].endswith("-switch"))
            told.append((found, [clause["verdict"] for clause in junction["expectations"]]))
        return told

    def test_a_hole_under_a_fall_beside_a_fall(self) -> None:
        """The second fall's water only goes down: it never wets the cell between them."""
        head = ("body hopper { }\nsignals {\n  lever l\n  lever a\n  lever b\n  lever c\n  lever d\n"
                "  wire odd = a xor b xor c xor d\n}\nmarks {\n  j inlet side\n  o outlet press\n"
                "  L sign when l else rock\n  G open when l else rock\n  K sign when odd else rock\n}\n")
        alone, beside = self.both(head, SHELTERED, (2, 1, 2), "  mill may reach kiln\n")
        self.assertEqual(alone[1], ["violated"])
        self.assertEqual(beside, alone)

    def test_a_drop_beyond_the_edge(self) -> None:
        head = "practice { edge_drop 6 }\nsignals {\n  lever l\n}\nmarks {\n  L sign when l else rock\n}\n"
        alone, beside = self.both(head, SHAFT, (7, 6, 1), "  finds open-edge\n")
        self.assertEqual(alone[1], ["holds"])
        self.assertEqual(beside, alone)

    def test_water_over_what_carries(self) -> None:
        head = ("practice { sink_cells 0  cushion_advised 5 }\nmaterials { block carries\n"
                "  net passes water, passes bodies, carries, shows slope }\nsignals {\n  lever l\n}\n"
                "marks {\n  n net\n  L block when l else rock\n}\n")
        alone, beside = self.both(head, NET, (4, 5, 1), "  walker never spilled\n")
        self.assertNotIn("thin-cushion", [name for name, _, _ in alone[0]])
        self.assertEqual(beside, alone)

    def test_what_was_not_looked_for_everywhere_is_not_said_to_be_all_right(self) -> None:
        head = "materials { block carries }\nsignals {\n  lever l\n}\nmarks {\n  s sign\n  L block when l else rock\n}\n"
        alone, _ = self.both(head, RUN, (11, 1, 0), "  mill reaches kiln\n")
        self.assertIn("long-head-run", [name for name, _, _ in alone[0]])
        path = self.design(head, drawn(RUN, 11, 1, 0), "  mill reaches kiln\n", True)
        done = leat("check", "--as", "json", path)
        self.assertEqual(done.code, 3)
        junction = json.loads(done.out)["files"][0]["junctions"][0]
        self.assertIn("long-head-run", junction["kinds_left_out"])
        self.assertIn("long-head-run", junction["open"][0]["headline"])
        for form in ("text", "lines", "junit", "markdown", "csv", "sarif"):
            self.assertIn("It is not known of all combinations whether these show", leat("check", "--as", form, path).out)
        self.assertEqual(leat("check", "--fail-on", "error", path).code, 0)

    def test_what_perhaps_nobody_comes_to_does_not_violate(self) -> None:
        levers = "".join(f"  lever l{number}\n" for number in (2, 3, 5, 6, 7)) + "  lever l8 starts on\n"
        head = ("body b { height 1 }\nsignals {\n" + levers + "}\nmarks {\n  s sign\n  j inlet side\n  o outlet press\n"
                "  p outlet bin\n  a open when l2 else water\n  b rock when l7 and l8 else sign\n"
                "  c open when l2 else rock\n  d water when l3 else rock\n  e water when l5 else rock\n"
                "  f rock when l6 else open\n}\naccept unreached-outlet because \"it is not asked\"\n")
        path = self.design(head, drawn(ROUND, 11, 2, 2), "  mill never spilled\n", True)
        self.assertEqual(leat("check", "--fail-on", "error", path).code, 3)
        junction = json.loads(leat("check", "--as", "json", path).out)["files"][0]["junctions"][0]
        errors = [finding for finding in junction["findings"]
                  if finding["severity"] == "error" and not finding["accepted"]]
        self.assertTrue(errors)
        self.assertFalse(any(finding["proved"] for finding in errors))
        self.assertIn("perhaps nobody comes to it", leat("check", "--as", "text", path).out)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--leat", required=True)
    options, rest = parser.parse_known_args()
    cli_test.LEAT = os.path.abspath(options.leat)
    unittest.main(argv=[sys.argv[0], *rest])
