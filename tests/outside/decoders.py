"""Sorters against the function tables of decoders.

A sorter of four on two levers must do what half a dual 2-to-4 decoder does, a sorter of eight on three
levers what a 3-to-8 decoder does: every setting of the select inputs activates its own output and no
other. Each inlet and body is judged; each row must be certain. Which lever is wired to which select pin,
and which outlet to which output pin, is the builder's choice: the test looks for a wiring (levers in the
order of the file first, most significant first) and prints it.

Source: function tables of the 74x139 and 74x138, as in any TTL databook (low = active output, enabled).

    /usr/bin/python3 decoders.py --leat build/leat
"""
from __future__ import annotations

import argparse
import sys
from itertools import permutations
from pathlib import Path
from typing import Any, Optional

from leat_program import Difference, Leat, expect_equal, options, run

# Select inputs, most significant first, then the outputs Y0 Y1 ...; L is the active output.
DECODER_74X139 = """
B A  Y0 Y1 Y2 Y3
L L  L  H  H  H
L H  H  L  H  H
H L  H  H  L  H
H H  H  H  H  L
"""
DECODER_74X138 = """
C B A  Y0 Y1 Y2 Y3 Y4 Y5 Y6 Y7
L L L  L  H  H  H  H  H  H  H
L L H  H  L  H  H  H  H  H  H
L H L  H  H  L  H  H  H  H  H
L H H  H  H  H  L  H  H  H  H
H L L  H  H  H  H  L  H  H  H
H L H  H  H  H  H  H  L  H  H
H H L  H  H  H  H  H  H  L  H
H H H  H  H  H  H  H  H  H  L
"""
SORTERS = {"sorter_of_four": DECODER_74X139, "sorter_of_eight": DECODER_74X138}

Setting = tuple[bool, ...]


def function_table(text: str) -> tuple[list[str], dict[Setting, str]]:
    """Names of the select pins, and the active output of each setting."""
    heading, *lines = [line.split() for line in text.strip().splitlines()]
    selects = [name for name in heading if not name.startswith("Y")]
    outputs = heading[len(selects):]
    table = {}
    for line in lines:
        setting = tuple(level == "H" for level in line[: len(selects)])
        active = [name for name, level in zip(outputs, line[len(selects):]) if level == "L"]
        assert len(active) == 1
        table[setting] = active[0]
    return selects, table


def outlet_of(route: dict[str, Any], where: str) -> str:
    if route["verdict"] != "certain" or len(route["outlets"]) != 1:
        got = f"{route['verdict']} route to {route['outlets']}"
        raise Difference(f"{where}: {got}, expected one certain outlet")
    return str(route["outlets"][0])


def wiring(outlet_for: dict[Setting, str], table: dict[Setting, str],
           order: tuple[int, ...]) -> Optional[dict[str, str]]:
    """Output pin of each outlet when lever i is select pin order[i]; None where it contradicts itself."""
    pins: dict[str, str] = {}
    for setting, outlet in outlet_for.items():
        selected = [False] * len(order)
        for lever, pin in enumerate(order):
            selected[pin] = setting[lever]
        if pins.setdefault(outlet, table[tuple(selected)]) != table[tuple(selected)]:
            return None
    return pins if len(set(pins.values())) == len(pins) == len(table) else None


def compare_sorter(junction: dict[str, Any], text: str, label: str) -> str:
    selects, table = function_table(text)
    levers = junction["signals"]
    expect_equal(len(levers), len(selects), f"{label} / number of levers")
    expect_equal(len(junction["rows"]), len(table), f"{label} / number of rows")
    travellers: dict[str, dict[Setting, str]] = {}
    for row in junction["rows"]:
        setting = tuple(row["assignment"][lever] for lever in levers)
        for route in row["routes"]:
            name = f"{route['body']} from {route['inlet']}"
            where = f"{label} / {name} when {row['assignment']}"
            travellers.setdefault(name, {})[setting] = outlet_of(route, where)
    if not travellers:
        raise Difference(f"{label}: no routes at all")
    for order in permutations(range(len(selects))):
        found = [wiring(outlets, table, order) for outlets in travellers.values()]
        if all(pins is not None and pins == found[0] for pins in found):
            pairs = [f"{lever}={selects[pin]}" for lever, pin in zip(levers, order)]
            outputs = {pin: outlet for outlet, pin in (found[0] or {}).items()}
            pairs += [f"{outputs[pin]}={pin}" for pin in sorted(outputs)]
            return f"{label} is the decoder with {', '.join(pairs)}"
    raise Difference(f"{label}: no wiring of pins gives the function table; routes are {travellers}")


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    said = []
    for name, text in SORTERS.items():
        path = Path(given.examples) / f"{name}.leat"
        if not path.exists():
            raise Difference(f"no example {path}")
        for junction in leat.table(path)["junctions"]:
            said.append(compare_sorter(junction, text, f"{name} / {junction['name']}"))
    return "\n".join([*said, f"decoders agree: {len(said)} sorters"])


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 0), compare))
