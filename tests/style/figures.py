#!/usr/bin/env python3
"""The style figures of engine/ and lang/: lines per file and function, share of comments.

    figures.py ROOT      prints the table, and fails over the bars

Bars: no file over 400 lines, no function over 60, nine of ten functions at most 25. A function is a brace
block whose head ends in a parameter list; its lines are counted from the line of its opening brace to
that of its closing one.
"""
from __future__ import annotations

import re
import sys
from dataclasses import dataclass, field
from pathlib import Path

MOST_FILE, MOST_FUNCTION, MOST_P90 = 400, 60, 25
NOT_FUNCTIONS = re.compile(r"\b(if|for|while|switch|catch|namespace|struct|class|enum|union|do|else|try)\b")
TAIL = re.compile(r"(\b(const|noexcept|override|final|mutable|constexpr)\b|->\s*[\w:<>,&* ]+)\s*$")
INITIALIZERS = re.compile(r"\)\s*:(?!:)[^;]*$")


@dataclass
class Figures:
    files: list[tuple[int, str]] = field(default_factory=list)
    functions: list[tuple[int, str]] = field(default_factory=list)
    comments: int = 0

    def lines(self) -> int:
        return sum(count for count, _ in self.files)


def without_words(text: str) -> str:
    """Comments, strings and characters blanked, line breaks kept."""
    pattern = re.compile(r'R"(\w*)\(.*?\)\1"|//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"|(?<![0-9A-Fa-f])\'(?:\\.|[^\'\\\n])+\'', re.S)
    return pattern.sub(lambda m: re.sub(r"[^\n]", " ", m.group()), text)


def is_function_head(head: str) -> bool:
    """`head` is the text from the last `;`, `{` or `}` to an opening brace."""
    head = re.sub(r"^\s*#[^\n]*$", "", head, flags=re.M).strip()
    while TAIL.search(head):
        head = TAIL.sub("", head).rstrip()
    if INITIALIZERS.search(head):
        head = head[: INITIALIZERS.search(head).start() + 1]
    if not head.endswith(")"):
        return False
    outside = re.sub(r"\([^()]*\)", "", head)
    while outside != (shorter := re.sub(r"\([^()]*\)", "", outside)):
        outside = shorter
    return not NOT_FUNCTIONS.search(outside) and "=" not in outside.replace("operator=", "").replace("==", "")


def functions(text: str) -> list[tuple[int, int]]:
    """First line and number of lines of every function; those inside another are left to it."""
    found: list[tuple[int, int]] = []
    stack: list[tuple[int | None, str]] = []  # where a function starts, and the head to go on with
    line, head, inside = 1, "", 0
    for character in text:
        if character == "\n":
            line += 1
        if character == "{":
            initializes = INITIALIZERS.search(head) and re.search(r"[\w>]\s*$", head)
            starts = not initializes and inside == 0 and is_function_head(head)
            stack.append((line if starts else None, head + "()" if initializes else ""))
            inside += starts
            head = ""
        elif character == "}":
            start, head = stack.pop() if stack else (None, "")
            if start is not None:
                found.append((start, line - start + 1))
                inside -= 1
        elif character == ";":
            head = ""
        else:
            head += character
    return found


def measure(folder: Path) -> Figures:
    figures = Figures()
    for path in sorted(folder.rglob("*.?pp")):
        text = path.read_text(encoding="utf-8")
        name = str(path.relative_to(folder.parent))
        figures.files.append((text.count("\n"), name))
        figures.comments += sum(line.lstrip().startswith("//") for line in text.splitlines())
        for start, count in functions(without_words(text)):
            figures.functions.append((count, f"{name}:{start}"))
    return figures


def at(share: float, values: list[tuple[int, str]]) -> int:
    ordered = sorted(count for count, _ in values)
    return ordered[min(len(ordered) - 1, int(share * len(ordered)))] if ordered else 0


def table_row(name: str, figures: Figures) -> str:
    of_files = "/".join(str(at(share, figures.files)) for share in (0.5, 0.9, 1))
    of_functions = "/".join(str(at(share, figures.functions)) for share in (0.5, 0.9, 0.99, 1))
    share = 100 * figures.comments / max(1, figures.lines())
    return f"{name:8} {len(figures.files):6} {of_files:>16} {len(figures.functions):10} {of_functions:>18} {share:8.0f} %"


def faults(name: str, figures: Figures) -> list[str]:
    found = [f"{place}: {count} lines, a file has at most {MOST_FILE}"
             for count, place in figures.files if count > MOST_FILE]
    found += [f"{place}: a function of {count} lines, the most is {MOST_FUNCTION}"
              for count, place in figures.functions if count > MOST_FUNCTION]
    if (p90 := at(0.9, figures.functions)) > MOST_P90:
        found.append(f"{name}: one function in ten has more than {p90 - 1} lines, the bar is {MOST_P90}")
    return found


def main(root: Path) -> int:
    print(f"{'':8} {'files':>6} {'lines 50/90/max':>16} {'functions':>10} {'lines 50/90/99/max':>18} {'comments':>10}")
    found: list[str] = []
    for name in ("engine", "lang"):
        if not (root / name).is_dir():
            continue
        figures = measure(root / name)
        print(table_row(name, figures))
        found += faults(name, figures)
    print(*found, sep="\n", end="\n" if found else "")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
