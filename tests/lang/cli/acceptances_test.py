"""Acceptances of a file with several junctions: one that names no place speaks of all of them. Demo designs, invented.

    /usr/bin/python3 acceptances_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import sys
import unittest

import works_chain_test as chains
from works_chain_test import told

MARKS = {"_": "open", "w": "water", "i": "inlet mill", "k": "outlet kiln", "p": "outlet press",
         "e": "open when west else water", "v": "water when west else open", "a": "open when spare else sign"}
SHORT = "junction short { level 0 { |wi____k_p| } level 1 { |_________| } }\n"
RUN = "junction run { level 0 { |wi____k| } level 1 { |_______| } }\n"
IDLE = "junction idle { level 0 { |wi____k| } level 1 { |____a__| } }\n"
SWITCHED = "junction switched { level 0 { |k___eiv___p| } level 1 { |___________| } }\n"
WORKS = "works plant { place short as one at 0 0 0 }\n"


def design(*parts: str) -> str:
    """With the signals and marks that are drawn, and no others."""
    text = "".join(parts)
    drawn = set("".join(text.split("|")[1::2]))
    signals = [f"lever {name}" for name, mark in (("west", "e"), ("spare", "a")) if mark in drawn]
    marks = [f"  {mark} {meaning}" for mark, meaning in MARKS.items() if mark in drawn]
    return "\n".join(["leat 1", "signals {", *signals, "}", "marks {", *marks, "}", text])


def lines(*parts: str) -> list[str]:
    text = told(design(*parts), "check", "--as", "lines")
    return [": ".join(line.split(": ")[1:3]) for line in text.splitlines()]


def acceptance(kind: str) -> str:
    return f'accept {kind} because "it comes later"\n'


class Acceptances(unittest.TestCase):
    UNREACHED = acceptance("unreached-outlet")
    STRANDING = acceptance("stranding-switch")

    def test_what_answers_in_one_junction_is_stale_in_none(self) -> None:
        once = ["accepted: unreached-outlet"]
        self.assertEqual(lines(SHORT, RUN, self.UNREACHED), once)
        self.assertEqual(lines(RUN, SHORT, self.UNREACHED), once)
        self.assertEqual(lines(SHORT, RUN, WORKS, self.UNREACHED), once * 2)

    def test_a_finding_without_a_cell_can_be_accepted(self) -> None:
        self.assertEqual(sorted(lines(SWITCHED, IDLE, acceptance("idle-signal"), self.STRANDING)),
                         ["accepted: idle-signal", "accepted: stranding-switch"])

    def test_what_answers_nowhere_is_told_once(self) -> None:
        self.assertEqual(lines(RUN, RUN.replace("run", "other"), WORKS.replace("short", "run"), self.UNREACHED),
                         ["warning: stale-acceptance"])

    def test_one_with_a_place_is_of_its_junction_alone(self) -> None:
        placed = self.UNREACHED.replace(" because", " at run 6 0 0 because")
        self.assertEqual(lines(SHORT, RUN, placed), ["error: unreached-outlet", "warning: stale-acceptance"])

    def test_what_is_expected_of_findings_does_not_count_it_either(self) -> None:
        expected = "expect of run { findings none }\nexpect of short { findings none }\n"
        self.assertEqual(lines(SHORT, RUN, self.UNREACHED, expected), ["accepted: unreached-outlet"])
        self.assertEqual(lines(RUN, RUN.replace("run", "other"), self.UNREACHED, "expect of run { findings none }\n"),
                         ["warning: stale-acceptance", "error: violated"])


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--leat", required=True)
    chosen, rest = parser.parse_known_args()
    chains.LEAT = chosen.leat
    unittest.main(argv=[sys.argv[0], *rest])
