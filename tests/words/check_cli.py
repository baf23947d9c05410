#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The command line in a language that nobody speaks: all that it says is in that language, and what it
gives to scripts is not.

The commands are those of recording.py, evenly picked; --all takes every one of them. What is typed into
the sheets is in Greek letters here, so that it is not taken for the program's own words.

Usage: check_cli.py [--all] SOURCE_ROOT BUILD_ROOT PROGRAM
"""
import collections
import concurrent.futures
import os
import re
import subprocess
import sys
import tempfile

import residue

PER_GROUP = 10
PER_GROUP_FOR_SCRIPTS = 2


def picked(cases, most):
    """As many of each group, evenly."""
    groups = collections.defaultdict(list)
    for case in cases:
        groups[case.group].append(case)
    for group in groups.values():
        step = max(1, len(group) // most)
        yield from group[::step]


def is_for_scripts(case):
    return any(word in ("--json", "--csv") for command in case.commands for word in command)


def arguments(case, command, stdout):
    """Its words; a drawing is made as PDF, the words of which can be read."""
    own = "out-" + case.key().replace("/", "-")
    return [word.replace("{out}.svg", own + ".pdf").replace("{out}", own).replace("{stdout}", stdout.strip())
            for word in command]


def words_of_pdf(path):
    return subprocess.run(["pdftotext", "-layout", path, "-"], capture_output=True, text=True,
                          check=False).stdout


class Runner:
    def __init__(self, recording_program, build_root, folder, program):
        self.plain = recording_program.Cli(build_root, folder)
        self.pseudo = recording_program.Cli(build_root, folder)
        self.pseudo.program = program
        self.pseudo.env["LANGUAGE"] = "xx"
        self.folder = folder

    def said(self, case):
        """(what was run, what it said, with the words of the PDF files that it wrote)"""
        before = ""
        for command in case.commands:
            args = arguments(case, command, before)
            _, before, trouble = self.pseudo.run(args)
            yield " ".join(args), before + trouble
            for word in args:
                path = os.path.join(self.folder, word.split("=")[-1])
                if word.endswith(".pdf") and os.path.exists(path):
                    yield " ".join(args) + " [PDF]", words_of_pdf(path)

    def untranslated(self, case):
        return [fault for place, text in self.said(case) for fault in residue.faults(place, text)]

    def differing(self, case):
        """Whether scripts read something else because of the language."""
        before = ""
        for command in case.commands:
            args = arguments(case, command, before)
            if not {"--json", "--csv"} & set(args) or args[0] == "help":
                continue
            plain, pseudo = self.plain.run(args), self.pseudo.run(args)
            if plain[1] != pseudo[1]:
                yield f"{' '.join(args)}: scripts read other words in another language"


def report(number, name, n, faults):
    print(f"{'not ok' if faults or n == 0 else 'ok'} {number} {name} ({n} cases)")
    for fault in sorted(set(faults)):
        print("\n".join(f"# {line}" for line in fault.splitlines()))


def check(cli, cases, every):
    human = [case for case in cases if not is_for_scripts(case)]
    scripts = [case for case in cases if is_for_scripts(case)]
    if not every:
        human = list(picked(human, PER_GROUP))
        scripts = list(picked(scripts, PER_GROUP_FOR_SCRIPTS))
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        said = [fault for faults in pool.map(cli.untranslated, human) for fault in faults]
        differ = [fault for faults in pool.map(lambda case: list(cli.differing(case)), scripts)
                  for fault in faults]
    print("1..2")
    report(1, "everything that people read can be translated", len(human), said)
    report(2, "what scripts read is the same in every language", len(scripts), differ)


def main():
    every = sys.argv[1] == "--all"
    source_root, build_root, program = sys.argv[-3:]
    sys.path.insert(0, os.path.join(source_root, "tests"))
    import recording_cases  # beside this folder, which is known only now
    import recording_program

    residue.skip_without_language(os.path.abspath(program))
    residue.learn(source_root)
    with tempfile.TemporaryDirectory(prefix="words-", suffix=".raw") as folder:  # no word, whatever letters come
        cli = Runner(recording_program, build_root, folder, os.path.abspath(program))
        cases = recording_cases.all_cases(cli.plain)
        for name in os.listdir(folder):
            if name.endswith(".bench"):
                residue.make_greek(os.path.join(folder, name))
        check(cli, cases, every)
    return 0


if __name__ == "__main__":
    sys.exit(main())
