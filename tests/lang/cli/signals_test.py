"""`leat waves` and `leat machine` from outside: scripts, exit codes, formats, widths.

    /usr/bin/python3 signals_test.py --leat build/leat
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

import cli_test
from cli_test import leat

DRAWN = """
marks {
  _ open
  w water
  P plate passed
  i inlet millhouse
  k outlet kiln
}
junction yard {
  level 0 { |wi_P_k| }
  level 1 { |______| }
}
"""
YARD = """leat 1
signals {
  lever  divert
  button ring    for 20 ticks
  plate  passed
  wire   late  = divert after 400 ticks
  wire   shut  = divert and not ring
  latch  parked on ring off passed
  toggle turn on passed
}
""" + DRAWN
CLOCKED = YARD.replace("  toggle turn", "  clock beat every 7 ticks\n  toggle turn")
RESTLESS = YARD.replace("latch  parked on ring off passed", "latch  parked on ring and not parked off parked")
PLAIN = """leat 1
signals { plate passed  lever divert  wire shut = divert and not passed }
""" + DRAWN
NONE = "leat 1\n" + DRAWN.replace("  P plate passed\n", "").replace("P", "_")


def toggles(count: int, gates: str = "") -> str:
    """A ripple counter of that many toggles."""
    lines = ["plate passed", "lever hand", "toggle t0 on hand"]
    lines += [f"toggle t{i} on not t{i - 1}" for i in range(1, count)]
    return "leat 1\nsignals {\n" + "\n".join(f"  {line}" for line in lines) + gates + "\n}\n" + DRAWN


class Signals(unittest.TestCase):
    def setUp(self) -> None:
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)
        self.yard = self.file(YARD)

    def file(self, text: str, name: str = "yard.leat") -> str:
        path = self.folder / name
        path.write_text(text, encoding="utf-8")
        return str(path)

    def changes(self, path: str, script: str, *more: str) -> dict[str, list[int]]:
        done = leat("waves", path, "--do", script, "--as", "json", *more)
        self.assertEqual((done.code, done.err), (0, ""), script)
        return {signal["name"]: signal["changes"] for signal in json.loads(done.out)["signals"]}

    # -- scripts -------------------------------------------------------------------------------------

    def test_what_is_done_comes_one_tick_after_the_other_or_after_the_wait(self) -> None:
        for script, divert, passed in (("divert, passed", [1], [2]),
                                       ("divert and passed", [1], [1]),
                                       ("wait 20 ticks, divert, wait 1 tick, passed", [20], [21]),
                                       ("divert, wait 2 s, passed", [1], [41]),
                                       ("divert, wait 5 ticks, wait 3 ticks, passed", [1], [9]),
                                       ("  divert,divert ,\tpassed on", [1, 2], [3]),
                                       ("divert on, divert on, divert off, passed off", [1, 3], [])):
            changes = self.changes(self.yard, script)
            self.assertEqual((changes["divert"], changes["passed"]), (divert, passed), script)

    def test_a_button_goes_off_by_itself_and_a_second_press_makes_it_last(self) -> None:
        self.assertEqual(self.changes(self.yard, "ring")["ring"], [1, 21])
        self.assertEqual(self.changes(self.yard, "ring on, wait 10 ticks, ring")["ring"], [1, 31])

    def test_signals_may_be_called_like_words_of_a_script(self) -> None:
        path = self.file(YARD.replace("divert", "wait"))
        self.assertEqual(self.changes(path, "wait, wait 9 ticks, wait off")["wait"], [1, 10])

    def test_scripts_that_make_no_sense_are_refused(self) -> None:
        for script, words in (("divert,,ring", "a comma with nothing beside it"),
                              ("divert,", "a comma with nothing beside it"),
                              ("divert ring", "does not understand 'divert ring'"),
                              ("divert and", "does not understand 'divert and'"),
                              ("and", "does not understand 'and'"),
                              ("divert maybe", "does not understand 'divert maybe'"),
                              ("wait", "does not understand 'wait'"),
                              ("wait long", "does not understand 'wait long'"),
                              ("wait 0 ticks", "does not understand 'wait 0 ticks'"),
                              ("wait 5", "does not understand 'wait 5'"),
                              ("wait -5 ticks", "does not understand 'wait -5 ticks'"),
                              ("wait 5 hours", "does not understand 'wait 5 hours'"),
                              ("wait 99999999999999 ticks", "does not understand"),
                              ("wait 1000000 ticks, divert, wait 1 tick, divert", "past tick 1000000"),
                              ("wait 1000000 ticks, wait 1000000 ticks", "past tick 1000000"),
                              ("divert and divert", "two things to 'divert' in one tick"),
                              ("ring off", "it goes off by itself"),
                              ("late", "'late' is a delay: it follows from other signals"),
                              ("shut on", "'shut' is a wire"),
                              ("parked", "'parked' is a latch"),
                              ("dvert", "did you mean 'divert'?"),
                              ("\x1b[31m on\x07", "does not understand '?[31m on?'"),
                              ("\x1b[31m", "the design has no signal '?[31m'"),
                              ("x" * 20000, "the design has no signal")):
            done = leat("waves", self.yard, "--do", script)
            self.assertEqual((done.code, done.out), (2, ""), script)
            self.assertTrue(done.err.startswith("leat: "), done.err)
            self.assertIn(words, done.err)
        done = leat("waves", self.file(CLOCKED), "--do", "beat")
        self.assertEqual(done.code, 2)
        self.assertIn("it runs by itself", done.err)

    def test_lengths_that_make_no_sense_are_refused(self) -> None:
        for length in ("5", "soon", "0 s", "1000001 ticks", "60000 s"):
            done = leat("waves", self.yard, f"--for={length}")
            self.assertEqual((done.code, done.out), (2, ""), length)
        done = leat("waves", self.yard, "--do", "wait 600000 ticks, divert", "--for", "600000 ticks")
        self.assertEqual((done.code, done.out), (2, ""))

    def test_chosen_signals_come_in_the_order_they_are_named(self) -> None:
        self.assertEqual(list(self.changes(self.yard, "ring", "--signals", "turn, ring")), ["turn", "ring"])
        for wanted, words in (("trun", "did you mean 'turn'?"), ("turn,,ring", "no signal ''"),
                              ("turn,turn", "twice")):
            done = leat("waves", self.yard, "--signals", wanted)
            self.assertEqual((done.code, done.out), (2, ""), wanted)
            self.assertIn(words, done.err)

    # -- how long ------------------------------------------------------------------------------------

    def test_a_run_ends_when_all_is_quiet(self) -> None:
        document = json.loads(leat("waves", self.yard, "--do", "divert", "--as", "json").out)
        self.assertEqual((document["is_over"], document["active_until"], document["last_tick"]), (True, 401, 402))

    def test_a_run_lasts_as_long_as_asked_and_says_whether_it_is_over(self) -> None:
        for length, ticks, is_over in (("100 ticks", 101, False), ("30 s", 601, True)):
            document = json.loads(leat("waves", self.yard, "--do", "divert", "--for", length, "--as", "json").out)
            self.assertEqual((document["last_tick"], document["is_over"]), (ticks, is_over))

    def test_clocks_are_bounded(self) -> None:
        done = leat("waves", self.file(CLOCKED), "--as", "json")
        document = json.loads(done.out)
        self.assertEqual(done.code, 0)
        self.assertFalse(document["is_over"])
        self.assertEqual(document["last_tick"], 4 * (20 + 400 + 14))

    def test_the_longest_run_is_run(self) -> None:
        done = leat("waves", self.file(CLOCKED), "--for", "1000000 ticks")
        self.assertEqual(done.code, 0)
        self.assertIn("more bands from tick", done.out)
        self.assertLess(len(done.out), 100_000)

    # -- exit codes and input ------------------------------------------------------------------------

    def test_what_does_not_get_quiet_is_undecided_in_time_and_proved_of_the_machine(self) -> None:
        path = self.file(RESTLESS)
        done = leat("waves", path, "--do", "ring")
        self.assertEqual(done.code, 3)
        self.assertIn("did not get quiet within ticks 1, 2", done.out)
        self.assertIn("do not get quiet", done.err)
        self.assertEqual(leat("waves", path, "--do", "divert").code, 0)
        machine = leat("machine", path)
        self.assertEqual(machine.code, 1)
        self.assertIn("never quiet after press ring: parked keeps changing", machine.out)

    def test_a_design_without_signals_has_no_waves_and_no_memory(self) -> None:
        path = self.file(NONE)
        done = leat("waves", path)
        self.assertEqual((done.code, done.out), (2, ""))
        self.assertIn("no signals", done.err)
        self.assertIn("remember nothing", leat("machine", path).out)

    def test_a_junction_without_memory_is_told_in_one_line(self) -> None:
        done = leat("machine", self.file(PLAIN))
        self.assertEqual((done.code, done.err), (0, ""))
        self.assertEqual(done.out.count("\n"), 1)

    def test_faulty_designs_and_missing_files(self) -> None:
        broken = self.file(YARD.replace("toggle turn", "togle turn"))
        for command in ("waves", "machine"):
            for path in (broken, "/nowhere.leat"):
                done = leat(command, path)
                self.assertEqual((done.code, done.out), (2, ""), command)
            self.assertEqual(leat(command, "-", text=YARD).code, 0)
            self.assertEqual(leat(command, self.yard, "--as", "svg").code, 2)

    def test_a_full_disk_is_told(self) -> None:
        for arguments in (["waves", self.yard, "--as", "vcd"], ["machine", self.yard, "--as", "dot"]):
            with open("/dev/full", "wb") as full:
                run = subprocess.run([cli_test.LEAT, *arguments], stdout=full, stderr=subprocess.PIPE,
                                     timeout=60, check=False)
            self.assertEqual(run.returncode, 2)
            self.assertIn(b"could not be written", run.stderr)

    # -- pictures ------------------------------------------------------------------------------------

    def width_on_a_terminal(self, columns: int) -> int:
        script = ", wait 7 ticks, ".join(["divert"] * 40)
        seen = cli_test.on_terminal("waves", self.yard, "--do", script, "--signals", "divert",
                                    columns=columns, NO_COLOR="1")
        return max(len(line) for line in seen.splitlines() if line.startswith("    divert  "))

    def test_the_picture_fills_the_terminal_and_no_more(self) -> None:
        for columns in (50, 80, 160):
            width = self.width_on_a_terminal(columns)
            self.assertLessEqual(width, columns)
            self.assertGreater(width, columns - 12)

    def test_piped_pictures_keep_to_80_columns(self) -> None:
        out = leat("waves", self.file(CLOCKED), "--do", "divert, wait 50 ticks, ring").out
        self.assertLessEqual(max(map(len, out.splitlines())), 80)

    def test_ascii_and_colour_are_heeded(self) -> None:
        leat("waves", self.yard, "--do", "divert", "--ascii").out.encode("ascii")
        self.assertIn("▄", leat("waves", self.yard, "--do", "divert").out)
        self.assertIn("\x1b", leat("waves", self.yard, "--color", "always").out)
        self.assertNotIn("\x1b", leat("waves", self.yard, "--as", "vcd", "--color", "always").out)

    def test_the_same_run_gives_the_same_bytes(self) -> None:
        for arguments in (["waves", self.yard, "--do", "divert, ring", "--as", "vcd"],
                          ["machine", self.yard, "--as", "dot"], ["machine", self.yard, "--as", "json"]):
            self.assertEqual(leat(*arguments).out, leat(*arguments).out)

    # -- machines ------------------------------------------------------------------------------------

    def test_values_are_told_with_the_shortest_way_to_each(self) -> None:
        out = leat("machine", self.yard).out
        self.assertRegex(out, r"(?m)^    parked  turn +reached by$")
        self.assertRegex(out, r"(?m)^    off +off +as built$")
        self.assertRegex(out, r"(?m)^    on +off +press ring$")
        self.assertRegex(out, r"(?m)^    left out +divert: no say in the memory$")

    def test_delays_are_no_memory_once_all_is_quiet(self) -> None:
        document = json.loads(leat("machine", self.yard, "--as", "json").out)
        self.assertEqual(document["memory"], ["parked", "turn"])

    def test_graphs_too_large_to_read_are_refused_with_what_to_do(self) -> None:
        eleven = self.file(toggles(11))
        done = leat("machine", eleven, "--as", "dot")
        self.assertEqual((done.code, done.out), (2, ""))
        self.assertIn("2048 nodes", done.err)
        self.assertIn("--as text", done.err)
        ten = self.file(toggles(10))
        self.assertEqual(leat("machine", ten, "--as", "dot").out.count("label=\"") - 1024, 1024)
        full = leat("machine", ten, "--as", "dot", "--full")
        self.assertEqual(full.code, 2)
        self.assertIn("--full", full.err)
        self.assertEqual(leat("machine", ten, "--full").code, 2)

    def test_long_lists_are_cut_in_text_and_whole_in_json(self) -> None:
        path = self.file(toggles(10))
        text = leat("machine", path).out
        self.assertIn("and 992 more: --as json holds them all", text)
        self.assertRegex(text, r"(?m)^    t0, t1, t2, t3 and t4 +30 times: flip hand on, flip hand off; then flip hand on$")
        self.assertRegex(text, r"(?m)^    none +as built$")
        self.assertEqual(len(json.loads(leat("machine", path, "--as", "json").out)["values"]), 1024)
        path = self.file(toggles(12))
        self.assertIn("and 4064 more\n", leat("machine", path).out)
        done = leat("machine", path, "--as", "json")
        self.assertEqual((done.code, done.out), (2, ""))
        self.assertIn("4096 values", done.err)

    def test_states_too_many_to_be_listed_are_counted(self) -> None:
        # Each of 12 latches with its two buttons has 5 settled states: set, reset, both, and neither with it on or off.
        lines = [f"button s{i} for 4 ticks\n  button r{i} for 4 ticks\n  latch l{i} on s{i} off r{i}"
                 for i in range(12)]
        path = self.file("leat 1\nsignals {\n  plate passed\n  " + "\n  ".join(lines) + "\n}\n" + DRAWN)
        done = leat("machine", path)
        self.assertEqual(done.code, 3)
        self.assertIn(f"{5 ** 12} are reached, counted by decision diagrams", done.out)
        self.assertIn("after every event", done.out)
        self.assertEqual(json.loads(leat("machine", path, "--as", "json").out)["counted"], 5 ** 12)

    def test_what_is_too_much_to_run_is_undecided(self) -> None:
        wide = toggles(2, "".join(f"\n  lever l{i}\n  latch m{i} on l{i} off hand" for i in range(33)))
        for text in (toggles(21), wide):
            path = self.file(text)
            done = leat("machine", path)
            self.assertEqual(done.code, 3)
            self.assertIn("undecided", done.err)
            self.assertIn("too many", done.out)
            self.assertFalse(json.loads(leat("machine", path, "--as", "json").out)["decided"])
            self.assertEqual(leat("machine", path, "--as", "dot").out, "")

    # -- as built ------------------------------------------------------------------------------------

    def latched(self, more: str = "") -> str:
        """A gate that a latch opens which is set as built, so that it is on before anything is done."""
        return self.file("leat 1\nsignals {\n  lever l starts on\n  lever r\n  latch m on l off r\n" + more + "}\n"
                         "marks {\n  _ open\n  w water\n  a open when m else rock\n  i inlet mill\n  k outlet kiln\n}\n"
                         "junction j {\n  level 0 { |wi__a__k| }\n  level 1 { |____a___| }\n}\n")

    def test_memory_that_is_set_as_built_is_on_in_the_design_as_built(self) -> None:
        many = "".join(f"  lever l{i}\n  latch m{i} on l{i} off r\n" for i in range(70))
        used = "  never m0" + "".join(f" and m{i}" for i in range(1, 70)) + "\n"
        for more in ("", many, many + used):
            path = self.latched(more)
            built = leat("show", path)
            self.assertIn("everything as built", built.out)
            self.assertNotIn("no list of events", built.out)
            self.assertEqual(leat("show", path, "--when", "l=on, m=on").out, built.out)
            self.assertEqual(json.loads(leat("show", path, "--as", "json").out)["junctions"][0]["assignment"]["m"], True)
            self.assertIn("kiln", leat("follow", path, "--from", "mill").out)
            self.assertIn("m=off", leat("show", path, "--when", "m=off").out)


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    known, rest = parser.parse_known_args()
    cli_test.LEAT = os.path.abspath(known.leat)
    unittest.main(argv=[sys.argv[0], *rest])
