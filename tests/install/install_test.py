"""Installs the build into an empty folder and uses what is there: the program, its manual and completions, and the
engine from a project of its own (consumer/).

    /usr/bin/python3 install_test.py --build build/test --compiler g++ [--flags=...]
"""
from __future__ import annotations

import argparse
import subprocess
import tempfile
from pathlib import Path

CONSUMER = Path(__file__).parent / "consumer"


def run(*command: str | Path) -> str:
    done = subprocess.run([str(part) for part in command], capture_output=True, text=True, check=False)
    if done.returncode != 0:
        raise SystemExit(f"{' '.join(map(str, command))}\nended with {done.returncode}\n{done.stdout}{done.stderr}")
    return done.stdout


def check(is_so: bool, what: str) -> None:
    if not is_so:
        raise SystemExit(what)


def check_program(prefix: Path) -> None:
    program = prefix / "bin/leat"
    commands = {path.stem.removeprefix("leat-") for path in (prefix / "share/man/man1").glob("leat-*.1")}
    told = run(program, "--help").split("Subcommands:")[1].split("\n\n")[0]
    known = {line.split()[0] for line in told.splitlines() if line.startswith("  ") and line[2] != " "}
    check(commands == known, f"pages of {sorted(commands)}, commands {sorted(known)}")
    for name, command in {"bash-completion/completions/leat": "bash", "zsh/site-functions/_leat": "zsh",
                          "fish/vendor_completions.d/leat.fish": "fish"}.items():
        check((prefix / "share" / name).read_text() == run(program, "completion", command), f"{name} differs")
    examples = prefix / "share/doc/leat/examples"
    check("kiln" in run(program, "table", examples / "straight_run.leat"), "the example is not judged")
    check((prefix / "share/doc/leat/language.md").is_file(), "the documents are missing")


def check_headers(prefix: Path) -> None:
    include = prefix / "include/leat"
    tops = {path.name for path in include.iterdir()}
    check(tops == {"engine"}, f"include/leat holds {tops}")
    check(all(path.suffix == ".hpp" for path in include.rglob("*") if path.is_file()), "not only headers")


def check_consumer(prefix: Path, folder: Path, compiler: str, flags: str) -> None:
    run("cmake", "-S", CONSUMER, "-B", folder, f"-DCMAKE_PREFIX_PATH={prefix}", f"-DCMAKE_CXX_COMPILER={compiler}",
        f"-DCMAKE_CXX_FLAGS=-Wall -Wextra -Werror {flags.replace(';', ' ')}")
    run("cmake", "--build", folder)
    answer = run(folder / "consumer").split()
    check(answer == ["1", "0"], f"the consumer says {answer}")


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--build", required=True)
    parser.add_argument("--compiler", required=True)
    parser.add_argument("--flags", default="")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        prefix, folder = Path(name) / "prefix", Path(name) / "consumer"
        run("cmake", "--install", given.build, "--prefix", prefix)
        check_program(prefix)
        check_headers(prefix)
        check_consumer(prefix, folder, given.compiler, given.flags)


if __name__ == "__main__":
    main()
