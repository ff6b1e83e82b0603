"""Works of many junctions on logic that is more than a lever each: priorities among dozens of levers, and memory beside
many levers. What is said of them is exact, however many levers stand behind one gate. Demo designs, invented.

    /usr/bin/python3 works_logic_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import json
import sys
import unittest

import works_chain_test as chains
from works_chain_test import TURN, told


def row(controls: list[str], signals: str, expect: str = "") -> str:
    """Turns one after the other: a body goes on where its control is off and leaves where it is on."""
    last = len(controls) - 1
    lines = [f"  place turn as turn[{k}] at 0 {5 * k} 0 with divert = {control}" for k, control in enumerate(controls)]
    lines += [f"  join turn[{k}].keep -> turn[{k + 1}].lane" for k in range(last)]
    return (f"leat 1\nsignals {{\n  lever divert\n{signals}}}\n{TURN}works yard {{\n" + "\n".join(lines) + "\n}\n"
            + (f"expect \"yard\" of yard {{\n{expect}}}\n" if expect else ""))


def first_of(levers: int) -> list[str]:
    """The k-th is on where its lever is, and no earlier one."""
    return [" and ".join([f"ask[{k}]"] + [f"not ask[{j}]" for j in range(k)]) for k in range(levers)]


def works_of(text: str, command: str) -> dict:
    document = json.loads(told(text, command, "--as", "json"))
    if command == "check":
        document = document["files"][0]
    return document["junctions"][-1]


def verdicts(works: dict) -> list[str]:
    return [expectation["verdict"] for expectation in works["expectations"]]


class Priorities(unittest.TestCase):
    LEVERS = 40
    TEXT = row(first_of(LEVERS), f"  for n in 0..{LEVERS - 1} {{ lever ask[n] }}\n",
               "  never trapped\n  never split\n  findings none above note\n")

    def test_each_turn_has_the_combinations_that_a_priority_gives_it(self) -> None:
        groups = works_of(self.TEXT, "table")["conditions"]
        counts = {group["outlets"][0]: group["combinations"] for group in groups if len(group["outlets"]) == 1}
        # Of n levers, all before the k-th are off and the k-th is on in 2^(n - 1 - k) combinations.
        wanted = {f"turn[{k}].over": 2 ** (self.LEVERS - 1 - k) for k in range(self.LEVERS)}
        self.assertEqual({outlet: count for outlet, count in counts.items() if outlet in wanted}, wanted)

    def test_all_turns_are_one_kind_and_every_claim_is_decided(self) -> None:
        self.assertIn(f"works yard: {self.LEVERS} islands in 1 kind", told(self.TEXT, "show", "--islands"))
        self.assertEqual(verdicts(works_of(self.TEXT, "check")), ["holds"] * 3)

    def test_what_a_player_does_is_told_in_levers(self) -> None:
        # Two turns on wires of their own: no copy hangs on a lever alone.
        text = row(["ask[0] and not ask[1]", "not ask[0] or ask[2]"], "  for n in 0..2 { lever ask[n] }\n")
        findings = works_of(text, "check")["findings"]
        switching = [finding for finding in findings if finding["name"] == "stranding-switch"]
        self.assertEqual([finding["event"] for finding in switching], ["turn[0].divert", "turn[1].divert"])
        # As built the first turn's wire is off, and on with the first lever; the second one's is on.
        self.assertEqual([(finding["ways"], finding["switched_by"]) for finding in switching],
                         [([[]], ["ask[0]"]), ([[]], ["ask[0]"])])

    def test_a_guard_of_a_works_is_that_of_its_junctions_on_their_own_signals(self) -> None:
        text = row(["ask[0] and not ask[1]", "ask[2]"], "  for n in 0..2 { lever ask[n] }\n")
        told_of = json.loads(told(text, "guard", "--as", "json"))["junctions"]
        waits = [{(c["signal"], c["on"]): (c["wait_ticks"], c["clearing_ticks"]) for c in one["changes"]} for one in told_of]
        junction = waits[0]
        self.assertEqual(told_of[1]["places"], ["turn[0]", "turn[1]"])
        self.assertEqual(waits[1], {("turn[0].divert", on): junction["divert", on] for on in (True, False)})
        ways = [(change["way"], change["switched_by"]) for change in told_of[1]["changes"]]
        self.assertEqual(ways, [([], "ask[0]"), (["ask[0]"], "ask[1]")])

    def test_a_guard_names_the_input_that_is_flipped_at_each_place(self) -> None:
        text = row(["divert", "ask[0]", "ask[1] and not ask[2]"], "  for n in 0..2 { lever ask[n] }\n")
        works = json.loads(told(text, "guard", "--as", "json"))["junctions"][-1]
        flips = [[(flip["place"], flip["signal"], flip["on"]) for flip in change["flips"]] for change in works["changes"]]
        self.assertEqual(works["places"], ["turn[0]", "turn[1]", "turn[2]"])
        self.assertEqual(flips, [
            [("turn[0]", "divert", on), ("turn[1]", "ask[0]", on), ("turn[2]", "ask[1]", on),
             ("turn[2]", "ask[2]", not on)] for on in (True, False)])
        shown = told(text, "guard")
        self.assertIn("    in          turn[1]: ask[0] on for divert on, ask[0] off for divert off\n", shown)
        self.assertIn("turn[2]: ask[1] on or ask[2] off for divert on", shown)

    def test_what_promises_keep_from_switching_is_not_told(self) -> None:
        levers = "  lever x\n  lever y\n"
        for promise in ("  wire both = x and y\n  never both\n", "  never x and y\n"):
            works = works_of(row(["x and y"], levers + promise), "check")
            self.assertEqual(sorted(finding["name"] for finding in works["findings"]),
                             ["idle-signal", "idle-signal", "unreached-outlet"], promise)
            # What is said of the whole is said of all combinations that can come about.
            self.assertEqual({(finding["condition"], finding["combinations"]) for finding in works["findings"]},
                             {("on", 3)})

    def test_a_way_keeps_what_is_promised_on_it(self) -> None:
        text = row(["x and y", "late"], "  lever x\n  lever y\n  lever late\n  never x and not y\n")
        stranding = next(finding for finding in works_of(text, "check")["findings"]
                         if finding["event"] == "turn[0].divert" or finding["event"] == "x")
        # To have `x` first would break the promise.
        self.assertEqual((stranding["ways"], stranding["switched_by"]), ([["y"]], ["x"]))

    def test_a_parity_of_many_levers_is_undecided_and_says_so(self) -> None:
        text = row([" xor ".join(f"ask[{n}]" for n in range(20))], "  for n in 0..19 { lever ask[n] }\n",
                   "  never trapped\n")
        self.assertEqual(verdicts(works_of(text, "check")), ["undecided"])


class Memory(unittest.TestCase):
    LEVERS = 40

    def controls(self, first: str, second: str) -> list[str]:
        return [first, second] + [f"ask[{n}]" for n in range(2, self.LEVERS)]

    def text(self, first: str, second: str, memory: str) -> str:
        signals = f"  for n in 0..{self.LEVERS - 1} {{ lever ask[n] }}\n{memory}"
        return row(self.controls(first, second), signals, "  findings none above note\n")

    def names(self, text: str) -> list[str]:
        return sorted(finding["name"] for finding in works_of(text, "check")["findings"]
                      if finding["severity"] != "note")

    def test_a_latch_beside_many_levers_leaves_nothing_undecided(self) -> None:
        text = self.text("parked", "ask[1]", "  latch parked on ask[0] off ask[1]\n")
        self.assertEqual(verdicts(works_of(text, "check")), ["holds"])

    def test_switching_by_memory_is_found_as_in_a_junction(self) -> None:
        signals = "  lever a\n  lever r\n  latch held on a off r\n"
        works = works_of(row(["held"], signals, "  findings none\n"), "check")
        told = sorted((finding["name"], finding["event"]) for finding in works["findings"])
        self.assertEqual(told, [(name, event) for name in ("crushing-switch", "stranding-switch") for event in "ar"])
        self.assertEqual(verdicts(works), ["violated"])

    def test_memory_without_a_way_back_is_found_beside_many_levers(self) -> None:
        text = self.text("parked", "ask[1]", "  latch parked on ask[0] off off\n")
        self.assertEqual(verdicts(works_of(text, "check")), ["violated"])
        self.assertEqual(self.names(text), ["no-return"])

    def test_a_lever_that_changes_neither_route_nor_memory_is_idle(self) -> None:
        text = self.text("parked or ask[0]", "ask[1]",
                         "  lever spare\n  latch parked on ask[0] off ask[1] and spare and not spare\n")
        self.assertIn("idle-signal", self.names(text))


class Tables(unittest.TestCase):
    TEXT = f"""leat 1
signals {{
  lever ask
  lever back
  latch divert on ask off back
}}
{TURN}works yard {{
  place turn as first at 0 0 0
  place turn as second at 0 5 0 with ask = back, back = ask
  join first.keep -> second.lane
}}
"""

    def test_a_table_over_the_memory_of_places_can_be_pasted(self) -> None:
        table = told(self.TEXT, "table", "--junction", "yard", "--as", "expect")
        self.assertIn("second.divert", table)
        told_of = verdicts(works_of(self.TEXT + table, "check"))
        self.assertGreater(len(told_of), 2)
        self.assertEqual(set(told_of), {"holds"})

    def test_a_setting_of_a_place_is_the_place_s_own(self) -> None:
        # The file's latch is that of the first turn: of the second nothing is said by it.
        rows = "expect table first.lane of yard { second.divert | route\n1 | second.keep\n }\n"
        self.assertEqual(verdicts(works_of(self.TEXT + rows, "check")), ["violated"])
        self.assertIn("no signal named 'third.divert'", told(self.TEXT + rows.replace("second.d", "third.d"), "check"))
        self.assertIn("no signal named 'second.divert'", told(self.TEXT + rows.replace("first.lane of yard", "lane of turn"),
                                                              "check"))


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--leat", required=True)
    chosen, rest = parser.parse_known_args()
    chains.LEAT = chosen.leat
    unittest.main(argv=[sys.argv[0], *rest])
