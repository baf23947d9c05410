# SPDX-License-Identifier: GPL-3.0-or-later
"""The program of a build, and the bench sheets that it is run over, for recording.py."""

import itertools
import json
import os
import re
import shutil
import subprocess
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
SHEETS = os.path.join(ROOT, "tests", "sheets")
DEMO = os.path.join(ROOT, "data", "demo.bench")


def stop(words):
    sys.exit(f"recording.py: {words}")


def find_below(build_dir, name, mode):
    """The path of the file NAME anywhere below the build folder, so that folders may move."""
    for folder, _, files in os.walk(build_dir):
        path = os.path.join(folder, name)
        if name in files and os.access(path, mode):
            return path
    stop(f"there is no {name} below {build_dir}; build it first")


def find_program(build_dir, name):
    return find_below(os.path.abspath(build_dir), name, os.X_OK)


def find_folder_with(build_dir, name):
    return os.path.dirname(find_below(os.path.abspath(build_dir), name, os.R_OK))


def environment(home):
    """Nothing of the user's own settings, catalogue or language."""
    env = {"PATH": os.environ["PATH"], "HOME": home, "LC_ALL": "C.UTF-8", "TZ": "UTC"}
    for kind in ("CACHE", "CONFIG", "DATA", "STATE"):
        env[f"XDG_{kind}_HOME"] = os.path.join(home, kind.lower())
        os.makedirs(env[f"XDG_{kind}_HOME"], exist_ok=True)
    return env


def text_of(data):
    return data.decode("utf-8", "backslashreplace")


class Cli:
    """breezeway-cli, run in a folder that holds the demo and the sheets under short names."""

    def __init__(self, build_dir, folder):
        self.program = find_program(build_dir, "breezeway-cli")
        self.folder = folder
        self.env = environment(os.path.join(folder, "home"))
        for sheet in all_sheets():
            shutil.copy(sheet.path, folder)

    def run(self, args):
        done = subprocess.run([self.program, *args], cwd=self.folder, env=self.env,
                              stdin=subprocess.DEVNULL, capture_output=True, timeout=120)
        return done.returncode, text_of(done.stdout), text_of(done.stderr)

    def json(self, *args):
        status, out, err = self.run([*args, "--json"])
        if status != 0:
            stop(f"{' '.join(args)}: {err}")
        return json.loads(out)


class Sheet:
    """A bench sheet, and how many sources and inputs it has."""

    def __init__(self, path):
        self.path = path
        self.file = os.path.basename(path)
        self.name = self.file[:-len(".bench")]
        with open(path, encoding="utf-8") as file:
            self.text = file.read()
        self.sources = len(re.findall(r"^\[source ", self.text, re.MULTILINE))
        self.inputs = len(re.findall(r"^\[input ", self.text, re.MULTILINE))

    def cells(self):
        return itertools.product(range(1, self.sources + 1), range(1, self.inputs + 1))

    def diagonal(self):
        """Cells that have every source and every input at least once."""
        return [(n % self.sources + 1, n % self.inputs + 1)
                for n in range(max(self.sources, self.inputs))]


def own_sheets():
    """The sheets of the recording, without the demo."""
    names = sorted(name for name in os.listdir(SHEETS) if name.endswith(".bench"))
    return [Sheet(os.path.join(SHEETS, name)) for name in names]


def all_sheets():
    return [Sheet(DEMO), *own_sheets()]
