"""Signals of docs/model.md, section 4, settled: what inputs and memory are after events.

Plain and literal on purpose. A state gives every input and every memory element its value. After one
input has flipped, rounds follow: in each the wires follow their expressions; then all memory elements
whose trigger says so change together: a latch is on while it is set, else off while it is reset; a
toggle changes when its trigger has gone on since the round before; a delay takes over its input. Rounds
go on until one changes nothing. If a round's situation comes back before that, it never gets quiet.

As built every input and every toggle has the value it starts with; latches and delays follow in rounds,
and no toggle changes, "for nothing has gone on yet" (docs/language.md). Section 4 itself does not say what
a toggle does when a latch or delay goes on while this settles, so where that matters the start is open.
"""
from __future__ import annotations

from typing import Iterable, Optional

from model_document import Assignment, Junction, evaluate, names_in

Triggers = dict[str, bool]


class Logic:
    def __init__(self, junction: Junction) -> None:
        self.junction = junction

    def triggers(self, state: Assignment) -> Triggers:
        values = self.junction.signal_values(state)
        return {memory.name: evaluate(memory.definition, values) for memory in self.junction.memory}

    def round(self, state: Assignment, before: Triggers) -> Assignment:
        """The state after one round; `before`: what the triggers were in the round before it."""
        values = self.junction.signal_values(state)
        following = dict(state)
        for memory in self.junction.memory:
            is_triggered = evaluate(memory.definition, values)
            if memory.kind == "delay":
                following[memory.name] = is_triggered
            elif memory.kind == "toggle" and is_triggered and not before[memory.name]:
                following[memory.name] = not state[memory.name]
            elif memory.kind == "latch" and is_triggered:
                following[memory.name] = True
            elif memory.kind == "latch" and evaluate(memory.reset, values):
                following[memory.name] = False
        return following

    def settled(self, state: Assignment, before: Triggers, is_first: bool = False) -> Optional[Assignment]:
        """None where it never gets quiet. `is_first`: toggles are held."""
        seen: list[tuple[Assignment, Triggers]] = []
        while (state, before) not in seen:
            seen.append((state, before))
            following = self.round(state, self.triggers(state) if is_first else before)
            if following == state:
                return state
            state, before = following, self.triggers(state)
        return None

    def initial(self) -> Assignment:
        return {name: name in self.junction.starting_on for name in self.junction.variables}

    def as_built(self) -> Optional[Assignment]:
        state = self.initial()
        return self.settled(state, self.triggers(state), is_first=True)

    def after(self, state: Assignment, flipped: str) -> Optional[Assignment]:
        """From a settled state, once all has settled after an input has flipped."""
        return self.settled({**state, flipped: not state[flipped]}, self.triggers(state))


def flips_of(kinds: dict[str, str], events: Iterable[str]) -> list[str]:
    """A lever is flipped, a clock changes; a button or plate is pressed and let go."""
    flips: list[str] = []
    for event in events:
        flips += [event, event] if kinds[event] in ("button", "plate") else [event]
    return flips


def delays_in_loops(junction: Junction, kept: Iterable[str] = ()) -> set[str]:
    """Delays that hang on themselves through wires and delays alone, leaving out those kept."""
    looks = {name: names_in(expression) for name, expression in junction.wires.items()}
    delays = [memory for memory in junction.memory if memory.kind == "delay" and memory.name not in set(kept)]
    looks.update((delay.name, names_in(delay.definition)) for delay in delays)
    found = set()
    for delay in delays:
        reached: set[str] = set()
        waiting = list(looks[delay.name])
        while waiting:
            name = waiting.pop()
            if name in looks and name not in reached:
                reached.add(name)
                waiting.extend(looks[name])
        if delay.name in reached:
            found.add(delay.name)
    return found
