"""The program `leat` from outside: exit codes, streams, colour, formats, bad input.

    /usr/bin/python3 cli_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import fcntl
import json
import os
import pty
import struct
import subprocess
import sys
import tempfile
import termios
import unittest
from pathlib import Path

LEAT = ""

GOOD = """leat 1
signals { lever divert  lever flush }
marks {
  X rock
  _ open
  w water
  a rock when divert else open
  b open when divert else rock
  i inlet millhouse
  k outlet kiln
  q outlet press
}
junction yard {
  level 0 {
    |XXXXXX|
    |wi_a_k|
    |XXbXXX|
    |XX_XXX|
    |XXqXXX|
  }
  level 1 {
    |XXXXXX|
    |___a__|
    |XXbXXX|
    |XX_XXX|
    |XX_XXX|
  }
}
"""
KEPT = 'expect "routes" { millhouse reaches kiln when not divert }\n'
BROKEN = 'expect "routes" { millhouse reaches press when not divert }\n'
NEVER = 'expect "routes" { millhouse reaches press when divert and not divert }\n'


def design(levers: int) -> str:
    """A straight channel whose gate depends on that many levers."""
    names = [f"lever_{i}" for i in range(levers)]
    return "\n".join([
        "leat 1", "signals {", *(f"  lever {n}" for n in names), "}",
        "marks {", "  w water", "  _ open", f"  a rock when {' xor '.join(names)} else open",
        "  i inlet millhouse", "  k outlet kiln", "}",
        "junction gate {", "  level 0 { |wi_a_k| }", "  level 1 { |___a__| }", "}", ""])


class Done:
    def __init__(self, run: subprocess.CompletedProcess[bytes]) -> None:
        self.code = run.returncode
        self.out = run.stdout.decode("utf-8")
        self.err = run.stderr.decode("utf-8")


def leat(*arguments: str, text: str | bytes | None = None, **environment: str) -> Done:
    env = {k: v for k, v in os.environ.items() if k not in ("NO_COLOR", "CLICOLOR_FORCE")}
    env.update(environment)
    data = text.encode("utf-8") if isinstance(text, str) else text
    return Done(subprocess.run([LEAT, *arguments], input=data or b"", capture_output=True, env=env,
                               timeout=120, check=False))


def on_terminal(*arguments: str, columns: int = 0, **environment: str) -> str:
    """What a terminal gets to see; of so many columns, where it matters."""
    reading, writing = pty.openpty()
    if columns:
        fcntl.ioctl(writing, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
    env = {k: v for k, v in os.environ.items() if k not in ("NO_COLOR", "CLICOLOR_FORCE")}
    env.update({"TERM": "xterm"}, **environment)
    process = subprocess.Popen([LEAT, *arguments], stdin=subprocess.DEVNULL, stdout=writing,
                               stderr=writing, env=env)
    os.close(writing)
    seen = b""
    while True:
        try:
            part = os.read(reading, 65536)
        except OSError:
            break
        if not part:
            break
        seen += part
    process.wait(timeout=60)
    os.close(reading)
    return seen.decode("utf-8")


class Cli(unittest.TestCase):
    def setUp(self) -> None:
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def file(self, text: str | bytes, name: str = "yard.leat") -> str:
        path = self.folder / name
        path.write_bytes(text.encode("utf-8") if isinstance(text, str) else text)
        return str(path)

    # -- exit codes ----------------------------------------------------------------------------------

    def test_a_kept_expectation_is_0(self) -> None:
        done = leat("check", "--fail-on", "error", self.file(GOOD + KEPT))
        self.assertEqual(done.code, 0, done.out)

    def test_a_violated_or_empty_expectation_is_1(self) -> None:
        for text, word in ((BROKEN, "violated"), (NEVER, "empty")):
            done = leat("check", "--fail-on", "error", self.file(GOOD + text))
            self.assertEqual(done.code, 1, done.out)
            self.assertIn(f": error: {word}: ", done.out)

    def test_the_least_severity_that_fails_can_be_chosen(self) -> None:
        path = self.file(GOOD + KEPT)
        document = json.loads(leat("check", "--as", "json", path).out)
        severities = {f["severity"] for f in document["files"][0]["junctions"][0]["findings"]}
        self.assertIn("warning", severities)  # the lever flush is idle
        self.assertNotIn("error", severities)
        self.assertEqual(leat("check", path).code, 1)
        self.assertEqual(leat("check", "--fail-on", "note", path).code, 1)
        self.assertEqual(leat("check", "--fail-on", "error", path).code, 0)

    def test_accepted_findings_are_listed_and_do_not_fail(self) -> None:
        accepted = ('accept idle-signal because "it is wired next week"\n'
                    'accept diagonal-current because "one at a time"\n')
        done = leat("check", self.file(GOOD + KEPT + accepted))
        self.assertEqual(done.code, 0, done.out)
        self.assertIn(": accepted: idle-signal: ", done.out)
        self.assertIn("it is wired next week", done.out)

    def test_a_faulty_design_is_2_in_every_command(self) -> None:
        path = self.file(GOOD.replace("level 1", "levl 1"))
        for command in (["check"], ["table"], ["show"], ["follow", "--from", "millhouse"], ["resolve"]):
            done = leat(*command, path)
            self.assertEqual(done.code, 2, command)
            self.assertIn(f"{path}:", done.out + done.err)

    def test_too_many_inputs_are_undecided_3(self) -> None:
        path = self.file(design(20) + 'expect { millhouse may reach kiln }\n')
        done = leat("check", path)
        self.assertEqual(done.code, 3, done.out + done.err)
        self.assertEqual(leat("table", path).code, 3)

    def test_the_gravest_of_several_files_wins(self) -> None:
        good = self.file(GOOD + KEPT, "good.leat")
        bad = self.file(GOOD + BROKEN, "bad.leat")
        wide = self.file(design(20), "wide.leat")
        check = ("check", "--fail-on", "error")
        self.assertEqual(leat(*check, good, wide).code, 3)
        self.assertEqual(leat(*check, wide, bad, good).code, 1)
        self.assertEqual(leat(*check, bad, "/nowhere.leat", wide).code, 2)

    def test_help_prints_the_table_of_exit_codes(self) -> None:
        done = leat("--help")
        self.assertEqual((done.code, done.err), (0, ""))
        for code in range(5):
            self.assertRegex(done.out, rf"(?m)^  {code}  \w")
        self.assertRegex(leat("--version").out, r"^leat \d+\.\d+\n$")

    # -- usage ---------------------------------------------------------------------------------------

    def test_nothing_asked_is_usage(self) -> None:
        done = leat()
        self.assertEqual((done.code, done.out), (2, ""))
        self.assertIn("Usage:", done.err)

    def test_a_mistyped_command_is_named_with_a_near_one(self) -> None:
        done = leat("chek", "x.leat")
        self.assertEqual((done.code, done.out), (2, ""))
        self.assertIn("'chek'", done.err)
        self.assertIn("did you mean 'check'?", done.err)
        self.assertNotIn("did you mean", leat("brew").err)

    def test_mistyped_options_and_values_are_usage(self) -> None:
        path = self.file(GOOD)
        for arguments in (["check"], ["check", path, "--fail-on", "bad"], ["table", path, "--as", "xml"],
                          ["check", path, "--nonsense"], ["show", path, "--level", "x"],
                          ["--color", "pink", "check", path]):
            done = leat(*arguments)
            self.assertEqual((done.code, done.out), (2, ""), arguments)
            self.assertTrue(done.err.startswith("leat: "), done.err)

    def test_unknown_names_are_told_with_near_ones(self) -> None:
        path = self.file(GOOD)
        for arguments, near in ((["show", path, "--when", "divrt=on"], "divert"),
                                (["follow", path, "--from", "milhouse"], "millhouse"),
                                (["follow", path, "--from", "millhouse", "--to", "klin"], "kiln"),
                                (["table", path, "--body", "walkr"], "walker"),
                                (["table", path, "--junction", "yrad"], "yard"),
                                (["explain", "dry-stnd"], "dry-stand")):
            done = leat(*arguments)
            self.assertEqual((done.code, done.out), (2, ""), arguments)
            self.assertIn(f"did you mean '{near}'?", done.err)

    def test_settings_that_make_no_sense_are_refused(self) -> None:
        path = self.file(GOOD)
        for when in ("divert", "divert=maybe", "=on", "divert=on, divert=off"):
            self.assertEqual(leat("show", path, "--when", when).code, 2, when)
        self.assertEqual(leat("show", path, "--level", "7").code, 2)

    def test_on_and_1_mean_the_same_and_unnamed_inputs_stand_as_built(self) -> None:
        path = self.file(GOOD)
        shown = leat("show", path, "--when", "divert=on").out
        self.assertEqual(leat("show", path, "--when", " divert = 1 , flush=0").out, shown)
        self.assertNotEqual(leat("show", path).out, shown)

    # -- input ---------------------------------------------------------------------------------------

    def test_files_that_cannot_be_read(self) -> None:
        missing, folder = str(self.folder / "none.leat"), str(self.folder)
        for command, path, words in (("check", missing, "is not there"), ("resolve", missing, "is not there"),
                                     ("check", folder, "holds no design"), ("resolve", folder, "is a folder")):
            done = leat(command, path)
            self.assertEqual((done.code, done.out), (2, ""))
            self.assertIn(words, done.err)

    def test_reading_stops_at_the_largest_text(self) -> None:
        path = self.folder / "endless.leat"
        with open(path, "wb") as file:
            file.truncate(100 << 30)
        done = leat("check", str(path))
        self.assertEqual(done.code, 2)
        self.assertIn("larger than 64 MiB", done.err)

    def test_any_bytes_are_an_answer(self) -> None:
        for data in (b"", b"\0", b"\xff\xfe\0\0", b"leat 1\n" + b"(" * 10000, bytes(range(256)) * 40):
            done = leat("check", "-", text=data)
            self.assertEqual(done.code, 2, data[:20])
            done.out.encode("utf-8")
            self.assertNotIn("\x1b", done.out)
            json.loads(leat("check", "--as", "json", "-", text=data).out)

    def test_minus_reads_the_standard_input(self) -> None:
        done = leat("check", "--fail-on", "error", "-", text=GOOD + BROKEN)
        self.assertEqual(done.code, 1)
        self.assertTrue(done.out.startswith("-:"), done.out)

    # -- streams, colour, formats --------------------------------------------------------------------

    def test_piped_output_is_one_finding_a_line(self) -> None:
        path = self.file(GOOD + BROKEN)
        done = leat("check", path)
        for line in done.out.splitlines():
            self.assertRegex(line, rf"^{path}:\d+:\d+: (error|warning|note|accepted): [a-z-]+: \S")
        self.assertIn("violated", done.err)

    def test_a_terminal_gets_the_report(self) -> None:
        path = self.file(GOOD + BROKEN)
        seen = on_terminal("check", path)
        self.assertIn("\x1b[", seen)
        self.assertIn("verdict", seen)
        for environment in ({"NO_COLOR": "1"}, {"TERM": "dumb"}):
            plain = on_terminal("check", path, **environment)
            self.assertNotIn("\x1b", plain)
            self.assertIn("verdict", plain)

    def test_colour_off_a_terminal_only_where_asked(self) -> None:
        path = self.file(GOOD)
        self.assertNotIn("\x1b", leat("show", path).out)
        self.assertIn("\x1b", leat("show", path, "--color", "always").out)
        self.assertIn("\x1b", leat("show", path, CLICOLOR_FORCE="1").out)
        self.assertNotIn("\x1b", leat("show", path, CLICOLOR_FORCE="0").out)
        self.assertNotIn("\x1b", leat("--color", "never", "show", path, CLICOLOR_FORCE="1").out)

    def test_ascii_draws_no_other_sign(self) -> None:
        path = self.file(GOOD)
        leat("show", path, "--ascii").out.encode("ascii")
        leat("follow", path, "--from", "millhouse", "--ascii").out.encode("ascii")
        self.assertIn("→", leat("show", path).out)

    def test_results_go_out_and_nothing_else_does(self) -> None:
        path = self.file(GOOD)
        for arguments in (["table", path], ["show", path], ["resolve", path], ["explain"],
                          ["follow", path, "--from", "millhouse"]):
            done = leat(*arguments)
            self.assertEqual((done.code, done.err), (0, ""), arguments)
            self.assertTrue(done.out.endswith("\n"))

    def test_a_reader_that_goes_away_is_no_crash(self) -> None:
        path = self.file(GOOD)
        process = subprocess.Popen([LEAT, "resolve", path], stdout=subprocess.PIPE,
                                   stderr=subprocess.PIPE)
        assert process.stdout and process.stderr
        process.stdout.close()
        self.assertEqual(process.stderr.read(), b"")
        self.assertEqual(process.wait(timeout=60), 0)
        process.stderr.close()

    def test_a_full_disk_is_told(self) -> None:
        with open("/dev/full", "wb") as full:
            run = subprocess.run([LEAT, "explain"], stdout=full, stderr=subprocess.PIPE, timeout=60,
                                 check=False)
        self.assertEqual(run.returncode, 2)
        self.assertIn(b"could not be written", run.stderr)

    def test_the_same_design_gives_the_same_bytes(self) -> None:
        path = self.file(GOOD + BROKEN)
        for arguments in (["check", "--as", "text", path], ["check", "--as", "json", path],
                          ["table", "--full", "--as", "json", path]):
            self.assertEqual(leat(*arguments).out, leat(*arguments).out)

    # -- tables --------------------------------------------------------------------------------------

    def test_a_full_table_of_40_levers_is_undecided_and_says_how_many(self) -> None:
        done = leat("table", "--full", self.file(design(40)))
        self.assertEqual(done.code, 3)
        self.assertIn("undecided: 40 signals are too many to run", done.out)
        self.assertIn("40 signals are too many to run", done.err)

    def test_a_condition_is_a_product_of_sums_where_that_is_shorter(self) -> None:
        levers = "".join(f"  lever l{n}\n" for n in range(12))
        text = (f"leat 1\nsignals {{\n  lever a\n  lever b\n  lever c\n  lever d\n{levers}}}\nmarks {{\n  w water\n"
                "  _ open\n  g open when (a or b) and (c or d) else rock\n  h rock when l0 else open\n  i inlet mill\n"
                "  k outlet kiln\n}\njunction gate {\n  level 0 { |wi_g_k| }\n  level 1 { |___g__| }\n}\n"
                "junction plain {\n  level 0 { |wi_h_k| }\n  level 1 { |___h__| }\n}\n")
        narrow = leat("table", "--junction", "gate", self.file(text))
        self.assertIn("kiln     when (a or b) and (c or d) ", narrow.out)
        wide = text + ("works yard {\n  place gate as first at 0 0 0\n"
                       + "".join(f"  place plain as p{n} at 0 {3 * n + 3} 0 with l0 = l{n}\n" for n in range(12)) + "}\n")
        told = leat("table", "--junction", "yard", "--from", "first.mill", self.file(wide)).out
        self.assertRegex(told, r"first\.kiln +certain +36864 of 65536 combinations +when \(. or .\) and \(. or .\)\n")

    def test_what_is_only_reached_through_what_never_comes_about_is_not_done(self) -> None:
        text = design(2).replace("}\n", "  never lever_0 and lever_1\n}\n", 1)
        told = leat("check", self.file(text + "expect {\n  after lever_0, lever_1, lever_0: millhouse may reach kiln\n}\n")).out
        self.assertIn("empty", told)
        told = leat("check", self.file(text + "expect {\n  after lever_0, lever_0, lever_1: millhouse never spilled\n}\n")).out
        self.assertNotIn("empty", told)

    def test_a_word_that_an_option_does_not_know_is_told_with_those_it_knows(self) -> None:
        path = self.file(design(2))
        for arguments in (("check", "--fail-on", "x\x02", path), ("draw", "--theme", "x\x02", path)):
            done = leat(*arguments)
            self.assertEqual(done.code, 2)
            self.assertRegex(done.err, r"'x\?' is none of \{\w+(,\w+)+\}")

    def test_fresh_water_that_switching_does_not_bring_about_is_called_so(self) -> None:
        # The run has its water before the floor is opened, and what has spread stays.
        text = ("leat 1\nsignals { lever shut starts on }\nmarks {\n  X rock\n  _ open\n  w water\n"
                "  a rock when shut else open\n  i inlet barn\n  o outlet pen\n}\njunction run {\n"
                "  level 0 { |XXXaXXXXX| }\n  level 1 { |wi_____oX| }\n  level 2 { |________X| }\n}\n")
        path = self.file(text)
        told = leat("follow", path, "--from", "barn", "--when", "shut=off")
        self.assertIn("by switching it comes with another water", told.out + told.err)
        told = leat("follow", path, "--from", "barn", "--do", "shut")
        self.assertNotIn("by switching", told.out + told.err)

    def test_a_train_is_not_run_through_a_works(self) -> None:
        text = design(2) + "works yard { place gate as one at 0 0 0 }\n"
        done = leat("train", self.file(text), "--junction", "yard", "--from", "one.millhouse", "--every", "2 s")
        self.assertEqual(done.code, 2)
        self.assertIn("yard is a works", done.err)

    def test_a_parity_of_13_levers_is_refused_before_it_is_condensed(self) -> None:
        done = leat("table", self.file(design(13)))
        self.assertEqual((done.code, done.out), (2, ""))
        self.assertIn("8192 terms", done.err)

    def test_trains_say_what_they_cannot_run(self) -> None:
        path = self.file(GOOD)
        for arguments, said in ((["--every", "0 ticks"], "--every"), (["--every", "soon"], "--every"),
                                (["--every", "1000000 ticks", "--count", "3"], "to enter"),
                                (["--every", "2 s", "--body", "ox"], "ox"),
                                (["--every", "2 s", "--do", "divert, wait 2 s"], "wait")):
            done = leat("train", path, "--from", "millhouse", *arguments)
            self.assertEqual((done.code, done.out), (2, ""), arguments)
            self.assertIn(said, done.err)

    def test_what_is_done_and_what_is_put_exclude_each_other(self) -> None:
        path = self.file(GOOD)
        for command in (["show", path], ["follow", path, "--from", "millhouse"]):
            done = leat(*command, "--when", "divert=on", "--do", "divert")
            self.assertEqual((done.code, done.out), (2, ""))
            self.assertIn("exclude each other", done.err)
            self.assertEqual(leat(*command, "--do", "divert, divert").code, 0)

    def test_13_levers_are_too_many_to_print_and_few_enough_to_condense(self) -> None:
        path = self.file(design(13).replace(" xor ", " and "))
        done = leat("table", "--full", path)
        self.assertEqual(done.code, 2)
        self.assertIn("8192", done.err)
        condensed = leat("table", path)
        self.assertEqual(condensed.code, 0)
        self.assertIn("lever_12", condensed.out)

    def test_a_table_can_be_pasted_back_as_an_expectation(self) -> None:
        path = self.file(GOOD)
        for full in ([], ["--full"]):
            pasted = leat("table", *full, "--as", "expect", path).out
            self.assertIn("expect table walker from millhouse of yard {", pasted)
            done = leat("check", "--fail-on", "error", self.file(GOOD + pasted, "pasted.leat"))
            self.assertEqual(done.code, 0, pasted + done.out + done.err)
            swapped = pasted.replace("| kiln", "| dairy").replace("| press", "| kiln")
            swapped = swapped.replace("| dairy", "| press")
            self.assertEqual(leat("check", "-", text=GOOD + swapped).code, 1)

    def test_csv_has_a_record_for_each_row(self) -> None:
        lines = leat("table", "--full", "--as", "csv", self.file(GOOD)).out.split("\r\n")
        self.assertEqual(len(lines), 1 + 4 + 1)
        self.assertTrue(lines[0].startswith("junction,inlet,body,divert,flush,verdict,outlets"))

    # -- follow --------------------------------------------------------------------------------------

    def test_follow_tells_the_way_and_where_it_does_not_lead(self) -> None:
        path = self.file(GOOD)
        done = leat("follow", path, "--from", "millhouse", "--to", "kiln")
        self.assertIn("Reaches kiln", done.out)
        self.assertIn("pushed east by the water", done.out)
        away = leat("follow", path, "--from", "millhouse", "--to", "kiln", "--when", "divert=on")
        self.assertIn("do not lead to kiln", away.out)

    def test_the_replay_line_of_a_violation_runs(self) -> None:
        path = self.file(GOOD + BROKEN)
        report = leat("check", "--as", "text", path).out
        line = next(l for l in report.splitlines() if l.strip().startswith("see") and "follow" in l)
        command = line.split("see", 1)[1].strip().removeprefix("leat ")
        run = subprocess.run(f'"{LEAT}" {command}', shell=True, capture_output=True, timeout=60,
                             check=False)
        self.assertEqual(run.returncode, 0, run.stderr)
        self.assertIn(b"millhouse", run.stdout)


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    known, rest = parser.parse_known_args()
    LEAT = os.path.abspath(known.leat)
    unittest.main(argv=[sys.argv[0], *rest])
