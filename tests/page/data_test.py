"""The data of pages: unpacked as the page's script does it, against its schema, and its numbers against each other.

    data_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import base64
import hashlib
import json
import re
import subprocess
import sys
import zlib
from pathlib import Path

import jsonschema

ROOT = Path(__file__).resolve().parents[2]


def page_of(leat: str, *words: str) -> str:
    result = subprocess.run([leat, "page", *words], capture_output=True, cwd=ROOT, timeout=300)
    if result.returncode not in (0, 3):
        sys.exit(f"leat page {' '.join(words)}: {result.stderr.decode()}")
    return result.stdout.decode()


def data_of(page: str) -> dict:
    packed = re.search(r'id="data">([A-Za-z0-9+/=]*)</script>', page).group(1)
    return json.loads(zlib.decompress(base64.b64decode(packed, validate=True)))


def check_policy(page: str) -> None:
    """The policy names the style and the script by what they are."""
    for element, opening in (("style", "<style>"), ("script", '<script type="module">')):
        begin = page.index(opening) + len(opening)
        text = page[begin:page.index(f"</{element}>", begin)]
        digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
        assert f"{element}-src 'sha256-{digest}'" in page, element


def check_numbers(part: dict) -> None:
    """Everything that is referred to is there, and every event leads to a node of its own run."""
    if part["detail"] == "nothing":
        return
    width, depth, height = part["size"]
    cells = width * depth * height
    assert sum(part["cells"][1::2]) == cells
    assert all(fill < len(part["fills"]) for fill in part["cells"][0::2])
    nodes, pools = part["nodes"], part["pools"]
    count, events = len(nodes["pool"]), len(part["inputs"])
    assert len(nodes["next"]) == len(nodes["run"]) == count * events
    assert all(-1 <= to < count for to in nodes["next"])
    assert all(-1 <= run < len(part["runs"]) for run in nodes["run"])
    assert all(pool < len(pools["parent"]) for pool in nodes["pool"])
    assert all(parent < at for at, parent in enumerate(nodes["parent"]))
    assert all(parent < at for at, parent in enumerate(pools["parent"]))
    assert all(patch < len(part["patches"]) for run in part["runs"] for patch in run)
    assert all(patch < len(part["patches"]) for patch in pools["stances"])
    assert all(fate < len(pools["fates"]) for fate in pools["fate"])
    assert len(pools["fate"]) == len(pools["parent"]) * len(part["inlets"]) * len(part["bodies"])
    stances = set(pools["stances"])
    waters = {patch for run in part["runs"] for patch in run}
    for number, patch in enumerate(part["patches"]):
        most = cells if number in waters else cells * 25
        values = len(part["looks"]) if number in waters else len(part["stances"])
        assert sum(patch[0::2]) < most, number
        assert all(value < values for value in patch[1::2]), number
    assert stances or not part["bodies"]


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    leat = str(Path(parser.parse_args().leat).resolve())
    schema = json.loads((ROOT / "docs/schemas/leat-page.schema.json").read_text())
    validator = jsonschema.Draft202012Validator(schema)
    examples = sorted((ROOT / "examples").glob("*.leat"))
    assert examples
    for example in examples:
        page = page_of(leat, str(example))
        check_policy(page)
        data = data_of(page)
        faults = [fault.message[:300] for fault in validator.iter_errors(data)]
        assert not faults, (example.name, faults)
        for part in data["junctions"]:
            check_numbers(part)
    print(f"{len(examples)} pages")


main()
