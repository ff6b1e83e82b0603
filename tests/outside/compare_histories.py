"""Compares tables and verdicts of designs with memory and with water that remembers.

On random designs with latches, toggles, delays, clocks, buttons and plates: `leat table --full --as json`
against model_histories.py (which combinations can be reached, and every route as the union over all water
a combination can come with), and the same with `--fresh`; then clauses made with the oracle,
`after ...: ...` for random sequences of events and `... when ...`, against `leat check --as json`; and its
findings about water that remembers and signals that never get quiet, with the ways told to see them; and
the water after events (`leat show --do`). Then the tables of every example.

Source: docs/model.md, sections 2 to 4, implemented a second time without shared code. The designs are
invented.

    /usr/bin/python3 compare_histories.py --leat build/leat --count 100
"""
from __future__ import annotations

import argparse
import sys
from collections import Counter
from pathlib import Path
from typing import Any

from compare_fields import compare_with_drawing
from compare_tables import by_route
from drawing import Drawing
from expression_text import read_expression
from history_claims import Claims, Clause
from leat_program import (MOST_INPUTS, Case, Difference, Leat, drawn_case, example_cases, expect_equal,
                          options, read_design, run)
from model_document import Junction, evaluate, junctions
from model_histories import Histories, Key, Restless
from model_oracle import field_of
from model_signals import delays_in_loops, flips_of
from random_histories import random_history

SHOWN = 2  # sequences of a design whose water is compared cell by cell
NUMEROUS = {"with several waters": 5, "with combinations never reached": 3}  # one design in so many, at least


# -- the table -------------------------------------------------------------------------------------


def expected_signals(junction: Junction, printed: list[str], where: str) -> list[str]:
    """Inputs, then memory; of the delays only such as keep every loop of delays in hand."""
    delays = {memory.name for memory in junction.memory if memory.kind == "delay"}
    kept = delays & set(printed)
    beyond = kept - delays_in_loops(junction)
    if beyond or delays_in_loops(junction, kept):
        raise Difference(f"{where}: delays {sorted(kept)} are printed, {sorted(beyond)} of them in no loop; "
                         f"left without a value: {sorted(delays_in_loops(junction, kept))}")
    return [name for name in junction.variables if name not in delays or name in kept]


def compare_table(printed: dict[str, Any], histories: Histories, is_fresh: bool, where: str) -> Counter[str]:
    signals = expected_signals(histories.junction, printed["signals"], where)
    expect_equal(printed["signals"], signals, f"{where} / signals")
    expected = histories.table(signals, is_fresh)["rows"]
    got = [row["assignment"] for row in printed["rows"]]
    expect_equal(got, [row["assignment"] for row in expected], f"{where} / combinations")
    found: Counter[str] = Counter()
    for one, row in zip(printed["rows"], expected):
        here = f"{where} when {row['assignment']}"
        expect_equal(by_route(one), by_route(row), here)
        expect_equal(len(one["routes"]), len(row["routes"]), f"{here} / number of routes")
        found["rows"] += 1
        found["routes"] += len(row["routes"])
    return found


# -- clauses ---------------------------------------------------------------------------------------


def with_clauses(text: str, clauses: list[Clause]) -> str:
    lines = ["", 'expect "what the oracle says" {', *(f"  {clause.text}" for clause in clauses), "}", ""]
    return text + "\n".join(lines)


def is_left_open(printed: str, clause: Clause, histories: Histories) -> bool:
    """What may also speak of combinations that never come to rest is not proved: it may be undecided."""
    speaks_of_all = not clause.events and clause.verdict in ("holds", "empty")
    return printed == "undecided" and speaks_of_all and bool(histories.unquiet)


def compare_clauses(printed: dict[str, Any], clauses: list[Clause], histories: Histories,
                    where: str) -> Counter[str]:
    """Verdicts; and what is told to do for seeing a violation leads to one."""
    judged = [one for junction in printed["files"][0]["junctions"] for one in junction["expectations"]]
    expect_equal(len(judged), len(clauses), f"{where} / number of expectations")
    for one, clause in zip(judged, clauses):
        if is_left_open(one["verdict"], clause, histories):
            continue
        expect_equal(one["verdict"], clause.verdict, f"{where} / {clause.text}")
        if clause.verdict == "violated":
            walked = histories.walk(one["way"])
            if walked is None or not clause.breaks(histories.key(walked.state), walked.water):
                raise Difference(f"{where} / {clause.text}: it is not violated after {one['way']}")
            told = {name: walked.state[name] for name in one["example"]}
            expect_equal(one["example"], told, f"{where} / {clause.text} / example")
    return Counter(clause.verdict for clause in clauses)


# -- conditions and findings -----------------------------------------------------------------------


def true_in(condition: str, histories: Histories, where: str) -> set[Key]:
    """The reachable combinations in which a printed condition is true."""
    try:
        expression = read_expression(condition)
        return {
            key for key in histories.waters_of_row
            if evaluate(expression, histories.junction.signal_values(histories.state(key)))
        }
    except (ValueError, KeyError) as error:
        raise Difference(f"{where}: cannot be evaluated: {error}") from error


def expect_rows(told: dict[str, Any], expected: set[Key], histories: Histories, where: str) -> None:
    got = true_in(told["condition"], histories, where)
    for key in sorted(got ^ expected):
        raise Difference(f"{where}: '{told['condition']}' is {key in got} when {histories.state(key)}")
    expect_equal(told["combinations"], len(expected), f"{where} / combinations")


def compare_conditions(printed: dict[str, Any], histories: Histories, is_fresh: bool, where: str) -> int:
    """Each answer of the table holds in exactly the combinations that its condition names."""
    expected: dict[str, set[Key]] = {}
    for key in histories.waters_of_row:
        for route in histories.routes(histories.row_waters(key, is_fresh)):
            expected.setdefault(answer_of(route), set()).add(key)
    told = {answer_of(one): one for one in printed["conditions"]}
    expect_equal(sorted(told), sorted(expected), f"{where} / answers")
    for answer, one in told.items():
        expect_rows(one, expected[answer], histories, f"{where} / {answer}")
    return len(told)


def answer_of(route: dict[str, Any]) -> str:
    return f"{route['body']} from {route['inlet']}: {route['verdict']} {sorted(route['outlets'])}"


def rows_told(findings: list[dict[str, Any]], histories: Histories, where: str) -> set[Key]:
    """The combinations of all these findings together; each must count its own."""
    together: set[Key] = set()
    for finding in findings:
        rows = true_in(finding["condition"], histories, f"{where} / {finding['name']}")
        expect_equal(finding["combinations"], len(rows), f"{where} / {finding['name']} / combinations")
        together |= rows
    return together


def expect_found(findings: list[dict[str, Any]], expected: set[Key], histories: Histories, where: str) -> None:
    for key in sorted(rows_told(findings, histories, where) ^ expected):
        says = "no finding" if key in expected else "a finding"
        raise Difference(f"{where}: {says} when {histories.state(key)}, contrary to the oracle")


def compare_two_ways(ways: list[list[str]], histories: Histories, where: str) -> None:
    """Two ways to one combination that end with different water."""
    ends = [walked for walked in map(histories.walk, ways) if walked is not None]
    expect_equal(len(ends), 2, f"{where} / number of ways that end")
    expect_equal(ends[0].state, ends[1].state, f"{where} / combination")
    expect_equal(ends[0].water != ends[1].water, True, f"{where} / has different water")


def compare_way_to_unrest(told: dict[str, Any], histories: Histories, where: str) -> None:
    """A shortest way to a state in which the event brings no quiet."""
    rows = true_in(told["condition"], histories, where)
    nearest = min(len(way) for (key, _), way in histories.ways.items() if key in rows)
    for way in told["ways"]:
        walked = histories.walk(way)
        is_there = walked is not None and (histories.key(walked.state), told["event"]) in histories.unquiet
        expect_equal(is_there, True, f"{where} / way {way}")
        expect_equal(len(way), nearest, f"{where} / way {way} / length")


def compare_findings(printed: dict[str, Any], histories: Histories, where: str) -> None:
    """What is said of water that remembers and of signals that never get quiet."""
    findings = printed["files"][0]["junctions"][0]["findings"]
    remembering = [one for one in findings if one["name"] == "remembering-water"]
    several = {key for key, waters in histories.waters_of_row.items() if len(waters) > 1}
    expect_found(remembering, several, histories, f"{where} / remembering-water")
    felt = [one for one in remembering if one["severity"] != "note"]
    expect_found(felt, set(filter(histories.is_felt, several)), histories, f"{where} / remembering-water felt")
    for one in remembering:
        compare_two_ways(one["ways"], histories, f"{where} / remembering-water / ways {one['ways']}")
    unquiet = [one for one in findings if one["name"] == "oscillation"]
    if histories.start is None:
        expect_equal(len(unquiet), 1, f"{where} / oscillation as built")
        return
    for event in histories.junction.inputs:
        expected = {key for key, flipped in histories.unquiet if flipped == event}
        told = [one for one in unquiet if one["event"] == event]
        expect_found(told, expected, histories, f"{where} / oscillation after {event}")
        for one in told:
            compare_way_to_unrest(one, histories, f"{where} / oscillation after {event}")
    restless = [one for one in findings if one["name"] == "restless-water"]
    expect_equal(len(restless), 0, f"{where} / restless-water")


# -- a design --------------------------------------------------------------------------------------


def kind_of_history(histories: Histories) -> Counter[str]:
    rows = histories.waters_of_row
    is_told_apart = [
        histories.routes(waters) != histories.routes([histories.fresh(key)]) for key, waters in rows.items()
    ]
    return Counter({
        "with several waters": any(len(waters) > 1 for waters in rows.values()),
        "with routes that fresh water does not give": any(is_told_apart),
        "with combinations never reached": 0 < len(rows) < 2 ** len(histories.junction.variables),
        "with oscillations": bool(histories.unquiet),
        "never quiet as built": histories.start is None,
    })


def compare_both_tables(leat: Leat, case: Case, number: int, histories: Histories) -> Counter[str]:
    found: Counter[str] = Counter()
    for is_fresh in (False, True):
        where = f"{case.label} / table{' --fresh' if is_fresh else ''}"
        table = leat.table(case.path, is_fresh=is_fresh)["junctions"][number]
        expect_equal(table["name"], histories.junction.name, f"{where} / junction")
        found += compare_table(table, histories, is_fresh, where)
        found["conditions"] += compare_conditions(table, histories, is_fresh, where)
    return found


def compare_water(leat: Leat, case: Case, clauses: list[Clause], histories: Histories) -> Counter[str]:
    """The water after some of the sequences, cell by cell."""
    found: Counter[str] = Counter()
    done = [clause for clause in clauses if clause.events and clause.verdict != "undecided"]
    for clause in done[:SHOWN]:
        walked = histories.walk(flips_of(histories.junction.kinds, clause.events))
        assert walked is not None
        printed = leat.show_after(case.path, clause.events)["junctions"][0]
        expected = field_of(histories.waters[walked.water])
        where = f"{case.label} / show --do {', '.join(clause.events)}"
        expect_equal(printed["cells"], expected["cells"], f"{where} / cells")
        expect_equal(sorted(printed["spills"]), sorted(expected["spills"]), f"{where} / spills")
        told = {name: walked.state[name] for name in printed["assignment"]}
        expect_equal(printed["assignment"], told, f"{where} / assignment")
        found["fields"] += 1
    return found


def compare_design(leat: Leat, drawing: Drawing, folder: Path, seed: int) -> Counter[str]:
    junction = junctions(drawing.document())[0]
    try:
        histories = Histories(junction)
    except Restless:
        return Counter({"restless": 1})
    clauses = Claims(histories, seed).drawn()
    case = drawn_case(folder, drawing)
    case.path.write_text(with_clauses(drawing.text(), clauses), encoding="utf-8")
    compare_with_drawing(read_design(leat.resolve(case.path)), drawing)
    found = Counter(designs=1) + compare_both_tables(leat, case, 0, histories)
    judged = leat.check(case.path)
    found += compare_clauses(judged, clauses, histories, f"{case.label} / check")
    compare_findings(judged, histories, f"{case.label} / check")
    found += compare_water(leat, case, clauses, histories)
    return found + kind_of_history(histories)


def compare_example(leat: Leat, case: Case) -> Counter[str]:
    read = read_design(leat.resolve(case.path))
    if any(len(junction.variables) > MOST_INPUTS for junction in read):
        print(f"  {case.label}: more than {MOST_INPUTS} inputs and memory, not compared", file=sys.stderr)
        return Counter()
    found: Counter[str] = Counter(examples=1)
    for number, junction in enumerate(read):
        found += compare_both_tables(leat, case, number, Histories(junction))
    return found


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    found: Counter[str] = Counter()
    for seed in range(given.seed, given.seed + given.count):
        found += compare_design(leat, random_history(seed), folder, seed)
    for case in example_cases(given):
        found += compare_example(leat, case)
    for kind, among in NUMEROUS.items():
        if found[kind] < given.count // among:
            raise Difference(f"only {found[kind]} of {given.count} designs {kind}: the comparison shows too little")
    kinds = [f"{count} {kind}" for kind, count in sorted(found.items()) if kind.startswith(("with ", "never "))]
    verdicts = [f"{found[name]} {name}" for name in ("holds", "violated", "empty", "undecided")]
    return (f"histories agree: {found['designs']} designs ({', '.join(kinds)}), {found['examples']} examples, "
            f"{found['rows']} rows, {found['routes']} routes, {found['conditions']} conditions, "
            f"{found['fields']} fields, verdicts: {', '.join(verdicts)}; left out: {found['restless']} with restless water")


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 100), compare))
