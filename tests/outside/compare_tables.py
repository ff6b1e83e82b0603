"""Compares every route of every assignment with the oracle.

On random designs and on every example: `leat table FILE --full --fresh --as json` against model_oracle.py
(verdict, outlets, trapped cells, spills, unsure), row by row: each combination with the water that comes
from dry. compare_histories.py has what water and memory remember.

Source: docs/model.md, section 3 and its appendix, implemented a second time without shared code.

    /usr/bin/python3 compare_tables.py --leat build/leat --count 200
"""
from __future__ import annotations

import argparse
import sys
from collections import Counter
from pathlib import Path
from typing import Any

from leat_program import (MOST_INPUTS, Case, Leat, drawn_cases, example_cases, expect_equal, is_remembering,
                          options, read_design, run, same_junctions)
from model_document import Junction
from model_oracle import table_of
from random_designs import random_design


def by_route(row: dict[str, Any]) -> dict[str, Any]:
    """The routes of a row by inlet and body, their lists in one order."""
    return {
        f"{route['body']} from {route['inlet']}": {
            **route, "outlets": sorted(route["outlets"]), "trapped": sorted(route["trapped"])}
        for route in row["routes"]
    }


def compare_table(printed: dict[str, Any], junction: Junction, label: str) -> Counter[str]:
    expected = table_of(junction)
    where = f"{label} / {junction.name}"
    expect_equal(printed["signals"], expected["signals"], f"{where} / signals")
    found: Counter[str] = Counter()
    for got, row in zip(printed["rows"], expected["rows"]):
        here = f"{where} when {row['assignment']}"
        expect_equal(got["assignment"], row["assignment"], f"{here} / assignment")
        expect_equal(by_route(got), by_route(row), here)
        expect_equal(len(got["routes"]), len(row["routes"]), f"{here} / number of routes")
        found.update(route["verdict"] for route in row["routes"])
    expect_equal(len(printed["rows"]), len(expected["rows"]), f"{where} / number of rows")
    return found


def compare_case(leat: Leat, case: Case) -> Counter[str]:
    read = read_design(leat.resolve(case.path))
    if is_remembering(read, case.label):
        return Counter()
    if any(len(junction.inputs) > MOST_INPUTS for junction in read):
        print(f"  {case.label}: more than {MOST_INPUTS} inputs, not compared in full", file=sys.stderr)
        return Counter()
    found: Counter[str] = Counter()
    printed = leat.table(case.path, is_fresh=True)
    for one, junction in zip(same_junctions(printed, read, case.label), read):
        found += compare_table(one, junction, case.label)
    return found


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    cases = [*drawn_cases(given, folder, random_design), *example_cases(given)]
    found: Counter[str] = Counter()
    for case in cases:
        found += compare_case(leat, case)
    verdicts = ", ".join(f"{count} {verdict}" for verdict, count in sorted(found.items()))
    return f"tables agree: {len(cases)} designs, {sum(found.values())} routes ({verdicts})"


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 300), compare))
