"""Every printed condition against the rows it speaks of.

`leat table --as json`: a condition is true in exactly the rows with its verdict and outlets, and the
condensed rows say what the full rows say. `leat check --as json`: `combinations` counts the assignments
that satisfy a finding's condition; and for findings that a row decides (split route, bodies or water that
spill, tight inlets, whatever traps) the conditions together are true in exactly those rows, computed by
model_histories.py over every water that a row can come with. Designs with memory are left to
compare_histories.py.

Source: sympy (https://www.sympy.org) as independent reader and truth tables of the expressions, up to 8
inputs; above that, exhaustive evaluation. A printed sum never has more products than SOPform's of the same
rows, which is short but not always shortest.

    /usr/bin/python3 conditions.py --leat build/leat --count 60
"""
from __future__ import annotations

import argparse
import sys
from collections import Counter
from pathlib import Path
from typing import Any

import sympy
from sympy.logic.boolalg import SOPform, truth_table
from sympy.logic.inference import satisfiable

from expression_text import read_expression
from leat_program import (Case, Difference, Leat, drawn_cases, example_cases, expect_equal,
                          is_remembering, options, read_design, run)
from model_document import Junction, evaluate, names_in
from model_histories import Histories
from model_oracle import Route, Scene, route
from random_designs import random_design

MOST_INPUTS_SYMPY, MOST_INPUTS_FORM, MOST_INPUTS = 8, 5, 16
OPERATORS = {"not": sympy.Not, "and": sympy.And, "or": sympy.Or, "xor": sympy.Xor}
DECIDED = ("split-route", "body-spill", "water-spill", "tight-inlet")
TRAPS = ("dry-stand", "still-water", "pinned", "endless-loop")


# -- truth of a printed condition ------------------------------------------------------------------


def sympy_expression(expression: Any) -> Any:
    if isinstance(expression, bool):
        return sympy.true if expression else sympy.false
    if isinstance(expression, str):
        return sympy.Symbol(expression)
    return OPERATORS[expression[0]](*(sympy_expression(operand) for operand in expression[1:]))


def truths(text: str, junction: Junction, where: str) -> list[bool]:
    """The condition's value in each assignment, in the order of the table's rows."""
    try:
        expression = read_expression(text)
    except ValueError as error:
        raise Difference(f"{where}: {error}") from error
    unknown = names_in(expression) - set(junction.inputs) - set(junction.wires)
    expect_equal(sorted(unknown), [], f"{where}: unknown names in '{text}'")
    own = [evaluate(expression, junction.signal_values(a)) for a in junction.assignments()]
    if len(junction.inputs) <= MOST_INPUTS_SYMPY and not names_in(expression) & set(junction.wires):
        symbols = [sympy.Symbol(name) for name in junction.inputs]
        theirs = [bool(value) for _, value in truth_table(sympy_expression(expression), symbols)]
        expect_equal(own, theirs, f"{where}: value of '{text}'")
    return own


def expect_rows(text: str, expected: list[bool], junction: Junction, where: str) -> None:
    """The condition is true in exactly these rows."""
    got = truths(text, junction, where)
    for assignment, one, other in zip(junction.assignments(), got, expected):
        if one != other:
            raise Difference(f"{where}: '{text}' is {one} when {assignment}, the row says {other}")
    if len(junction.inputs) <= MOST_INPUTS_FORM:
        expect_equivalent(text, expected, junction, where)


def expect_equivalent(text: str, expected: list[bool], junction: Junction, where: str) -> None:
    """The same once more as a proof: no assignment tells it from the rows' sum of products."""
    expression = read_expression(text)
    if names_in(expression) & set(junction.wires):
        return
    symbols = [sympy.Symbol(name) for name in junction.inputs]
    rows = [[int(v) for v in a.values()] for a, truth in zip(junction.assignments(), expected) if truth]
    form = SOPform(symbols, rows) if symbols else sympy.true if rows else sympy.false
    if satisfiable(sympy.Xor(sympy_expression(expression), form)) is not False:
        raise Difference(f"{where}: '{text}' is not equivalent to {form}")
    if is_negated_sum(expression):
        free = [[int(v) for v in a.values()] for a, truth in zip(junction.assignments(), expected) if not truth]
        expression, form = expression[1], SOPform(symbols, free)
    if products_in(expression) > products_of(form):
        raise Difference(f"{where}: '{text}' has more products than {form}")


def is_negated_sum(expression: Any) -> bool:
    return isinstance(expression, list) and expression[0] == "not" and isinstance(expression[1], list)


def products_in(expression: Any) -> int:
    if isinstance(expression, list) and expression[0] == "or":
        return sum(products_in(operand) for operand in expression[1:])
    return int(expression is not False)


def products_of(form: Any) -> int:
    return len(form.args) if isinstance(form, sympy.Or) else int(form != sympy.false)


# -- tables ----------------------------------------------------------------------------------------


def answer(found: dict[str, Any]) -> list[Any]:
    return [found["inlet"], found["body"], found["verdict"], sorted(found["outlets"])]


def compare_table(table: dict[str, Any], full: dict[str, Any], junction: Junction, where: str) -> int:
    for printed in table.get("conditions", []):
        here = f"{where} / {answer(printed)}"
        rows = [answer(printed) in map(answer, row["routes"]) for row in full["rows"]]
        expect_rows(printed["condition"], rows, junction, here)
        expect_equal(printed["combinations"], sum(rows), f"{here} / combinations")
    for row in full["rows"]:
        covering = [r for r in table["rows"] if r["assignment"].items() <= row["assignment"].items()]
        here = f"{where} when {row['assignment']}"
        got = [[answer(found) for found in r["routes"]] for r in covering]
        expected = [answer(found) for found in row["routes"]]
        together = {str(found) for one in got for found in one}
        expect_equal(sorted(together), sorted(map(str, expected)), f"{here} / condensed rows")
    return len(table.get("conditions", []))


# -- findings --------------------------------------------------------------------------------------


def row_facts(junction: Junction) -> dict[str, list[bool]]:
    """For each kind of finding that a row decides: in which rows it arises, in some water."""
    histories = Histories(junction)
    known = [water_facts(junction, scene) for scene in histories.waters]
    names = (*DECIDED, "trapped", "only trapped")
    facts: dict[str, list[bool]] = {name: [] for name in names}
    for assignment in junction.assignments():
        waters = histories.waters_of_row[histories.key(assignment)]
        for name in names:
            facts[name].append(any(known[water][name] for water in waters))
    return facts


def water_facts(junction: Junction, scene: Scene) -> dict[str, bool]:
    routes = [route(scene, inlet, body) for inlet in junction.inlets for body in junction.bodies]
    return {
        "split-route": any(len(r.outlets) > 1 for r in routes),
        "body-spill": any(r.does_spill for r in routes),
        "water-spill": any(scene.water.spills(scene.field, p) for p in scene.field),
        "tight-inlet": any(not r.starts for r in routes),
        "trapped": any(r.trapped for r in routes),
        "only trapped": any(is_stuck_inside(r) for r in routes),
    }


def is_stuck_inside(found: Route) -> bool:
    return bool(found.trapped) and not found.does_spill


def any_of(columns: list[list[bool]], rows: int) -> list[bool]:
    return [any(column[i] for column in columns) for i in range(rows)]


def compare_findings(findings: list[dict[str, Any]], junction: Junction, where: str) -> int:
    columns: dict[str, list[list[bool]]] = {}
    for finding in findings:
        here = f"{where} / {finding['name']} at {finding['cells'][:1]}"
        column = truths(finding["condition"], junction, here)
        expect_rows(finding["condition"], column, junction, here)
        expect_equal(finding["combinations"], sum(column), f"{here} / combinations")
        columns.setdefault(finding["name"], []).append(column)
    facts = row_facts(junction)
    rows = 2 ** len(junction.inputs)
    for name in DECIDED:
        together = any_of(columns.get(name, []), rows)
        expect_columns(together, facts[name], facts[name], junction, f"{where} / every {name}")
    traps = any_of([column for name in TRAPS for column in columns.get(name, [])], rows)
    here = f"{where} / every {', '.join(TRAPS)}"
    expect_columns(traps, facts["only trapped"], facts["trapped"], junction, here)
    return len(findings)


def expect_columns(got: list[bool], least: list[bool], most: list[bool], junction: Junction,
                   where: str) -> None:
    for assignment, one, low, high in zip(junction.assignments(), got, least, most):
        if one < low or one > high:
            says = "no finding" if one < low else "a finding"
            raise Difference(f"{where}: {says} when {assignment}, contrary to the oracle's row")


# -- the comparison --------------------------------------------------------------------------------


def compare_case(leat: Leat, case: Case) -> Counter[str]:
    read = {junction.name: junction for junction in read_design(leat.resolve(case.path))}
    if is_remembering(list(read.values()), case.label):
        return Counter()
    if any(len(junction.inputs) > MOST_INPUTS for junction in read.values()):
        print(f"  {case.label}: more than {MOST_INPUTS} inputs, not compared", file=sys.stderr)
        return Counter()
    found: Counter[str] = Counter(designs=1)
    full = {table["name"]: table for table in leat.table(case.path)["junctions"]}
    for tables in (full.values(), leat.table(case.path, full=False)["junctions"]):
        for table in tables:
            where = f"{case.label} / {table['name']} / table"
            found["conditions"] += compare_table(table, full[table["name"]], read[table["name"]], where)
    for file in leat.check(case.path)["files"]:
        for junction in file["junctions"]:
            where = f"{case.label} / {junction['name']}"
            found["findings"] += compare_findings(junction["findings"], read[junction["name"]], where)
    return found


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    found: Counter[str] = Counter()
    for case in [*drawn_cases(given, folder, random_design), *example_cases(given)]:
        found += compare_case(leat, case)
    return (f"conditions agree with their rows: {found['designs']} designs, {found['conditions']} conditions "
            f"of tables, {found['findings']} findings")


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 60), compare))
