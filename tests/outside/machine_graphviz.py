"""Graphs of state machines laid out by Graphviz (Debian package graphviz).

`dot -Tplain` must take each graph of `leat machine --as dot` without a word, and its nodes, edges and
labels must be those of `leat machine --as json`.

    /usr/bin/python3 machine_graphviz.py --leat build/leat --count 40
"""
from __future__ import annotations

import argparse
import shlex
import subprocess
import sys
from pathlib import Path
from typing import Any

from leat_program import Difference, Leat, expect_equal, options, run
from netlist import random_netlist
from verilog_program import tool

INPUTS = {"lever": 2, "button": 1, "plate": 1, "clock": 1}
OTHERS = {"wire": 2, "latch": 1, "toggle": 2, "delay": 1}


class Layout:
    """What Graphviz has read: labels of nodes, and of edges by their ends."""

    def __init__(self, leat: Leat, path: Path, *more: str) -> None:
        command = [leat.path, "machine", str(path), "--as", "dot", *more]
        made = subprocess.run(command, capture_output=True, timeout=60, check=False)
        if made.returncode not in (0, 1):
            raise Difference(f"{' '.join(command)}: exit {made.returncode}\n{made.stderr.decode()}")
        done = subprocess.run([tool("dot", "graphviz"), "-Tplain"], input=made.stdout, capture_output=True,
                              timeout=60, check=False)
        if done.returncode != 0 or done.stderr:
            raise Difference(f"dot on {' '.join(command)}: exit {done.returncode}\n{done.stderr.decode()}")
        self.nodes: dict[str, list[str]] = {}
        self.edges: dict[tuple[str, str], list[str]] = {}
        for line in done.stdout.decode().replace("\\\n", "").splitlines():
            words = [word.replace("\\n", "\n") for word in shlex.split(line.replace("\\n", "\\\\n"))]
            if words[0] == "node":
                self.nodes[words[1]] = words[6].split("\n")
            elif words[0] == "edge":
                ends = (words[1], words[2])
                if ends in self.edges:
                    raise Difference(f"{' '.join(command)}: two edges {ends}")
                self.edges[ends] = words[4 + 2 * int(words[3])].split("\n")


def compare_values(layout: Layout, printed: dict[str, Any], label: str) -> None:
    restless = any(change["to"] is None for change in printed["changes"])
    wanted = {f"s{i}": [name for name, is_on in entry["memory"].items() if is_on] or ["all off"]
              for i, entry in enumerate(printed["values"])}
    if not printed["memory"]:
        wanted = {"s0": ["no memory"]}
    if restless:
        wanted["restless"] = ["never quiet"]
    expect_equal(layout.nodes, wanted, f"{label}: nodes")
    edges: dict[tuple[str, str], int] = {}
    for change in printed["changes"]:
        ends = (f"s{change['from']}", "restless" if change["to"] is None else f"s{change['to']}")
        edges[ends] = edges.get(ends, 0) + 1
    expect_equal(sorted((ends, len(lines)) for ends, lines in layout.edges.items()), sorted(edges.items()),
                 f"{label}: edges")
    sure = sum(not line.endswith(", at times") for lines in layout.edges.values() for line in lines)
    expect_equal(sure, sum(change["always"] for change in printed["changes"]), f"{label}: edges that always lead")


def compare_states(layout: Layout, printed: dict[str, Any], label: str) -> None:
    states = printed["states"]
    nodes = [name for name in layout.nodes if name != "restless"]
    expect_equal(sorted(nodes), sorted(f"s{i}" for i in range(states)), f"{label}: nodes")
    leaving = {name: 0 for name in nodes}
    for (tail, _), lines in layout.edges.items():
        leaving[tail] += len(lines)
    expect_equal(set(leaving.values()), {len(printed["inputs"])}, f"{label}: events from each state")


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    nodes = edges = 0
    for seed in range(given.seed, given.seed + given.count):
        path = folder / f"machine_{seed}.leat"
        path.write_text(random_netlist(seed, INPUTS, OTHERS).design(), encoding="utf-8")
        printed = leat.printed("leat-machine", "machine", str(path), "--as", "json")
        layout = Layout(leat, path)
        if printed["unquiet_as_built"] is not None:
            expect_equal((layout.nodes, layout.edges), ({}, {}), f"{path}: not quiet as built")
            continue
        compare_values(layout, printed, str(path))
        full = Layout(leat, path, "--full")
        compare_states(full, printed, f"{path} --full")
        nodes += len(layout.nodes) + len(full.nodes)
        edges += len(layout.edges) + len(full.edges)
    return f"graphs agree: {given.count} machines, {nodes} nodes, {edges} edges"


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 40), compare))
