"""Completions and manual pages, by the programs they are for: bash offers the words, zsh and fish read their scripts,
groff sets the pages without a warning.

    /usr/bin/python3 shells_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import re
import shutil
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

LEAT = ""


def needed(program: str, package: str) -> str:
    found = shutil.which(program)
    if found is None:
        raise AssertionError(f"{program} is missing: install the package {package}")
    return found


def leat(*arguments: str) -> str:
    return subprocess.run([LEAT, *arguments], capture_output=True, text=True, check=True).stdout


def offered(*words: str, folder: str | None = None) -> list[str]:
    """What bash offers for the last of the words."""
    quoted = " ".join("'" + word.replace("'", "'\\''") + "'" for word in ("leat", *words))
    script = (f"{leat('completion', 'bash')}\n"
              f"COMP_WORDS=({quoted}); COMP_CWORD={len(words)}\n"
              "_leat 2>/dev/null; printf '%s\\n' \"${COMPREPLY[@]}\"")
    done = subprocess.run([needed("bash", "bash"), "--norc", "-u", "-c", script], capture_output=True, text=True,
                          check=False, cwd=folder)
    if done.stderr:
        raise AssertionError(done.stderr)
    return sorted(filter(None, done.stdout.splitlines()))


def help_of(*command: str) -> str:
    return leat(*command, "--help")


def commands() -> list[str]:
    told = help_of().split("Subcommands:")[1].split("\n\n")[0]
    return [line.split()[0] for line in told.splitlines() if re.match(r"  \S", line)]


def options_in(text: str) -> set[str]:
    return set(re.findall(r"^  (?:-\w,)?(--[\w-]+)", text, re.M))


def global_options() -> set[str]:
    return options_in(help_of())


class Bash(unittest.TestCase):
    def test_offers_every_command(self) -> None:
        self.assertEqual(offered(""), sorted(commands()))
        self.assertGreater(len(commands()), 10)

    def test_offers_the_commands_that_begin_so(self) -> None:
        self.assertEqual(offered("ti"), ["tidy"])
        self.assertEqual(offered("--ascii", "ti"), ["tidy"])
        self.assertEqual(offered("--color", "never", "ti"), ["tidy"])

    def test_offers_every_option_of_every_command(self) -> None:
        for command in commands():
            with self.subTest(command):
                self.assertEqual(set(offered(command, "-")), options_in(help_of(command)) | global_options())

    def test_offers_what_may_follow_an_option(self) -> None:
        self.assertEqual(offered("waves", "--as", ""), ["json", "text", "vcd"])
        self.assertEqual(offered("waves", "--as", "=", "v"), ["vcd"])
        self.assertEqual(offered("waves", "--as", "="), ["json", "text", "vcd"])
        self.assertEqual(offered("check", "--fail-on", ""), ["error", "note", "warning"])
        self.assertEqual(offered("--color", "a"), ["always", "auto"])
        self.assertEqual(offered("follow", "--from", ""), [])

    def test_offers_designs_and_folders_where_designs_are_wanted(self) -> None:
        with tempfile.TemporaryDirectory() as folder:
            for name in ("mill.leat", "the kiln.leat", "notes.txt"):
                (Path(folder) / name).touch()
            (Path(folder) / "yards").mkdir()
            self.assertEqual(offered("check", "", folder=folder), ["mill.leat", "the kiln.leat", "yards"])
            self.assertEqual(offered("compare", "mill.leat", "m", folder=folder), ["mill.leat"])
            self.assertEqual(offered("explain", "mill", folder=folder), [])

    def test_offers_names_for_names(self) -> None:
        self.assertEqual(offered("manual", "ti"), ["tidy"])
        self.assertIn("endless-loop", offered("explain", ""))
        self.assertEqual(offered("completion", ""), ["bash", "fish", "zsh"])


class OtherShells(unittest.TestCase):
    def read_by(self, shell: str, suffix: str) -> None:
        with tempfile.NamedTemporaryFile("w", suffix=suffix) as script:
            script.write(leat("completion", shell))
            script.flush()
            done = subprocess.run([needed(shell, shell), "-n", script.name], capture_output=True, text=True,
                                  check=False)
            self.assertEqual((done.returncode, done.stderr), (0, ""))

    def test_zsh_reads_its_script(self) -> None:
        self.read_by("zsh", ".zsh")

    def test_fish_reads_its_script(self) -> None:
        self.read_by("fish", ".fish")

    def test_fish_offers_commands_and_what_follows_options(self) -> None:
        def of_fish(line: str) -> set[str]:
            script = leat("completion", "fish") + f"\ncomplete -C '{line}'"
            told = subprocess.run([needed("fish", "fish"), "--no-config", "-c", script], capture_output=True,
                                  text=True, check=True).stdout
            return {row.split("\t")[0] for row in told.splitlines()}
        self.assertEqual(of_fish("leat "), set(commands()))
        self.assertEqual(of_fish("leat waves --as "), {"text", "vcd", "json"})

    def test_every_option_is_in_every_script(self) -> None:
        zsh, fish = leat("completion", "zsh"), leat("completion", "fish")
        for command in commands():
            for option in options_in(help_of(command)):
                self.assertIn(f"{option}[", zsh)
                self.assertIn(f" -l {option[2:]} ", fish)


class Manual(unittest.TestCase):
    def page(self, *command: str) -> str:
        """As it is read; a warning of the setter is a failure."""
        done = subprocess.run([needed("groff", "groff"), "-man", "-ww", "-Tascii", "-P-cbou"],
                              input=leat("manual", *command), capture_output=True, text=True, check=False)
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        return done.stdout

    def test_the_page_of_the_program_names_every_command(self) -> None:
        page = self.page()
        for command in commands():
            self.assertRegex(page, rf"(?m)^ +{command}\b")
            self.assertIn(f"leat-{command}(1)", page)
        for option in global_options():
            self.assertIn(option, page)

    def test_the_page_of_each_command_has_its_options(self) -> None:
        for command in commands():
            with self.subTest(command):
                page = self.page(command)
                self.assertRegex(page, rf"(?m)^ +leat-{command} +- ")
                for option in options_in(help_of(command)):
                    self.assertRegex(page, rf"(?m)^ +{option}\b")
                for part in ("NAME", "SYNOPSIS", "DESCRIPTION", "OPTIONS", "EXIT STATUS", "SEE ALSO"):
                    self.assertRegex(page, rf"(?m)^{part}$")

    def test_each_command_has_a_paragraph(self) -> None:
        for command in commands():
            with self.subTest(command):
                told = self.page(command).split("DESCRIPTION\n")[1].split("\n\n")[0]
                self.assertGreater(len(told.split()), 8, "say what it is for in lang/render/manual.cpp")

    def test_a_page_that_is_not_there(self) -> None:
        done = subprocess.run([LEAT, "manual", "tidi"], capture_output=True, text=True, check=False)
        self.assertEqual(done.returncode, 2)
        self.assertIn("did you mean 'tidy'?", done.stderr)


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    given, rest = parser.parse_known_args()
    LEAT = str(Path(given.leat).resolve())
    unittest.main(argv=[sys.argv[0], *rest])
