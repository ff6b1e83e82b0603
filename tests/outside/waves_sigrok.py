"""Value change dumps read by a program that is not ours: sigrok-cli (Debian package sigrok-cli).

It reads each dump of `leat waves --as vcd` and writes a row for each sample; every signal of every sample
must be what `leat waves --as json` says of the tick. Random netlists, seconds of other numbers of ticks,
and names in other scripts, which the dump tells by their code points.

    /usr/bin/python3 waves_sigrok.py --leat build/leat --count 40
"""
from __future__ import annotations

import argparse
import json
import subprocess
import sys
from pathlib import Path
from random import Random

import vcd_reader
from leat_program import Difference, Leat, expect_equal, options, run
from netlist import Netlist, Signal, random_netlist
from verilog_program import tool
from waves_verilog import INPUTS, OTHERS, random_script, waves

NAMES = {"größe": "gr$f6$$df$e", "übung": "_$$fc$bung", "_übung": "_$fc$bung", "水車": "_$$6c34$$8eca$"}
TICKS_PER_SECOND = (20, 20, 10, 8, 1)


def samples(dump: str, folder: Path) -> tuple[list[str], list[str], int]:
    """Channel names, a row of 0 and 1 for each sample, and samples a second."""
    path = folder / "run.vcd"
    path.write_text(dump, encoding="ascii")
    done = subprocess.run([tool("sigrok-cli", "sigrok-cli"), "-I", "vcd", "-i", str(path), "-O", "csv"],
                          capture_output=True, text=True, timeout=60, check=False)
    if done.returncode != 0 or done.stderr:
        raise Difference(f"sigrok-cli on {dump[:600]}: exit {done.returncode}\n{done.stderr}")
    names, rows, rate = [], [], 0
    for line in done.stdout.splitlines():
        if line.startswith("; Channels"):
            names = line.split(": ", 1)[1].split(", ")
        elif line.startswith("META samplerate: "):
            rate = int(line.split(": ")[1])
        elif line[:1] in ("0", "1"):
            rows.append(line.replace(",", ""))
    return names, rows, rate


def compare_one(leat: Leat, path: Path, script: str, folder: Path, said_names: dict[str, str]) -> int:
    dump = waves(leat, path, script, "vcd")[0]
    document = json.loads(waves(leat, path, script, "json")[0])
    read = vcd_reader.read(dump)
    names, rows, rate = samples(dump, folder)
    said = [said_names.get(signal["name"], signal["name"]) for signal in document["signals"]]
    expect_equal(read.names, said, f"{path}: names")
    expect_equal(names, said, f"{path}: names by sigrok-cli")
    expect_equal(rate, read.units_per_second, f"{path}: samples a second")
    units = rate // document["ticks_per_second"]
    # The last time of a dump ends the last sample.
    expect_equal(len(rows), document["last_tick"] * units, f"{path}: samples")
    values = [signal["starts_on"] for signal in document["signals"]]
    flips: dict[int, list[int]] = {}
    for i, signal in enumerate(document["signals"]):
        for tick in signal["changes"]:
            flips.setdefault(tick, []).append(i)
    for at, row in enumerate(rows):
        if at % units == 0:
            for i in flips.get(at // units, []):
                values[i] = not values[i]
        expect_equal(row, "".join("01"[value] for value in values), f"{path}: {script}: sample {at}")
    return len(rows)


def named_otherwise() -> Netlist:
    """A lever, a delay, a toggle and a latch with names that are not plain ASCII."""
    lever, late, turn, held = NAMES
    return Netlist([Signal(lever, "lever"), Signal(late, "delay", False, 4, lever),
                    Signal(turn, "toggle", False, 0, lever), Signal(held, "latch", False, 0, late, ("not", turn))])


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    path = folder / "named.leat"
    path.write_text(named_otherwise().design(), encoding="utf-8")
    count = compare_one(leat, path, "größe, wait 9 ticks, größe, wait 1 s, größe", folder, NAMES)
    for seed in range(given.seed, given.seed + given.count):
        netlist = random_netlist(seed, INPUTS, OTHERS)
        script = random_script(Random(seed), netlist)[0]
        second = TICKS_PER_SECOND[seed % len(TICKS_PER_SECOND)]
        path = folder / f"netlist_{seed}.leat"
        practice = "" if second == 20 else f"practice {{ ticks_per_second {second} }}\n"
        path.write_text(netlist.design() + practice, encoding="utf-8")
        count += compare_one(leat, path, script, folder, {})
    return f"value change dumps agree: {given.count + 1} dumps, {count} samples"


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 40), compare))
