"""Texts of a design that mean something in a format must do nothing there.

A design and a file name full of quotes, markup, ends of sections, commas, formulas, marks that turn the direction of
writing: every format is read by a program that is not ours, which must find the texts as texts and nothing else.

    /usr/bin/python3 hostile_names.py --leat build/leat
"""
from __future__ import annotations

import argparse
import csv
import io
import json
import os
import re
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import sarif_rules
import vcd_reader
from check_formats import html_of, validated_xml

PROGRAM = Path()
TURN = "\u202e"  # what follows is shown from right to left
HOSTILE = f"""=1+1, <b>&amp; ]]> --> '`|` [a](1) {{0}} ${{x}} %s http://x.invalid {TURN}olleh"""
NAME = "=cmd,'a' \"b\" <i>&]]> {0} [x](1) `|` %41 \x1b[31m" + TURN + "\n.leat"


def quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


# A lever nobody uses (accepted with a hostile reason), an expectation that fails, a finding; marks that are markup;
# names in letters written from right to left and in two that are words of the DOT language.
DESIGN = f"""leat 1
signals {{
  lever node
  lever מים
  lever digraph
  toggle größe on node
}}
marks {{
  <  open
  &  open when מים else water
  ,  water when מים else open
  i  inlet  millhouse
  =  outlet kiln
  '  outlet press
}}
junction yard {quoted("title " + HOSTILE)} {{ level 0 {{ |=<<<&i,<<<<<<<<'| }} level 1 {{ |<<<<<<<<<<<<<<<<| }} }}
accept idle-signal because {quoted(HOSTILE)}
expect {quoted("block " + HOSTILE)} {{ millhouse reaches press when not מים and not größe }}
"""


class Hostile(unittest.TestCase):
    def setUp(self) -> None:
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)
        (self.folder / NAME).write_text(DESIGN, encoding="utf-8")

    def leat(self, *arguments: str) -> str:
        done = subprocess.run([PROGRAM, *arguments], cwd=self.folder, capture_output=True, timeout=60, check=False,
                              env={**os.environ, "NO_COLOR": "1"})
        self.assertIn(done.returncode, (0, 1), done.stderr.decode())
        self.assertEqual(done.stderr.count(b"\x1b"), 0)
        return done.stdout.decode("utf-8")

    def check(self, form: str) -> str:
        text = self.leat("check", "--as", form, NAME)
        self.assertNotIn("\x1b", text)
        self.assertNotIn(TURN, text, "what looks at the text would show it turned")
        return text

    def test_text_and_lines(self) -> None:
        for form in ("text", "lines"):
            self.assertIn("]]>", self.check(form))
        for line in self.check("lines").splitlines():
            self.assertRegex(line, r":\d+:\d+: (error|warning|note|accepted|violated): ")

    def test_other_texts(self) -> None:
        for arguments in (["table"], ["show"], ["follow", "--from", "millhouse"], ["guard"], ["machine"], ["waves"],
                          ["table", "--as", "markdown"], ["table", "--as", "expect"]):
            text = self.leat(*arguments, NAME)
            self.assertNotIn("\x1b", text, arguments)
            self.assertNotIn(TURN, text, arguments)

    def test_json(self) -> None:
        document = json.loads(self.check("json"))
        file = document["files"][0]
        self.assertEqual(file["file"], NAME)
        junction = file["junctions"][0]
        self.assertEqual(junction["expectations"][0]["title"], "block " + HOSTILE)
        self.assertIn(HOSTILE, [finding["accepted"] for finding in junction["findings"]])

    def test_sarif(self) -> None:
        log = json.loads(self.check("sarif"))
        self.assertEqual(sarif_rules.faults(log, self.folder), [])
        run = log["runs"][0]
        reasons = [s["justification"] for r in run["results"] for s in r["suppressions"]]
        self.assertEqual(set(reasons), {HOSTILE})
        uri = run["artifacts"][0]["location"]["uri"]
        self.assertEqual(sarif_rules.unquote(uri), NAME)
        self.assertEqual(sarif_rules.urlsplit(uri).path, uri)

    def test_junit(self) -> None:
        root = validated_xml(self.check("junit"))
        names = [case.attrib["name"] for case in root.iter("testcase")]
        self.assertIn("block " + HOSTILE.replace(TURN, "?"), names[0])
        self.assertEqual({element.tag for element in root.iter()}, {"testsuites", "testsuite", "testcase", "failure"})

    def test_csv(self) -> None:
        records = list(csv.reader(io.StringIO(self.check("csv"), newline=""), strict=True))
        self.assertEqual({len(record) for record in records}, {17})
        for record in records[1:]:
            for field in record:
                self.assertNotRegex(field, r"^[=+@\t\r]", "a spreadsheet would run it")
                self.assertNotIn("\n", field)
        self.assertTrue(records[1][0].startswith("'=cmd,'a' \"b\""))
        self.assertIn("'" + HOSTILE.replace(TURN, "?"), [record[11] for record in records])
        table = list(csv.reader(io.StringIO(self.leat("table", "--as", "csv", NAME), newline=""), strict=True))
        self.assertEqual(len({len(record) for record in table}), 1)

    def test_markdown(self) -> None:
        html = html_of(self.check("markdown"))
        tags = set(re.findall(r"<(/?\w+)", html))
        self.assertLessEqual({tag.removeprefix("/") for tag in tags},
                             {"h1", "h2", "h3", "p", "table", "thead", "tbody", "tr", "th", "td", "code"})
        self.assertIn("&lt;b&gt;&amp;amp; ]]&gt;", html)
        rows = re.findall(r"<tr>(.*?)</tr>", html, re.DOTALL)
        tables = re.findall(r"<table>(.*?)</table>", html, re.DOTALL)
        for table in tables:
            widths = {len(re.findall(r"<t[hd]", row)) for row in re.findall(r"<tr>(.*?)</tr>", table, re.DOTALL)}
            self.assertEqual(len(widths), 1, table)
        self.assertGreaterEqual(len(rows), 4)

    def test_dot(self) -> None:
        for extra in ([], ["--full"]):
            dot = self.leat("machine", "--as", "dot", *extra, NAME)
            done = subprocess.run(["dot", "-Tjson"], input=dot.encode(), capture_output=True, check=True)
            self.assertEqual(done.stderr, b"")
            graph = json.loads(done.stdout)
            labels = [node["label"] for node in graph["objects"]]
            self.assertTrue(any("größe" in label for label in labels), labels)
            self.assertTrue(any("node" in edge["label"] for edge in graph["edges"]))

    def test_vcd(self) -> None:
        dump = vcd_reader.read(self.leat("waves", "--as", "vcd", "--do", "מים, node", NAME))
        self.assertEqual(len(dump.names), 4)
        self.assertIn("node", dump.names)
        self.assertEqual(len(set(dump.names)), 4)


if __name__ == "__main__":
    reader = argparse.ArgumentParser()
    reader.add_argument("--leat", type=Path, required=True)
    known, rest = reader.parse_known_args()
    PROGRAM = known.leat.resolve()
    unittest.main(argv=[sys.argv[0], *rest])
