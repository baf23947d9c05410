#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The window in a language that nobody speaks and whose words are long: all that it says is in that
language, and nothing is cut.

record-window walks through every page, view, list and dialog, and writes down each label, tooltip, name
and description, and the drawings. What is typed into the sheets is in Greek letters here.

Usage: check_window.py SOURCE_ROOT BUILD_ROOT
"""
import concurrent.futures
import os
import re
import shutil
import subprocess
import sys
import tempfile

import residue

LANGUAGE = "xx"

# Files of the recorder that are windows of GTK's own, or hold parts of it.
SHOWN_BY_GTK = [
    "About Breezeway", "http://website.com", "copyright", "This program comes with absolutely no warranty.",
    "See the GNU General Public License, version 3 or later for details.", r"\(None\)", "Close the window",
    "Close", "Minimize the window", "Minimize", "Maximize the window", "Maximize", "Ctrl", "Escape", "Shift",
    "Delete", "_Show All", "Show All", "Shortcuts", "Search Results", "Page Up", "Page Down", "Return",
]

# One line of a tree: the role, what is said, states, and the type.
QUOTED = re.compile(r"(icon=|text=|value=|tooltip=|description=)?“(.*?)”(?= (?:icon=|text=|value=|tooltip="
                    r"|description=|[a-z]|\(|$))")
CUT = re.compile(r" cut\b.*\(GtkLabel\)$")


def said_in(line):
    """The texts of one line, without the names of icons and what stands in fields."""
    return [text for kind, text in QUOTED.findall(line) if kind not in ("icon=", "text=")]


def without_gtk(text):
    for words in SHOWN_BY_GTK:
        text = re.sub(rf"^{words}$" if words.isalpha() else words, "", text)
    return text


def untranslated(name, text):
    for line in text.splitlines():
        for said in said_in(line):
            for part in said.split("\\n"):
                yield from residue.faults(name, without_gtk(part))


def cut(name, text):
    """Labels that end in “…” and have nothing that tells the whole. The title of a window is as long as
    the name of its file, and the desktop shows it whole."""
    for line in text.splitlines():
        if CUT.search(line) and "tooltip=" not in line and ".bench”" not in line:
            yield f"{name}: cut: {line.strip()}"


class Windows:
    def __init__(self, recording, recording_program, build_root, folder):
        self.recorder = recording.Window(build_root, folder)
        self.program = recording_program
        self.folder = folder
        self.locale = os.path.join(build_root, "tests", "words", "locale")

    def greek_sheet(self, sheet):
        path = os.path.join(self.folder, sheet.file)
        shutil.copy(sheet.path, path)
        residue.make_greek(path)
        return path

    def trees(self, sheet, cells):
        """(name, text) of each file that the recorder leaves."""
        out = os.path.join(self.folder, f"{sheet.name}-{cells}")
        os.makedirs(out)
        env = self.recorder.environment(out + "-home")
        env.update(LANGUAGE=LANGUAGE, BW_TEST_LOCALE=self.locale)
        command = ["xvfb-run", "-a", "-s", "-screen 0 3840x2160x24 -noreset", self.recorder.program, out,
                   self.greek_sheet(sheet), str(cells)]
        done = subprocess.run(command, env=env, cwd=self.folder, stdin=subprocess.DEVNULL,
                              capture_output=True, text=True, timeout=600, check=False)
        if done.returncode != 0:
            sys.exit(f"record-window: {done.stderr}")
        for name in sorted(os.listdir(out)):
            if name.endswith(".tree"):
                with open(os.path.join(out, name), encoding="utf-8") as file:
                    yield f"{sheet.name}/{name}", file.read()


def report(number, name, n, faults):
    print(f"{'not ok' if faults or n == 0 else 'ok'} {number} {name} ({n} views)")
    for fault in sorted(set(faults)):
        print("\n".join(f"# {line}" for line in fault.splitlines()))


def main():
    source_root, build_root = sys.argv[1:]
    sys.path.insert(0, os.path.join(source_root, "tests"))
    import recording  # beside this folder, which is known only now
    import recording_program

    residue.skip_without_language(os.path.join(build_root, "tests", "words", "breezeway-cli-pseudo"))
    residue.learn(source_root)
    demo, *others = recording_program.all_sheets()
    runs = [(demo, 0), (demo, 2)] + [(sheet, 1) for sheet in others[::8]]
    with tempfile.TemporaryDirectory(prefix="words-", suffix=".raw") as folder:  # no word, whatever letters come
        windows = Windows(recording, recording_program, build_root, folder)
        with concurrent.futures.ThreadPoolExecutor(len(runs)) as pool:
            found = [tree for trees in pool.map(lambda run: list(windows.trees(*run)), runs)
                     for tree in trees]
    print("1..2")
    report(1, "everything in the window can be translated", len(found),
           [fault for tree in found for fault in untranslated(*tree)])
    report(2, "nothing is cut where words are long", len(found), [fault for tree in found for fault in cut(*tree)])
    return 0


if __name__ == "__main__":
    sys.exit(main())
