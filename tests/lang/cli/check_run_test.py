"""`leat check` of many files and folders: what is found, in which order, by how many at a time; where the result goes;
what is left of it when the run is interrupted.

    /usr/bin/python3 check_run_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import csv
import io
import json
import os
import re
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import unittest
import xml.etree.ElementTree as ElementTree
from pathlib import Path

LEAT = ""
ROOT = Path(__file__).resolve().parents[3]
FORMATS = ("text", "lines", "json", "sarif", "junit", "csv", "markdown")

CHANNEL = """leat 1
signals { lever west }
marks {
  _ open
  e open when west else water
  w water when west else open
  i inlet millhouse
  k outlet kiln
  p outlet press
}
junction %s { level 0 { |k___eiw___p| } level 1 { |___________| } }
expect { millhouse reaches kiln when %s }
"""
KEPT = CHANNEL % ("yard", "west")
BROKEN = CHANNEL % ("yard", "not west")
NOTHING = "leat 1\nsignals { lever west }\n"
# One lever of the plant stands for another of the yard, and the plant's promise speaks of neither alone: it is not known
# whether it bars what the yard's water remembers. Apart from that, nothing is wrong that is not accepted.
PARTS = """leat 1
signals {
  lever west
  button ring for 20 ticks
  button stop for 20 ticks
  latch held on ring off stop
}
marks {
  _ open
  w water
  i inlet mill
  k outlet kiln
  p outlet press
  e open when west else water
  v water when west else open
}
junction yard { level 0 { |k___eiv___p| } level 1 { |___________| } }
junction run { level 0 { |wi______k| } level 1 { |_________| } }
"""
PROMISED = """leat 1
include "parts.leat"
signals { never west and stop }
works plant {
  place yard as one at 9 -2 1 turned right with west = held
  place run as two at 10 1 0 turned about
}
accept unreached-outlet because "the rest comes next week"
"""
FAULTY = KEPT.replace("level 0", "levl 0")


def slow(levers: int, depth: int = 12) -> str:
    """A floor with a gate for each lever, so that every combination has a water of its own."""
    marks = "".join(f"  {chr(65 + i)} rock when l{i} else open\n" for i in range(levers))
    row = "_".join(chr(65 + i) for i in range(levers))
    width = len(row) + 3
    rows = f"\n|{'_' * width}|" * depth
    return ("leat 1\nsignals { " + " ".join(f"lever l{i}" for i in range(levers)) + " }\nmarks {\n  _ open\n  w water\n"
            "  i inlet millhouse\n  k outlet kiln\n" + marks + "}\njunction wide {\n  level 0 {\n|wi" + row + "k|" + rows +
            "\n}\n  level 1 {\n|" + "_" * width + "|" + rows + "\n}\n}\n")


def settled(narration: str) -> str:
    """What is narrated, without how far the work was: that depends on the machine."""
    return re.sub(r"(?m)^\w+: \d+ (of \d+ )?(files|settings), .*\n", "", narration)


class CheckRun(unittest.TestCase):
    def setUp(self) -> None:
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def put(self, name: str, text: str) -> None:
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")

    def leat(self, *arguments: str, **more: object) -> subprocess.CompletedProcess[str]:
        return subprocess.run([LEAT, *arguments], cwd=self.folder, capture_output=True, text=True, timeout=300,
                              check=False, **more)  # type: ignore[call-overload]

    def document(self, *arguments: str) -> dict[str, object]:
        return json.loads(self.leat("check", "--as", "json", *arguments).stdout)

    def names(self, *arguments: str) -> list[str]:
        return [file["file"] for file in self.document(*arguments)["files"]]  # type: ignore[index,attr-defined]

    # -- folders -------------------------------------------------------------------------------------

    def test_a_folder_is_every_design_in_it_sorted(self) -> None:
        for name in ("b.leat", "a.leat", "deep/z.leat", "deep/er/y.leat", "Z.leat", ".hidden/x.leat", ".x.leat"):
            self.put(name, KEPT)
        self.put("notes.txt", "no design")
        (self.folder / "empty.leat").mkdir()
        self.assertEqual(self.names("."), ["Z.leat", "a.leat", "b.leat", "deep/er/y.leat", "deep/z.leat"])
        self.assertEqual(self.names("deep", "b.leat", "."), ["deep/er/y.leat", "deep/z.leat", "b.leat", "Z.leat", "a.leat"])

    def test_links_lead_on_but_never_round(self) -> None:
        self.put("in/a.leat", KEPT)
        self.put("out/b.leat", KEPT)
        os.symlink("..", self.folder / "in/up")
        os.symlink(".", self.folder / "in/self")
        os.symlink("gone", self.folder / "in/broken.leat")
        os.symlink("a.leat", self.folder / "in/again.leat")
        self.assertEqual(self.names("in"), ["in/a.leat", "in/up/out/b.leat"])

    def test_a_file_named_twice_is_checked_once(self) -> None:
        self.put("a.leat", KEPT)
        self.assertEqual(self.names("a.leat", "./a.leat", ".", "."), ["a.leat"])

    def test_what_draws_nothing_is_passed_over_in_a_folder_and_refused_by_name(self) -> None:
        self.put("shared.leat", NOTHING)
        self.put("yard.leat", 'leat 1\ninclude "shared.leat"\n' + KEPT.split("\n", 2)[2])
        run = self.document(".")
        self.assertEqual([file["file"] for file in run["files"]], ["yard.leat"])  # type: ignore[index,attr-defined]
        self.assertEqual((run["exit"], run["summary"]["without_junctions"]), (0, 1))  # type: ignore[index]
        self.assertEqual(self.leat("check", "shared.leat").returncode, 2)
        self.assertIn("1 more draws no junction", self.leat("check", ".").stderr)

    def test_an_included_file_that_draws_is_checked_as_a_file_of_its_own(self) -> None:
        self.put("fork.leat", KEPT)
        self.put("yard.leat", 'leat 1\ninclude "fork.leat"\nworks pair {\n  place yard as one\n}\n')
        self.assertEqual(self.names("."), ["fork.leat", "yard.leat"])

    def test_a_folder_without_designs_and_one_that_may_not_be_read_are_told(self) -> None:
        self.put("yard.leat", KEPT)
        (self.folder / "empty").mkdir()
        done = self.leat("check", "empty", "yard.leat")
        self.assertEqual(done.returncode, 2)
        self.assertIn("empty holds no design", done.stderr)
        run = self.document("empty", "yard.leat")
        self.assertEqual([file["verdict"] for file in run["files"]], ["holds", "unusable"])  # type: ignore[index,attr-defined]

    def test_a_long_chain_of_folders_is_walked(self) -> None:
        self.put("/".join(["d"] * 200) + "/a.leat", KEPT)
        self.assertEqual(len(self.names("d")), 1)

    # -- the whole run -------------------------------------------------------------------------------

    def test_the_summary_counts_every_file(self) -> None:
        for name, text in (("a", KEPT), ("b", BROKEN), ("c", KEPT), ("d", FAULTY), ("e", CHANNEL % ("yard", "west and not west"))):
            self.put(name + ".leat", text)
        summary = {"files": 5, "holds": 2, "violated": 1, "empty": 1, "undecided": 0, "unusable": 1, "interrupted": 0,
                   "without_junctions": 0}
        self.assertEqual(self.document(".")["summary"], summary)
        line = "5 files: 2 hold, 1 violated, 1 empty, 1 unusable"
        self.assertEqual(self.leat("check", ".").stderr.splitlines()[-1], line)
        self.assertEqual(self.leat("check", ".", "--as", "text").stdout.splitlines()[-1], line)
        self.assertIn(line, self.leat("check", ".", "--as", "markdown").stdout)
        self.assertNotIn("file:", self.leat("check", "a.leat").stderr)

    def test_any_number_of_jobs_gives_the_same_bytes(self) -> None:
        for path in sorted((ROOT / "examples").glob("*.leat")):
            shutil.copy(path, self.folder / path.name)
        for name in ("broken", "faulty"):
            self.put(f"{name}.leat", {"broken": BROKEN, "faulty": FAULTY}[name])
        for form in FORMATS:
            alone = self.leat("check", ".", "gone.leat", "--as", form, "--jobs", "1")
            for jobs in ("2", "7"):
                many = self.leat("check", ".", "gone.leat", "--as", form, "--jobs", jobs)
                self.assertEqual((many.returncode, many.stdout, settled(many.stderr)),
                                 (alone.returncode, alone.stdout, settled(alone.stderr)))

    def test_jobs_are_a_number(self) -> None:
        for number in ("0", "-1", "x", "9999999"):
            self.assertEqual(self.leat("check", ".", "--jobs", number).returncode, 2)

    # -- where it goes -------------------------------------------------------------------------------

    def test_out_holds_what_would_be_printed(self) -> None:
        self.put("a.leat", KEPT)
        self.put("b.leat", BROKEN)
        for form in FORMATS:
            printed = self.leat("check", ".", "--as", form)
            done = self.leat("check", ".", "--as", form, "--out", "result")
            self.assertEqual((done.returncode, done.stdout, settled(done.stderr)),
                             (printed.returncode, "", settled(printed.stderr)))
            self.assertEqual((self.folder / "result").read_text(encoding="utf-8"), printed.stdout)
        self.assertEqual(self.leat("check", ".", "--out", "/dev/stdout").stdout, self.leat("check", ".").stdout)

    def test_a_result_that_does_not_fit_leaves_the_old_one(self) -> None:
        self.put("a.leat", BROKEN)
        self.put("result.json", "the old one")
        little = {"preexec_fn": lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100))}
        done = self.leat("check", "a.leat", "--as", "json", "--out", "result.json", **little)
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertIn("result.json cannot be written: File too large", done.stderr)
        self.assertEqual((self.folder / "result.json").read_text(), "the old one")
        self.assertEqual(sorted(p.name for p in self.folder.iterdir()), ["a.leat", "result.json"])
        for target in ("/dev/full", "no/such/folder", "."):
            self.assertEqual(self.leat("check", "a.leat", "--out", target).returncode, 2, target)

    # -- long work -----------------------------------------------------------------------------------

    def stopped(self, form: str, *signals: int) -> tuple[int, str, str]:
        """A run of a quick file and slow ones, interrupted when it has begun to be slow."""
        self.put("a.leat", KEPT)
        self.put("b.leat", slow(16, 300))
        self.put("c.leat", slow(16, 300))
        process = subprocess.Popen([LEAT, "check", ".", "--jobs", "1", "--as", form], cwd=self.folder, text=True,
                                   stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        assert process.stderr is not None
        first = ""
        while "checked: 1 of 3 files" not in first:
            line = process.stderr.readline()
            self.assertNotEqual(line, "", "it ended before it was interrupted")
            first += line
        for number in signals:
            process.send_signal(number)
            time.sleep(0.02)
        out, err = process.communicate(timeout=60)
        return process.returncode, out, first + err

    def test_an_interrupted_run_tells_what_it_knows_and_says_so(self) -> None:
        code, out, err = self.stopped("json", signal.SIGINT)
        run = json.loads(out)
        self.assertEqual((code, run["exit"], run["interrupted"]), (3, 3, True))
        self.assertEqual([file["verdict"] for file in run["files"]], ["holds", "interrupted", "interrupted"])
        self.assertEqual([len(file["junctions"]) for file in run["files"]], [1, 0, 0])
        for form, is_marked in (
                ("lines", lambda out, err: "; interrupted" in err.splitlines()[-1]),
                ("text", lambda out, err: "; interrupted" in out.splitlines()[-1]),
                ("markdown", lambda out, err: out.count("**Interrupted**") == 2),
                ("csv", lambda out, err: [r["verdict"] for r in csv.DictReader(io.StringIO(out)) if r["what"] == "run"]
                 == ["interrupted"] * 2),
                ("junit", lambda out, err: [e.attrib["type"] for e in ElementTree.fromstring(out).iter("error")]
                 == ["interrupted"] * 2),
                ("sarif", lambda out, err: json.loads(out)["runs"][0]["invocations"][0]["executionSuccessful"] is False)):
            code, out, err = self.stopped(form, signal.SIGTERM)
            self.assertEqual(code, 3, form)
            self.assertTrue(is_marked(out, err), (form, out, err))

    def test_every_form_says_what_is_left_out_for_a_promise(self) -> None:
        self.put("parts.leat", PARTS)
        self.put("plant.leat", PROMISED)
        why = "A 'never' may bar what was done before"
        for form in FORMATS:
            run = self.leat("check", "plant.leat", "--as", form)
            self.assertEqual(run.returncode, 3, form)
            if form != "json":
                self.assertIn(why, run.stdout, form)
        run = self.document("plant.leat")
        self.assertEqual(run["files"][0]["junctions"][0]["left_out"], ["promised"])  # type: ignore[index]

        def report(*arguments: str) -> ElementTree.Element:
            return ElementTree.fromstring(self.leat("check", "plant.leat", "--as", "junit", *arguments).stdout)
        self.assertEqual([e.attrib["type"] for e in report().iter("error")], ["undecided"])
        self.assertEqual(report().attrib["errors"], "1")
        csv_text = self.leat("check", "plant.leat", "--as", "csv").stdout
        self.assertEqual([r["verdict"] for r in csv.DictReader(io.StringIO(csv_text)) if r["what"] == "junction"],
                         ["undecided"])

    def test_an_ignored_signal_stays_ignored(self) -> None:
        self.put("a.leat", slow(11))
        process = subprocess.Popen([LEAT, "check", "a.leat", "--as", "json"], cwd=self.folder, stdout=subprocess.PIPE,
                                   preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_IGN))
        time.sleep(0.1)
        process.send_signal(signal.SIGINT)
        out, _ = process.communicate(timeout=120)
        self.assertFalse(json.loads(out)["interrupted"])

    def test_progress_is_append_only_and_counts_files(self) -> None:
        _, _, err = self.stopped("json", signal.SIGINT)
        lines = err.splitlines()
        self.assertRegex(lines[0], r"^checked: [01] of 3 files, \d+ s")
        self.assertNotIn("\r", err)
        self.assertNotIn("\x1b", err)

    def test_of_one_file_the_settings_are_counted(self) -> None:
        self.put("b.leat", slow(16, 300))
        process = subprocess.Popen([LEAT, "check", "b.leat"], cwd=self.folder, text=True, stdout=subprocess.DEVNULL,
                                   stderr=subprocess.PIPE)
        assert process.stderr is not None
        line = process.stderr.readline()
        process.send_signal(signal.SIGINT)
        process.communicate(timeout=60)
        self.assertRegex(line, r"^wide: \d+ (of \d+ )?settings, \d+ s")

    # -- the table of formats ------------------------------------------------------------------------

    def test_every_format_is_in_the_table_and_every_row_of_it_is_used_and_documented(self) -> None:
        source = (ROOT / "lang/cli/formats.hpp").read_text(encoding="utf-8")
        table = dict(re.findall(r'\{"(\w+)", "([\w./+-]+)", "[^"]+"\}', source))
        page = (ROOT / "docs/formats.md").read_text(encoding="utf-8")
        commands = re.findall(r"(?m)^  (\w+) {2,}", self.leat("--help").stdout.split("Subcommands:")[1].split("exit codes")[0])
        self.assertIn("check", commands)
        used = set()
        for command in commands:
            text = self.leat(command, "--help").stdout
            offered = re.search(r"--as TEXT:\{([\w,]+)\}", text)
            if offered is None:
                continue
            rows = re.findall(r"(?m)^  (\w+) +(\w+/\S+) +\S", text.split("formats:")[1])
            self.assertEqual({name for name, _ in rows}, set(offered[1].split(",")), command)
            for name, kind in rows:
                self.assertEqual(table[name], kind)
                used.add(name)
        self.assertEqual(used, set(table))
        for name, kind in table.items():
            self.assertIn(f"| `{name}` | `{kind}` |", page)


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    known, rest = parser.parse_known_args()
    LEAT = str(Path(known.leat).resolve())
    unittest.main(argv=[sys.argv[0], *rest])
