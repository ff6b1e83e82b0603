"""Self tests of the comparisons of signals over time: each must notice what it is there for.

    /usr/bin/python3 -m unittest self_test_waves
"""
from __future__ import annotations

import tempfile
import unittest
from pathlib import Path
from typing import Any

import vcd_reader
from leat_program import Difference
from machine_graphviz import Layout, compare_values
from machine_verilog import Machine, compare_machine, with_a_say
from memory_databook import COUNTER_74X93, rows_of
from netlist import Netlist, Signal, random_netlist
from verilog_program import simulate, tool
from waves_verilog import INPUTS, OTHERS, module

GOOD = """$timescale 10 ms $end
$scope module signals $end
$var wire 1 ! divert $end
$var wire 1 " late $end
$upscope $end
$enddefinitions $end
#0
$dumpvars
0!
1"
$end
#5
1!
#30
"""


class Dumps(unittest.TestCase):
    def test_a_sound_dump_is_read(self) -> None:
        dump = vcd_reader.read(GOOD)
        self.assertEqual((dump.names, dump.units_per_second, dump.end), (["divert", "late"], 100, 30))
        self.assertEqual(dump.changes, [(0, "divert", False), (0, "late", True), (5, "divert", True)])
        self.assertEqual(dump.values_at(4), {"divert": False, "late": True})

    def test_broken_dumps_are_refused(self) -> None:
        for was, now in (("1!\n#30", "1?\n#30"), ("#30", "#4"), ("#30", "#5"), ("1!\n#30", "2!\n#30"),
                         ("1!\n#30", "1 !\n#30"), ("$upscope $end\n", ""), ("$enddefinitions $end\n", ""),
                         ('1"\n$end', "$end"), ("10 ms", "50 ms"), ('" late', "! late"), ('" late', '" divert'),
                         ("divert", "größe"), ("divert", "di-vert"), ("$timescale 10 ms $end\n", ""),
                         ("1!\n#30", "1!\n0!\n#30")):
            self.assertIn(was, GOOD)
            with self.assertRaises(vcd_reader.Broken, msg=f"{was!r} -> {now!r}"):
                vcd_reader.read(GOOD.replace(was, now, 1))


class Simulations(unittest.TestCase):
    def simulated(self, netlist: Netlist, deeds: list[tuple[int, str, str]], last: int) -> list[str]:
        with tempfile.TemporaryDirectory() as folder:
            return [line.split()[3] for line in simulate("\n".join(module(netlist, deeds, last, 0)) + "\n",
                                                         Path(folder), "one")]

    def test_a_pulse_and_a_delay(self) -> None:
        netlist = Netlist([Signal("ring", "button", False, 2), Signal("late", "delay", False, 3, "ring")])
        self.assertEqual(self.simulated(netlist, [(1, "ring", "")], 7),
                         ["00", "10", "10", "00", "01", "01", "00", "00"])

    def test_set_wins_and_a_toggle_minds_only_rises(self) -> None:
        netlist = Netlist([Signal("a", "lever"), Signal("held", "latch", False, 0, "a", True),
                           Signal("turn", "toggle", False, 0, "held")])
        self.assertEqual(self.simulated(netlist, [(1, "a", ""), (3, "a", ""), (4, "a", "on")], 5),
                         ["000", "111", "111", "001", "110", "110"])

    def test_elements_of_one_round_change_together(self) -> None:
        """Two toggles on each other's first rise swap what a one-by-one order would not."""
        netlist = Netlist([Signal("a", "lever"), Signal("x", "toggle", False, 0, ("and", "a", ("not", "y"))),
                           Signal("y", "toggle", False, 0, ("and", "a", ("not", "x")))])
        self.assertEqual(self.simulated(netlist, [(1, "a", "")], 1), ["000", "111"])

    def test_a_missing_program_names_its_package(self) -> None:
        with self.assertRaisesRegex(Difference, "install the Debian package nothing-there"):
            tool("no-such-program", "nothing-there")

    def test_random_netlists_hold_every_kind(self) -> None:
        kinds = {signal.kind for seed in range(20) for signal in random_netlist(seed, INPUTS, OTHERS).signals}
        self.assertEqual(kinds, {"lever", "button", "plate", "clock", "wire", "latch", "toggle", "delay"})


class Machines(unittest.TestCase):
    netlist = Netlist([Signal("a", "lever"), Signal("idle", "lever"),
                       Signal("held", "latch", False, 0, "a", False)])

    def printed(self) -> dict[str, Any]:
        on = ["a", True]
        return {"inputs": ["a"], "memory": ["held"], "states": 3,
                "values": [{"memory": {"held": False}, "states": 1, "events": []},
                           {"memory": {"held": True}, "states": 2, "events": [on]}],
                "changes": [{"from": 0, "to": 1, "signal": "a", "on": True, "always": True}],
                "never_reached": [], "without_return": {"states": 2, "events": [on]}, "oscillations": []}

    def machine(self) -> Machine:
        # variables: a, idle, held
        transitions = [(0, 0, 5), (0, 1, 2), (2, 0, 7), (2, 1, 0), (5, 0, 4), (5, 1, 7), (7, 0, 6), (7, 1, 5),
                       (4, 0, 5), (4, 1, 6), (6, 0, 7), (6, 1, 4)]
        return Machine(self.netlist, 0, [(one, event, other) for one, event, other in transitions])

    def test_what_has_a_say(self) -> None:
        self.assertEqual(with_a_say(self.netlist), {"a", "held"})

    def test_the_same_machine_is_the_same(self) -> None:
        compare_machine(self.printed(), self.machine(), "hand made")

    def test_every_difference_is_noticed(self) -> None:
        def altered(alter: Any) -> dict[str, Any]:
            printed = self.printed()
            alter(printed)
            return printed
        for alter in (lambda p: p.update(states=2), lambda p: p.update(inputs=["a", "idle"]),
                      lambda p: p["values"].pop(), lambda p: p["values"][1]["events"].append(["a", False]),
                      lambda p: p["changes"][0].update(always=False), lambda p: p["changes"][0].update(to=None),
                      lambda p: p["changes"].clear(), lambda p: p.update(never_reached=[{"held": True}]),
                      lambda p: p["without_return"].update(states=0),
                      lambda p: p["oscillations"].append({"events": [["a", True]]})):
            with self.assertRaises((Difference, IndexError)):
                compare_machine(altered(alter), self.machine(), "hand made")

    def test_a_graph_must_have_the_same_edges(self) -> None:
        layout = Layout.__new__(Layout)
        layout.nodes = {"s0": ["all off"], "s1": ["held"]}
        layout.edges = {("s0", "s1"): ["flip a on"]}
        compare_values(layout, self.printed(), "hand made")
        layout.edges = {("s0", "s1"): ["flip a on, at times"]}
        with self.assertRaisesRegex(Difference, "always lead"):
            compare_values(layout, self.printed(), "hand made")
        layout.edges = {}
        with self.assertRaisesRegex(Difference, "edges"):
            compare_values(layout, self.printed(), "hand made")

    def test_the_table_of_the_counter_counts(self) -> None:
        for count, row in enumerate(rows_of(COUNTER_74X93)):
            self.assertEqual(sum((row[f"Q{stage}"] == "H") << i for i, stage in enumerate("ABCD")), count)


if __name__ == "__main__":
    unittest.main()
