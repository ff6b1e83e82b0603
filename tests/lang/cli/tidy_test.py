"""`leat tidy` from outside: files, folders, streams, exit codes, and that nothing is lost.

    /usr/bin/python3 tidy_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import os
import re
import shutil
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

LEAT = ""
ROOT = Path(__file__).resolve().parents[3]

UNTIDY = """leat   1 # first
signals{lever divert   # which way
  lever  flush}


marks { w water
a rock  when divert and( not flush)else open
_ open
i inlet millhouse
k outlet kiln }
junction yard{ level 0{|wi_a_k| }
level 1 {|___a__| # above
} }
# last"""
TIDY = """leat 1  # first

signals {
  lever divert  # which way
  lever flush
}

marks {
  w  water
  a  rock when divert and not flush else open
  _  open
  i  inlet  millhouse
  k  outlet kiln
}

junction yard {
  level 0 { |wi_a_k| }
  level 1 { |___a__| }  # above
}
# last
"""
FAULTY = UNTIDY.replace("|wi_a_k|", "|wi_?_k|")


class Done:
    def __init__(self, run: subprocess.CompletedProcess[bytes]) -> None:
        self.code, self.out, self.err = run.returncode, run.stdout.decode(), run.stderr.decode()


def leat(*arguments: str | Path, text: str | bytes = b"") -> Done:
    data = text.encode() if isinstance(text, str) else text
    return Done(subprocess.run([LEAT, *map(str, arguments)], input=data, capture_output=True, check=False, timeout=60))


class Tidy(unittest.TestCase):
    def setUp(self) -> None:
        held = tempfile.TemporaryDirectory()
        self.addCleanup(held.cleanup)
        self.folder = Path(held.name)

    def file(self, text: str | bytes, name: str = "yard.leat") -> Path:
        path = self.folder / name
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(text.encode() if isinstance(text, str) else text)
        return path

    def test_writes_the_file_in_its_place(self) -> None:
        path = self.file(UNTIDY)
        done = leat("tidy", path)
        self.assertEqual((done.code, done.out, done.err), (0, "", f"tidied {path}\n"))
        self.assertEqual(path.read_text(), TIDY)
        self.assertEqual([p.name for p in self.folder.iterdir()], ["yard.leat"])

    def test_leaves_a_tidy_file_alone(self) -> None:
        path = self.file(TIDY)
        before = path.stat().st_mtime_ns
        done = leat("tidy", path)
        self.assertEqual((done.code, done.out, done.err), (0, "", ""))
        self.assertEqual(path.stat().st_mtime_ns, before)

    def test_prints_what_it_reads_also_if_it_is_tidy(self) -> None:
        for text in (UNTIDY, TIDY):
            done = leat("tidy", "-", text=text)
            self.assertEqual((done.code, done.out, done.err), (0, TIDY, ""))

    def test_check_shows_the_difference_and_writes_nothing(self) -> None:
        path = self.file(UNTIDY)
        done = leat("tidy", "--check", path)
        self.assertEqual(done.code, 1)
        self.assertEqual(path.read_text(), UNTIDY)
        patch = shutil.which("patch")
        self.assertIsNotNone(patch, "patch is missing: install the package patch")
        subprocess.run([patch, "-s", str(path)], input=done.out.encode(), check=True)
        self.assertEqual(path.read_text(), TIDY)
        again = leat("tidy", "--check", path)
        self.assertEqual((again.code, again.out), (0, ""))

    def test_check_of_the_standard_input(self) -> None:
        self.assertEqual(leat("tidy", "--check", "-", text=UNTIDY).code, 1)
        self.assertEqual(leat("tidy", "--check", "-", text=TIDY).code, 0)

    def test_refuses_what_has_faults(self) -> None:
        for text in (FAULTY, "leat 1\nsignals {", "", b"\xff\xfe", b"leat 1\0"):
            path = self.file(text)
            before = path.read_bytes()
            for arguments in (("tidy", path), ("tidy", "--check", path)):
                done = leat(*arguments)
                self.assertEqual((done.code, done.out), (2, ""), done.err)
                self.assertIn("is left as it is", done.err)
                self.assertEqual(path.read_bytes(), before)
            done = leat("tidy", "-", text=before)
            self.assertEqual((done.code, done.out), (2, ""))

    def test_one_bad_file_does_not_keep_the_others_from_being_tidied(self) -> None:
        bad, good = self.file(FAULTY, "a.leat"), self.file(UNTIDY, "b.leat")
        self.assertEqual(leat("tidy", bad, good).code, 2)
        self.assertEqual(good.read_text(), TIDY)

    def test_folders_stand_for_the_designs_below_them(self) -> None:
        inside = [self.file(UNTIDY, name) for name in ("b.leat", "a.leat", "deep/c.leat")]
        outside = [self.file(UNTIDY, name) for name in ("notes.txt", ".hidden/d.leat")]
        done = leat("tidy", self.folder)
        self.assertEqual(done.err, "".join(f"tidied {self.folder}/{name}\n" for name in ("a.leat", "b.leat", "deep/c.leat"))
                         + "3 files changed, 0 were tidy before\n")
        self.assertTrue(all(path.read_text() == TIDY for path in inside))
        self.assertTrue(all(path.read_text() == UNTIDY for path in outside))

    def test_a_folder_without_designs(self) -> None:
        done = leat("tidy", self.folder)
        self.assertEqual(done.code, 2)
        self.assertIn("holds no design", done.err)

    def test_what_cannot_be_written_keeps_its_text(self) -> None:
        if os.geteuid() == 0:
            done = leat("tidy", "/dev/full")
            self.assertEqual(done.code, 2)
            return
        path = self.file(UNTIDY)
        path.chmod(0o444)
        self.assertEqual(leat("tidy", path).code, 2)
        self.assertEqual(path.read_text(), UNTIDY)

    def test_line_ends_marks_of_order_and_tabs_become_plain(self) -> None:
        text = "\ufeff" + UNTIDY.replace("\n", "\r\n").replace("lever  flush", "\tlever\tflush")
        path = self.file(text)
        self.assertEqual(leat("tidy", path).code, 0)
        self.assertEqual(path.read_bytes(), TIDY.encode())

    def test_only_the_named_file_is_tidied_not_what_it_includes(self) -> None:
        shared = self.file("leat 1\nsignals{lever divert lever flush}\n", "shared.leat")
        before = shared.read_text()
        path = self.file(re.sub(r"signals\{.*?\}", 'include   "shared.leat"', UNTIDY, flags=re.S))
        self.assertEqual(leat("tidy", path).code, 0, leat("tidy", path).err)
        self.assertIn('\ninclude "shared.leat"\n', path.read_text())
        self.assertEqual(shared.read_text(), before)
        self.assertEqual(leat("tidy", shared).code, 0)
        self.assertEqual(shared.read_text(), "leat 1\n\nsignals {\n  lever divert\n  lever flush\n}\n")

    def test_the_examples_are_tidy(self) -> None:
        done = leat("tidy", "--check", ROOT / "examples")
        self.assertEqual((done.code, done.out), (0, ""), done.err)


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    given, rest = parser.parse_known_args()
    LEAT = str(Path(given.leat).resolve())
    unittest.main(argv=[sys.argv[0], *rest])
