#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Run the completion for bash as bash does, and hold what it offers against the help.

Usage: check_completion.py BREEZEWAY-CLI COMPLETION
"""
import json
import os
import subprocess
import sys
import tempfile

# Words in the array that bash fills in, the last one the word at the cursor; prints what is offered.
SCRIPT = """
source "$1"
shift
COMP_WORDS=("$@")
COMP_CWORD=$(($# - 1))
_breezeway_cli
printf '%s\\n' "${COMPREPLY[@]}"
"""


class Shell:
    def __init__(self, cli, completion, folder):
        self.completion = completion
        self.folder = folder
        self.env = dict(os.environ, PATH=os.path.dirname(cli) + ":" + os.environ["PATH"],
                        LC_ALL="C.UTF-8")

    def offers(self, *words):
        run = subprocess.run(["bash", "-u", "-c", SCRIPT, "bash", self.completion, *words],
                             capture_output=True, text=True, cwd=self.folder, env=self.env,
                             check=False)
        if run.returncode != 0 or run.stderr:
            raise SystemExit(f"Bail out! {words}: {run.stderr}")
        return {word for word in run.stdout.split("\n") if word}


def ask(cli, *arguments):
    answer = subprocess.run([cli, *arguments, "--json"], check=True, capture_output=True,
                            encoding="utf-8", env=dict(os.environ, LC_ALL="C.UTF-8"))
    return json.loads(answer.stdout)


def command_faults(shell, commands):
    program = "breezeway-cli"
    faults = []
    names = set(commands)
    if shell.offers(program, "") != names | {"help", "--help", "--version"}:
        faults.append("the commands are not those of the help")
    if shell.offers(program, "help", "") != names | {"--json"}:
        faults.append("help does not offer every command")
    if shell.offers(program, "si") != set():
        faults.append("“si” begins no command")
    for name, options in commands.items():
        if shell.offers(program, name, "--") != {option["name"] for option in options}:
            faults.append(f"the options of {name} are not those of the help")
    return faults


def value_faults(shell):
    """What may stand at an option or as an argument: words, files, sheets, rasters."""
    program = "breezeway-cli"
    wanted = [
        (("draw", "--view", ""), {"line", "blanking", "field", "map"}),
        (("draw", "--view", "=", "b"), {"blanking"}),
        (("draw", "--view", "="), {"line", "blanking", "field", "map"}),
        (("draw", "-v", "m"), {"map"}),
        (("fit", ""), {"a.bench", "sub"}),
        (("fit", "sub/"), {"sub/b.bench"}),
        (("timing", "--edid", ""), {"a.bench", "other.txt", "sub"}),
        (("timing", "525-59.94-i"), {"525-59.94-interlaced"}),
        (("timing", "--which", ""), set()),
        (("sync", "--raster", "vesa-dmt-04"), {"vesa-dmt-04"}),
        (("catalogue", "m"), {"monitors"}),
        (("no-such-command", "--"), set()),
    ]
    return [f"{' '.join(words)}: {sorted(shell.offers(program, *words))} in place of {sorted(right)}"
            for words, right in wanted if shell.offers(program, *words) != right]


def report(number, title, faults):
    print(f"{'not ok' if faults else 'ok'} {number} - {title}")
    for fault in faults:
        print(f"# {fault}")


def main():
    cli, completion = map(os.path.abspath, sys.argv[1:])
    commands = {one["command"]: ask(cli, "help", one["command"])["options"]
                for one in ask(cli, "help")["commands"]}
    with tempfile.TemporaryDirectory() as folder:
        os.mkdir(os.path.join(folder, "sub"))
        for name in ("a.bench", "other.txt", "sub/b.bench"):
            with open(os.path.join(folder, name), "w", encoding="utf-8"):
                pass
        shell = Shell(cli, completion, folder)
        print("1..2")
        report(1, "commands and options are those of the help", command_faults(shell, commands))
        report(2, "values fit their option", value_faults(shell))


if __name__ == "__main__":
    main()
