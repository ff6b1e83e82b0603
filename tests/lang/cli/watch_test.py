"""`leat watch` from outside: saves a file, reads what is told, and interrupts it.

    /usr/bin/python3 watch_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import os
import queue
import signal
import subprocess
import sys
import tempfile
import threading
import time
import unittest
from pathlib import Path

LEAT = ""
PATIENCE = 30  # seconds

ROOT = Path(__file__).resolve().parents[3]
TURN = (ROOT / "examples/side_turn.leat").read_text()
# The same with the contrary lever.
TURNED = TURN.replace("rock when divert else open", "ROCK").replace(
    "open when divert else rock", "rock when divert else open").replace("ROCK", "open when divert else rock")


class Watching:
    """The program, and the lines it prints as they come."""

    def __init__(self, *arguments: str | Path) -> None:
        self.run = subprocess.Popen([LEAT, "watch", "--as", "lines", *map(str, arguments)], stdout=subprocess.PIPE,
                                    stderr=subprocess.PIPE, text=True)
        self.lines: queue.Queue[str] = queue.Queue()
        self.told = ""
        self.readers = [threading.Thread(target=self.read, args=[stream], daemon=True)
                        for stream in (self.run.stdout, self.run.stderr)]
        for reader in self.readers:
            reader.start()

    def read(self, stream) -> None:
        for line in stream:
            self.lines.put(line)

    def until(self, part: str) -> str:
        """All that is told up to a line with this part in it."""
        told, end = "", time.monotonic() + PATIENCE
        while part not in told:
            try:
                told += self.lines.get(timeout=max(0.0, end - time.monotonic()))
            except queue.Empty:
                raise AssertionError(f"'{part}' was not told, but:\n{told}") from None
        self.told += told
        return told

    def interrupt(self) -> int:
        self.run.send_signal(signal.SIGINT)
        code = self.run.wait(PATIENCE)
        for reader in self.readers:
            reader.join(PATIENCE)
        while not self.lines.empty():
            self.told += self.lines.get()
        self.run.stdout.close()
        self.run.stderr.close()
        return code


class Watch(unittest.TestCase):
    def setUp(self) -> None:
        held = tempfile.TemporaryDirectory()
        self.addCleanup(held.cleanup)
        self.folder = Path(held.name)

    def file(self, text: str, name: str = "yard.leat") -> Path:
        path = self.folder / name
        path.write_text(text)
        return path

    def watch(self, *arguments: str | Path) -> Watching:
        watching = Watching(*arguments)
        self.addCleanup(lambda: watching.run.poll() is None and watching.run.kill())
        watching.until("watching")
        return watching

    def test_judges_at_once_and_ends_with_the_code_of_the_last_check(self) -> None:
        for text, code in ((TURN, 0), (TURNED, 1), ("leat 1\n", 2)):
            with self.subTest(code):
                self.assertEqual(self.watch(self.file(text)).interrupt(), code)

    def test_a_save_without_effect_is_proved_the_same(self) -> None:
        path = self.file(TURN)
        watching = self.watch(path)
        path.write_text("# a remark\n" + TURN)
        told = watching.until("since the last save")
        self.assertIn(f"{path}: saved\n", told)
        self.assertIn("since the last save the same, proved for every combination\n", told)
        self.assertEqual(watching.interrupt(), 0)

    def test_tells_what_is_otherwise_and_then_what_is_otherwise_again(self) -> None:
        path = self.file(TURN)
        watching = self.watch(path)
        path.write_text(TURNED)
        told = watching.until("since the last save")
        self.assertIn("since the last save worse\n", told)
        self.assertRegex(told, r"before +reaches kiln .*\n +now +reaches press ")
        path.write_text(TURN)
        told = watching.until("since the last save")
        self.assertRegex(told, r"before +reaches press .*\n +now +reaches kiln ")
        self.assertIn("better  expected", told)
        self.assertEqual(watching.interrupt(), 0)

    def test_a_faulty_save_is_told_and_the_next_sound_one_is_compared_with_the_last_sound_one(self) -> None:
        path = self.file(TURN)
        watching = self.watch(path)
        path.write_text(TURN.replace("wi____sa____k", "wi____?a____k"))
        watching.until("unusable")
        path.write_text(TURN)
        self.assertIn("the same, proved", watching.until("since the last save"))
        self.assertEqual(watching.interrupt(), 0)

    def test_a_file_that_is_included_is_watched(self) -> None:
        shared = self.file("leat 1\nsignals { lever divert }\n", "shared.leat")
        path = self.file(TURN.replace("signals { lever divert }", 'include "shared.leat"'))
        watching = self.watch(path)
        shared.write_text("leat 1\nsignals { lever divert starts on }\n")
        told = watching.until("since the last save")
        self.assertIn("divert", told)
        self.assertNotIn("the same, proved", told)
        watching.interrupt()

    def test_a_file_put_in_the_place_of_another_by_its_name_is_seen(self) -> None:
        path = self.file(TURN)
        watching = self.watch(path)
        os.replace(self.file(TURNED, "new.leat"), path)
        watching.until("since the last save")
        watching.interrupt()

    def test_nothing_on_the_screen_is_taken_back(self) -> None:
        path = self.file(TURN)
        watching = self.watch(path)
        path.write_text(TURN + "# again\n")
        watching.until("since the last save")
        watching.interrupt()
        self.assertFalse(set(watching.told) & {"\x1b", "\r", "\b", "\f"})

    def test_the_standard_input_cannot_be_watched(self) -> None:
        done = subprocess.run([LEAT, "watch", "-"], capture_output=True, text=True, check=False, timeout=PATIENCE)
        self.assertEqual(done.returncode, 2)
        self.assertIn("cannot be watched", done.stderr)


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    given, rest = parser.parse_known_args()
    LEAT = str(Path(given.leat).resolve())
    unittest.main(argv=[sys.argv[0], *rest])
