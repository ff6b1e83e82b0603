"""Timed runs of random netlists against a Verilog simulator, every signal at every tick.

Levers, buttons, plates, clocks, wires, latches, toggles and delays under a random script of what is done.
The Verilog is generated from the netlist and the rules of the model (verilog_program.py); the program's
side is `leat waves --as vcd`, read by the strict reader. Where the program says that a tick does not get
quiet, the simulator must need more rounds than the program grants; from there on nothing is compared.

Source: Icarus Verilog (IEEE 1364-2005 simulation semantics).

    /usr/bin/python3 waves_verilog.py --leat build/leat --count 240
"""
from __future__ import annotations

import argparse
import json
import subprocess
import sys
from pathlib import Path
from random import Random

import vcd_reader
from leat_program import Difference, Leat, options, run
from netlist import Netlist, random_netlist, verilog
from verilog_program import as_built, bit, declarations, settle_task, simulate

INPUTS = {"lever": 3, "button": 2, "plate": 1, "clock": 1}
OTHERS = {"wire": 3, "latch": 2, "toggle": 3, "delay": 2}
TAIL = 40  # ticks after the last that is done
UNITS = 5  # of 10 ms in a tick
Deeds = list[tuple[int, str, str]]  # tick, name, what: "", "on" or "off"


def random_script(dice: Random, netlist: Netlist) -> tuple[str, Deeds, int]:
    """The words, what they mean, and the last tick to compare."""
    inputs = netlist.of_kind("lever", "button", "plate")
    steps, deeds, tick, waited = [], [], 0, 0
    for _ in range(dice.randint(4, 14)):
        if dice.random() < 0.55:
            ticks = dice.choice((1, 2, 3, 5, 8, 20, 31))
            steps.append(f"wait {ticks} tick{'s' if ticks != 1 else ''}" if ticks != 20 else "wait 1 s")
            waited += ticks
            continue
        tick += max(waited, 1)
        waited = 0
        done = []
        for signal in dice.sample(inputs, min(len(inputs), dice.choice((1, 1, 1, 2)))):
            what = dice.choice(("", "", "on")) if signal.kind == "button" else dice.choice(("", "", "on", "off"))
            done.append(f"{signal.name} {what}".strip())
            deeds.append((tick, signal.name, what))
        steps.append(" and ".join(done))
    return ", ".join(steps), deeds, tick + waited + TAIL


def handling(netlist: Netlist, deeds: Deeds) -> list[str]:
    kinds = {signal.name: signal for signal in netlist.signals}
    lines = []
    for tick, name, what in deeds:
        value = {"": f"!{name}", "on": "1'b1", "off": "1'b0"}[what]
        if kinds[name].kind == "button":
            lines.append(f"if (tick == {tick}) begin {name} = 1; over_{name} = tick + {kinds[name].ticks}; end")
        else:
            lines.append(f"if (tick == {tick}) {name} = {value};")
    return lines


def module(netlist: Netlist, deeds: Deeds, last: int, number: int) -> list[str]:
    shown = ", ".join(signal.name for signal in netlist.signals)
    show = f'$display("{number} %0d %0d %b", tick, rounds, {{{shown}}});'
    buttons, delays = netlist.of_kind("button"), netlist.of_kind("delay")
    fed = [f"fed_{delay.name}[tick] = {verilog(delay.on)};" for delay in delays]
    lines = [f"module netlist_{number};", "integer tick;", *declarations(netlist)]
    lines += [f"integer over_{button.name};" for button in buttons]
    lines += [f"reg fed_{delay.name} [0:{last}];" for delay in delays]
    lines += [*settle_task(netlist), "initial begin", "tick = 0;"]
    lines += [f"over_{button.name} = 0;" for button in buttons]
    lines += [*as_built(netlist), *fed, show, f"for (tick = 1; tick <= {last}; tick = tick + 1) begin"]
    lines += [f"if (tick == over_{button.name}) {button.name} = 0;" for button in buttons]
    lines += handling(netlist, deeds)
    lines += [f"if (tick % {clock.ticks} == 0) {clock.name} = !{clock.name};" for clock in netlist.of_kind("clock")]
    for delay in delays:
        lines.append(f"if (tick >= {delay.ticks}) {delay.name} = fed_{delay.name}[tick - {delay.ticks}];")
    return [*lines, "settle;", *fed, show, "end", "end", "endmodule"]


def waves(leat: Leat, path: Path, script: str, form: str) -> tuple[str, int]:
    command = [leat.path, "waves", str(path), "--do", script, "--for", f"{TAIL} ticks", "--as", form]
    done = subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)
    if done.returncode not in (0, 3):
        raise Difference(f"{' '.join(command)}: exit {done.returncode}\n{done.stderr}")
    return done.stdout, done.returncode


def granted_rounds(netlist: Netlist) -> int:
    return 4 * len(netlist.of_kind("latch", "toggle", "delay")) + 4


def compare_one(leat: Leat, netlist: Netlist, path: Path, script: str, last: int,
                lines: list[tuple[int, int, str]]) -> int:
    """How many ticks were compared."""
    dump = vcd_reader.read(waves(leat, path, script, "vcd")[0])
    names = [signal.name for signal in netlist.signals]
    if dump.names != names or dump.end != last * UNITS or len(lines) != last + 1:
        raise Difference(f"{path}: {script}\n  the dump has {dump.names} up to {dump.end}")
    text, code = waves(leat, path, script, "json")
    document = json.loads(text)
    leat.validator("leat-waves").validate(document)
    unquiet = document["unquiet_ticks"]
    if (code == 3) != bool(unquiet):
        raise Difference(f"{path}: {script}\n  exit {code} with unquiet ticks {unquiet}")
    until = {}
    for time, name, value in dump.changes:
        until.setdefault(time, []).append((name, value))
    now: dict[str, bool] = {}
    for tick, rounds, values in lines:
        is_long = rounds > granted_rounds(netlist)
        if tick > 0 and is_long != (tick in unquiet):
            raise Difference(f"{path}: {script}\n  tick {tick}: {rounds} rounds, unquiet ticks {unquiet}")
        if is_long:
            return tick
        now.update(until.get(tick * UNITS, []))
        got = "".join(bit(now[name]) for name in names)
        if got != values:
            raise Difference(f"{path}: {script}\n  tick {tick} of {names}: printed {got}, simulated {values}")
    return last + 1


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    cases, modules = {}, []
    for seed in range(given.seed, given.seed + given.count):
        netlist = random_netlist(seed, INPUTS, OTHERS)
        script, deeds, last = random_script(Random(seed), netlist)
        path = folder / f"netlist_{seed}.leat"
        path.write_text(netlist.design(), encoding="utf-8")
        cases[seed] = (netlist, path, script, last)
        modules += module(netlist, deeds, last, seed)
    simulated: dict[int, list[tuple[int, int, str]]] = {seed: [] for seed in cases}
    for line in simulate("\n".join(modules) + "\n", folder, "netlists"):
        number, tick, rounds, values = line.split()
        simulated[int(number)].append((int(tick), int(rounds), values))
    ticks = [compare_one(leat, *case, simulated[seed]) for seed, case in cases.items()]
    whole = sum(count == case[3] + 1 for count, case in zip(ticks, cases.values()))
    if whole < given.count / 2:
        raise Difference(f"only {whole} of {given.count} netlists get quiet throughout: nothing is shown")
    return f"signals over time agree: {given.count} netlists, {sum(ticks)} ticks; {whole} of them to the end"


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 240), compare))
