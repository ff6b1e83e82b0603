"""The formats of `leat check` on every example, read by programs that are not ours.

SARIF by the schema of its committee (jsonschema) and the rules of sarif_rules.py, test reports by xmllint against
junit.xsd, records by Python's csv, Markdown by cmark-gfm, documents by jsonschema. All of them must tell the same.

    /usr/bin/python3 check_formats.py --leat build/leat
"""
from __future__ import annotations

import argparse
import copy
import csv
import io
import json
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
from pathlib import Path
from typing import Any

import sarif_rules

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
Told = list[tuple[str, ...]]


def leat(program: Path, *arguments: str) -> str:
    done = subprocess.run([program, "check", *arguments], cwd=ROOT, capture_output=True, timeout=300, check=False)
    if done.returncode not in (0, 1, 2, 3):
        raise SystemExit(f"leat check {arguments}: exit {done.returncode}\n{done.stderr.decode()}")
    return done.stdout.decode("utf-8")


def validated_xml(text: str) -> ElementTree.Element:
    done = subprocess.run(["xmllint", "--noout", "--schema", HERE / "junit.xsd", "-"], input=text.encode("utf-8"),
                          capture_output=True, check=False)
    if done.returncode != 0:
        raise AssertionError(done.stderr.decode()[:2000])
    return ElementTree.fromstring(text.encode("utf-8"))


def html_of(markdown: str) -> str:
    return subprocess.run(["cmark-gfm", "-e", "table", "-e", "autolink"], input=markdown.encode("utf-8"), check=True,
                          capture_output=True).stdout.decode("utf-8")


def told_by_json(document: dict[str, Any]) -> Told:
    told: Told = []
    for file in document["files"]:
        told += [("fault", d["name"]) for d in file["diagnostics"]]
        for junction in file["junctions"]:
            told += [("finding", f["name"], "accepted" if f["accepted"] is not None else f["severity"])
                     for f in junction["findings"]]
            told += [("expectation", e["clause"], e["verdict"]) for e in junction["expectations"]]
    return told


def told_by_csv(text: str) -> Told:
    if not text.endswith("\r\n"):
        raise AssertionError("the last record does not end as RFC 4180 has it")
    records = list(csv.DictReader(io.StringIO(text, newline=""), strict=True))
    if any(None in record or None in record.values() for record in records):
        raise AssertionError("a record has more or fewer fields than the heading")
    told: Told = []
    for r in records:
        if r["what"] == "fault":
            told.append(("fault", r["name"]))
        elif r["what"] == "finding":
            told.append(("finding", r["name"], r["verdict"]))
        elif r["what"] == "expectation":
            told.append(("expectation", r["headline"], r["verdict"]))
    return told


def told_by_sarif(log: dict[str, Any]) -> Told:
    told: Told = []
    for result in log["runs"][0]["results"]:
        rule = result["ruleId"]
        if rule == "undecided-junction":
            continue
        if rule.endswith("-expectation"):
            verdict = {"bounded": "holds within bounds"}.get(rule.split("-")[0], rule.split("-")[0])
            told.append(("expectation", result["properties"]["clause"], verdict))
        elif "properties" in result:
            told.append(("finding", rule, "accepted" if result["suppressions"] else result["level"]))
        else:
            told.append(("fault", rule))
    return told


def check_junit(root: ElementTree.Element, document: dict[str, Any]) -> None:
    for element in [root, *root.findall("testsuite")]:
        for key, tag in (("tests", "testcase"), ("failures", "failure"), ("errors", "error")):
            if int(element.attrib[key]) != len(element.findall(f".//{tag}")):
                raise AssertionError(f"{element.attrib['name']}: {key}")
    wanted = {"passed": 0, "failure": 0, "error": 0}
    for file in document["files"]:
        wanted["error"] += 1 if file["diagnostics"] else 0
        for junction in file["junctions"]:
            for expectation in junction["expectations"]:
                word = {"holds": "passed", "violated": "failure", "empty": "failure"}.get(expectation["verdict"], "error")
                wanted[word] += 1
            severe = [f for f in junction["findings"] if f["severity"] != "note" and f["accepted"] is None]
            undecided = not {"combinations", "states", "promised"}.isdisjoint(junction["left_out"])
            wanted["failure" if severe else "error" if undecided else "passed"] += 1
    cases = root.findall(".//testcase")
    got = {"failure": len(root.findall(".//failure")), "error": len(root.findall(".//error"))}
    got["passed"] = len(cases) - sum(got.values())
    if got != wanted:
        raise AssertionError(f"test cases {got}, wanted {wanted}")


def check_run(program: Path, *files: str) -> int:
    document = json.loads(leat(program, "--as", "json", *files))
    schema = json.loads((ROOT / "docs/schemas/leat-findings.schema.json").read_text(encoding="utf-8"))
    jsonschema_faults(schema, document)
    told = told_by_json(document)
    if told_by_csv(leat(program, "--as", "csv", *files)) != told:
        raise AssertionError("csv and json tell different things")
    log = json.loads(leat(program, "--as", "sarif", *files))
    if found := sarif_rules.faults(log, ROOT):
        raise AssertionError(f"SARIF: {found[:5]}")
    if told_by_sarif(log) != [t for t in told if t[-1] != "holds"]:
        raise AssertionError("SARIF and json tell different things")
    if log["runs"][0]["invocations"][0]["exitCode"] != document["exit"]:
        raise AssertionError("the exit code of SARIF")
    check_junit(validated_xml(leat(program, "--as", "junit", *files)), document)
    page = html_of(leat(program, "--as", "markdown", *files))
    rows = page.count("<tr>") - page.count("<thead>")
    if rows != len([t for t in told if t[-1] != "holds"]):
        raise AssertionError(f"Markdown has {rows} rows")
    return len(told)


def jsonschema_faults(schema: dict[str, Any], document: dict[str, Any]) -> None:
    sarif_rules.jsonschema.Draft202012Validator(schema).validate(document)


def check_schemas() -> None:
    """Every schema names its format and its version, and both must be there."""
    for path in sorted((ROOT / "docs/schemas").glob("*.json")):
        schema = json.loads(path.read_text(encoding="utf-8"))
        sarif_rules.jsonschema.Draft202012Validator.check_schema(schema)
        format_and_version = [schema["properties"]["format"], schema["properties"]["version"], schema["required"][:2]]
        if format_and_version != [{"const": path.name.removesuffix(".schema.json")}, {"const": 1}, ["format", "version"]]:
            raise AssertionError(f"{path.name}: {format_and_version}")


def check_fingerprints(program: Path) -> None:
    """They stay when the text moves down and the drawing to the east; another junction has others."""
    text = (ROOT / "examples/flawed_sorter.leat").read_text(encoding="utf-8")
    moved = "# a line more\n" + re.sub(r"\|([^|\n]+)\|", r"|X\1|", text)
    moved = re.sub(r"(at \w+ )(\d+)", lambda m: m[1] + str(int(m[2]) + 1), moved)
    prints = []
    with tempfile.TemporaryDirectory() as folder:
        for version in (text, moved, text.replace("flawed_sorter", "other_sorter")):
            path = Path(folder) / "design.leat"
            path.write_text(version, encoding="utf-8")
            log = json.loads(leat(program, "--as", "sarif", str(path)))
            prints.append(sorted(str(r["partialFingerprints"]) for r in log["runs"][0]["results"]))
    if prints[0] != prints[1] or set(prints[0]) & set(prints[2]) or not prints[0]:
        raise AssertionError(f"fingerprints: {prints}")


def mutants(log: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """Logs that are wrong, each in one way that the schema or the rules must see."""
    def changed(change: Any) -> dict[str, Any]:
        mutant = copy.deepcopy(log)
        run = mutant["runs"][0]
        change(run, run["results"][0])
        return mutant

    def location(result: dict[str, Any]) -> dict[str, Any]:
        return result["locations"][0]["physicalLocation"]

    return {
        "unknown member": changed(lambda run, r: r.update(colour="red")),
        "no message": changed(lambda run, r: r.pop("message")),
        "rule out of range": changed(lambda run, r: r.update(ruleIndex=999)),
        "another rule": changed(lambda run, r: r.update(ruleIndex=r["ruleIndex"] + 1)),
        "end before begin": changed(lambda run, r: location(r)["region"].update(endColumn=0 + 1, startColumn=5)),
        "line 0": changed(lambda run, r: location(r)["region"].update(startLine=0)),
        "past the line": changed(lambda run, r: location(r)["region"].update(endColumn=9999)),
        "blank in a uri": changed(lambda run, r: location(r)["artifactLocation"].update(uri="a b")),
        "another artifact": changed(lambda run, r: location(r)["artifactLocation"].update(index=7)),
        "passed with a level": changed(lambda run, r: r.update(kind="pass", level="warning")),
        "a link to nothing": changed(lambda run, r: r["message"].update(text="see [there](3)")),
        "a gap": changed(lambda run, r: r["message"].update(text="see {0}")),
        "an empty text": changed(lambda run, r: r["message"].update(text="")),
        "two alike": changed(lambda run, r: run["results"].append(copy.deepcopy(r))),
        "two rules": changed(lambda run, r: run["tool"]["driver"]["rules"].append(run["tool"]["driver"]["rules"][0])),
    }


def main() -> int:
    reader = argparse.ArgumentParser()
    reader.add_argument("--leat", type=Path, required=True)
    program = reader.parse_args().leat.resolve()
    examples = sorted(f"examples/{path.name}" for path in (ROOT / "examples").glob("*.leat"))
    faulty = sorted(str(path.relative_to(ROOT)) for path in (ROOT / "tests/messages").glob("*/design.leat"))
    check_schemas()
    check_fingerprints(program)
    told = sum(check_run(program, example) for example in examples)
    told += check_run(program, *examples)
    told += check_run(program, *faulty)
    log = json.loads(leat(program, "--as", "sarif", "examples/bent_corner.leat"))
    seen = [name for name, mutant in mutants(log).items() if sarif_rules.faults(mutant, ROOT)]
    if missed := set(mutants(log)) - set(seen):
        raise AssertionError(f"wrong logs that nobody saw: {sorted(missed)}")
    print(f"{len(examples)} examples and {len(faulty)} faulty files, {told} things told alike in 5 formats; "
          f"{len(seen)} wrong logs seen")
    return 0


if __name__ == "__main__":
    sys.exit(main())
