"""Whole outputs of the program on the examples, compared with those that were read and kept.

Each example has a folder here with one file a command: what was printed, and last the exit code. With
LEAT_APPROVE=1 in the environment the files are written anew instead of compared; read the difference
before keeping it. JSON documents are checked against their schemas besides.

    /usr/bin/python3 approved_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import difflib
import json
import os
import subprocess
import sys
from pathlib import Path

import jsonschema

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
SCHEMAS = ROOT / "docs" / "schemas"


def has_works(path: Path) -> bool:
    return any(line.startswith("works ") for line in path.read_text(encoding="utf-8").splitlines())


def works_commands(example: str) -> dict[str, list[str]]:
    """The same where junctions are put together: what is asked of the whole."""
    return {
        "check.txt": ["check", "--as", "text", example],
        "check.lines": ["check", "--as", "lines", example],
        "check.json": ["check", "--as", "json", example],
        "table.txt": ["table", example],
        "table.md": ["table", "--as", "markdown", example],
        "table.csv": ["table", "--as", "csv", example],
        "table.expect": ["table", "--as", "expect", example],
        "islands.txt": ["show", "--islands", example],
        "bill.txt": ["bill", example],
    }


def exchange_commands(example: str) -> dict[str, list[str]]:
    """What other programs read of a check, of examples that have something to tell."""
    forms = {"csv": "csv", "md": "markdown", "xml": "junit", "sarif": "sarif"}
    return {f"check.{end}": ["check", "--as", form, example] for end, form in forms.items()}


def commands(example: str, inlets: list[str]) -> dict[str, list[str]]:
    """Output file -> arguments, for one example."""
    found = {
        "check.txt": ["check", "--as", "text", example],
        "check.lines": ["check", "--as", "lines", example],
        "check.json": ["check", "--as", "json", example],
        "table.txt": ["table", example],
        "table-full.md": ["table", "--full", "--as", "markdown", example],
        "table.csv": ["table", "--as", "csv", example],
        "table.expect": ["table", "--as", "expect", example],
        "show.txt": ["show", example],
        "show-ascii.txt": ["show", "--ascii", example],
        "guard.txt": ["guard", example],
        "machine.txt": ["machine", example],
        "bill.txt": ["bill", "--steps", example],
        "bill.csv": ["bill", "--as", "csv", example],
    }
    for inlet in inlets:
        found[f"follow-{inlet}.txt"] = ["follow", example, "--from", inlet]
    return found


def run(leat: str, arguments: list[str]) -> tuple[str, int]:
    done = subprocess.run([leat, *arguments], cwd=ROOT, capture_output=True, timeout=120, check=False,
                          env={**os.environ, "NO_COLOR": "1"})
    if done.returncode not in (0, 1, 3):
        raise SystemExit(f"leat {' '.join(arguments)}: exit {done.returncode}\n{done.stderr.decode()}")
    return done.stdout.decode("utf-8"), done.returncode


def check_schema(text: str) -> None:
    document = json.loads(text)
    schema = json.loads((SCHEMAS / f"{document['format']}.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator(schema).validate(document)


def check_documents(leat: str, example: str, inlets: list[str]) -> None:
    """Documents too long to keep: only their shape is checked."""
    lines = [["resolve", example], ["show", example, "--as", "json"],
             ["table", example, "--as", "json"], ["table", "--full", example, "--as", "json"],
             ["guard", example, "--as", "json"], ["machine", example, "--as", "json"],
             ["bill", example, "--as", "json"]]
    lines += [["train", example, "--from", inlet, "--every", "2 s", "--count", "2", "--as", "json"]
              for inlet in inlets]
    lines += [["follow", example, "--from", inlet, "--as", "json"] for inlet in inlets]
    for arguments in lines:
        check_schema(run(leat, arguments)[0])


def difference(kept: str, got: str, name: str) -> str:
    lines = difflib.unified_diff(kept.splitlines(), got.splitlines(), f"{name} (kept)", f"{name} (now)",
                                 lineterm="")
    return "\n".join(list(lines)[:60])


def main() -> int:
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    leat = os.path.abspath(parser.parse_args().leat)
    approves = os.environ.get("LEAT_APPROVE") == "1"
    faults, compared, wanted = 0, 0, set()
    examples = sorted((ROOT / "examples").glob("*.leat"))
    if not examples:
        raise SystemExit("no examples")
    for path in examples:
        example = f"examples/{path.name}"
        resolved = json.loads(run(leat, ["resolve", example])[0])
        inlets = sorted({i["name"] for j in resolved["junctions"] for i in j["inlets"]})
        if has_works(path):
            check_schema(run(leat, ["table", example, "--as", "json"])[0])
            check_schema(run(leat, ["bill", example, "--as", "json"])[0])
            wished = works_commands(example)
        else:
            check_documents(leat, example, inlets)
            wished = commands(example, inlets)
        if path.read_text(encoding="utf-8").startswith("# Deliberately bad"):
            wished |= exchange_commands(example)
        for name, arguments in wished.items():
            text, code = run(leat, arguments)
            if name.endswith(".json"):
                check_schema(text)
            got = f"{text}exit {code}\n"
            kept = HERE / path.stem / name
            wanted.add(kept)
            compared += 1
            if approves:
                kept.parent.mkdir(exist_ok=True)
                kept.write_bytes(got.encode("utf-8"))
            elif not kept.exists():
                faults += 1
                print(f"{kept.relative_to(ROOT)} is missing: read the output, keep it with LEAT_APPROVE=1")
            elif (before := kept.read_bytes().decode("utf-8")) != got:
                faults += 1
                print(difference(before, got, str(kept.relative_to(ROOT))))
    for kept in sorted(p for p in HERE.glob("*/*") if p.is_file() and "__pycache__" not in p.parts):
        if kept not in wanted:
            faults += 1
            print(f"{kept.relative_to(ROOT)} answers to no example or command")
    print(f"{compared} outputs of {len(examples)} examples, {faults} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
