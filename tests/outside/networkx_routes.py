"""Route graphs against a graph library, and position by position against the oracle.

`leat follow FILE --from INLET --when ... --as json` prints the graph of all positions and moves. From its
moves alone networkx computes again: what the starts reach, from where an outlet is reached (trapped), the
strong components, and the immediate dominators under one virtual root. Then the positions and moves
themselves are compared with model_oracle.py.

Source: networkx (https://networkx.org): descendants, ancestors, strongly_connected_components,
immediate_dominators; and docs/model.md, appendix.

    /usr/bin/python3 networkx_routes.py --leat build/leat --count 60
"""
from __future__ import annotations

import argparse
import sys
from collections import Counter
from pathlib import Path
from random import Random
from typing import Any

import networkx

from leat_program import (Case, Leat, assignments_of, drawn_cases, example_cases, expect_equal,
                          is_remembering, options, read_design, run)
from model_document import Assignment, Junction
from model_oracle import Scene, route, trail_of
from random_designs import random_design

ROOT = -1
MOST_ASSIGNMENTS = 4


# -- the graph library -----------------------------------------------------------------------------


def graph_of(trail: dict[str, Any]) -> networkx.DiGraph:
    graph = networkx.DiGraph()
    graph.add_nodes_from(range(len(trail["positions"])))
    graph.add_edges_from((move["from"], move["to"]) for move in trail["moves"])
    graph.add_edges_from((ROOT, start) for start in trail["starts"])
    graph.add_node(ROOT)
    return graph


def compare_reach(trail: dict[str, Any], graph: networkx.DiGraph, where: str) -> None:
    everything = list(range(len(trail["positions"])))
    expect_equal(sorted(networkx.descendants(graph, ROOT)), everything, f"{where} / reachable positions")
    outlets = [i for i, p in enumerate(trail["positions"]) if p["end"] == "outlet"]
    saved = set(outlets).union(*(networkx.ancestors(graph, i) for i in outlets))
    for i, position in enumerate(trail["positions"]):
        expected = i not in saved and position["end"] != "spill"
        expect_equal(position["trapped"], expected, f"{where} / position {i} {position['at']} / trapped")


def compare_components(trail: dict[str, Any], graph: networkx.DiGraph, where: str) -> None:
    printed: dict[int, list[int]] = {}
    for i, position in enumerate(trail["positions"]):
        printed.setdefault(position["component"], []).append(i)
    own = graph.subgraph(range(len(trail["positions"])))
    expected = sorted(sorted(component) for component in networkx.strongly_connected_components(own))
    expect_equal(sorted(printed.values()), expected, f"{where} / strong components")


def compare_dominators(trail: dict[str, Any], graph: networkx.DiGraph, where: str) -> None:
    dominators = networkx.immediate_dominators(graph, ROOT)
    for i, position in enumerate(trail["positions"]):
        expected = None if dominators[i] == ROOT else dominators[i]
        expect_equal(position["dominator"], expected, f"{where} / position {i} {position['at']} / dominator")


def compare_ends(trail: dict[str, Any], graph: networkx.DiGraph, where: str) -> None:
    for i, position in enumerate(trail["positions"]):
        is_end = graph.out_degree(i) == 0
        here = f"{where} / position {i} {position['at']}"
        expect_equal(position["end"] is not None, is_end, f"{here} / is an end")
        is_outlet = position["end"] == "outlet"
        expect_equal(position["outlet"] is not None, is_outlet, f"{here} / has an outlet")


def compare_graph(trail: dict[str, Any], where: str) -> None:
    graph = graph_of(trail)
    for part in (compare_reach, compare_components, compare_dominators, compare_ends):
        part(trail, graph, where)


# -- the oracle ------------------------------------------------------------------------------------


def position_key(position: dict[str, Any]) -> str:
    return f"{position['at']} carried {position['side']} fallen {position['fallen']}"


def position_facts(trail: dict[str, Any]) -> dict[str, Any]:
    """Free of numbering: each position's facts, and its moves as text."""
    keys = [position_key(position) for position in trail["positions"]]
    facts: dict[str, Any] = {
        key: {"end": p["end"], "outlet": p["outlet"], "trapped": p["trapped"], "moves": []}
        for key, p in zip(keys, trail["positions"])
    }
    for move in trail["moves"]:
        sure = "" if move["sure"] else ", unsure"
        facts[keys[move["from"]]]["moves"].append(f"{move['rule']} to {keys[move['to']]}{sure}")
    for fact in facts.values():
        fact["moves"].sort()
    return {"positions": facts, "starts": sorted(keys[i] for i in trail["starts"])}


def compare_with_oracle(trail: dict[str, Any], junction: Junction, assignment: Assignment,
                        where: str) -> None:
    scene = Scene.of(junction, {name: assignment[name] for name in junction.inputs})
    body = next(body for body in junction.bodies if body.name == trail["body"])
    expected = trail_of(route(scene, trail["inlet"], body), junction.name, assignment)
    got = position_facts(trail)
    expect_equal(len(got["positions"]), len(trail["positions"]), f"{where} / positions are unique")
    expect_equal(got, position_facts(expected), where)


# -- the comparison --------------------------------------------------------------------------------


def compare_case(leat: Leat, case: Case) -> Counter[str]:
    read = {junction.name: junction for junction in read_design(leat.resolve(case.path))}
    if is_remembering(list(read.values()), case.label):
        return Counter()
    assignments = list(assignments_of(list(read.values())))
    chosen = Random(1).sample(assignments, min(MOST_ASSIGNMENTS, len(assignments)))
    inlets = list(dict.fromkeys(name for junction in read.values() for name in junction.inlets))
    found: Counter[str] = Counter()
    for assignment in chosen:
        for inlet in inlets:
            trails = leat.follow(case.path, inlet, assignment)["junctions"]
            expect_equal(len(trails) > 0, True, f"{case.label} / from {inlet} / has a trail")
            for trail in trails:
                where = f"{case.label} / {trail['body']} from {inlet} when {assignment}"
                compare_graph(trail, where)
                compare_with_oracle(trail, read[trail["name"]], assignment, where)
                found.update(trails=1, positions=len(trail["positions"]), moves=len(trail["moves"]))
    return found


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    found: Counter[str] = Counter()
    for case in [*drawn_cases(given, folder, random_design), *example_cases(given)]:
        found += compare_case(leat, case)
    return (f"route graphs agree with networkx and the oracle: {found['trails']} trails, "
            f"{found['positions']} positions, {found['moves']} moves")


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 100), compare))
