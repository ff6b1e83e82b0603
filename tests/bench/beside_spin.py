#!/usr/bin/env python3
"""The reachable states of 20 latches beside an explicit-state checker, on the same machine.

    beside_spin.py STATES_BENCH [LATCHES]

Each latch is set and reset by a lever of its own; an event flips a lever, and the latch follows
before the next event: 2^n states, n events from each. The checker gets the same question as a
Promela loop with one indivisible step for each event, is built as its manual advises for safety
questions, and only the run of the built checker is timed, by its processor time as ours is. Both must find the same number of states.
Ratios belong to one run on one machine.
"""
import re
import resource
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

RUNS = 2


def promela(count, form):
    """Packed: all latches in the bits of one number, the checker's easiest form."""
    declared = {
        "packed": "int latches;\n",
        "latches": f"bit latch[{count}];\n",
        "levers": f"bit lever[{count}];\nbit latch[{count}];\n",
    }[form]
    flip = {
        "packed": lambda i: f"latches = latches ^ {2**i}",
        "latches": lambda i: f"latch[{i}] = 1 - latch[{i}]",
        "levers": lambda i: f"lever[{i}] = 1 - lever[{i}]; latch[{i}] = lever[{i}]",
    }[form]
    events = "".join(f"  :: d_step {{ {flip(i)} }}\n" for i in range(count))
    return f"{declared}active proctype events() {{\n  do\n{events}  od\n}}\n"


def run(arguments, folder):
    """What it prints, and the processor time it took."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run(arguments, cwd=folder, capture_output=True, text=True, check=False)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode != 0:
        sys.exit(f"{' '.join(arguments)} failed:\n{done.stdout}{done.stderr}")
    seconds = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return done.stdout, seconds


def number(pattern, text):
    found = re.search(pattern, text)
    if not found:
        sys.exit(f"no '{pattern}' in what the checker printed:\n{text}")
    return int(float(found.group(1)))


def checker_seconds(count, form, options, arguments):
    """Best run of the built checker, its states and transitions."""
    with tempfile.TemporaryDirectory() as folder:
        Path(folder, "latches.pml").write_text(promela(count, form), encoding="utf-8")
        run(["spin", "-a", "latches.pml"], folder)
        run(["gcc", "-O2", "-DSAFETY", *options, "-o", "pan", "pan.c"], folder)
        outputs = [run(["./pan", *arguments], folder) for _ in range(RUNS)]
    text = outputs[0][0]
    if "max search depth too small" in text or "errors: 0" not in text:
        sys.exit(f"the checker did not finish its search:\n{text}")
    states = number(r"([\d.e+]+) states, stored", text)
    transitions = number(r"([\d.e+]+) transitions", text)
    return min(seconds for _, seconds in outputs), states, transitions


def our_figures(bench, count):
    text, _ = run([bench, f"latches {count}"], ".")
    found = []
    for line in text.splitlines():
        figures = r"([\d.e+]+) states.* ([\d.]+) s$"
        match = re.match(rf"(explicit|symbolic) latches {count} +(\S.*?)  +{figures}", line)
        if match:
            found.append((f"{match[1]}, {match[2]}", int(float(match[3])), float(match[4])))
    if not found:
        sys.exit(f"{bench} printed no figure for {count} latches:\n{text}")
    return found


def main():
    if len(sys.argv) not in (2, 3):
        sys.exit(__doc__)
    for tool, package in (("spin", "spin"), ("gcc", "gcc")):
        if shutil.which(tool) is None:
            sys.exit(f"{tool} is missing: install the package {package}; nothing was compared")
    count = int(sys.argv[2]) if len(sys.argv) == 3 else 20
    ours = our_figures(sys.argv[1], count)
    depth = f"-m{2 ** count + 10}"
    table = f"-w{count + 2}"
    for name, form, options in (
        ("depth first, one packed number", "packed", []),
        ("depth first, a bit for each latch", "latches", []),
        ("depth first, levers and latches", "levers", []),
        ("breadth first, one packed number", "packed", ["-DBFS"]),
    ):
        seconds, states, transitions = checker_seconds(count, form, options, [depth, table])
        print(f"spin, {name}: {states} states, {transitions} transitions, {seconds:.3f} s")
        if states != 2**count:
            sys.exit(f"the checker stored {states} states and not {2 ** count}")
        for form, our_states, our_seconds in ours:
            if abs(our_states / 2**count - 1) > 1e-4:
                sys.exit(f"we found {our_states} states and not {2 ** count}")
            ratio = seconds / our_seconds if our_seconds > 0 else float("inf")
            print(f"    {form}: {our_seconds:.4f} s, ratio {ratio:.1f}")


if __name__ == "__main__":
    main()
