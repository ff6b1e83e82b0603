"""Running Verilog with Icarus (Debian package iverilog), and the modules that model a netlist.

The modules follow section 4 of the model by their own way: wires are continuous assignments; in each
round the memory whose trigger says so changes together, on the values that the simulator has settled to;
rounds go on until one changes nothing. A delay looks up what went into it so many ticks ago.
"""
from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

from leat_program import Difference
from netlist import Netlist, Signal, verilog

MOST_ROUNDS = 2000


def tool(name: str, package: str) -> str:
    """The path of a program; a missing one is a failure that says what to install."""
    path = shutil.which(name)
    if path is None:
        raise Difference(f"no {name} here: install the Debian package {package}")
    return path


def simulate(source: str, folder: Path, name: str) -> list[str]:
    file, compiled = folder / f"{name}.v", folder / f"{name}.vvp"
    file.write_text(source, encoding="ascii")
    for command in ([tool("iverilog", "iverilog"), "-g2005", "-Wall", "-o", str(compiled), str(file)],
                    [tool("vvp", "iverilog"), "-n", str(compiled)]):
        done = subprocess.run(command, capture_output=True, text=True, timeout=300, check=False)
        if done.returncode != 0 or done.stderr:
            raise Difference(f"{' '.join(command)}: exit {done.returncode}\n{done.stderr[:2000]}")
    return done.stdout.splitlines()


def bit(value: bool) -> str:
    return "1" if value else "0"


def memories(netlist: Netlist) -> list[Signal]:
    return netlist.of_kind("latch", "toggle")


def declarations(netlist: Netlist) -> list[str]:
    lines = ["integer rounds;", "reg quiet;"]
    for signal in netlist.signals:
        if signal.kind != "wire":
            lines.append(f"reg {signal.name};")
    for wire in netlist.of_kind("wire"):
        lines.append(f"wire {wire.name};")
    for wire in netlist.of_kind("wire"):
        lines.append(f"assign {wire.name} = {verilog(wire.on)};")
    for memory in memories(netlist):
        lines.append(f"reg was_{memory.name}, then_{memory.name};")
    return lines


def next_value(memory: Signal) -> str:
    if memory.kind == "latch":
        return f"{verilog(memory.on)} ? 1'b1 : {verilog(memory.off)} ? 1'b0 : {memory.name}"
    return f"{memory.name} != ({verilog(memory.on)} && !was_{memory.name})"


def note_triggers(netlist: Netlist) -> list[str]:
    return [f"was_{memory.name} = {verilog(memory.on)};" for memory in memories(netlist)]


def settle_task(netlist: Netlist) -> list[str]:
    """What settles after something was done, and what settles the start, in which toggles are held."""
    return task(netlist, "settle", memories(netlist)) + task(netlist, "settle_start", netlist.of_kind("latch"))


def task(netlist: Netlist, name: str, changing: list[Signal]) -> list[str]:
    lines = [f"task {name}; begin", "quiet = 0; rounds = 0;",
             f"while (!quiet && rounds < {MOST_ROUNDS}) begin", "#1; quiet = 1; rounds = rounds + 1;"]
    for memory in changing:
        lines.append(f"then_{memory.name} = {next_value(memory)};")
        lines.append(f"if (then_{memory.name} != {memory.name}) quiet = 0;")
    lines += note_triggers(netlist)
    lines += [f"{memory.name} = then_{memory.name};" for memory in changing]
    return [*lines, "end", "end endtask"]


def as_built(netlist: Netlist) -> list[str]:
    lines = [f"{signal.name} = {bit(signal.starts_on)};" for signal in netlist.signals
             if signal.kind != "wire"]
    return [*lines, "#1;", *note_triggers(netlist), "settle_start;"]
