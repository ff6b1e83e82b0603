"""Running the program under test, and what every comparison shares: cases, schemas, first differences."""
from __future__ import annotations

import argparse
import json
import os
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from itertools import product
from pathlib import Path
from random import Random
from typing import Any, Callable, Iterable, Iterator, Optional

import jsonschema

from drawing import Drawing
from model_document import Assignment, Junction, junctions

ROOT = Path(__file__).resolve().parents[2]
MOST_INPUTS = 8
SAMPLED_ASSIGNMENTS = 64
JUDGED = (0, 1, 3)  # exit codes with which an answer is printed


class Difference(Exception):
    """Program and oracle disagree, or the program gives no answer."""


class Leat:
    """The program. Every document it prints is validated against its schema."""

    def __init__(self, path: str) -> None:
        self.path = path
        self.validators: dict[str, jsonschema.Draft202012Validator] = {}

    def resolve(self, file: Path) -> dict[str, Any]:
        return self.printed("leat-design", "resolve", str(file))

    def show(self, file: Path, assignment: Assignment) -> dict[str, Any]:
        return self.printed("leat-field", "show", str(file), *when(assignment), "--as", "json")

    def show_after(self, file: Path, events: list[str]) -> dict[str, Any]:
        return self.printed("leat-field", "show", str(file), "--do", ", ".join(events), "--as", "json")

    def table(self, file: Path, full: bool = True, is_fresh: bool = False) -> dict[str, Any]:
        more = [*(["--full"] if full else []), *(["--fresh"] if is_fresh else [])]
        return self.printed("leat-table", "table", str(file), *more, "--as", "json")

    def check(self, file: Path) -> dict[str, Any]:
        return self.printed("leat-findings", "check", str(file), "--as", "json")

    def follow(self, file: Path, inlet: str, assignment: Assignment) -> dict[str, Any]:
        return self.printed(
            "leat-trail", "follow", str(file), "--from", inlet, *when(assignment), "--as", "json")

    def printed(self, kind: str, *arguments: str) -> dict[str, Any]:
        command = [self.path, *arguments]
        done = subprocess.run(command, capture_output=True, text=True, timeout=300, check=False)
        said = f"{' '.join(command)}\n  exit code {done.returncode}\n{done.stderr}{done.stdout[:2000]}"
        if done.returncode not in JUDGED:
            raise Difference(f"no answer from {said}")
        try:
            document = json.loads(done.stdout)
        except json.JSONDecodeError as error:
            raise Difference(f"{error} in the output of {said}") from error
        fault = next(iter(self.validator(kind).iter_errors(document)), None)
        if fault is not None:
            raise Difference(f"{kind} breaks its schema at {fault.json_path}: {fault.message}\n{said}")
        return document

    def validator(self, kind: str) -> jsonschema.Draft202012Validator:
        if kind not in self.validators:
            self.validators[kind] = jsonschema.Draft202012Validator(schema(kind))
        return self.validators[kind]


def schema(kind: str) -> dict[str, Any]:
    path = ROOT / "docs" / "schemas" / f"{kind}.schema.json"
    return json.loads(path.read_text(encoding="utf-8"))


def when(assignment: Assignment) -> list[str]:
    if not assignment:
        return []
    return ["--when", ",".join(f"{name}={int(value)}" for name, value in assignment.items())]


# -- cases -----------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Case:
    """A design file to compare on; `drawing` where a generator made it."""

    path: Path
    label: str
    drawing: Optional[Drawing] = None


def drawn_case(folder: Path, drawing: Drawing) -> Case:
    path = folder / (drawing.origin.replace(" ", "_") + ".leat")
    path.write_text(drawing.text(), encoding="utf-8")
    return Case(path, drawing.origin, drawing)


def drawn_cases(options: argparse.Namespace, folder: Path, draw: Callable[[int], Drawing]) -> Iterator[Case]:
    for seed in range(options.seed, options.seed + options.count):
        yield drawn_case(folder, draw(seed))


def example_cases(options: argparse.Namespace) -> Iterator[Case]:
    """The examples of junctions; those put together from others are held against networks."""
    if options.examples:
        for path in sorted(Path(options.examples).glob("*.leat")):
            lines = path.read_text(encoding="utf-8").splitlines()
            if not any(line.startswith("works ") for line in lines):
                yield Case(path, path.name)


def assignments_of(read: list[Junction]) -> Iterable[Assignment]:
    """Every assignment of the file's inputs, or a fixed sample where there are too many."""
    inputs = list(dict.fromkeys(name for junction in read for name in junction.inputs))
    if len(inputs) <= MOST_INPUTS:
        return [dict(zip(inputs, values)) for values in product((False, True), repeat=len(inputs))]
    print(f"  {len(inputs)} inputs: {SAMPLED_ASSIGNMENTS} sampled assignments", file=sys.stderr)
    dice = Random(1)
    return [{name: dice.random() < 0.5 for name in inputs} for _ in range(SAMPLED_ASSIGNMENTS)]


def is_remembering(read: list[Junction], label: str) -> bool:
    """Whether signals have memory, so that not every assignment is a combination that can be reached."""
    if not any(junction.memory for junction in read):
        return False
    print(f"  {label}: has memory, left to compare_histories", file=sys.stderr)
    return True


def same_junctions(printed: dict[str, Any], read: list[Junction], what: str) -> list[dict[str, Any]]:
    expect_equal([j["name"] for j in printed["junctions"]], [j.name for j in read], f"{what}: junctions")
    return printed["junctions"]


def read_design(document: dict[str, Any]) -> list[Junction]:
    return junctions(document)


# -- differences -----------------------------------------------------------------------------------


def expect_equal(got: Any, expected: Any, where: str) -> None:
    """Raises the first place at which two values differ."""
    if isinstance(expected, dict) and isinstance(got, dict):
        expect_equal(sorted(got), sorted(expected), f"{where}: names")
        for key in expected:
            expect_equal(got[key], expected[key], f"{where} / {key}")
    elif isinstance(expected, list) and isinstance(got, list):
        for i, (one, other) in enumerate(zip(got, expected)):
            expect_equal(one, other, f"{where} [{i}]")
        if len(got) != len(expected):
            longer, whose = (got, "only printed") if len(got) > len(expected) else (expected, "missing")
            raise Difference(f"{where}: {whose}: {longer[min(len(got), len(expected))]}")
    elif got != expected or type(got) is not type(expected):
        raise Difference(f"{where}: printed {got!r}, expected {expected!r}")


def options(description: str, count: int) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=description)
    parser.add_argument("--leat", required=True, help="the program to compare")
    parser.add_argument("--count", type=int, default=count, help="random designs to draw")
    parser.add_argument("--seed", type=int, default=1, help="seed of the first")
    parser.add_argument("--examples", default=str(ROOT / "examples"), help="folder of examples; '' for none")
    return parser.parse_args()


def run(given: argparse.Namespace, compare: Callable[[Leat, argparse.Namespace, Path], str]) -> int:
    """Runs a comparison in a folder of its own; prints its count or the first difference."""
    if not os.access(given.leat, os.X_OK):
        print(f"no program at {given.leat}", file=sys.stderr)
        return 2
    folder = Path(tempfile.mkdtemp(prefix="leat-outside-"))
    try:
        print(compare(Leat(given.leat), given, folder))
    except Difference as difference:
        print(f"DIFFERENT: {difference}\nThe designs are kept in {folder}")
        return 1
    for path in folder.iterdir():
        path.unlink()
    folder.rmdir()
    return 0
