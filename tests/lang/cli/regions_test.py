"""Junctions of more signals than can be run at once, judged by regions; ways of a works gone on with along joins.

    /usr/bin/python3 regions_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import json
import os
import re
import sys
import tempfile
import unittest
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))
sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "outside"))
import cli_test  # noqa: E402
from cli_test import leat  # noqa: E402
from stepped_canal import stepped_canal  # noqa: E402

JOINED = """leat 1
signals { lever shut }
marks {
  w water
  _ open
  a rock when shut else open
  i inlet mill
  k outlet end
}
junction run {
  level 0 { |wi_a_k| }
  level 1 { |___a__| }
}
works yard {
  place run as first  at 0 0 0
  place run as second at 0 4 0
  place run as third  at 0 8 0
  join first.end -> second.mill taking 9 s
  join second.end -> third.mill%s
}
"""


class Files(unittest.TestCase):
    def setUp(self) -> None:
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)

    def file(self, text: str) -> str:
        path = Path(self.folder.name) / "design.leat"
        path.write_text(text, encoding="utf-8")
        return str(path)


class Regions(Files):
    def test_a_canal_of_120_gates_is_decided(self) -> None:
        """Its steps are drawn alike: what is judged does not grow with them."""
        self.assertEqual(leat("check", "--fail-on", "error", self.file(stepped_canal(120))).code, 0)
        for steps in (20, 120):
            shown = leat("show", "--islands", self.file(stepped_canal(steps))).out
            self.assertIn(f"falls into {steps + 1} regions of 4 kinds", shown)

    def test_a_wire_of_many_levers_is_one_signal_to_its_region(self) -> None:
        """The first of forty that is on leads aside: the gates of step k hang on k + 1 levers, through one wire."""
        wires = "  wire g0 = h0\n" + "".join(
            f"  wire g{step} = h{step} and not ({' or '.join(f'h{other}' for other in range(step))})\n"
            for step in range(1, 40))
        text = stepped_canal(40).replace("".join(f"  lever g{step}\n" for step in range(40)),
                                         "".join(f"  lever h{step}\n" for step in range(40)) + wires)
        done = leat("check", "--fail-on", "error", "--as", "text", self.file(text))
        self.assertEqual(done.code, 0)
        self.assertIn(f"all {2 ** 40} of the inputs", done.out)

    def test_what_an_undecided_region_may_do_is_no_finding(self) -> None:
        text = stepped_canal(17, shared=True) + 'expect "one way" {\n  finds split-route\n  mill never split\n}\n'
        done = leat("check", "--as", "json", self.file(text))
        junction = json.loads(done.out)["files"][0]["junctions"][0]
        self.assertNotIn("split-route", [finding["name"] for finding in junction["findings"]])
        self.assertEqual([clause["verdict"] for clause in junction["expectations"]][-2:], ["undecided", "undecided"])
        self.assertIn("combinations", junction["left_out"])
        self.assertIn("depends on 17 signals", junction["open"][0]["headline"])

    def test_a_canal_of_40_gates_is_decided(self) -> None:
        path = self.file(stepped_canal(40))
        done = leat("check", "--fail-on", "error", "--as", "text", path)
        self.assertEqual(done.code, 0)
        self.assertIn("2 hold", done.out)
        self.assertIn("all 1099511627776 of the inputs", done.out)
        self.assertIn("nothing is said of bodies inside", done.out)

    def test_its_table_says_when_bodies_go_where(self) -> None:
        done = leat("table", "--as", "json", self.file(stepped_canal(18)))
        self.assertEqual(done.code, 0)
        found = {entry["outlets"][0]: entry for entry in json.loads(done.out)["junctions"][0]["conditions"]}
        self.assertEqual(set(found), {"side", "press"})
        self.assertEqual(found["press"]["combinations"], 1)
        self.assertEqual(found["side"]["combinations"], 2 ** 18 - 1)

    def test_as_few_as_can_be_run_give_the_same_conditions(self) -> None:
        few = leat("table", self.file(stepped_canal(6))).out
        self.assertIn("press  when not (g0 or g1 or g2 or g3 or g4 or g5)", few)
        self.assertIn("side   when g0 or g1 or g2 or g3 or g4 or g5", few)

    def test_regions_are_shown(self) -> None:
        done = leat("show", "--islands", self.file(stepped_canal(18)))
        self.assertIn("falls into 19 regions of 4 kinds", done.out)
        for gate in range(18):
            self.assertRegex(done.out, rf"(?m)^ +\d+ +g{gate} +\d+ \d+ \d+ to \d+ \d+ \d+$")

    def test_what_one_region_cannot_tell_is_undecided_and_the_rest_is_told(self) -> None:
        path = self.file(stepped_canal(20, shared=True))
        done = leat("check", "--fail-on", "error", "--as", "text", path)
        self.assertEqual(done.code, 3)
        self.assertIn("undecided  region  What happens around", done.out)
        self.assertIn("depends on 20 signals", done.out)
        self.assertRegex(" ".join(done.out.split()), ", ".join(f"g{n}" for n in range(19)) + " and g19")
        self.assertIn("2 hold", done.out)
        table = leat("table", path)
        self.assertEqual(table.code, 3)
        self.assertIn("from yard, walker", table.out)
        self.assertNotIn("from mill", table.out)
        self.assertIn("from mill, nothing is told", table.err)

    def judged(self, text: str) -> dict:
        return json.loads(leat("check", "--as", "json", self.file(text)).out)["files"][0]["junctions"][0]

    def test_findings_are_looked_for_in_all_combinations(self) -> None:
        """As built each body turns aside at the first step, and never comes to the dead end of the eleventh."""
        lines = re.sub(r"(?m)^  lever (g\d+)$", r"  lever \1 starts on", stepped_canal(18)).split("\n")
        ends = [n for n, line in enumerate(lines) if line.strip().startswith("|") and "k" in line]
        lines[ends[7]] = lines[ends[7]].replace("k", "_")
        text = "\n".join(lines)
        found = self.judged(text[:text.index('expect "routes"')])["findings"]
        pinned = [finding for finding in found if finding["name"] == "pinned"]
        self.assertEqual([finding["combinations"] for finding in pinned], [2 ** 7])
        self.assertEqual(pinned[0]["condition"].count("not "), 10)
        self.assertEqual(len(pinned[0]["ways"][0]), 10)
        self.assertEqual(sum(finding["name"] == "diagonal-current" for finding in found), 18)

    def test_an_acceptance_takes_its_own_combinations(self) -> None:
        """The current of step k shows while g[k] is the first lever that is on: past the sixth step g5 is off then."""
        accepted = 'accept diagonal-current when not g5 because "the sixth is looked at by itself"\n'
        found = [finding for finding in self.judged(stepped_canal(18) + accepted)["findings"]
                 if finding["name"] == "diagonal-current"]
        taken = sorted(finding["combinations"] for finding in found if finding["accepted"])
        left = sorted(finding["combinations"] for finding in found if not finding["accepted"])
        self.assertEqual(taken, sorted([2 ** (16 - k) for k in range(5)] + [2 ** (17 - k) for k in range(6, 18)]))
        self.assertEqual(left, sorted([2 ** (16 - k) for k in range(5)] + [2 ** 12]))

    def test_a_promise_of_no_findings_is_kept_as_far_as_they_are_looked_for(self) -> None:
        """Bodies inside while cells change are not looked at, of which there are notes."""
        text = stepped_canal(18) + 'expect "clean" { findings none above warning }\n'
        text += "accept diagonal-current because \"the stream is wide there\"\nexpect \"all\" { findings none }\n"
        verdicts = {e["clause"]: e["verdict"] for e in self.judged(text)["expectations"]}
        self.assertEqual(verdicts["findings none above warning"], "holds")
        self.assertEqual(verdicts["findings none"], "undecided")

    def test_a_full_table_of_it_is_refused(self) -> None:
        done = leat("table", "--full", self.file(stepped_canal(18)))
        self.assertEqual(done.code, 3)


class Journeys(Files):
    def follow(self, onward: str, *options: str) -> cli_test.Done:
        return leat("follow", self.file(JOINED % onward), "--junction", "yard", "--from", "first.mill", *options)

    def test_a_way_goes_on_along_joins_and_times_add_up(self) -> None:
        document = json.loads(self.follow(" taking 2 s", "--as", "json").out)["junctions"]
        self.assertEqual([part["inlet"] for part in document], ["first.mill", "second.mill", "third.mill"])
        alone = document[0]["paces"][0]["longest"]
        self.assertEqual(document[0]["arrivals"],
                         [{"outlet": "third.end", "quickest": 3 * alone + 220, "longest": 3 * alone + 220,
                           "untold_joins": False}])
        self.assertEqual(document[1]["arrivals"], [])

    def test_a_join_whose_time_is_not_said_is_told(self) -> None:
        done = self.follow("")
        self.assertIn("From first.mill on, all ways together", done.out)
        self.assertIn("and joins whose time is not said", done.out)
        self.assertEqual(done.out.count("verdict    certain"), 3)

    def test_the_way_to_one_outlet_leads_through_all_before_it(self) -> None:
        done = self.follow("", "--to", "third.end")
        self.assertIn("Reaches first.end, joined to second.mill", done.out)
        self.assertIn("Reaches third.end", done.out)
        done = self.follow("", "--to", "third.end", "--when", "shut=on")
        self.assertIn("Its ways do not lead to third.end.", done.out)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--leat", required=True)
    options, rest = parser.parse_known_args()
    cli_test.LEAT = os.path.abspath(options.leat)
    unittest.main(argv=[sys.argv[0], *rest])
