#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What the program says, written down, so that a change of its inside can be held against it.

Before you move or rewrite anything that is to leave the output as it is:

    ninja -C _build
    tests/recording.py make _build /somewhere/before

then change the code, build, and

    tests/recording.py make _build /somewhere/after
    tests/recording.py compare /somewhere/before /somewhere/after

`compare` says for each group of cases what differs, and ends with status 1 if something does. Each
difference is a fault of the change, or a fault that it mends and that its commit names. A recording
takes some minutes and 270 megabytes. It is no part of the project: it holds every word and every
figure, and would have to change with each of them. Make both recordings on one machine, for fonts,
cairo and GTK leave their marks in drawings and pages.

What is recorded: every command of breezeway-cli in text, as JSON and as CSV, with its standard
output, its standard error and its exit status, over the demo, the whole catalogue and the bench
sheets in tests/sheets; drawings as SVG; printed sheets as the text of their pages; and, by
tests/app/record-window.c, what each page of the window is to a screen reader, and its drawings.

Two kinds of difference are told apart from the others, as a change of the inside alone brings them.
They do not change the exit status, unless --strict is given:
  - a drawing whose file differs and whose picture does not (this needs rsvg-convert);
  - a page whose words are the same, one after the other, in widgets that are nested otherwise.

    tests/recording.py coverage _build

says which outcomes of the fit the sheets in tests/sheets reach, and ends with status 1 if one is
missing that can occur; see recording_coverage.py. The cases are in recording_cases.py: whoever adds
a command or an option adds cases there.

Python's standard library is enough. The window needs xvfb-run, and printed sheets need pdftotext
and pdfinfo.
"""

import argparse
import concurrent.futures
import difflib
import hashlib
import itertools
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time

import recording_coverage
from recording_cases import all_cases
from recording_program import Cli, all_sheets, environment, find_folder_with, find_program, stop
from recording_program import text_of

# What is written down

ID_USED = re.compile(r'(?<=["#])[A-Za-z][A-Za-z0-9_-]*(?=["\)])')
LONG_TABLE = 3000  # Of a table of more lines, the first and the last lines and a sum are kept.
ENDS = 20


def plain_svg(text):
    """An SVG with its ids, which are counted over the life of a process, counted from 0."""
    ids = set(re.findall(r'\bid="([^"]+)"', text))
    new = {}

    def rename(match):
        return new.setdefault(match[0], f"id{len(new)}") if match[0] in ids else match[0]

    return ID_USED.sub(rename, text)


def plain_text(text, folder):
    """What the program says, without what is different each time."""
    text = text.replace(folder, "FOLDER")
    text = re.sub(r"(\.(?:svg|pdf|csv|png|edid))\.[A-Z0-9]{6}\b", r"\1.XXXXXX", text)
    text = re.sub(r"Computed in [^”]*", "Computed in …", text)
    text = re.sub(r"^ *menu-item .* app\.open-recent\n", "", text, flags=re.MULTILINE)
    return re.sub(r"0x[0-9a-f]{6,}", "0x…", text)


def words_of_pdf(path):
    pages = subprocess.run(["pdftotext", "-layout", path, "-"], capture_output=True, check=True)
    about = subprocess.run(["pdfinfo", path], capture_output=True, check=True)
    kept = re.findall(r"^(?:Title|Pages|Page size).*\n", text_of(about.stdout), re.MULTILINE)
    return "".join(kept) + text_of(pages.stdout)


def words_of_table(path):
    with open(path, encoding="utf-8") as file:
        text = file.read()
    lines = text.splitlines(keepends=True)
    if len(lines) <= LONG_TABLE:
        return text
    digest = hashlib.sha256(text.encode()).hexdigest()
    between = f"… {len(lines)} lines in all, SHA-256 {digest}\n"
    return "".join([*lines[:ENDS], between, *lines[-ENDS:]])


def words_of_bytes(path):
    with open(path, "rb") as file:
        data = file.read()
    return "".join(data[i:i + 16].hex(" ") + "\n" for i in range(0, len(data), 16))


WORDS_OF = {".pdf": words_of_pdf, ".csv": words_of_table, ".edid": words_of_bytes}


def read(path):
    with open(path, encoding="utf-8", errors="surrogateescape") as file:
        return file.read()


def write(path, text):
    os.makedirs(os.path.dirname(path), exist_ok=True)
    with open(path, "w", encoding="utf-8", errors="surrogateescape") as file:
        file.write(text)


# The command line


def record_commands(cli, case, own):
    parts = []
    before = ""
    for command in case.commands:
        args = [a.replace("{out}", own).replace("{stdout}", before.strip()) for a in command]
        status, before, trouble = cli.run(args)
        parts.append(f"$ breezeway-cli {' '.join(args)}\n[exit status {status}]\n{before}")
        if trouble:
            parts.append(f"[standard error]\n{trouble}")
    return parts


def record_case(cli, case, out_dir):
    own = "out-" + case.key().replace("/", "-")
    target = os.path.join(out_dir, case.group, case.name)
    parts = record_commands(cli, case, own)
    for suffix in case.files:
        path = os.path.join(cli.folder, own + suffix)
        if not os.path.exists(path):
            parts.append(f"[no file {suffix}]\n")
        elif suffix == ".svg":
            write(target + ".svg", plain_svg(read(path)))
        else:
            parts.append(f"[file {suffix}]\n{WORDS_OF[suffix](path)}")
        if os.path.exists(path):
            os.unlink(path)
    write(target + ".txt", plain_text("".join(parts), cli.folder))


def record_cli(build_dir, folder, out_dir, jobs):
    cli = Cli(build_dir, folder)
    cases = all_cases(cli)
    with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
        for done in [pool.submit(record_case, cli, case, out_dir) for case in cases]:
            done.result()
    return len(cases)


# The window

CELLS_OF_A_WINDOW = 2
# So large that its middle, where the pointer stands, lies outside of every window.
SCREEN = ["xvfb-run", "-a", "-s", "-screen 0 3840x2160x24 -noreset"]


class Window:
    """The window, walked through by record-window on a screen of its own."""

    def __init__(self, build_dir, folder):
        self.program = find_program(build_dir, "record-window")
        self.schemas = find_folder_with(build_dir, "gschemas.compiled")
        self.folder = folder

    def environment(self, home):
        return {
            **environment(home),
            "DBUS_SESSION_BUS_ADDRESS": "disabled:",
            "GDK_BACKEND": "x11",
            "GIO_USE_VFS": "local",
            "GSETTINGS_BACKEND": "memory",
            "GSETTINGS_SCHEMA_DIR": self.schemas,
            "GSK_RENDERER": "cairo",
            "GTK_A11Y": "test",
            "NO_AT_BRIDGE": "1",
        }

    def record(self, sheet, cells, out_dir):
        name = sheet.name if cells > 0 else sheet.name + "-explored"
        raw = os.path.join(self.folder, "window-" + name)
        os.makedirs(raw)
        done = subprocess.run([*SCREEN, self.program, raw, sheet.path, str(cells)],
                              env=self.environment(os.path.join(self.folder, "home-" + name)),
                              cwd=self.folder, stdin=subprocess.DEVNULL, capture_output=True,
                              timeout=900)
        for file in os.listdir(raw):
            text = read(os.path.join(raw, file))
            write(os.path.join(out_dir, "window", name, file),
                  plain_svg(text) if file.endswith(".svg") else self.plain(text, sheet))
        messages = f"[exit status {done.returncode}]\n{text_of(done.stderr)}"
        write(os.path.join(out_dir, "window", name, "messages.txt"), self.plain(messages, sheet))
        shutil.rmtree(raw)
        return done.returncode == 0

    def plain(self, text, sheet):
        return plain_text(text.replace(os.path.dirname(sheet.path), "FOLDER"), self.folder)


def record_windows(build_dir, folder, out_dir, jobs):
    window = Window(build_dir, folder)
    demo, *others = all_sheets()
    runs = [(demo, 0), (demo, demo.sources)]
    runs += [(sheet, min(CELLS_OF_A_WINDOW, sheet.sources)) for sheet in others]
    with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
        done = list(pool.map(lambda run: window.record(*run, out_dir), runs))
    bad = [sheet.name for (sheet, _), well in zip(runs, done) if not well]
    if bad:
        stop(f"the window ended badly with {', '.join(bad)}; see messages.txt there")
    return len(runs)


def make(args):
    if os.path.exists(args.out_dir) and os.listdir(args.out_dir):
        stop(f"{args.out_dir} is not empty")
    for tool in ("pdftotext", "pdfinfo", "xvfb-run"):
        if shutil.which(tool) is None:
            stop(f"{tool} is needed")
    out_dir = os.path.abspath(args.out_dir)
    begun = time.monotonic()
    with tempfile.TemporaryDirectory(prefix="recording-") as folder:
        if not args.window_only:
            n = record_cli(args.build_dir, folder, out_dir, args.jobs)
            print(f"{n} cases of the command line, {time.monotonic() - begun:.0f} s")
        if not args.cli_only:
            # A window mostly waits for itself to come to rest.
            n = record_windows(args.build_dir, folder, out_dir, 4 * args.jobs)
            print(f"{n} windows, {time.monotonic() - begun:.0f} s in all")
    return 0


# Comparing


def files_below(folder):
    return {os.path.relpath(os.path.join(at, name), folder)
            for at, _, names in os.walk(folder) for name in names}


def said_by_tree(text):
    """The lines of widgets that say something, without their place and their type."""
    lines = (re.sub(r" \(\w+\)$", "", line.strip()) for line in text.splitlines())
    return [line for line in lines if "“" in line or "focusable" in line or "value=" in line]


def is_same_picture(before, after):
    if shutil.which("rsvg-convert") is None:
        return False
    pictures = [subprocess.run(["rsvg-convert", "--format=png", path], capture_output=True,
                               check=False).stdout for path in (before, after)]
    return pictures[0] != b"" and pictures[0] == pictures[1]


def differs_inside_only(before, after):
    if before.endswith(".tree"):
        return said_by_tree(read(before)) == said_by_tree(read(after))
    return before.endswith(".svg") and is_same_picture(before, after)


def show_difference(name, before, after, most):
    if name.endswith(".svg"):
        print(f"  {name}: the drawing differs")
        return
    texts = [read(before), read(after)]
    lines = [said_by_tree(t) if name.endswith(".tree") else t.splitlines() for t in texts]
    changes = [line for line in difflib.unified_diff(*lines, n=0, lineterm="")
               if not re.match(r"---|\+\+\+|@@", line)]
    print(f"  {name}: {len(changes)} lines")
    for line in changes[:most]:
        print("    " + line[:160])
    if len(changes) > most:
        print(f"    … {len(changes) - most} more")


def group_of(name):
    parts = name.split(os.sep)
    return os.sep.join(parts[:2]) if parts[0] in ("sheets", "window") else parts[0]


class Comparison:
    """Two recordings, group by group."""

    def __init__(self, args):
        self.args = args
        self.before = files_below(args.before)
        self.after = files_below(args.after)
        self.wrong = 0
        self.inside = 0

    def paths(self, name):
        return os.path.join(self.args.before, name), os.path.join(self.args.after, name)

    def is_changed(self, name):
        return name in self.before & self.after and len({read(p) for p in self.paths(name)}) > 1

    def compare_group(self, group, names):
        gone = [name for name in names if name not in self.after]
        new = [name for name in names if name not in self.before]
        changed = [name for name in names if self.is_changed(name)]
        inside = {name for name in changed if differs_inside_only(*self.paths(name))}
        differing = [name for name in changed if name not in inside]
        self.wrong += len(gone) + len(new) + len(differing)
        self.inside += len(inside)
        if not gone and not new and not changed:
            return
        print(f"{group}: {len(names)} files, {len(differing)} differ, {len(gone)} gone, "
              f"{len(new)} new, {len(inside)} differ inside only")
        for word, some in (("gone", gone), ("new", new)):
            for name in some[:self.args.cases]:
                print(f"  {name}: {word}")
        for name in differing[:self.args.cases]:
            show_difference(name, *self.paths(name), self.args.lines)
        if len(differing) > self.args.cases:
            print(f"  … {len(differing) - self.args.cases} more files differ")

    def run(self):
        names = sorted(self.before | self.after, key=lambda name: (group_of(name), name))
        for group, of_group in itertools.groupby(names, key=group_of):
            self.compare_group(group, list(of_group))
        print(f"{len(names)} files: {self.wrong} differ, {self.inside} differ inside only")
        return self.wrong > 0 or (self.args.strict and self.inside > 0)


def compare(args):
    comparison = Comparison(args)
    if not comparison.before or not comparison.after:
        stop("one of the two is no recording")
    return 1 if comparison.run() else 0


def main():
    parser = argparse.ArgumentParser(description=__doc__,
                                     formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--jobs", type=int, default=2,
                        help="how many programs run at once; without it 2")
    modes = parser.add_subparsers(required=True, metavar="MODE")
    one = modes.add_parser("make", help="record what the program of a build says")
    one.add_argument("build_dir")
    one.add_argument("out_dir", help="a folder that is empty or not there yet")
    one.add_argument("--cli-only", action="store_true", help="leave out the window")
    one.add_argument("--window-only", action="store_true", help="leave out the command line")
    one.set_defaults(run=make)
    two = modes.add_parser("compare", help="say in what two recordings differ")
    two.add_argument("before")
    two.add_argument("after")
    two.add_argument("--strict", action="store_true", help="what differs inside only counts too")
    two.add_argument("--cases", type=int, default=5, help="of a group shown; without it 5")
    two.add_argument("--lines", type=int, default=8, help="of a case shown; without it 8")
    two.set_defaults(run=compare)
    three = modes.add_parser("coverage", help="say what the sheets of the recording reach")
    three.add_argument("build_dir")
    three.add_argument("--quiet", action="store_true", help="say only what is missing")
    three.set_defaults(run=recording_coverage.run)
    args = parser.parse_args()
    sys.exit(args.run(args))


if __name__ == "__main__":
    main()
