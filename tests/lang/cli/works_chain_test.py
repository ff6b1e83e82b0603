"""Chains of thousands of junctions, each with a lever of its own: what is said of them is proved, or said to be
undecided, and soon. A body goes on where a lever is off and leaves where it is on, so each outlet is reached in some
combination, and the deepest in one of 2^n. Demo designs, invented.

    /usr/bin/python3 works_chain_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import json
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "outside"))
from works_networks import HEAD  # noqa: E402

LEAT = ""
TURN = HEAD[HEAD.index("marks {"):HEAD.index("junction bay")]


def chain(length: int, more: str = "") -> str:
    return (f"leat 1\nsignals {{\n  lever divert\n  for n in 0..{length - 1} {{ lever change[n] }}\n}}\n{TURN}"
            f"works yard {{\n{more}  for k in 0..{length - 1} {{\n"
            "    place turn as turn[k] at (k mod 100 * 14) (k / 100 * 5) 0 with divert = change[k]\n  }\n"
            f"  for k in 0..{length - 2} {{ join turn[k].keep -> turn[k + 1].lane }}\n}}\n")


# Two turns of one lever: the second one's side is never open to who came past the first.
BLOCKED = """  place turn as first at 0 -20 0 with divert = change[0]
  place turn as second at 0 -30 0 with divert = change[0]
  join first.keep -> second.lane
  join second.keep -> turn[0].lane
"""


def run(text: str, command: str, *options: str) -> subprocess.CompletedProcess[str]:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "works.leat"
        path.write_text(text, encoding="utf-8")
        return subprocess.run([LEAT, command, str(path), *options], capture_output=True, text=True, timeout=60,
                              check=False)


def told(text: str, command: str, *options: str) -> str:
    return run(text, command, *options).stdout


def plant(text: str) -> dict:
    """What is said of the works 'plant' of a design without faults."""
    done = run(text, "check", "--as", "json")
    if done.returncode in (2, 4):
        raise AssertionError(done.stderr)
    file = json.loads(done.stdout)["files"][0]
    if file["diagnostics"]:
        raise AssertionError(file["diagnostics"])
    return next(one for one in file["junctions"] if one["name"] == "plant")


def judged(text: str) -> tuple[str, list[dict]]:
    """The verdict of the works and the findings of the plant as a whole."""
    judged_file = json.loads(told(text, "check", "--as", "json"))["files"][0]
    works = judged_file["junctions"][-1]
    return judged_file["verdict"], [finding for finding in works["findings"] if finding["severity"] != "note"]


class Chains(unittest.TestCase):
    def test_every_outlet_of_a_long_chain_is_reached(self) -> None:
        for length in (700, 10_000):
            self.assertEqual(judged(chain(length)), ("holds", []), length)

    def test_an_outlet_behind_a_contradiction_is_found(self) -> None:
        verdict, findings = judged(chain(300, BLOCKED))
        self.assertEqual(verdict, "violated")
        self.assertEqual([finding["name"] for finding in findings], ["unreached-outlet"] * len(findings))
        outlets = sorted(outlet for finding in findings for outlet in finding["outlets"])
        self.assertEqual(outlets, ["second.over", "turn[0].over"])

    def test_what_lies_behind_an_outlet_that_is_never_reached_is_counted_with_it(self) -> None:
        # The second turn sends aside whoever comes on past the first: nobody gets to the third.
        closed = chain(300, """  place turn as first at 0 -20 0 with divert = change[0]
  place turn as second at 0 -30 0 with divert = not change[0]
  join first.keep -> second.lane
  join second.keep -> turn[0].lane
""")
        verdict, findings = judged(closed)
        self.assertEqual(verdict, "violated")
        told = [(finding["name"], finding["outlets"]) for finding in findings if finding["severity"] == "error"]
        self.assertEqual(told, [("unreached-outlet", ["second.keep"])])
        # Three hundred turns with a side each, and the last one's end.
        self.assertIn("nor to 301 outlets behind it", findings[0]["reason"])

    def test_what_is_too_much_for_the_diagram_is_undecided_and_no_fault(self) -> None:
        self.assertEqual(judged(chain(3_000, BLOCKED)), ("undecided", []))

    def test_signs_are_told_of_what_is_drawn(self) -> None:
        first = told(chain(30), "follow", "--from", "turn[0].lane").split("\n\n\n")[0]
        signs = first[first.index("signs"):]
        self.assertIn("rock when change[0] else open", signs)
        self.assertIn("inlet turn[0].lane, open", signs)
        self.assertNotIn("change[1]", signs)
        whole = told(chain(30), "show", "--junction", "yard")
        self.assertIn("    a    and 26 more, each by signals of its own", whole)
        self.assertNotIn("rock when change[4] else open", whole)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--leat", required=True)
    chosen, rest = parser.parse_known_args()
    LEAT = chosen.leat
    unittest.main(argv=[sys.argv[0], *rest])
