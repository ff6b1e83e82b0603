"""Random small netlists of signals, as design files and as Verilog, the same for the same seed.

    /usr/bin/python3 netlist.py SEED     prints one design
"""
from __future__ import annotations

import sys
from dataclasses import dataclass, field
from random import Random
from typing import Union

Expression = Union[bool, str, tuple["str | Expression", ...]]  # ("not", e), ("and"|"or"|"xor", e, e)

VERILOG = {"and": "&&", "or": "||", "xor": "!="}
INPUTS = ("lever", "button", "plate", "clock")
JUNCTION = """
marks {{
  _ open
  w water
{marks}  i inlet millhouse
  k outlet kiln
}}
junction yard {{
  level 0 {{ |wi{row}_k| }}
  level 1 {{ |__{over}__| }}
}}
"""


@dataclass
class Signal:
    name: str
    kind: str  # lever, button, plate, clock, wire, latch, toggle, delay
    starts_on: bool = False
    ticks: int = 0
    on: Expression = False
    off: Expression = False

    def line(self) -> str:
        starts = " starts on" if self.starts_on else ""
        if self.kind == "wire":
            return f"wire {self.name} = {text(self.on)}"
        if self.kind == "delay":
            return f"wire {self.name} = {text(self.on)} after {self.ticks} ticks"
        if self.kind == "latch":
            return f"latch {self.name} on {text(self.on)} off {text(self.off)}{starts}"
        if self.kind == "toggle":
            return f"toggle {self.name} on {text(self.on)}{starts}"
        duration = {"button": f" for {self.ticks} ticks", "clock": f" every {self.ticks} ticks"}
        return f"{self.kind} {self.name}{duration.get(self.kind, '')}{starts}"


@dataclass
class Netlist:
    signals: list[Signal] = field(default_factory=list)

    def of_kind(self, *kinds: str) -> list[Signal]:
        return [signal for signal in self.signals if signal.kind in kinds]

    def design(self) -> str:
        """A design file with these signals: a straight run on which the plates lie."""
        plates = self.of_kind("plate")
        marks = "".join(f"  {i} plate {plate.name}\n" for i, plate in enumerate(plates))
        row = "".join(str(i) for i in range(len(plates)))
        lines = "".join(f"  {signal.line()}\n" for signal in self.signals)
        return "leat 1\nsignals {\n" + lines + "}" + JUNCTION.format(
            marks=marks, row=row, over="_" * len(row))


def text(expression: Expression, is_inner: bool = False) -> str:
    if isinstance(expression, bool):
        return "on" if expression else "off"
    if isinstance(expression, str):
        return expression
    if expression[0] == "not":
        return f"not {text(expression[1], True)}"
    operands = f" {expression[0]} ".join(text(part, True) for part in expression[1:])
    return f"({operands})" if is_inner else operands


def verilog(expression: Expression) -> str:
    if isinstance(expression, bool):
        return "1'b1" if expression else "1'b0"
    if isinstance(expression, str):
        return expression
    if expression[0] == "not":
        return f"(!{verilog(expression[1])})"
    return "(" + f" {VERILOG[str(expression[0])]} ".join(verilog(part) for part in expression[1:]) + ")"


def random_expression(dice: Random, names: list[str], depth: int = 2) -> Expression:
    if depth == 0 or dice.random() < 0.25:
        name: Expression = dice.choice(names)
        return ("not", name) if dice.random() < 0.3 else name
    two = (dice.choice(("and", "or", "xor")), random_expression(dice, names, depth - 1),
           random_expression(dice, names, depth - 1))
    return ("not", two) if dice.random() < 0.15 else two


def random_netlist(seed: int, inputs: dict[str, int], others: dict[str, int]) -> Netlist:
    """At most so many signals of each kind, some of them looking at each other."""
    dice = Random(seed)
    netlist = Netlist()
    signals = netlist.signals
    for kind, most in inputs.items():
        for i in range(dice.randint(1 if kind == "lever" else 0, most)):
            signals.append(Signal(f"{kind}_{i}", kind, dice.random() < 0.25, dice.randint(1, 9)))
    for kind, most in others.items():
        for i in range(dice.randint(1 if kind in ("latch", "toggle") else 0, most)):
            starts_on = kind in ("latch", "toggle") and dice.random() < 0.25
            signals.append(Signal(f"{kind}_{i}", kind, starts_on, dice.randint(1, 30)))
    every = [signal.name for signal in signals if signal.kind != "wire"]
    wires = [signal.name for signal in signals if signal.kind == "wire"]
    for signal in signals:
        if signal.kind in INPUTS:
            continue
        known = every + (wires[:wires.index(signal.name)] if signal.kind == "wire" else wires)
        signal.on = random_expression(dice, known)
        signal.off = random_expression(dice, known)
    # Wires may be said in any order, and the design may name them before what they use.
    dice.shuffle(signals)
    return netlist


if __name__ == "__main__":
    print(random_netlist(int(sys.argv[1]), {"lever": 3, "button": 2, "plate": 1, "clock": 1},
                         {"wire": 3, "latch": 2, "toggle": 2, "delay": 2}).design(), end="")
