"""Ports of a works by name and by place: outlets that stand in the same cells, ports with several names, findings in
several places. Each design is small enough to be thought through by hand. Demo designs, invented.

    /usr/bin/python3 works_ports_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import json
import sys
import unittest

import works_chain_test as chains
from works_chain_test import plant, run

RUN = """leat 1
signals { lever divert  lever second }
marks {
  _  open
  w  water
  a  rock when divert else open
  i  inlet  mine
  k  outlet kiln
}
junction run {
  level 0 { |wi_a_k| }
  level 1 { |___a__| }
}
"""
MEETING = "  place run as west at 0 0 0\n  place run as east at 5 0 0 turned about\n"


def verdicts(text: str) -> list[str]:
    return [claim["verdict"] for claim in plant(text)["expectations"]]


class SameCells(unittest.TestCase):
    def test_two_outlets_in_the_same_cells_are_one(self) -> None:
        text = RUN + "works plant {\n" + MEETING + """}
expect of plant {
  west.mine reaches west.kiln when not divert
  west.mine reaches east.kiln when not divert
  east.mine reaches west.kiln when not divert
  east.mine reaches east.kiln when not divert
}
"""
        self.assertEqual(verdicts(text), ["holds"] * 4)
        self.assertNotIn("unreached-outlet", [finding["name"] for finding in plant(text)["findings"]])

    def test_it_is_joined_by_any_of_its_names(self) -> None:
        for name in ("west", "east"):
            text = RUN + "works plant {\n" + MEETING + f"""  place run as next at 0 5 0
  join {name}.kiln -> next.mine
}}
expect of plant {{
  west.mine reaches next.kiln when not divert
  east.mine reaches next.kiln when not divert
}}
"""
            self.assertEqual(verdicts(text), ["holds"] * 2, name)

    def test_it_is_shown_by_the_name_of_the_works_else_by_the_first(self) -> None:
        for named, shown in (("", "west.kiln"), ("  outlet bay = east.kiln\n", "bay")):
            text = RUN + "works plant {\n" + MEETING + named + "}\n"
            document = json.loads(run(text, "resolve").stdout)
            works = next(one for one in document["junctions"] if one["name"] == "plant")
            self.assertEqual([port["name"] for port in works["outlets"]], [shown])

    def test_bodies_walk_through_into_an_inlet_that_is_joined_too(self) -> None:
        text = RUN.replace("  k  outlet kiln\n", "  k  outlet kiln\n  j  inlet yard\n") + """junction onward {
  level 0 { |jk| }
  level 1 { |__| }
}
works plant {
  place run as first at 0 0 0
  place onward as second at 5 0 0
  place run as far at 0 5 0
  join far.kiln -> second.yard
}
expect of plant {
  first.mine reaches second.kiln when not divert
  far.mine reaches second.kiln when not divert
}
"""
        self.assertEqual(verdicts(text), ["holds"] * 2)


class SeveralNames(unittest.TestCase):
    TEXT = RUN + """works plant {
  place run as one at 0 0 0
  place run as two at 0 5 0
  inlet m = one.mine
  inlet n = one.mine
  inlet inner = two.mine
  join one.kiln -> two.mine
  outlet x = two.kiln
  outlet y = two.kiln
}
"""

    def test_each_name_of_a_port_can_be_followed(self) -> None:
        for inlet in ("m", "n", "one.mine", "inner", "two.mine"):
            for outlet in ("x", "y", "two.kiln"):
                done = run(self.TEXT, "follow", "--from", inlet, "--to", outlet)
                self.assertEqual((done.returncode, done.stderr), (0, ""), (inlet, outlet))
        done = run(self.TEXT, "follow", "--junction", "plant", "--from", "nowhere")
        self.assertEqual(done.returncode, 2)
        self.assertIn("m, n, one.mine", done.stderr)

    def test_an_inlet_that_is_joined_has_no_table_and_no_clause(self) -> None:
        for name in ("inner", "two.mine"):
            done = run(self.TEXT, "table", "--junction", "plant", "--from", name)
            self.assertEqual(done.returncode, 2)
            self.assertIn("is joined", done.stderr)
            done = run(self.TEXT + f"expect of plant {{ {name} reaches x }}\n", "check")
            self.assertIn(f"The inlet '{name}' of works 'plant' is joined", done.stdout + done.stderr)


class SeveralPlaces(unittest.TestCase):
    TEXT = RUN + """works plant {
  place run as one at 0 0 0
  place run as two at 0 5 0
  place run as three at 0 10 0 with divert = second
}
"""

    def test_a_document_names_every_place_with_its_condition(self) -> None:
        pinned = next(finding for finding in plant(self.TEXT)["findings"] if finding["name"] == "pinned")
        self.assertEqual(pinned["condition"], "divert")
        self.assertEqual(pinned["also"], [{"place": "two", "condition": "divert", "event": None},
                                          {"place": "three", "condition": "second", "event": None}])

    def test_the_text_says_where_a_condition_is_another(self) -> None:
        told = run(self.TEXT, "check", "--as", "text").stdout
        self.assertIn("two and three (when second)", told)



class Turned(unittest.TestCase):
    def test_a_finding_is_known_by_its_cell_in_every_posture(self) -> None:
        """The third cell of the run, where bodies are pinned: turned left it is the fourth from the north."""
        text = RUN + """works plant {
  place run as west at 0 0 0
  place run as south at 10 0 0 turned left
  place run as east at 20 0 0 turned about
  place run as back at 30 0 0 mirrored
}
expect "stops" of plant {
  finds pinned at 2 0 0
  finds pinned at 10 3 0
  finds pinned at 23 0 0
  finds pinned at 33 0 0
  finds pinned at 10 2 0
  finds pinned at 22 0 0
}
"""
        verdicts = [one["verdict"] for one in plant(text)["expectations"]]
        self.assertEqual(verdicts, ["holds"] * 4 + ["violated"] * 2)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--leat", required=True)
    given, rest = parser.parse_known_args()
    chains.LEAT = given.leat
    unittest.main(argv=[sys.argv[0], *rest])
