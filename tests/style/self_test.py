#!/usr/bin/env python3
"""The style checks themselves: each bar and arrow is broken once in a scratch tree, and must be told."""
from __future__ import annotations

import contextlib
import io
import tempfile
import unittest
from pathlib import Path

import arrows
import figures


def run(check, files: dict[str, str]) -> tuple[int, str]:
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        for name, text in files.items():
            (root / name).parent.mkdir(parents=True, exist_ok=True)
            (root / name).write_text(text, encoding="utf-8")
        told = io.StringIO()
        with contextlib.redirect_stdout(told):
            code = check(root)
    return code, told.getvalue()


def function(lines: int) -> str:
    return "int count(std::vector<int> const& v) {\n" + "  ;\n" * (lines - 2) + "}\n"


class Figures(unittest.TestCase):
    def told(self, text: str) -> tuple[int, str]:
        return run(figures.main, {"engine/model/a.cpp": text})

    def test_bars(self) -> None:
        self.assertEqual(self.told(function(25))[0], 0)
        self.assertIn("function of 61 lines", self.told(function(61))[1])
        self.assertIn("one function in ten", self.told(function(26))[1])
        self.assertIn("401 lines", self.told("// a\n" * 401)[1])
        self.assertEqual(self.told("// a\n" * 400)[0], 0)

    def test_what_a_function_is(self) -> None:
        count = lambda text: [lines for _, lines in figures.functions(figures.without_words(text))]
        self.assertEqual(count("namespace a {\nstruct B {\n  int c() const { return 1; }\n};\n}\n"), [1])
        self.assertEqual(count('B::B(int a)\n    : a_(a), b_{a} {\n  if (a) {\n  }\n}\n'), [4])
        self.assertEqual(count('void f() { auto s = "}{"; /* } */ for (;;) { g([&] { }); } }\n'), [1])
        self.assertEqual(count("auto f(int a) -> std::vector<int> {\n}\nint a[] = {1};\nenum class E { a };\n"), [2])


class Arrows(unittest.TestCase):
    def told(self, name: str, included: str) -> tuple[int, str]:
        return run(arrows.main, {name: f"#include {included}\n"})

    def test_forbidden(self) -> None:
        for name, included in [("engine/water/a.cpp", '"lang/source/b.hpp"'), ("engine/water/a.cpp", "<iostream>"),
                               ("engine/model/a.hpp", '"engine/water/b.hpp"'), ("engine/body/a.hpp", "<boost/graph/b.hpp>"),
                               ("engine/water/a.cpp", "<boost/graph/b.hpp>"), ("lang/check/a.cpp", "<boost/spirit/b.hpp>"),
                               ("lang/grammar/parse.hpp", "<boost/spirit/b.hpp>"), ("lang/render/a.cpp", "<CLI/CLI.hpp>"),
                               ("lang/check/a.cpp", '"lang/render/b.hpp"'), ("engine/model/a.cpp", "<fmt/format.h>"),
                               ("engine/newly/a.cpp", "<vector>")]:
            self.assertEqual(self.told(name, included)[0], 1, f"{name} {included}")

    def test_allowed(self) -> None:
        for name, included in [("lang/lower/a.cpp", '"engine/model/b.hpp"'), ("engine/body/a.cpp", "<boost/graph/b.hpp>"),
                               ("engine/water/a.cpp", '"engine/model/b.hpp"'), ("lang/cli/a.cpp", "<CLI/CLI.hpp>"),
                               ("lang/cli/a.cpp", '"engine/judge.hpp"'), ("engine/model/a.cpp", '"engine/contract.hpp"')]:
            self.assertEqual(self.told(name, included)[0], 0, f"{name} {included}")


if __name__ == "__main__":
    unittest.main()
