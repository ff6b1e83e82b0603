"""A stand-in for the program, for the self tests of the comparisons only.

It knows a generated design by the line that says how it was drawn and answers with the oracle. It can be
told to tell one lie; each comparison must pass without and notice each of its lies.
"""
from __future__ import annotations

import json
from pathlib import Path
from typing import Any, Callable

import networkx
import sympy
from sympy.logic.boolalg import SOPform

from conditions import row_facts
from drawing import Drawing
from leat_program import Difference, Leat
from model_document import Assignment, Junction, junctions
from model_oracle import (Scene, document, field_of, parse_assignment, route, table_of, trail_of)
from networkx_routes import ROOT, graph_of
from networkx_water import draw_floor
from random_designs import random_design
from symmetry import wide_pair

GENERATORS: dict[str, Callable[[int], Drawing]] = {"random": random_design, "floor": draw_floor}


def drawn_again(path: Path) -> Drawing:
    words = path.read_text(encoding="utf-8").splitlines()[1].split()
    drawing = GENERATORS[words[1]](int(words[3]))
    if "wide" in words:
        pair = wide_pair(drawing, int(words[7]))
        assert pair is not None
        return pair[0] if words[5] == "0" else pair[1]
    return drawing.turned(int(words[5]))


def summary(verdict: str) -> dict[str, int]:
    """Of a run of one file."""
    verdicts = ("holds", "violated", "empty", "undecided", "unusable", "interrupted")
    return {"files": 1, **{one: int(one == verdict) for one in verdicts}, "without_junctions": 0}


def findings_document(file: str, judged: dict[str, Any]) -> dict[str, Any]:
    """A run of one file with one junction; what is compared does not look at verdicts."""
    said = {"file": file, "verdict": "holds", "diagnostics": [], "junctions": [judged]}
    return {"format": "leat-findings", "version": 1, "interrupted": False, "files": [said],
            "summary": summary("holds"), "exit": 0}


def judged_junction(name: str, combinations: int, findings: list[dict[str, Any]],
                    expectations: list[dict[str, Any]]) -> dict[str, Any]:
    """One of which nothing is left out."""
    return {"name": name, "combinations": combinations, "left_out": [], "kinds_left_out": [], "open": [],
            "findings": findings, "expectations": expectations}


def condition_of(assignments: list[Assignment]) -> str:
    """A short sum of products."""
    names = list(assignments[0])
    form = SOPform(names, [[int(value) for value in a.values()] for a in assignments]) if names else True
    terms = form.args if isinstance(form, sympy.Or) else [form]
    return " or ".join(product_text(term) for term in terms)


def product_text(product: Any) -> str:
    if product in (True, sympy.true):
        return "on"
    literals = product.args if isinstance(product, sympy.And) else [product]
    return " and ".join(
        f"not {literal.args[0]}" if isinstance(literal, sympy.Not) else str(literal) for literal in literals)


def wordy_condition(condition: str) -> str:
    """The same with one product more."""
    return f"{condition} or ({condition.split(' or ')[0]})"


def conditions_of(table: dict[str, Any]) -> list[dict[str, Any]]:
    """One condition for each answer."""
    rows: dict[str, list[Assignment]] = {}
    for row in table["rows"]:
        for found in row["routes"]:
            answer = {key: found[key] for key in ("inlet", "body", "verdict", "outlets")}
            rows.setdefault(json.dumps(answer), []).append(row["assignment"])
    return [
        {**json.loads(answer), "condition": condition_of(where), "combinations": len(where)}
        for answer, where in rows.items()
    ]


def finding(name: str, condition: str, combinations: int) -> dict[str, Any]:
    return {
        "name": name, "severity": "warning", "proved": True, "cells": [], "inlets": [], "outlets": [], "bodies": [],
        "signals": [], "condition": condition, "combinations": combinations, "event": None,
        "ticks": None, "ways": [], "switched_by": [], "also": [], "headline": name, "reason": "",
        "remedy": "", "line": 1, "column": 1, "accepted": None,
    }


def findings_of(junction: Junction) -> list[dict[str, Any]]:
    """One finding of each kind that a row decides."""
    facts = row_facts(junction)
    facts["dry-stand"] = facts.pop("trapped")
    del facts["only trapped"]
    found = []
    for name, column in facts.items():
        where = [assignment for assignment, truth in zip(junction.assignments(), column) if truth]
        if where:
            found.append(finding(name, condition_of(where), len(where)))
    return found


def with_library(trail: dict[str, Any]) -> dict[str, Any]:
    """Components and dominators filled in."""
    graph = graph_of(trail)
    dominators = networkx.immediate_dominators(graph, ROOT)
    components = list(networkx.strongly_connected_components(graph))
    for i, position in enumerate(trail["positions"]):
        position["component"] = next(n for n, component in enumerate(components) if i in component)
        position["dominator"] = None if dominators[i] == ROOT else dominators[i]
    return trail


def answer(command: str, arguments: list[str]) -> dict[str, Any]:
    drawing = drawn_again(Path(arguments[0]))
    resolved = drawing.document()
    junction = junctions(resolved)[0]
    options = dict(zip(arguments[1:], arguments[2:]))
    assignment = parse_assignment(options.get("--when", ""))
    if command == "resolve":
        return resolved
    if command == "show":
        return document("leat-field", [field_of(Scene.of(junction, assignment))])
    if command == "table":
        table = table_of(junction)
        return document("leat-table", [{**table, "conditions": conditions_of(table)}])
    if command == "check":
        judged = judged_junction(junction.name, 2 ** len(junction.inputs), findings_of(junction), [])
        return findings_document(arguments[0], judged)
    scene = Scene.of(junction, assignment)
    routes = [route(scene, options["--from"], body) for body in junction.bodies]
    trails = [trail_of(found, junction.name, assignment) for found in routes]
    return document("leat-trail", [with_library(trail) for trail in trails])


def lie_about_design(lie: str, junction: dict[str, Any]) -> None:
    if lie == "cell":
        junction["cells"][0][0][0] = (junction["cells"][0][0][0] + 1) % len(junction["fills"])


def lie_about_field(lie: str, junction: dict[str, Any]) -> None:
    wet = junction["cells"]
    if lie == "spill":
        junction["spills"].append([0, 0, 0])
    elif lie == "strength" and wet:
        wet[-1]["strength"] += 1
    elif lie == "current" and wet:
        wet[-1]["current"][0] += 1
    elif lie == "compass" and wet:
        wet[0]["current"] = [1, 0]
    elif lie == "dry" and wet:
        wet.pop()


def lie_about_table(lie: str, junction: dict[str, Any]) -> None:
    last = junction["rows"][-1]["routes"][-1]
    if lie == "trapped":
        last["trapped"].append([99, 0, 0])
    elif lie == "verdict":
        last["verdict"] = "lost" if last["verdict"] != "lost" else "doubtful"
    elif lie == "compass":
        last["trapped"] = [[0, 0, 0]]
    elif lie == "condition":
        condition = junction["conditions"][-1]
        condition["condition"] = f"not ({condition['condition']})"
    elif lie == "wordy":
        condition = junction["conditions"][-1]
        condition["condition"] = wordy_condition(condition["condition"])
    elif lie == "row":
        junction["rows"].pop()


def lie_about_trail(lie: str, junction: dict[str, Any]) -> None:
    positions = junction["positions"]
    if not positions:
        return
    if lie == "dominator":
        positions[-1]["dominator"] = len(positions) - 1
    elif lie == "component" and len(positions) > 1:
        positions[-1]["component"] = positions[0]["component"]
    elif lie == "saved":
        positions[-1]["trapped"] = not positions[-1]["trapped"]
    elif lie == "rule" and junction["moves"]:
        junction["moves"][0]["rule"] = "climb"


def lie_about_findings(lie: str, junction: dict[str, Any]) -> None:
    if lie == "finding":
        junction["findings"].append(finding("split-route", "on", 1))
    elif lie == "silence":
        junction["findings"].clear()


LIES = {
    "resolve": lie_about_design, "show": lie_about_field, "table": lie_about_table, "follow": lie_about_trail,
}


class StandIn(Leat):
    def __init__(self, lie: str = "") -> None:
        super().__init__("stand-in")
        self.lie = lie

    def printed(self, kind: str, *arguments: str) -> dict[str, Any]:
        command = arguments[0]
        said = answer(command, list(arguments[1:]))
        if command == "check":
            lie_about_findings(self.lie, said["files"][0]["junctions"][0])
        else:
            LIES[command](self.lie, said["junctions"][0])
        for fault in self.validator(kind).iter_errors(said):
            raise Difference(f"{fault.json_path}: {fault.message}")
        return said
