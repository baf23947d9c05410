#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Count the tests in meson's JSON logs and end with the line "N passed, N failed".

A program that speaks TAP counts as many tests as it reports, and at least one failed test if it
crashed, ran out of time or stopped short; any other program counts as one. What is skipped is
named, and is neither passed nor failed. Exit status: 0 if something passed and nothing failed.

Usage: count.py LOG.json...
"""
import json
import os
import re
import sys

EMPTY_PLAN = re.compile(r"^1\.\.0[ \t]*$", re.MULTILINE)
RESULT = re.compile(r"^(not ok|ok)\b[ \t]*(.*)$", re.MULTILINE)
DIRECTIVE = re.compile(r"#\s*(SKIP|TODO)\b", re.IGNORECASE)


class Tally:
    def __init__(self):
        self.passed = 0
        self.failed = []
        self.skipped = []

    def add_line(self, program, verdict, text):
        directive = DIRECTIVE.search(text)
        if directive and directive[1].upper() == "SKIP":
            self.skipped.append(f"{program}: {text}")
        elif verdict == "ok":
            self.passed += 1
        else:
            self.failed.append(f"{program}: {text}")

    def add_program(self, program, entry):
        """Add one program's results; returns whether any of them failed."""
        output = entry.get("stdout") or ""
        before = len(self.failed)
        lines = RESULT.findall(output)
        for verdict, text in lines:
            self.add_line(program, verdict, text)
        result = entry["result"]
        if not lines and EMPTY_PLAN.search(output):
            self.failed.append(f"{program}: ran no test")
        elif not lines and result == "SKIP":
            self.skipped.append(program)
        elif result in ("OK", "EXPECTEDFAIL"):
            self.passed += 0 if lines else 1
        elif result != "SKIP" and len(self.failed) == before:
            status = entry.get("returncode")
            self.failed.append(f"{program}: {result.lower()}, exit status {status}")
        return len(self.failed) > before


def show_output(program, entry):
    print(f"\n---- {program}: {entry['result']}")
    for stream in ("stdout", "stderr"):
        text = (entry.get(stream) or "").rstrip()
        if text:
            print(f"-- {stream}\n{text}")


def count_log(path, tally):
    try:
        with open(path, encoding="utf-8", errors="replace") as log:
            entries = [json.loads(line) for line in log if line.strip()]
    except OSError:
        entries = []
    if not entries:
        tally.failed.append(f"{path}: no test was run; see above for why")
    run = os.path.basename(path).removesuffix(".json")
    for entry in entries:
        program = f"{entry['name'].split(' / ')[-1]} ({run})"
        if tally.add_program(program, entry):
            show_output(program, entry)


def main():
    tally = Tally()
    for path in sys.argv[1:]:
        count_log(path, tally)
    for title, names in (("Skipped", tally.skipped), ("Failed", tally.failed)):
        if names:
            print(f"\n{title}:")
            for name in names:
                print(f"  {name}")
    print(f"\n{tally.passed} passed, {len(tally.failed)} failed")
    return 1 if tally.failed or tally.passed == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
