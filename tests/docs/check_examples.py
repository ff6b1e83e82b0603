"""Every example keeps its word.

An example holds (`leat check` exits 0) with no finding above a note that it does not accept. One whose opening
comment begins with "Deliberately bad" exits 1, all its expectations hold nevertheless, and each severe finding's
kind is expected by a `finds` clause. The README's table of examples names every one.

    /usr/bin/python3 check_examples.py --leat build/leat
"""
from __future__ import annotations

import argparse
import json
import re
import subprocess
import sys
from pathlib import Path
from typing import Any


def answer(leat: Path, path: Path) -> tuple[int, dict[str, Any]]:
    ran = subprocess.run([leat, "check", path, "--as", "json"], capture_output=True, text=True, timeout=60, check=False)
    return ran.returncode, json.loads(ran.stdout)["files"][0]


def faults_of(leat: Path, path: Path) -> list[str]:
    text = path.read_text(encoding="utf-8")
    if not text.startswith("# "):
        return ["does not open with a comment"]
    is_bad = text.startswith("# Deliberately bad")
    code, file = answer(leat, path)
    faults = [] if code == (1 if is_bad else 0) else [f"leat check exits {code}"]
    expected = set(re.findall(r"^\s*finds\s+([a-z-]+)", text, re.MULTILINE))
    judged = 0
    for junction in file["junctions"]:
        for expectation in junction["expectations"]:
            judged += 1
            if expectation["verdict"] != "holds":
                faults.append(f"{expectation['verdict']}: {expectation['clause']}")
        for finding in junction["findings"]:
            is_severe = finding["severity"] != "note" and finding["accepted"] is None
            if is_severe and finding["name"] not in expected:
                faults.append(f"unexpected {finding['name']}: {finding['headline']}")
    if judged == 0:
        faults.append("has no expectations")
    if is_bad and not expected:
        faults.append("is bad, but expects no finding")
    return faults


def main() -> int:
    root = Path(__file__).resolve().parents[2]
    reader = argparse.ArgumentParser(description="Every example keeps its word.")
    reader.add_argument("--leat", type=Path, required=True, help="the program")
    given = reader.parse_args()
    examples = sorted((root / "examples").glob("*.leat"))
    listed = set(re.findall(r"examples/(\w+\.leat)\)", (root / "README.md").read_text(encoding="utf-8")))
    faults = [f"{path.name}: {fault}" for path in examples for fault in faults_of(given.leat, path)]
    faults += [f"{path.name}: not in the README's table" for path in examples if path.name not in listed]
    faults += [f"{name}: in the README's table, but there is no such example"
               for name in sorted(listed - {path.name for path in examples})]
    if len(examples) < 14:
        faults.append(f"only {len(examples)} examples")
    for fault in faults:
        print(fault, file=sys.stderr)
    print(f"{len(examples)} examples, {len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
