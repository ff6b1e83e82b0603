"""A strict reader of value change dumps of one-bit signals: IEEE 1364-2001, section 18.

Whatever the standard does not allow is refused: unknown codes, codes or names given twice, times that do
not rise, values other than 0 and 1, a missing initial value, text outside its place.
"""
from __future__ import annotations

import re
from dataclasses import dataclass, field

SECONDS = {"s": 10**0, "ms": 10**3, "us": 10**6, "ns": 10**9, "ps": 10**12, "fs": 10**15}
IDENTIFIER = re.compile(r"[A-Za-z_][A-Za-z0-9_$]*")


class Broken(Exception):
    """Not a value change dump."""


@dataclass
class Dump:
    units_per_second: int = 0
    names: list[str] = field(default_factory=list)
    # (time, name, value), the initial values at time 0 among them
    changes: list[tuple[int, str, bool]] = field(default_factory=list)
    end: int = 0

    def values_at(self, time: int) -> dict[str, bool]:
        values: dict[str, bool] = {}
        for at, name, value in self.changes:
            if at > time:
                break
            values[name] = value
        return values


def need(condition: bool, what: str) -> None:
    if not condition:
        raise Broken(what)


def read_header(words: list[str], dump: Dump, codes: dict[str, str]) -> int:
    """Declarations up to $enddefinitions; the index of the first word behind."""
    at, depth = 0, 0
    while True:
        need(at < len(words) and words[at].startswith("$"), f"no declaration: {words[at:at + 3]}")
        end = next((i for i in range(at, len(words)) if words[i] == "$end"), None)
        need(end is not None, f"{words[at]} has no $end")
        assert end is not None
        word, body = words[at], words[at + 1:end]
        at = end + 1
        if word == "$timescale":
            found = re.fullmatch(r"(1|10|100)([munpf]?s)", "".join(body))
            need(found is not None, f"timescale {body}")
            assert found is not None
            dump.units_per_second = SECONDS[found[2]] // int(found[1])
            need(dump.units_per_second * int(found[1]) == SECONDS[found[2]], f"timescale {body}")
        elif word == "$scope":
            need(len(body) == 2 and body[0] in ("module", "task", "function", "begin", "fork"), f"{body}")
            need(IDENTIFIER.fullmatch(body[1]) is not None, f"scope {body}")
            depth += 1
        elif word == "$upscope":
            need(not body and depth > 0, "$upscope")
            depth -= 1
        elif word == "$var":
            need(len(body) == 4 and body[0] in ("wire", "reg") and body[1] == "1", f"$var {body}")
            code, name = body[2:]
            need(all("!" <= c <= "~" for c in code) and code not in codes, f"code {code}")
            need(IDENTIFIER.fullmatch(name) is not None and name not in dump.names, f"name {name}")
            codes[code] = name
            dump.names.append(name)
        elif word == "$enddefinitions":
            need(not body and depth == 0, "$enddefinitions")
            return at
        else:
            need(word in ("$version", "$date", "$comment"), word)


def read(text: str) -> Dump:
    need(text.isascii() and text.endswith("\n"), "not ASCII lines")
    dump, codes = Dump(), {}
    words = text.split()
    at = read_header(words, dump, codes)
    need(dump.units_per_second > 0, "no timescale")
    need(words[at:at + 2] == ["#0", "$dumpvars"], f"no initial values: {words[at:at + 2]}")
    at += 2
    time, is_initial, seen = 0, True, set()
    for word in words[at:]:
        if word == "$end":
            need(is_initial and len(seen) == len(codes), "initial values")
            is_initial, seen = False, set()
        elif word.startswith("#"):
            need(not is_initial and word[1:].isdigit() and int(word[1:]) > time, f"time {word} after {time}")
            time, seen = int(word[1:]), set()
        else:
            need(word[0] in "01" and word[1:] in codes and word not in seen, f"change {word}")
            need(("1" if word[0] == "0" else "0") + word[1:] not in seen, f"two changes: {word}")
            seen.add(word)
            dump.changes.append((time, codes[word[1:]], word[0] == "1"))
    need(not is_initial, "initial values have no $end")
    dump.end = time
    return dump
