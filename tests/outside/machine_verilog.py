"""State machines of random netlists against a search that a Verilog simulator runs.

The simulator explores the netlist breadth first from as built: it takes a known state, flips one input,
lets the logic settle in rounds, and notes what came of it. From its list of transitions follow, by
networkx and by counting: the reachable values of the memory, the fewest events to each, every change of
the memory and whether it always comes, what never gets quiet, what is never reached, and from how many
states the one as built cannot be regained. `leat machine --as json` must say the same. Then each value's
shortest sequence is run through `leat waves` with waits between: the run ends with that memory.

No delays: with them a pulse can pass in time that no settled state shows.

Sources: Icarus Verilog; networkx (shortest paths, descendants, ancestors).

    /usr/bin/python3 machine_verilog.py --leat build/leat --count 120
"""
from __future__ import annotations

import argparse
import json
import subprocess
import sys
from itertools import product
from pathlib import Path
from typing import Any, Optional

import networkx

from leat_program import Difference, Leat, expect_equal, options, run
from netlist import Expression, Netlist, random_netlist
from verilog_program import as_built, declarations, memories, note_triggers, settle_task, simulate

INPUTS = {"lever": 3, "plate": 1}
OTHERS = {"wire": 2, "latch": 2, "toggle": 2}
Transition = tuple[int, int, Optional[int]]  # code, input, code; None: never quiet


def module(netlist: Netlist, number: int) -> list[str]:
    variables = netlist.of_kind("lever", "plate") + memories(netlist)
    code = "{" + ", ".join(signal.name for signal in reversed(variables)) + "}"
    size, inputs = 1 << len(variables), len(netlist.of_kind("lever", "plate"))
    lines = [f"module netlist_{number};", *declarations(netlist), *settle_task(netlist)]
    lines += [f"reg seen [0:{size - 1}];", f"integer queue [0:{size - 1}];", "integer head, tail, event_, i;"]
    lines += ["initial begin", f"for (i = 0; i < {size}; i = i + 1) seen[i] = 0;", *as_built(netlist)]
    lines += ["head = 0; tail = 0;", f"if (quiet) begin queue[0] = {code}; seen[{code}] = 1; tail = 1;",
              f'$display("{number} start %0d", queue[0]); end else $display("{number} never");']
    lines += ["while (head < tail) begin", f"for (event_ = 0; event_ < {inputs}; event_ = event_ + 1) begin",
              f"{code} = queue[head]; #1;", *note_triggers(netlist),
              f"{code} = queue[head] ^ (1 << event_);", "settle;",
              f'if (quiet) begin $display("{number} %0d %0d %0d", queue[head], event_, {code});',
              f"if (!seen[{code}]) begin queue[tail] = {code}; seen[{code}] = 1; tail = tail + 1; end",
              f'end else $display("{number} %0d %0d x", queue[head], event_);']
    return [*lines, "end", "head = head + 1; end", "end", "endmodule"]


def names_of(expression: Expression) -> set[str]:
    if isinstance(expression, bool):
        return set()
    if isinstance(expression, str):
        return {expression}
    return set().union(*(names_of(part) for part in expression[1:]))


def with_a_say(netlist: Netlist) -> set[str]:
    """Everything that the memory looks at, directly or through others."""
    looks: networkx.DiGraph = networkx.DiGraph()
    for signal in netlist.signals:
        looks.add_node(signal.name)
        used = names_of(signal.on) | (names_of(signal.off) if signal.kind == "latch" else set())
        if signal.kind not in ("lever", "plate"):
            looks.add_edges_from((signal.name, name) for name in used)
    held = {memory.name for memory in memories(netlist)}
    return held.union(*(networkx.descendants(looks, name) for name in held))


class Machine:
    """What follows from the simulated transitions, in the words of leat-machine."""

    def __init__(self, netlist: Netlist, start: int, transitions: list[Transition]) -> None:
        self.inputs = [signal.name for signal in netlist.of_kind("lever", "plate")]
        self.memory = [memory.name for memory in memories(netlist)]
        self.say = with_a_say(netlist)
        self.graph: networkx.DiGraph = networkx.DiGraph()
        self.start = self.reduced(start)
        self.graph.add_node(self.start)
        self.results: dict[tuple[int, str, bool], Any] = {}
        for code, event, after in transitions:
            if self.inputs[event] not in self.say:
                continue
            key = (self.reduced(code), self.inputs[event], not code >> event & 1)
            result = None if after is None else self.reduced(after)
            if self.results.setdefault(key, result) != result:
                raise Difference(f"{netlist.design()}: an input without a say changes {key}")
            if result is not None:
                self.graph.add_edge(key[0], result)

    def reduced(self, code: int) -> int:
        """Inputs without a say stand off."""
        for i, name in enumerate(self.inputs):
            if name not in self.say:
                code &= ~(1 << i)
        return code

    def values(self, code: int) -> tuple[bool, ...]:
        return tuple(bool(code >> i & 1) for i in range(len(self.inputs), len(self.inputs) + len(self.memory)))

    def distances(self) -> dict[tuple[bool, ...], int]:
        found: dict[tuple[bool, ...], int] = {}
        for code, distance in networkx.single_source_shortest_path_length(self.graph, self.start).items():
            found[self.values(code)] = min(distance, found.get(self.values(code), distance))
        return found

    def changes(self) -> set[tuple[Any, Any, str, bool, bool]]:
        to: dict[tuple[tuple[bool, ...], str, bool], list[Any]] = {}
        for (code, name, is_on), after in self.results.items():
            arrival = None if after is None else self.values(after)
            to.setdefault((self.values(code), name, is_on), []).append(arrival)
        return {(key[0], arrival, key[1], key[2], len(set(arrivals)) == 1)
                for key, arrivals in to.items() for arrival in arrivals if arrival != key[0]}

    def without_return(self) -> int:
        return self.graph.number_of_nodes() - 1 - len(networkx.ancestors(self.graph, self.start))


def compare_machine(printed: dict[str, Any], machine: Machine, label: str) -> None:
    order = {name: i for i, name in enumerate(machine.memory)}

    def value(memory: dict[str, bool]) -> tuple[bool, ...]:
        return tuple(memory[name] for name in sorted(order, key=lambda name: order[name]))

    values = [value(entry["memory"]) for entry in printed["values"]]
    expect_equal(sorted(printed["inputs"]), sorted(set(machine.inputs) & machine.say), f"{label}: inputs")
    expect_equal(printed["states"], machine.graph.number_of_nodes(), f"{label}: states")
    got = {v: len(entry["events"]) for v, entry in zip(values, printed["values"])}
    expect_equal(sorted(got.items()), sorted(machine.distances().items()), f"{label}: distances")
    changes = {(values[c["from"]], None if c["to"] is None else values[c["to"]], c["signal"], c["on"], c["always"])
               for c in printed["changes"]}
    expect_equal(sorted(map(repr, changes)), sorted(map(repr, machine.changes())), f"{label}: changes")
    never = {v for v in product((False, True), repeat=len(order))
             for cube in printed["never_reached"] if all(v[order[n]] == on for n, on in cube.items())}
    expect_equal(never, set(product((False, True), repeat=len(order))) - set(values), f"{label}: never reached")
    expect_equal(printed["without_return"]["states"], machine.without_return(), f"{label}: without return")
    restless = {(signal, on) for (_, to, signal, on, _) in machine.changes() if to is None}
    ends = {tuple(o["events"][-1]) for o in printed["oscillations"]}
    expect_equal(sorted(ends), sorted(restless), f"{label}: oscillations")


def run_sequences(leat: Leat, path: Path, printed: dict[str, Any]) -> int:
    """Each value's shortest sequence, run in time, ends with that memory."""
    for entry in printed["values"]:
        steps = [f"{name} {'on' if is_on else 'off'}" for name, is_on in entry["events"]]
        command = [leat.path, "waves", str(path), "--do", ", wait 3 ticks, ".join(steps), "--as", "json"]
        done = subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)
        if done.returncode != 0:
            raise Difference(f"{' '.join(command)}: exit {done.returncode}\n{done.stderr}")
        ends = {signal["name"]: signal["starts_on"] != (len(signal["changes"]) % 2 == 1)
                for signal in json.loads(done.stdout)["signals"]}
        expect_equal({name: ends[name] for name in entry["memory"]}, entry["memory"], " ".join(command))
    return len(printed["values"])


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    netlists = {seed: random_netlist(seed, INPUTS, OTHERS) for seed in range(given.seed, given.seed + given.count)}
    source = [line for seed, netlist in netlists.items() for line in module(netlist, seed)]
    starts: dict[int, int] = {}
    transitions: dict[int, list[Transition]] = {seed: [] for seed in netlists}
    for line in simulate("\n".join(source) + "\n", folder, "machines"):
        number, *words = line.split()
        if words[0] == "start":
            starts[int(number)] = int(words[1])
        elif words[0] != "never":
            after = None if words[2] == "x" else int(words[2])
            transitions[int(number)].append((int(words[0]), int(words[1]), after))
    states = sequences = restless = 0
    for seed, netlist in netlists.items():
        path = folder / f"machine_{seed}.leat"
        path.write_text(netlist.design(), encoding="utf-8")
        printed = leat.printed("leat-machine", "machine", str(path), "--as", "json")
        expect_equal(printed["unquiet_as_built"] is None, seed in starts, f"{path}: quiet as built")
        if seed not in starts:
            continue
        compare_machine(printed, Machine(netlist, starts[seed], transitions[seed]), str(path))
        states += printed["states"]
        restless += bool(printed["oscillations"])
        sequences += run_sequences(leat, path, printed)
    return (f"state machines agree: {given.count} netlists, {states} states, {restless} of them with oscillations; "
            f"{sequences} sequences run")


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 120), compare))
