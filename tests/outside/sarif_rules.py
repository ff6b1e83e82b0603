"""What a SARIF 2.1.0 log must be: the schema of its committee, and what the standard says beside it.

`faults(log, folder)` lists everything that is wrong. The schema accepts regions that end before they begin, rules and
artifacts out of range, links to nothing, names of files with blanks in them, levels of what did not fail: these rules
are checked here, each with the section of the standard that it is from.
"""
from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any, Iterator
from urllib.parse import unquote, urlsplit

import jsonschema

SCHEMA = json.loads((Path(__file__).parent / "sarif-2.1.0.schema.json").read_text(encoding="utf-8"))
# RFC 3986: what may stand in a reference, by itself or as %XX.
REFERENCE = re.compile(r"(?:[A-Za-z0-9\-._~:/?#\[\]@!$&'()*+,;=]|%[0-9A-F]{2})+")
LINK = re.compile(r"\[[^\]]*\]\(([^)]*)\)")


def walk(value: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    yield path, value
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from walk(inner, f"{path}/{key}")
    elif isinstance(value, list):
        for i, inner in enumerate(value):
            yield from walk(inner, f"{path}/{i}")


class Run:
    def __init__(self, run: dict[str, Any], folder: Path | None) -> None:
        self.run = run
        self.folder = folder
        self.faults: list[str] = []
        self.rules = run["tool"]["driver"]["rules"]
        self.artifacts = run["artifacts"]

    def need(self, condition: bool, what: str) -> None:
        if not condition:
            self.faults.append(what)

    def check(self) -> list[str]:
        for path, value in walk(self.run):
            # 3.4 and others: a text that is there says something.
            self.need(value != "", f"{path} is empty")
            if path.endswith("/artifactLocation") or re.fullmatch(r".*/artifacts/\d+/location", path):
                self.check_artifact(path, value)
            if path.endswith("/physicalLocation"):
                self.check_region(path, value)
            if path.endswith("/message") and isinstance(value, dict):
                self.check_message(path, value)
        self.check_rules()
        for i, result in enumerate(self.run["results"]):
            self.check_result(f"results/{i}", result)
        seen = [json.dumps(r["partialFingerprints"], sort_keys=True) + r["ruleId"] for r in self.run["results"]]
        self.need(len(seen) == len(set(seen)), "two results have one fingerprint")
        # 3.14.17: columns are counted in one of two units, which must be said.
        self.need(self.run.get("columnKind") == "unicodeCodePoints", "columnKind is not stated")
        return self.faults

    def check_rules(self) -> None:
        ids = [rule["id"] for rule in self.rules]
        self.need(len(ids) == len(set(ids)), "two rules have one id")  # 3.49.3
        for rule in self.rules:
            for key in ("shortDescription", "fullDescription", "help"):
                text = rule[key]["text"]
                self.need(len(text) > 10 and not re.search(r"[{}]", text), f"{rule['id']}: {key} is '{text}'")

    def check_result(self, path: str, result: dict[str, Any]) -> None:
        index = result["ruleIndex"]
        is_in = 0 <= index < len(self.rules)
        self.need(is_in and self.rules[index]["id"] == result["ruleId"], f"{path}: rule {index}")  # 3.27.6
        # 3.27.10: a level other than none belongs to what fails.
        self.need((result["kind"] == "fail") == (result["level"] != "none"), f"{path}: kind and level")
        self.need(len(result["locations"]) == 1, f"{path}: one place")
        # 3.27.23: suppressions are told of all results or of none.
        self.need("suppressions" in result, f"{path}: no suppressions")
        for flow in result.get("codeFlows", []):
            for thread in flow["threadFlows"]:
                orders = [step["executionOrder"] for step in thread["locations"]]
                self.need(orders == list(range(1, len(orders) + 1)), f"{path}: order {orders}")  # 3.38.11
                self.need(all("message" in step["location"] for step in thread["locations"]), f"{path}: a step says nothing")

    def check_artifact(self, path: str, location: dict[str, Any]) -> None:
        uri, index = location["uri"], location["index"]
        self.need(bool(REFERENCE.fullmatch(uri)), f"{path}: '{uri}' is no reference")  # 3.10.1
        is_in = 0 <= index < len(self.artifacts)
        self.need(is_in and self.artifacts[index]["location"]["uri"] == uri, f"{path}: artifact {index}")  # 3.4.5
        self.need(urlsplit(uri).scheme in ("", "file"), f"{path}: '{uri}' is of a scheme")

    def check_region(self, path: str, location: dict[str, Any]) -> None:
        region = location.get("region")
        if region is None:
            return
        self.need(region["endLine"] == region["startLine"], f"{path}: more than a row")
        self.need(region["endColumn"] >= region["startColumn"], f"{path}: ends before it begins")  # 3.30.6
        name = unquote(urlsplit(location["artifactLocation"]["uri"]).path)
        file = None if self.folder is None else self.folder / name
        if file is None or not file.is_file():
            return
        rows = file.read_bytes().removeprefix(b"\xef\xbb\xbf").decode("utf-8", "surrogateescape").split("\n")
        self.need(region["startLine"] <= len(rows), f"{path}: no line {region['startLine']}")
        width = len(rows[region["startLine"] - 1].removesuffix("\r"))
        self.need(region["endColumn"] <= width + 1, f"{path}: past the end of its line")

    def check_message(self, path: str, message: dict[str, Any]) -> None:
        text = message["text"]
        self.need(not LINK.search(text), f"{path}: a link in '{text}'")  # 3.11.6
        self.need(not re.search(r"\{\d+\}", text.replace("{{", "").replace("}}", "")), f"{path}: a gap in '{text}'")  # 3.11.5


def faults(log: dict[str, Any], folder: Path | None = None) -> list[str]:
    found = [error.message[:200] for error in jsonschema.Draft4Validator(SCHEMA).iter_errors(log)]
    if found:
        return found
    return [fault for run in log["runs"] for fault in Run(run, folder).check()]
