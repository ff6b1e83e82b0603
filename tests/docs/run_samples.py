"""Runs every sample of the documents.

Fenced blocks of README.md and docs/*.md, in the order of the document, in one temporary folder a document
that has examples/ in it:

    leat file=NAME   a whole design: written to NAME
    sh file=NAME     a script: written to NAME, for the commands below it
    leat             a whole design: must be understood (`leat resolve` says so)
    leat faulty      a whole design that must be refused with a fault of its text
    leat fragment    a part of a design: not run
    console          lines that begin with `$ ` are run by the shell; what is printed must be what stands below

Commands run on a terminal without colours, so their output is what a reader sees. `leat` is on their PATH.

In docs/findings.md each section `## NAME` holds two plain designs: the first must show the finding NAME, the
second must not, and has no finding of severity error. A block `json record` in the section is the record that
stands beside both.

    /usr/bin/python3 run_samples.py --leat build/leat [--update] [DOCUMENT...]

--update writes the real output into the documents instead of comparing.
"""
from __future__ import annotations

import argparse
import difflib
import json
import os
import pty
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

TIME_LIMIT = 60  # seconds a command


class Difference(Exception):
    """A sample that does not do what its document says."""


@dataclass
class Block:
    kind: str  # the first word of the info string
    options: list[str]
    section: str  # the heading `## NAME` above it
    first: int  # index of its first line in the document
    lines: list[str]


def blocks_of(lines: list[str], name: str) -> list[Block]:
    blocks: list[Block] = []
    inside: Block | None = None
    section = ""
    for at, line in enumerate(lines):
        if inside and line == "```":
            blocks.append(inside)
            inside = None
        elif inside:
            inside.lines.append(line)
        elif line.startswith("```"):
            words = line[3:].split()
            inside = Block(words[0] if words else "", words[1:], section, at + 1, [])
        elif line.startswith("## "):
            section = line[3:].strip()
    if inside:
        raise Difference(f"{name}:{inside.first}: this block is not closed")
    return blocks


class Desk:
    """The folder in which the samples of one document run, with the program on the PATH."""

    def __init__(self, folder: Path, leat: Path, root: Path):
        self.folder = folder / "desk"
        programs = folder / "bin"
        self.folder.mkdir()
        programs.mkdir()
        (programs / "leat").symlink_to(leat.resolve())
        (self.folder / "examples").symlink_to(root / "examples")
        self.environment = {
            "PATH": f"{programs}:{os.environ.get('PATH', '/usr/bin:/bin')}",
            "LANG": "C.UTF-8",
            "TERM": "dumb",
            "NO_COLOR": "1",
        }

    def seen_on_terminal(self, command: str, last_exit: int) -> tuple[list[str], int]:
        """The lines a reader sees, both streams as they come, and the exit code; `$?` is that of the command before."""
        ours, theirs = pty.openpty()
        running = subprocess.Popen(["/bin/sh", "-c", f"(exit {last_exit})\n{command}"], cwd=self.folder, env=self.environment,
                                   stdin=subprocess.DEVNULL, stdout=theirs, stderr=theirs)
        os.close(theirs)
        seen = b""
        while True:
            try:
                more = os.read(ours, 65536)
            except OSError:  # Linux says so when the other side is closed
                break
            if not more:
                break
            seen += more
        os.close(ours)
        code = running.wait(TIME_LIMIT)
        text = seen.decode("utf-8").replace("\r\n", "\n")
        return text.removesuffix("\n").split("\n") if text else [], code

    def run(self, arguments: list[str], text: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(["leat", *arguments, "-"], cwd=self.folder, env=self.environment, input=text,
                              capture_output=True, text=True, timeout=TIME_LIMIT, check=False)


def text_of(block: Block) -> str:
    return "\n".join(block.lines) + "\n"


def real_console(block: Block, desk: Desk) -> list[str]:
    """The block as it really reads: each command with its output below it."""
    commands = [line for line in block.lines if line.startswith("$ ")]
    if not commands or not block.lines[0].startswith("$ "):
        raise Difference("a console block begins with a command: `$ leat ...`")
    real: list[str] = []
    code = 0
    for command in commands:
        seen, code = desk.seen_on_terminal(command[2:], code)
        real += [command, *seen]
    return real


def resolve(block: Block, desk: Desk, expected_exit: int) -> None:
    answer = desk.run(["resolve"], text_of(block))
    if answer.returncode != expected_exit:
        raise Difference(f"leat resolve exits {answer.returncode}\n{answer.stdout}{answer.stderr}")


def write_file(block: Block, desk: Desk) -> None:
    name = block.options[0].removeprefix("file=")
    if Path(name).name != name:
        raise Difference(f"'{name}' is not a plain file name")
    (desk.folder / name).write_text(text_of(block), encoding="utf-8")


def run_block(block: Block, desk: Desk) -> list[str]:
    """Runs a block and returns the lines it should have."""
    if block.kind == "console":
        return real_console(block, desk)
    if block.kind == "sh" and block.options:
        write_file(block, desk)
        return block.lines
    if block.kind != "leat" or block.options == ["fragment"]:
        return block.lines
    if not block.options or block.options == ["faulty"]:
        resolve(block, desk, expected_exit=2 if block.options else 0)
    elif len(block.options) == 1 and block.options[0].startswith("file="):
        write_file(block, desk)
    else:
        raise Difference(f"a leat block goes on with file=NAME, faulty or fragment, not '{' '.join(block.options)}'")
    return block.lines


def findings_of(block: Block, records: list[Block], desk: Desk) -> list[dict[str, object]]:
    design, record = (desk.folder / f"sample{ending}" for ending in (".leat", ".record.json"))
    design.write_text(text_of(block), encoding="utf-8")
    record.unlink(missing_ok=True)
    for kept in records:
        record.write_text(text_of(kept), encoding="utf-8")
    answer = subprocess.run(["leat", "check", "--as", "json", design.name], cwd=desk.folder, env=desk.environment,
                            capture_output=True, text=True, timeout=TIME_LIMIT, check=False)
    if answer.returncode not in (0, 1):
        raise Difference(f"leat check exits {answer.returncode}\n{answer.stdout}{answer.stderr}")
    return [finding for file in json.loads(answer.stdout)["files"] for junction in file["junctions"]
            for finding in junction["findings"]]


def is_said_to_be_unknown(lines: list[str], section: str) -> bool:
    """Whether the page says itself that there is nothing to show."""
    text = "\n".join(lines).split(f"\n## {section}\n", 1)[1].split("\n## ", 1)[0]
    return "No drawing is known that does this" in text


def check_finding_pages(lines: list[str], blocks: list[Block], desk: Desk, name: str) -> int:
    sections = [line[3:].strip() for line in lines if line.startswith("## ")]
    if not sections:
        raise Difference(f"{name}: no sections")
    for section in sections:
        pair = [block for block in blocks if block.section == section and block.kind == "leat" and not block.options]
        if not pair and is_said_to_be_unknown(lines, section):
            continue
        if len(pair) != 2:
            raise Difference(f"{name}: section {section} has {len(pair)} whole designs instead of 2")
        records = [block for block in blocks if block.section == section and block.options == ["record"]]
        failing, repaired = (findings_of(block, records, desk) for block in pair)
        if section not in [finding["name"] for finding in failing]:
            shown = sorted({str(finding["name"]) for finding in failing}) or "none"
            raise Difference(f"{name}:{pair[0].first}: the failing design of {section} shows {shown}")
        bad = [finding["name"] for finding in repaired if finding["name"] == section or finding["severity"] == "error"]
        if bad:
            raise Difference(f"{name}:{pair[1].first}: the repaired design of {section} shows {sorted(map(str, bad))}")
    return len(sections)


def compare(block: Block, real: list[str], name: str) -> None:
    if real == block.lines:
        return
    text = "\n".join(difflib.unified_diff(block.lines, real, "the document", "the program", lineterm="", n=2))
    raise Difference(f"{name}:{block.first}: the output differs; --update puts the real one in\n{text}")


def run_document(path: Path, given: argparse.Namespace) -> str:
    name = str(path.relative_to(given.root))
    lines = path.read_text(encoding="utf-8").split("\n")
    blocks = blocks_of(lines, name)
    with tempfile.TemporaryDirectory() as folder:
        desk = Desk(Path(folder), given.leat, given.root)
        real = []
        for block in blocks:
            try:
                real.append(run_block(block, desk))
            except Difference as difference:
                raise Difference(f"{name}:{block.first}: {difference}") from None
            if not given.update:
                compare(block, real[-1], name)
        pages = check_finding_pages(lines, blocks, desk, name) if path.name == "findings.md" else 0
    if given.update:
        for block, new in reversed(list(zip(blocks, real))):
            lines[block.first : block.first + len(block.lines)] = new
        path.write_text("\n".join(lines), encoding="utf-8")
    designs = sum(block.kind == "leat" and block.options != ["fragment"] for block in blocks)
    commands = sum(line.startswith("$ ") for block in blocks if block.kind == "console" for line in block.lines)
    return f"{name}: {designs} designs, {commands} commands" + (f", {pages} findings" if pages else "")


def main() -> int:
    reader = argparse.ArgumentParser(description="Runs every sample of the documents.")
    reader.add_argument("--leat", type=Path, required=True, help="the program")
    reader.add_argument("--root", type=Path, default=Path(__file__).resolve().parents[2], help="the project")
    reader.add_argument("--update", action="store_true", help="write the real output into the documents")
    reader.add_argument("documents", nargs="*", type=Path, help="only these")
    given = reader.parse_args()
    given.root = given.root.resolve()
    every = [given.root / "README.md", *sorted((given.root / "docs").glob("*.md"))]
    failed = 0
    for path in [path.resolve() for path in given.documents] or every:
        try:
            print(run_document(path, given))
        except Difference as difference:
            print(difference, file=sys.stderr)
            failed += 1
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
