"""`leat compare` and `leat record` from outside: what is the same, what is not, and what gets written.

    /usr/bin/python3 compare_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import json
import os
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "outside"))
from stepped_canal import stepped_canal  # noqa: E402

LEAT = ""

SIGNALS = "signals { button hold for 20 ticks  button release for 20 ticks  latch held on hold off release }"
BAY = """leat 1
@signals@
marks {
  X rock
  _ open
  w water
  a rock when @held@ else open
  b open when @held@ else rock
  i inlet millhouse
  k outlet kiln
  q outlet press
}
junction yard {
  level 0 { |XXXXXX|
            |wi_a_k|
            |XXbXXX|
            |XX_XXX|
            |XXqXXX| }
  level 1 { |XXXXXX|
            |___a__|
            |XXbXXX|
            |XX_XXX|
            |XX_XXX| }
}
"""


def bay(signals: str = SIGNALS, held: str = "held") -> str:
    return BAY.replace("@signals@", signals).replace("@held@", held)


def lever(name: str = "divert", held: str = "") -> str:
    return bay("signals { lever %s }" % name, held or name)


class Folder(unittest.TestCase):
    def setUp(self) -> None:
        self.kept = tempfile.TemporaryDirectory()
        self.folder = Path(self.kept.name)

    def tearDown(self) -> None:
        self.kept.cleanup()

    def put(self, name: str, text: str) -> None:
        (self.folder / name).write_text(text, encoding="utf-8")

    def leat(self, *arguments: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run([LEAT, *arguments], cwd=self.folder, capture_output=True, text=True, timeout=60,
                              check=False)

    def compared(self, before: str, after: str, *more: str) -> tuple[int, dict[str, Any]]:
        self.put("before.leat", before)
        self.put("after.leat", after)
        done = self.leat("compare", "before.leat", "after.leat", "--as", "json", *more)
        return done.returncode, json.loads(done.stdout)

    def routes(self, document: dict[str, Any]) -> list[dict[str, Any]]:
        return [d for j in document["junctions"] for d in j["differences"] if d["topic"] == "route"]


class Compare(Folder):
    def test_itself_is_proved_the_same(self) -> None:
        code, document = self.compared(bay(), bay())
        self.assertEqual(code, 0)
        self.assertEqual(document["verdict"], "the same, proved for every combination")
        self.assertEqual(document["junctions"][0]["differences"], [])

    def test_memory_of_another_make_is_the_same_machine(self) -> None:
        inverse = ("signals { button hold for 20 ticks  button release for 20 ticks"
                   "  latch free on release and not hold off hold starts on }")
        document = self.compared(bay(), bay(inverse, "not free"))[1]
        self.assertEqual(self.routes(document), [])
        self.assertTrue(document["junctions"][0]["proved"])

    def test_a_tie_that_another_make_breaks_otherwise_is_found(self) -> None:
        # With both buttons held down `on` wins in a latch: here the inverse one goes on too.
        inverse = ("signals { button hold for 20 ticks  button release for 20 ticks"
                   "  latch free on release off hold starts on }")
        document = self.compared(bay(), bay(inverse, "not free"))[1]
        self.assertEqual([entry["steps"] for entry in self.routes(document)], ["press hold, press release"])

    def test_another_memory_differs_by_the_shortest_sequence(self) -> None:
        toggle = "signals { button hold for 20 ticks  button release for 20 ticks  toggle held on hold }"
        code, document = self.compared(bay(), bay(toggle))
        self.assertEqual(code, 1)
        steps = [entry["steps"] for entry in self.routes(document)]
        # The toggle goes off when `hold` is pressed again, the latch stays on; releasing alone does
        # nothing to the toggle.
        self.assertIn("press hold, let go of hold, press hold", steps)

    def test_a_port_of_a_works_that_is_joined_now_is_gone_from_outside(self) -> None:
        yard = lever() + ("works plant {\n  place yard as first at 0 0 0\n  place yard as second at 0 10 0\n"
                          "  join first.kiln -> second.millhouse\n%s}\n")
        rounds = yard % "  join second.kiln -> first.millhouse\n"
        code, document = self.compared(yard % "", rounds, "--fail-on", "worse")
        told = [(d["change"], d["headline"]) for d in document["junctions"][-1]["differences"] if d["topic"] == "declared"]
        self.assertEqual(code, 1)
        self.assertEqual(told, [
            ("worse", "The inlet 'first.millhouse' is joined now, and lies inside of the works"),
            ("worse", "The outlet 'second.kiln' is joined now, and lies inside of the works")])
        document = self.compared(rounds, yard % "")[1]
        told = [(d["change"], d["name"]) for d in document["junctions"][-1]["differences"] if d["topic"] == "declared"]
        self.assertEqual(told, [("changed", "first.millhouse"), ("changed", "second.kiln")])

    def test_times_of_a_works_are_those_of_its_islands_and_joins(self) -> None:
        def yard(join: str, rest: str = "") -> str:
            return lever() + ("works plant {\n  place yard as first at 0 0 0\n  place yard as second at 0 10 0\n"
                              f"  join first.kiln -> second.millhouse {join}\n{rest}}}\n")

        def trips(code: int, document: dict[str, Any], wanted: int) -> list[tuple[str, str]]:
            self.assertEqual(code, wanted)
            told = document["junctions"][-1]["differences"]
            return [(d["change"], d["name"]) for d in told if d["topic"] == "time" and "trip" in d["headline"]]

        before = yard("taking 3 s")
        self.assertEqual(trips(*self.compared(before, before), 0), [])
        self.assertEqual(trips(*self.compared(before, yard("taking 4 s")), 1), [("worse", "first.millhouse")])
        self.assertEqual(trips(*self.compared(before, yard("taking 2 s")), 0), [("better", "first.millhouse")])
        # Round and round there is no longest trip.
        ring = yard("taking 3 s", "  join second.kiln -> first.millhouse\n")
        self.assertEqual(trips(*self.compared(ring, ring), 0), [])

    def times(self, document: dict[str, Any]) -> dict[str, tuple[str, str, str]]:
        told = document["junctions"][-1]["differences"]
        return {d["headline"]: (d["change"], d["before"], d["after"]) for d in told if d["topic"] == "time"}

    def test_a_wait_is_told_of_the_levers_that_bring_it(self) -> None:
        def yard(second: str) -> str:
            return (lever().replace("lever divert", "lever divert lever low lever high")
                    + "works plant {\n  place yard as first at 0 0 0\n"
                    + f"  place yard as second at 0 10 0 with divert = {second}\n}}\n")

        # Each lever alone asks for what its change of the second place asks for.
        one = self.times(self.compared(yard("high"), yard("(low and not high)"))[1])
        events = {headline.partition("you ")[2] for headline in one}
        self.assertEqual(events, {"flip low on", "flip low off", "flip high on", "flip high off"})
        went_on, went_off = one["The wait before you flip low on"][2], one["The wait before you flip low off"][2]
        self.assertNotEqual(went_on, went_off)
        self.assertEqual(one["The wait before you flip high on"][1:], (went_on, went_off))
        self.assertEqual(one["The wait before you flip high off"][1:], (went_off, went_on))

    def test_a_body_that_comes_to_no_loop_has_a_longest_trip(self) -> None:
        # Tall ones go down behind the first turn; what is two cells wide goes on, and then round.
        bodies = "body walker { footprint 1 height 2 floats }\nbody crawler { footprint 2 height 1 floats }\n"
        row = "            |XXXXXX_XXXXXX|\n"

        def level(z: int, *rows: str) -> str:
            return f"  level {z} {{\n" + "".join(f"    |{row}|\n" for row in rows) + "  }\n"

        wall, shaft = "XXXXXXXXXXXXX", "XXXXXX_XXXXXX"
        sorter = ("leat 1\n" + bodies + "marks {\n X rock\n _ open\n s sign\n w water\n i inlet barn\n f outlet fold\n"
                  " p outlet paddock\n}\njunction sorter {\n"
                  + level(0, "XXXXXXwXXXXXX", shaft, shaft, shaft, "XXXXXXpXXXXXX")
                  + level(1, shaft, shaft, shaft, shaft, shaft)
                  + level(2, wall, shaft, shaft, wall, wall)
                  + level(3, wall, "wi____sw___ff", "wi____sw___ff", wall, wall)
                  + level(4, wall, "_____________", "_____________", wall, wall) + "}\n")

        def yard(more: str) -> str:
            return (sorter + "works plant {\n  place sorter as one at 0 0 0\n  place sorter as two at 0 10 0\n"
                    f"  join one.fold -> two.barn\n{more}}}\n")

        document = self.compared(yard(""), yard("  join two.fold -> two.barn\n"))[1]
        self.assertEqual([headline for headline in self.times(document)], ["The longest trip of a crawler from one.barn"])

    def test_what_is_judged_by_regions_has_no_better_times(self) -> None:
        code, document = self.compared(stepped_canal(4), stepped_canal(24), "--fail-on", "worse")
        times = self.times(document)
        self.assertEqual({after for _, _, after in times.values()}, {"not known"})
        self.assertEqual({change for change, _, _ in times.values()}, {"changed"})
        self.assertFalse(document["junctions"][-1]["proved"])
        self.assertEqual({after for _, _, after in self.times(self.compared(stepped_canal(24), stepped_canal(4))[1])
                          .values()} & {"not known", "it changes no cell"}, set())

    def test_findings_that_move_between_places_are_not_proved_the_same(self) -> None:
        # A source forms and stays in a pit that no body comes to: the routes are the same whichever lever does it.
        def yard(second: str, third: str) -> str:
            return ("leat 1\nsignals { lever a lever b lever c }\nmarks {\n  X  rock\n  _  open\n  w  water\n"
                    "  i  inlet mill\n  h  water when a else open\n  k  outlet kiln\n}\njunction gate {\n"
                    "  level 0 { |wi____k|\n            |XXXXXXX|\n            |Xh_hXXX| }\n"
                    "  level 1 { |_______|\n            |XXXXXXX|\n            |XXXXXXX| }\n}\nworks plant {\n"
                    f"  place gate as first at 0 0 0\n  place gate as second at 0 5 0 with a = {second}\n"
                    f"  place gate as third at 0 10 0 with a = {third}\n}}\n")

        self.assertEqual(self.compared(yard("b", "c"), yard("b", "c"))[0], 0)
        self.assertEqual(self.compared(yard("b", "c"), yard("c", "b"))[0], 3)

    def test_memory_too_large_to_be_followed_differs_in_nothing_for_certain(self) -> None:
        # Each latch is set by the one before. Under another name none of them is known to be the same.
        def chain(name: str) -> str:
            latches = "".join(f"  latch {name}[{n}] on {name}[{n - 1}] and l[{n}] off not l[{n}]\n" for n in range(1, 9))
            return lever(held=f"{name}[8]").replace("signals {", "signals {\n  for n in 0..9 { lever l[n] }\n"
                                                     f"  latch {name}[0] on l[0] off l[9]\n{latches}  ")

        for after in ("m", "k"):
            code, document = self.compared(chain("m"), chain(after), "--fail-on", "worse")
            self.assertIn(code, (0, 3))
            self.assertEqual(self.routes(document), [])

    def test_replay_commands_show_the_two_ways(self) -> None:
        code, document = self.compared(lever(), lever(held="not divert"))
        self.assertEqual(code, 1)
        for entry in self.routes(document):
            for command, words in zip(entry["replay"], (entry["before"], entry["after"])):
                done = subprocess.run(command.replace("leat", LEAT, 1), shell=True, cwd=self.folder,
                                      capture_output=True, text=True, timeout=60, check=False)
                self.assertEqual(done.returncode, 0, command)
                self.assertIn(words.split()[1], done.stdout)

    def test_a_renamed_lever_is_the_same_when_told(self) -> None:
        expect = 'expect "routes" { millhouse reaches press when divert }\n'
        code, document = self.compared(lever() + expect, lever("turn") + expect.replace("divert", "turn"),
                                       "--renamed", "divert=turn")
        self.assertEqual((code, self.routes(document)), (0, []))
        untold = self.compared(lever(), lever("turn"))[0]
        self.assertEqual(untold, 1)

    def test_a_moved_drawing_is_the_same(self) -> None:
        moved = lever().replace("|XXXXXX|", "|XXXXXXX|").replace("|wi_", "|Xwi_").replace("|___a", "|X___a") \
            .replace("|XXb", "|XXXb").replace("|XX_", "|XXX_").replace("|XXq", "|XXXq")
        code, document = self.compared(lever(), moved)
        self.assertEqual(code, 0)
        self.assertEqual(document["junctions"][0]["shift"], [1, 0, 0])

    def test_the_threshold_decides(self) -> None:
        other = lever(held="not divert")
        self.assertEqual(self.compared(lever(), other, "--fail-on", "changed")[0], 1)
        plain = self.compared(lever().replace("q outlet press\n", "q outlet press\n  "), lever(), "--fail-on", "better")
        self.assertEqual(plain[0], 0)

    def test_an_outlet_that_is_gone_is_worse(self) -> None:
        gone = lever().replace("  q outlet press\n", "  q open\n")
        code, document = self.compared(lever(), gone, "--fail-on", "worse")
        self.assertEqual(code, 1)
        changes = {d["name"]: d["change"] for d in document["junctions"][0]["differences"] if d["topic"] == "declared"}
        self.assertEqual(changes, {"press": "worse"})

    def test_unusable_input_is_told(self) -> None:
        self.put("good.leat", lever())
        self.put("bad.leat", "leat 1\njunction {")
        for arguments in (("good.leat", "bad.leat"), ("good.leat", "none.leat"),
                          ("good.leat", "good.leat", "--renamed", "divert"),
                          ("good.leat", "good.leat", "--renamed", "nobody=none")):
            done = self.leat("compare", *arguments)
            self.assertEqual((done.returncode, done.stdout), (2, ""), arguments)
            self.assertTrue(done.stderr.strip())


class Record(Folder):
    def record(self, *more: str) -> subprocess.CompletedProcess[str]:
        return self.leat("record", "yard.leat", *more)

    def kept_text(self) -> str:
        return (self.folder / "yard.record.json").read_text(encoding="utf-8")

    def setUp(self) -> None:
        super().setUp()
        self.put("yard.leat", lever())
        self.assertEqual(self.record().returncode, 0)

    def test_the_same_design_does_as_recorded(self) -> None:
        before = self.kept_text()
        done = self.record()
        self.assertEqual(done.returncode, 0)
        self.assertIn("does as recorded", done.stdout)
        self.assertEqual(self.kept_text(), before)

    def test_moving_and_commenting_leave_the_record_alone(self) -> None:
        self.put("yard.leat", "# a new comment\n" + lever().replace("level 0", "\n\n  level 0"))
        self.assertEqual(self.record().returncode, 0)

    def test_differences_are_shown_and_nothing_is_written(self) -> None:
        before = self.kept_text()
        self.put("yard.leat", lever(held="not divert"))
        done = self.record()
        self.assertEqual(done.returncode, 1)
        self.assertIn("millhouse/walker", done.stdout)
        self.assertEqual(self.kept_text(), before)

    def test_one_route_is_accepted_and_the_rest_stays_open(self) -> None:
        self.put("yard.leat", lever(held="not divert").replace("|XX_XXX|\n            |XXqXXX|",
                                                               "|XX_XXX|\n            |XXqXXX|", 1))
        done = self.record("--accept", "millhouse/walker")
        left = self.record()
        self.assertNotIn("millhouse/walker", left.stdout)
        self.assertEqual(self.record("--accept", "all").returncode, 0, done.stdout)
        self.assertIn("does as recorded", self.record().stdout)

    def test_names_that_are_gone_are_stale_and_go_when_accepted(self) -> None:
        self.put("yard.leat", lever().replace("inlet millhouse", "inlet mill"))
        done = self.record()
        self.assertEqual(done.returncode, 1)
        self.assertIn("what there is no more", done.stdout)
        self.assertIn("Nothing is recorded of the walker from mill", done.stdout)
        self.assertEqual(self.record("--accept", "all").returncode, 0)
        self.assertNotIn("millhouse", self.kept_text())

    def test_an_unknown_key_is_refused(self) -> None:
        self.put("yard.leat", lever(held="not divert"))
        before = self.kept_text()
        self.assertEqual(self.record("--accept", "nobody").returncode, 2)
        self.assertEqual(self.kept_text(), before)

    def test_a_broken_record_is_told_and_kept(self) -> None:
        for text in ("", "{", "[]", '{"format": "leat-record"}', "[" * 100000, '{"format": "other", "version": 1}',
                     self.kept_text().replace('"version": 1', '"version": 2')):
            self.put("yard.record.json", text)
            done = self.record("--accept", "all")
            self.assertEqual(done.returncode, 2, text[:40])
            self.assertIn("yard.record.json", done.stderr)
            self.assertEqual(self.kept_text(), text)

    def test_times_of_a_works_are_recorded_of_levers_alone(self) -> None:
        plant = ("works plant {\n  place yard as first at 0 0 0\n"
                 "  place yard as second at 0 10 0 with divert = (divert or low)\n}\n")
        self.put("yard.leat", lever().replace("lever divert", "lever divert lever low") + plant)
        self.assertEqual(self.record("--accept", "all").returncode, 0)
        kept = json.loads(self.kept_text())
        times = kept["junctions"][-1]["times"]
        self.assertEqual({time["event"] for time in times if time["of"] == "wait"}, {"divert", "low"})
        # A record of what nobody flips is of what there is no more.
        for time in times:
            if time.get("event") == "low":
                time["event"] = "second.divert"
        self.put("yard.record.json", json.dumps(kept))
        told = self.record().stdout
        self.assertIn("Recorded times speak of what there is no more", told)
        self.assertIn("not recorded", told)
        self.assertNotIn("it changes no cell", told)

    def test_a_design_with_faults_writes_nothing(self) -> None:
        before = self.kept_text()
        self.put("yard.leat", "leat 1\njunction yard {")
        self.assertEqual(self.record("--accept", "all").returncode, 2)
        self.assertEqual(self.kept_text(), before)

    def test_a_place_that_cannot_be_written_loses_nothing(self) -> None:
        (self.folder / "yard.record.json").unlink()
        (self.folder / "yard.record.json").symlink_to("/dev/full")
        done = self.record()
        self.assertEqual(done.returncode, 2)

    def test_the_standard_input_has_no_record(self) -> None:
        self.assertEqual(self.leat("record", "-").returncode, 2)


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    given, rest = parser.parse_known_args()
    LEAT = os.path.abspath(given.leat)
    unittest.main(argv=[sys.argv[0], *rest])
