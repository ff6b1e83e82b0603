"""Throughput and trips of route graphs against a graph library.

throughput_cases prints route graphs of random junctions: positions with the water's push, moves, and what the
engine says of each outlet. From positions, moves and practice alone this computes again: the speed of each
move, by running its recurrence until it stands; the greatest flow (networkx, cells as split vertices), the
smallest cut nearest the starts, the quickest way (Dijkstra) and the longest (only without loops). Rates are
whole bodies in a million seconds; each cell may be rounded the other way.

Source: networkx (https://networkx.org): edmonds_karp, dijkstra_path_length, dag_longest_path_length; and
docs/model.md, "trips" and "throughput".

    /usr/bin/python3 networkx_throughput.py --cases build/tests/throughput_cases --count 60
"""
from __future__ import annotations

import argparse
import json
import subprocess
import sys
from collections import Counter
from functools import lru_cache
from math import hypot
from typing import Any, Optional

import networkx
from networkx.algorithms.flow import edmonds_karp

from leat_program import Difference, expect_equal

START, END = "start", "end"
MOST_TICKS = 100_000


# -- the recurrences of motion ---------------------------------------------------------------------


@lru_cache(maxsize=None)
def ticks_for(won: float, kept: float, cells: float) -> Optional[int]:
    speed = way = 0.0
    for tick in range(1, MOST_TICKS + 1):
        speed = speed * kept + won
        way += speed
        if way >= cells:
            return tick
    return None


@lru_cache(maxsize=None)
def standing_speed(won: float, kept: float) -> float:
    speed = 0.0
    for _ in range(MOST_TICKS):
        faster = speed * kept + won
        if faster == speed:
            break
        speed = faster
    return max(speed, 0.0)


class Moves:
    """What a case's moves take and pass."""

    def __init__(self, case: dict[str, Any]) -> None:
        self.practice = {name: value / 1000 for name, value in case["practice"].items()}
        self.second = case["practice"]["ticks_per_second"]
        self.width = self.practice["body_width"] + case["footprint"] - 1
        self.height = self.practice["body_height"] + case["height"] - 2
        number = self.practice
        self.up = (number["upward_stroke"] * number["stroke_chance"] - number["water_gravity"], number["water_drag"])
        self.under = (number["water_gravity"], number["water_drag"])
        self.air = (number["gravity"] * number["air_drag"], number["air_drag"])

    def along(self, start: dict[str, Any], end: dict[str, Any]) -> tuple[float, float]:
        """To the side of the other position: what the push has along that axis; all of it where nothing pushes."""
        axis = next((axis for axis in (0, 1) if start["at"][axis] != end["at"][axis]), 0)
        strength = hypot(*start["push"])
        share = abs(start["push"][axis]) / strength if strength > 1e-9 else 1.0
        return self.practice["water_push"] * share, self.practice["water_drag"]

    def parts(self, rule: str, start: dict[str, Any], end: dict[str, Any]) -> list[tuple[Any, float, int]]:
        """The parts of a move: how speed grows, what a body takes of the stream, how many cells."""
        levels = start["at"][2] - end["at"][2]
        down = [(self.under, self.height, levels)]
        if not start["wet"]:
            down = [(self.air, self.height, 1)] + ([(self.under, self.height, levels - 1)] if levels > 1 else [])
        side, up = (self.along(start, end), self.width, 1), (self.up, self.height, 1)
        return {"fall": down, "sink": down, "rise": [up], "push": [side], "climb": [up, side],
                "drift": [side] if start["wet"] else [*down, side]}[rule]

    def ticks(self, rule: str, start: dict[str, Any], end: dict[str, Any]) -> Optional[int]:
        total = 0
        for growth, _, cells in self.parts(rule, start, end):
            one = ticks_for(*growth, 1)
            if one is None:
                return None
            total += one * cells
        return total

    def rate(self, rule: str, start: dict[str, Any], end: dict[str, Any]) -> int:
        return min(self.part_rate(*part) for part in self.parts(rule, start, end))

    def part_rate(self, growth: Any, takes: float, _: int) -> int:
        if growth == self.air:
            ticks = ticks_for(*growth, takes)
            return round(self.second * 1e6 / ticks) if ticks else 0
        return round(standing_speed(*growth) / takes * self.second * 1e6)


# -- flow and ways ---------------------------------------------------------------------------------


def positions_leading_to(case: dict[str, Any], ends: list[int]) -> set[int]:
    graph = networkx.DiGraph((to, source) for source, to, _ in case["moves"])
    graph.add_nodes_from(range(len(case["positions"])))
    return set(ends).union(*(networkx.descendants(graph, end) for end in ends))


def network(case: dict[str, Any], leading: set[int], ends: list[int]) -> networkx.DiGraph:
    """Cells as two vertices. Edges without a capacity are unbounded."""
    moves, positions, graph = Moves(case), case["positions"], networkx.DiGraph()
    through = {positions[i]["cell"]: 0 for i in leading}
    for source, to, rule in case["moves"]:
        if source in leading and to in leading:
            rate = moves.rate(rule, positions[source], positions[to])
            here, there = positions[source]["cell"], positions[to]["cell"]
            through[here] = max(through[here], rate)
            old = graph.get_edge_data(("out", here), ("in", there), {"capacity": 0})["capacity"]
            graph.add_edge(("out", here), ("in", there), capacity=max(old, rate))
    outlet_cells = {positions[i]["cell"] for i in ends}
    for cell, rate in through.items():
        if cell in outlet_cells:
            graph.add_edge(("in", cell), END)
        else:
            graph.add_edge(("in", cell), ("out", cell), capacity=rate)
    for i in leading.intersection(case["starts"]):
        cell = positions[i]["cell"]
        graph.add_edge(START, ("in", cell), **({} if cell in outlet_cells else {"capacity": through[cell]}))
    return graph


def nearest_cut(graph: networkx.DiGraph) -> tuple[int, dict[int, int]]:
    residual = edmonds_karp(graph, START, END)
    open_edges = [(a, b) for a, b, d in residual.edges(data=True) if d["flow"] < d["capacity"]]
    room = networkx.DiGraph(open_edges)
    room.add_node(START)
    inside = {START} | networkx.descendants(room, START)
    cells: Counter[int] = Counter()
    for a, b, data in graph.edges(data=True):
        if a in inside and b not in inside:
            cells[(b if a == START else a)[1]] += data["capacity"]
    return residual.graph["flow_value"], dict(cells)


def expect_close(got: int, expected: int, cells: int, where: str) -> None:
    if abs(got - expected) > cells:
        raise Difference(f"{where}: printed {got}, expected {expected}")


def compare_flow(case: dict[str, Any], answer: dict[str, Any], ends: list[int], where: str) -> None:
    leading = positions_leading_to(case, ends) if ends else set()
    if not leading.intersection(case["starts"]):
        expect_equal([answer["rate"], answer["narrowest"]], [0, []], f"{where} / not reached")
        return
    if any(case["positions"][i]["cell"] in {case["positions"][e]["cell"] for e in ends} for i in case["starts"]):
        expect_equal(answer["rate"], None, f"{where} / enters at the outlet")
        return
    rate, cut = nearest_cut(network(case, leading, ends))
    got = dict(answer["narrowest"])
    expect_close(answer["rate"], rate, len(cut), f"{where} / rate")
    expect_equal(sum(got.values()), answer["rate"], f"{where} / sum over the narrowest")
    expect_equal(sorted(got), sorted(cut), f"{where} / narrowest")
    for cell, passes in cut.items():
        expect_close(got[cell], passes, 4, f"{where} / through {cell}")


def compare_trips(case: dict[str, Any], answer: dict[str, Any], ends: list[int], where: str) -> None:
    moves, positions = Moves(case), case["positions"]
    leading = positions_leading_to(case, ends) if ends else set()
    graph = networkx.DiGraph()
    graph.add_nodes_from(leading)
    is_bounded = bool(leading)
    for source, to, rule in case["moves"]:
        if source in leading and to in leading:
            ticks = moves.ticks(rule, positions[source], positions[to])
            is_bounded = is_bounded and ticks is not None
            if ticks is not None:
                old = graph.get_edge_data(source, to, {"least": ticks, "most": 0})
                graph.add_edge(source, to, least=min(ticks, old["least"]), most=max(ticks, old["most"]))
    starts = leading.intersection(case["starts"])
    reached = networkx.multi_source_dijkstra_path_length(graph, starts, weight="least") if starts else {}
    quickest = min((reached[end] for end in ends if end in reached), default=None)
    expect_equal(answer["quickest"], quickest, f"{where} / quickest")
    longest = None
    if is_bounded and networkx.is_directed_acyclic_graph(graph):
        longest = networkx.dag_longest_path_length(graph, weight="most")
    expect_equal(answer["longest"], longest, f"{where} / longest")


# -- the comparison --------------------------------------------------------------------------------


def compare_case(case: dict[str, Any]) -> Counter[str]:
    found: Counter[str] = Counter(graphs=1)
    for answer in case["answers"]:
        where = f"junction {case['seed']} / outlet {answer['outlet']} / {len(case['positions'])} positions"
        ends = [i for i, p in enumerate(case["positions"]) if p["outlet"] == answer["outlet"]]
        compare_flow(case, answer, ends, where)
        compare_trips(case, answer, ends, where)
        found.update(flows=bool(answer["rate"]), wide_cuts=len(answer["narrowest"]) > 1,
                     loops=bool(answer["rate"]) and answer["longest"] is None)
    return found


def compare(program: str, count: int) -> str:
    done = subprocess.run([program, str(count)], capture_output=True, text=True, timeout=300, check=True)
    found: Counter[str] = Counter()
    for line in done.stdout.splitlines():
        found += compare_case(json.loads(line))
    for kind in ("flows", "wide_cuts", "loops"):
        if found[kind] == 0:
            raise Difference(f"among {found['graphs']} graphs none with {kind.replace('_', ' ')}")
    return (f"throughput and trips agree with networkx: {found['graphs']} graphs, {found['flows']} flows, "
            f"{found['wide_cuts']} cuts of several cells, {found['loops']} with loops on the way")


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--cases", required=True, help="the program throughput_cases")
    parser.add_argument("--count", type=int, default=60, help="random junctions")
    given = parser.parse_args()
    try:
        print(compare(given.cases, given.count))
    except Difference as difference:
        print(f"DIFFERENT: {difference}")
        sys.exit(1)
