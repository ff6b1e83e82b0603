"""Expressions of the design language as printed in conditions, read into the EXPR form of leat-design.

or < xor < and < not, parentheses, `on` and `off`; a chain joins from the left.
"""
from __future__ import annotations

import re
from typing import Any

LEVELS = ("or", "xor", "and")
RESERVED = {"or", "xor", "and", "not", "(", ")"}


class Reading:
    def __init__(self, text: str) -> None:
        self.text = text
        self.words = re.findall(r"[()]|[^\s()]+", text)
        self.at = 0

    def next_word(self) -> str:
        return self.words[self.at] if self.at < len(self.words) else ""

    def take(self, word: str) -> bool:
        if self.next_word() != word:
            return False
        self.at += 1
        return True

    def joined(self, level: int = 0) -> Any:
        if level == len(LEVELS):
            return self.negated()
        expression = self.joined(level + 1)
        while self.take(LEVELS[level]):
            expression = [LEVELS[level], expression, self.joined(level + 1)]
        return expression

    def negated(self) -> Any:
        if self.take("not"):
            return ["not", self.negated()]
        if self.take("("):
            inner = self.joined()
            if not self.take(")"):
                raise ValueError(f"a bracket stays open in '{self.text}'")
            return inner
        return self.word()

    def word(self) -> Any:
        word = self.next_word()
        if not word or word in RESERVED:
            raise ValueError(f"a name is missing in '{self.text}'")
        self.at += 1
        return {"on": True, "off": False}.get(word, word)


def read_expression(text: str) -> Any:
    reading = Reading(text)
    expression = reading.joined()
    if reading.next_word():
        raise ValueError(f"'{reading.next_word()}' is left over in '{text}'")
    return expression
