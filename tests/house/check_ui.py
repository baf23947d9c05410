#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Validate every GtkBuilder file of a folder with gtk4-builder-tool, and see that each is built in.

The tool knows GTK's classes and functions only. What is our own is therefore first left out of a
copy: signal handlers, bindings, and the properties that need one of our classes or functions; our
widgets become a GtkBox. That the whole file loads is for the tests of the application to show.

Usage: check_ui.py FOLDER
"""
import os
import signal
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

# Properties that every widget has: kept on our own classes too.
WIDGET_PROPERTIES = {
    "can-focus", "can-target", "css-classes", "cursor", "focus-on-click", "focusable", "halign",
    "has-tooltip", "height-request", "hexpand", "layout-manager", "margin-bottom", "margin-end",
    "margin-start", "margin-top", "name", "opacity", "overflow", "sensitive", "tooltip-markup",
    "tooltip-text", "valign", "vexpand", "visible", "width-request",
}

# Far more than a file takes on a busy machine, and less than the time that the test has.
PATIENCE_S = 60


def is_own(element):
    return element.get("class", "").startswith("Bw")


def strip_own_type(element):
    """Keep what any widget has, and call it a GtkBox."""
    for child in list(element):
        if child.tag == "property" and child.get("name").replace("_", "-") not in WIDGET_PROPERTIES:
            element.remove(child)
    element.set("class", "GtkBox")


def needs_own_code(element):
    """Whether the element can only be made with one of our classes or functions."""
    if element.tag in ("binding", "signal"):
        return True
    if element.tag != "property":
        return False
    return (element.get("bind-source") is not None
            or any(is_own(child) for child in element.iter("object"))
            or any(True for tag in ("closure", "lookup") for _ in element.iter(tag)))


def reduce_tree(element):
    for child in list(element):
        if needs_own_code(child):
            element.remove(child)
            continue
        reduce_tree(child)
        if child.tag == "object" and is_own(child):
            strip_own_type(child)


def how_it_ended(status):
    """In words: the tool crashes without one where it cannot open the display."""
    if status < 0:
        return f"the tool was ended by signal {-status} ({signal.strsignal(-status)})"
    return f"the tool ended with status {status}"


def validate(path):
    """None if the tool accepts the file, else what it said and how it ended."""
    tree = ElementTree.parse(path)
    reduce_tree(tree.getroot())
    with tempfile.NamedTemporaryFile(suffix=".ui") as copy:
        tree.write(copy.name, encoding="utf-8", xml_declaration=True)
        try:
            done = subprocess.run(
                ["gtk4-builder-tool", "validate", copy.name], capture_output=True, text=True,
                check=False, timeout=PATIENCE_S)
        except subprocess.TimeoutExpired:
            return f"the tool did not end within {PATIENCE_S} s"
    if done.returncode == 0:
        return None
    return f"{done.stdout}{done.stderr}{how_it_ended(done.returncode)}"


def named_in_resources(folder):
    tree = ElementTree.parse(os.path.join(folder, "breezeway.gresource.xml"))
    return {file.text.strip() for file in tree.getroot().iter("file")}


def check(folder, name):
    if name not in named_in_resources(folder):
        return f"{name} is not named in breezeway.gresource.xml"
    return validate(os.path.join(folder, name))


def main():
    folder = sys.argv[1]
    names = sorted(name for name in os.listdir(folder) if name.endswith(".ui"))
    print(f"1..{max(len(names), 1)}")
    if not names:
        print("not ok 1 - the folder holds no .ui file")
        return 1
    failed = False
    for number, name in enumerate(names, 1):
        fault = check(folder, name)
        failed = failed or fault is not None
        print(f"{'ok' if fault is None else 'not ok'} {number} - {name}")
        for line in (fault or "").splitlines():
            print(f"# {line}")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
