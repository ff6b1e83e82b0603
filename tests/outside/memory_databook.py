"""Memory elements against the function tables of the parts that a databook describes.

A latch must do what a set/reset latch does, a toggle what a flip-flop does whose data input is wired to its
inverted output, and four toggles in a row must count as a ripple counter does. Each row is a run of
`leat waves`; the counter's values are those of `leat machine` as well.

Source: function tables of the 74x279 (set/reset latch), 74x74 (flip-flop) and 74x93 (ripple counter), as
in any TTL databook; written down from memory.

    /usr/bin/python3 memory_databook.py --leat build/leat
"""
from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import Any

from leat_program import Leat, expect_equal, options, run
from netlist import Netlist, Signal

# Q0: as it was. Both inputs low: the output is high as long as they are.
LATCH_74X279 = """
S R  Q
L L  H
L H  H
H L  L
H H  Q0
"""
# D is wired to the inverted output; ^ a rising clock, v a falling one.
FLIP_FLOP_74X74 = """
CLK  Q0  Q
^    L   H
^    H   L
v    L   L
v    H   H
"""
COUNTER_74X93 = """
count  QD QC QB QA
0      L  L  L  L
1      L  L  L  H
2      L  L  H  L
3      L  L  H  H
4      L  H  L  L
5      L  H  L  H
6      L  H  H  L
7      L  H  H  H
8      H  L  L  L
9      H  L  L  H
10     H  L  H  L
11     H  L  H  H
12     H  H  L  L
13     H  H  L  H
14     H  H  H  L
15     H  H  H  H
"""


def rows_of(table: str) -> list[dict[str, str]]:
    heading, *lines = [line.split() for line in table.strip().splitlines()]
    return [dict(zip(heading, line)) for line in lines]


def written(folder: Path, name: str, *signals: Signal) -> Path:
    path = folder / f"{name}.leat"
    path.write_text(Netlist(list(signals)).design(), encoding="utf-8")
    return path


def waves(leat: Leat, path: Path, *more: str) -> dict[str, Any]:
    return leat.printed("leat-waves", "waves", str(path), *more, "--as", "json")


def level_at(document: dict[str, Any], name: str, tick: int) -> str:
    signal = next(signal for signal in document["signals"] if signal["name"] == name)
    flips = sum(change <= tick for change in signal["changes"])
    return "H" if signal["starts_on"] != (flips % 2 == 1) else "L"


def compare_latch(leat: Leat, folder: Path) -> int:
    rows = 0
    for before in ("L", "H"):
        path = written(folder, f"latch_{before}", Signal("s", "lever", True), Signal("r", "lever", True),
                       Signal("q", "latch", before == "H", 0, ("not", "s"), ("not", "r")))
        for row in rows_of(LATCH_74X279):
            script = " and ".join(f"{pin.lower()} {'on' if row[pin] == 'H' else 'off'}" for pin in "SR")
            document = waves(leat, path, "--do", script)
            wanted = before if row["Q"] == "Q0" else row["Q"]
            expect_equal(level_at(document, "q", document["last_tick"]), wanted, f"latch {row} from {before}")
            rows += 1
    return rows


def compare_flip_flop(leat: Leat, folder: Path) -> int:
    for row in rows_of(FLIP_FLOP_74X74):
        path = written(folder, "flip_flop", Signal("clk", "lever", row["CLK"] == "v"),
                       Signal("q", "toggle", row["Q0"] == "H", 0, "clk"))
        document = waves(leat, path, "--do", "clk")
        expect_equal(level_at(document, "q", 0), row["Q0"], f"flip-flop {row}: before")
        expect_equal(level_at(document, "q", document["last_tick"]), row["Q"], f"flip-flop {row}")
    return len(rows_of(FLIP_FLOP_74X74))


def counter(clock: Signal) -> list[Signal]:
    """Each stage toggles when the one before falls."""
    stages = [clock.name, "qa", "qb", "qc", "qd"]
    return [clock, *(Signal(stage, "toggle", False, 0, ("not", before))
                     for before, stage in zip(stages, stages[1:]))]


def compare_counter(leat: Leat, folder: Path) -> int:
    table = rows_of(COUNTER_74X93)
    half = 3
    path = written(folder, "counter", *counter(Signal("clk", "clock", False, half)))
    document = waves(leat, path, "--for", f"{half * 2 * 40} ticks")
    for tick in range(document["last_tick"] + 1):
        row = table[tick // (2 * half) % len(table)]
        got = {f"Q{stage.upper()}": level_at(document, f"q{stage}", tick) for stage in "dcba"}
        expect_equal(got, {pin: row[pin] for pin in got}, f"counter at tick {tick}")
    path = written(folder, "counter_by_hand", *counter(Signal("clk", "lever")))
    printed = leat.printed("leat-machine", "machine", str(path), "--as", "json")
    for count, (row, value) in enumerate(zip(table, printed["values"])):
        levels = {f"Q{stage.upper()}": "H" if value["memory"][f"q{stage}"] else "L" for stage in "dcba"}
        expect_equal(levels, {pin: row[pin] for pin in levels}, f"counter's value {count}")
        expect_equal(len(value["events"]), 2 * count, f"flips of the clock to count to {count}")
    expect_equal(len(printed["values"]), len(table), "values of the counter")
    expect_equal(printed["without_return"]["states"], 0, "the counter comes round")
    return len(table)


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    latch, flip_flop = compare_latch(leat, folder), compare_flip_flop(leat, folder)
    return f"memory agrees: latch {latch} rows, flip-flop {flip_flop}, counter {compare_counter(leat, folder)}"


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 0), compare))
