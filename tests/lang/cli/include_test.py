"""`include` from outside: paths, places in messages, and files that are no files.

    /usr/bin/python3 include_test.py --leat build/leat
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

import jsonschema

ROOT = Path(__file__).resolve().parents[3]
LEAT = ""

SIGNALS = "leat 1\nsignals {\n  lever divert\n}\n"
MARKS = """marks {
  X rock
  _ open
  w water
  a rock when divert else open
  b open when divert else rock
  i inlet millhouse
  k outlet kiln
  q outlet press
}
"""
DRAWING = """junction NAME {
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


def design(*includes: str, name: str = "yard", more: str = "") -> str:
    """A sound design that takes its lever from what it includes."""
    lines = "".join(f'include "{path}"\n' for path in includes)
    return f"leat 1\n{lines}" + MARKS + DRAWING.replace("NAME", name) + more


class Include(unittest.TestCase):
    def setUp(self) -> None:
        holder = tempfile.TemporaryDirectory()
        self.addCleanup(holder.cleanup)
        self.folder = Path(holder.name)

    def put(self, name: str, text: str | bytes) -> Path:
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text.encode("utf-8") if isinstance(text, str) else text)
        return path

    def leat(self, *arguments: str, text: str = "", folder: str = ".") -> subprocess.CompletedProcess[str]:
        return subprocess.run([LEAT, *arguments], input=text, capture_output=True, text=True,
                              cwd=self.folder / folder, timeout=60, check=False)

    def refused(self, *arguments: str, text: str = "", folder: str = ".") -> str:
        """What is said about a design that cannot be used."""
        done = self.leat("check", *arguments, text=text, folder=folder)
        self.assertEqual(done.returncode, 2, done.stdout + done.stderr)
        return done.stdout

    # ---- what is found ----

    def test_a_file_that_includes_is_judged_like_one_that_says_it_all(self) -> None:
        self.put("signals.leat", SIGNALS)
        self.put("yard.leat", design("signals.leat"))
        self.put("whole/yard.leat", SIGNALS + design().removeprefix("leat 1\n"))
        for command in (["table"], ["resolve"], ["machine"], ["guard"]):
            parted, whole = self.leat(*command, "yard.leat"), self.leat(*command, "yard.leat", folder="whole")
            self.assertEqual(parted.returncode, whole.returncode)
            self.assertEqual(parted.stdout, whole.stdout)
        self.assertIn("divert", self.leat("table", "yard.leat").stdout)

    def test_paths_begin_at_the_folder_of_the_file_they_stand_in(self) -> None:
        self.put("shared/signals.leat", SIGNALS)
        self.put("parts/fork.leat", design("../shared/signals.leat", name="fork"))
        self.put("yards/yard.leat", design("../parts/fork.leat"))
        self.put("elsewhere/x", "")
        for folder, path in ((".", "yards/yard.leat"), ("yards", "yard.leat"), ("elsewhere", "../yards/yard.leat"),
                             (".", str(self.folder / "yards/yard.leat"))):
            self.assertEqual(self.leat("table", path, folder=folder).returncode, 0, path)

    def test_an_absolute_path_is_taken_as_it_is(self) -> None:
        signals = self.put("shared/signals.leat", SIGNALS)
        self.put("yard.leat", design(str(signals)))
        self.assertEqual(self.leat("table", "yard.leat").returncode, 0)

    def test_what_comes_in_by_the_standard_input_includes_from_the_current_folder(self) -> None:
        self.put("parts/signals.leat", SIGNALS)
        self.assertEqual(self.leat("table", "-", text=design("signals.leat"), folder="parts").returncode, 0)
        self.assertIn("signals.leat is not there", self.refused("-", text=design("signals.leat")))

    def test_a_file_named_minus_is_not_the_standard_input(self) -> None:
        self.put("-", SIGNALS)
        self.assertEqual(self.leat("table", "-", text=design("-")).returncode, 0)

    def test_one_file_by_three_names_is_one_file(self) -> None:
        self.put("parts/signals.leat", SIGNALS)
        (self.folder / "parts/again.leat").symlink_to("signals.leat")
        (self.folder / "other").symlink_to("parts")
        self.put("yard.leat", design("parts/signals.leat", "parts/again.leat", "other/../parts/signals.leat"))
        self.assertEqual(self.leat("table", "yard.leat").returncode, 0)

    def test_a_way_through_a_linked_folder_is_the_file_systems(self) -> None:
        self.put("a/b/fork.leat", SIGNALS)
        self.put("a/signals.leat", SIGNALS)
        self.put("signals.leat", "this is no design")
        (self.folder / "link").symlink_to("a/b")
        self.put("yard.leat", design("link/../signals.leat"))
        self.assertEqual(self.leat("table", "yard.leat").returncode, 0)

    def test_a_chain_of_includes_through_a_parent_folder_keeps_its_names_short(self) -> None:
        for i in range(900):
            last = SIGNALS if i == 899 else f'leat 1\ninclude "../parts/{i + 1}.leat"\n'
            self.put(f"parts/{i}.leat", last)
        self.put("yard.leat", design("parts/0.leat"))
        self.assertEqual(self.leat("table", "yard.leat").returncode, 0)

    # ---- what is said ----

    def test_faults_are_told_with_their_own_file(self) -> None:
        self.put("parts/signals.leat", "leat 1\nsignals {\n  levr divert\n}\n")
        self.put("yard.leat", design("parts/signals.leat", more="expect { millhouse reaches kilnn }\n"))
        lines = self.refused("yard.leat", "--as", "lines").splitlines()
        self.assertEqual([line.split(" ")[0] for line in lines], ["yard.leat:29:28:", "parts/signals.leat:3:3:"])
        text = self.refused("yard.leat", "--as", "text")
        self.assertIn("parts/signals.leat:3:3", text)
        self.assertIn("levr divert", text)

    def test_documents_name_the_file_only_where_it_is_another(self) -> None:
        self.put("parts/signals.leat", "leat 1\nsignals {\n  levr divert\n}\n")
        self.put("yard.leat", design("parts/signals.leat", more="practce { }\n"))
        document = json.loads(self.refused("yard.leat", "--as", "json"))
        schema = json.loads((ROOT / "docs/schemas/leat-findings.schema.json").read_text(encoding="utf-8"))
        jsonschema.Draft202012Validator(schema).validate(document)
        diagnostics = document["files"][0]["diagnostics"]
        self.assertEqual([(d.get("file"), d["line"]) for d in diagnostics], [(None, 29), ("parts/signals.leat", 3)])

    def test_what_an_included_file_expects_is_not_judged(self) -> None:
        wrong = "expect { millhouse reaches press when not divert }\n"
        self.put("fork.leat", SIGNALS + design(name="fork", more=wrong).removeprefix("leat 1\n"))
        self.put("yard.leat", design("fork.leat", more="expect { millhouse reaches kiln when not divert }\n"))
        alone, within = self.leat("check", "fork.leat"), self.leat("check", "yard.leat", "--as", "json")
        self.assertEqual(alone.returncode, 1)
        self.assertIn("violated", alone.stdout)
        junctions = json.loads(within.stdout)["files"][0]["junctions"]
        self.assertEqual([j["name"] for j in junctions], ["yard"])
        self.assertEqual([e["verdict"] for e in junctions[0]["expectations"]], ["holds"])

    def test_replay_lines_name_the_file_of_the_run(self) -> None:
        self.put("signals.leat", SIGNALS)
        self.put("yard.leat", design("signals.leat", more="expect { millhouse reaches press when not divert }\n"))
        text = self.leat("check", "yard.leat", "--as", "text").stdout
        self.assertIn("leat follow yard.leat", text)

    # ---- what cannot be read ----

    def test_a_missing_file_is_told_with_a_close_name(self) -> None:
        self.put("parts/signals.leat", SIGNALS)
        self.put("yard.leat", design("parts/signal.leat"))
        told = self.refused("yard.leat", "--as", "text")
        self.assertIn("parts/signal.leat is not there", told)
        self.assertIn("yard.leat:2:1", told)
        self.assertIn("'signals.leat'", told)

    def test_folders_devices_and_pipes_are_told_and_never_waited_for(self) -> None:
        (self.folder / "parts").mkdir()
        os.mkfifo(self.folder / "pipe")
        (self.folder / "linked").symlink_to("pipe")
        (self.folder / "round").symlink_to("round")
        for path, words in (("parts", "is a folder"), (".", "is a folder"), ("parts/", "is a folder"), ("..", "is a folder"),
                            ("/dev/zero", "is a device or pipe"), ("/dev/tty", "is a device or pipe"),
                            ("/dev/null", "is a device or pipe"), ("pipe", "is a device or pipe"),
                            ("linked", "is a device or pipe"), ("round", "cannot be read"),
                            ("x" * 5000, "cannot be read"), ("yard.leat/x", "is not there")):
            self.put("yard.leat", design(path))
            told = self.refused("yard.leat")
            self.assertIn("include-unread", told, path[:20])
            self.assertIn(words, " ".join(told.split()), path[:20])

    def test_the_largest_text_is_the_most_of_all_files_together(self) -> None:
        self.put("huge.leat", "leat 1\n" + "#" * (65 << 20))
        self.put("yard.leat", design("huge.leat"))
        self.assertIn("is larger than 64 MiB", self.refused("yard.leat"))
        self.put("a.leat", "leat 1\n#" + "." * (33 << 20) + "\n")
        self.put("b.leat", "leat 1\n#" + "." * (33 << 20) + "\n")
        self.put("yard.leat", design("a.leat", "b.leat"))
        self.assertIn("together larger than 64 MiB", self.refused("yard.leat"))

    def test_more_than_1000_files_are_refused(self) -> None:
        names = [f"parts/{i}.leat" for i in range(1000)]
        for name in names:
            self.put(name, "leat 1\n")
        self.put("yard.leat", design(*names[:998], "signals.leat"))
        self.put("signals.leat", SIGNALS)
        self.assertEqual(self.leat("table", "yard.leat").returncode, 0)
        self.put("yard.leat", design("signals.leat", *names))
        told = self.refused("yard.leat")
        self.assertIn("too-many", told)
        self.assertEqual(len(told.splitlines()), 1)

    def test_any_bytes_in_an_included_file_are_an_answer(self) -> None:
        for junk in (b"", b"\0", b"\xff\xfe\x00\x00", b"leat 2\n", b"\x89PNG\r\n\x1a\n" + bytes(range(256)),
                     b'leat 1\ninclude "', b"leat 1\ninclude yard.leat\n", b"leat 1\ninclude\n",
                     b'leat 1\ninclude "a" "b"\n', b'leat 1\ninclude "\\"\n'):
            self.put("junk.leat", junk)
            self.put("yard.leat", design("junk.leat"))
            self.assertIn("junk.leat:", self.refused("yard.leat"))

    def test_loops_show_every_include(self) -> None:
        self.put("a.leat", 'leat 1\ninclude "b.leat"\n')
        self.put("b.leat", 'leat 1\n\ninclude "yard.leat"\n')
        self.put("yard.leat", design("a.leat"))
        told = self.refused("yard.leat", "--as", "text")
        for place in ("b.leat:3:1", "yard.leat:2:1", "a.leat:2:1"):
            self.assertIn(place, told)
        self.assertIn("include-loop", self.refused("./yard.leat"))
        self.put("self.leat", design("self.leat"))
        self.assertIn("self.leat includes itself", self.refused("self.leat"))


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    known, rest = parser.parse_known_args()
    LEAT = str(Path(known.leat).resolve())
    unittest.main(argv=[sys.argv[0], *rest])
