"""Designs that ask for more than can be run: rounds of the logic without end, conditions deeper than a stack, less
memory than a design takes. Every command ends, soon and with a word of why. Demo designs, invented.

    /usr/bin/python3 bounds_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import re
import resource
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

LEAT = ""
UNDECIDED, FAULT = 3, 4

MARKS = """marks {
  _  open
  w  water
  f  open when %s else water
  i  inlet  millhouse
  k  outlet kiln
}
"""
RUN = """junction straight "the straight run" {
  level 0 { |wi_____k| }
  level 1 { |___f____| }
}
"""


def register(stages: int, tap: int) -> str:
    """Delays behind each other; the lever makes them shift, through 2 ** stages - 1 values before one comes again."""
    wires = [f"  wire d[1] = d[{stages}] xor d[{tap}] xor go after 1 ticks"]
    wires += [f"  wire d[{n}] = d[{n - 1}] after 1 ticks" for n in range(2, stages + 1)]
    return "leat 1\nsignals {\n  lever go\n" + "\n".join(wires) + "\n}\n" + MARKS % "d[1]" + RUN


GATED = """junction straight "the straight run" {
  level 0 { |wi__f__k| }
  level 1 { |____f___| }
}
"""

# Source of the taps: any table of shift registers of full length.
ENDLESS = register(39, 35)


def deep(levers: int) -> str:
    """One wire over many levers, and two places that hang on it."""
    names = " and ".join(f"a[{n}]" for n in range(levers))
    return (f"leat 1\nsignals {{\n  for n in 0..{levers - 1} {{ lever a[n] }}\n  lever d\n  wire all = {names}\n}}\n"
            + MARKS.replace("else water", "else rock") % "d" + GATED
            + "works yard {\n  place straight as one at 0 0 0 with d = all xor d\n"
            "  place straight as other at 0 4 0\n  join one.kiln -> other.millhouse\n}\n"
            'expect "the yard" of yard {\n  never trapped when all\n}\n')

TRAIN = ["train", "FILE", "--from", "millhouse", "--every", "40 ticks"]


class Done:
    def __init__(self, done: subprocess.CompletedProcess[str]) -> None:
        self.code, self.out, self.err = done.returncode, done.stdout, done.stderr


def leat(text: str, *arguments: str, megabytes: int = 2048) -> Done:
    """Run within so much memory; FILE stands for the design."""
    bound = (megabytes << 20, megabytes << 20)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.leat"
        path.write_text(text, encoding="utf-8")
        return Done(subprocess.run([LEAT, *(str(path) if part == "FILE" else part for part in arguments)],
                                   capture_output=True, text=True, timeout=60, check=False, cwd=folder,
                                   preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_AS, bound)))


class LogicWithoutEnd(unittest.TestCase):
    WHY = re.compile(r"\d{7} rounds did not tell whether the signals come to rest")

    def test_check_is_undecided(self) -> None:
        done = leat(ENDLESS, "check", "FILE", "--as", "text")
        self.assertEqual(done.code, UNDECIDED, done.err)
        self.assertRegex(done.out, self.WHY)
        self.assertNotIn("too many", done.out)

    def test_commands_that_judge_say_why_and_what_to_do(self) -> None:
        for command in (["table"], ["guard"], ["machine"], ["table", "--as", "markdown"]):
            done = leat(ENDLESS, command[0], "FILE", *command[1:])
            self.assertEqual(done.code, UNDECIDED, (command, done.err))
            self.assertRegex(done.err, self.WHY, command)
            self.assertRegex(done.err, "leat waves|take signals or delays out", command)
        self.assertIn("after go changes", leat(ENDLESS, "machine", "FILE").err)

    def test_commands_that_walk_say_so(self) -> None:
        for arguments in (["follow", "FILE", "--from", "millhouse", "--do", "go on"], ["show", "FILE", "--do", "go on"],
                          ["draw", "FILE", "--do", "go on"], [*TRAIN, "--do", "go on"]):
            done = leat(ENDLESS, *arguments)
            self.assertIn(done.code, (2, UNDECIDED), (arguments, done.err))
            self.assertIn("do not come to rest", done.err, arguments)

    def test_the_others_end_as_well(self) -> None:
        for arguments in (["waves", "FILE", "--do", "go on"], ["page", "FILE", "--out", "page.html"],
                          ["record", "FILE"], ["compare", "FILE", "FILE"], TRAIN):
            done = leat(ENDLESS, *arguments)
            self.assertIn(done.code, (0, 1, 2, UNDECIDED), (arguments, done.err))

    def test_a_works_of_it_is_undecided(self) -> None:
        plant = ENDLESS + "works yard {\n  place straight as one at 0 0 0\n  place straight as other at 0 4 0\n}\n"
        self.assertEqual(leat(plant, "check", "FILE").code, UNDECIDED)

    def test_a_long_oscillation_is_still_one(self) -> None:
        done = leat(register(17, 14), "machine", "FILE")
        self.assertEqual(done.code, 1, done.err)
        self.assertIn("131071 rounds", done.out)


class DeepConditions(unittest.TestCase):
    def test_what_fits_is_decided(self) -> None:
        done = leat(deep(1_000), "check", "FILE")
        self.assertNotIn("undecided", done.out + done.err)

    def test_what_is_deeper_is_undecided(self) -> None:
        done = leat(deep(40_000), "check", "FILE")
        self.assertIn(done.code, (1, UNDECIDED), done.err)
        self.assertIn("undecided", done.out + done.err)


class LittleMemory(unittest.TestCase):
    def test_it_is_said_and_no_abort(self) -> None:
        said = 0
        for megabytes in range(60, 240, 20):
            done = leat(deep(20_000), "check", "FILE", megabytes=megabytes)
            if done.code == FAULT:
                said += 1
                self.assertIn("not enough memory", done.err)
            else:
                self.assertIn(done.code, (0, 1, UNDECIDED), (megabytes, done.err))
        self.assertGreater(said, 0)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--leat", required=True)
    options, rest = parser.parse_known_args()
    LEAT = str(Path(options.leat).resolve())
    unittest.main(argv=[sys.argv[0], *rest])
