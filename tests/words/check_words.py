#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What translators get: that no file with text is forgotten, and that the texts can be translated.

Usage: check_words.py SOURCE_ROOT TEMPLATE.pot
"""
import os
import re
import subprocess
import sys

# What makes text for translators in C, and in a template of the window.
MARKS_IN_C = re.compile(r"\b(?:N?C_|N?_|g_dn?gettext|g_dpgettext2?) \(\s*(?:GETTEXT_PACKAGE|\")")
MARKS_IN_XML = re.compile(r'translatable="yes"|<description|<summary')
SKIPPED = {"tests", ".git"}


def files_below(root):
    for folder, folders, names in os.walk(root):
        folders[:] = [name for name in folders
                      if name not in SKIPPED and not name.startswith("_build")]
        for name in names:
            yield os.path.relpath(os.path.join(folder, name), root)


def has_words(root, path):
    pattern = {".c": MARKS_IN_C, ".h": MARKS_IN_C, ".ui": MARKS_IN_XML}.get(os.path.splitext(path)[1])
    if path.endswith((".desktop.in", ".metainfo.xml.in", ".gschema.xml", "manual.xml")):
        return True
    if pattern is None:
        return False
    with open(os.path.join(root, path), encoding="utf-8") as file:
        return pattern.search(file.read()) is not None


def lines_of(root):
    with open(os.path.join(root, "po", "POTFILES"), encoding="utf-8") as file:
        return file.read().splitlines()


def check_files_with_words(root, _):
    """po/POTFILES names the files that have text for people, and no other."""
    listed = set(lines_of(root))
    for path in files_below(root):
        if has_words(root, path) and path not in listed:
            yield f"{path} has text to translate and is not named in po/POTFILES"
        if path in listed and not has_words(root, path):
            yield f"{path} has no text to translate; take it out of po/POTFILES"
    for path in sorted(listed):
        if not os.path.exists(os.path.join(root, path)):
            yield f"po/POTFILES names {path}, which is not there"


def check_order(root, _):
    """po/POTFILES is in the order of the alphabet and names each file once."""
    if lines_of(root) != sorted(set(lines_of(root))):
        yield "po/POTFILES is not in the order of the alphabet, or names a file twice"


def check_catalogue(root, _):
    """po/catalogue-words.h has the texts of data/catalogue."""
    done = subprocess.run([sys.executable, "-B", os.path.join(root, "po", "catalogue-words.py"), "--check"],
                          capture_output=True, text=True, check=False)
    if done.returncode != 0:
        yield done.stdout + done.stderr


# The messages


def read_messages(template):
    """(place, comment, msgid, has a plural) of each message."""
    with open(template, encoding="utf-8") as file:
        entries = file.read().split("\n\n")[1:]
    for entry in entries:
        message = re.search(r'^msgid ((?:".*"\n?)+)', entry, re.MULTILINE)
        text = "".join(re.findall(r'"(.*)"', message.group(1)))
        place = re.search(r"^#: (\S+)", entry, re.MULTILINE)
        comment = "\n".join(re.findall(r"^#\. (.*)", entry, re.MULTILINE))
        yield place.group(1) if place else "", comment, text, "\nmsgid_plural" in entry


# A whole number and a noun after it. Not meant are a number that names one thing and stands after its
# noun ("pin 17", "line 2"), the second of a size ("720 by 576 pixels") and that of a shape ("4:3").
COUNT = re.compile(r"(?<![Pp]in )(?<!line )(?<!by )(?<![:×])%(?:\d\$)?(?:[du]|zu)[ \u00a0](?!%)(\w+)")
# What follows a number and is the same for every number.
SAME_FOR_ALL = {"px", "dB", "MiB", "KiB", "kHz", "Hz", "V", "more", "of", "to", "and", "by", "is", "are",
                "or", "before", "after", "at", "in", "was", "has",
                "that"}


def check_plurals(_, template):
    """A number before a noun has its plurals by ngettext."""
    for place, comment, text, plural in read_messages(template):
        nouns = [noun for noun in COUNT.findall(text) if noun not in SAME_FOR_ALL]
        if nouns and not plural and "always several" not in comment:
            yield f"{place}: “{text}” counts {', '.join(nouns)} and has no plural"


def check_empty(_, template):
    """No text is empty, and none begins or ends in a space that a translator would not see."""
    for place, comment, text, _ in read_messages(template):
        if text == "":
            yield f"{place}: an empty text cannot be translated"
        if text != text.strip(" ") and "space" not in comment:
            yield f"{place}: “{text}” begins or ends in a space, and its comment does not say so"


DIRECTIVE = re.compile(r"%(?!%)(\d+\$)?[-+#0]*(?:\*\d*\$?|\d+)?(?:\.(?:\*\d*\$?|\d+))?(?:hh|h|ll|l|z)?[a-zA-Z]")


def check_numbered(_, template):
    """Two things or more that are put into a text are numbered, so that they may change places."""
    for place, _, text, _ in read_messages(template):
        found = list(DIRECTIVE.finditer(text.replace("%%", "")))
        if len(found) > 1 and not all(each.group(1) for each in found):
            yield f"{place}: “{text}” has several arguments without numbers; run po/number-arguments.py"


CHECKS = (check_files_with_words, check_order, check_catalogue, check_plurals, check_empty, check_numbered)


def main():
    root, template = sys.argv[1:]
    print(f"1..{len(CHECKS)}")
    for number, check in enumerate(CHECKS, 1):
        faults = list(check(root, template))
        print(f"{'not ok' if faults else 'ok'} {number} {check.__doc__}")
        for fault in faults:
            print("\n".join(f"# {line}" for line in fault.splitlines()))
    return 0


if __name__ == "__main__":
    sys.exit(main())
