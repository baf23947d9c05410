#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Number the arguments of messages that have several: "%s at %s" becomes "%1$s at %2$s".

A translator must be able to let them change places. `house-words` names messages without numbers; this
writes the numbers into the sources, wherever such a message is marked for translation.

Usage: number-arguments.py
"""
import os
import re

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))

STRING = r'"(?:[^"\\\n]|\\.)*"'
# A marked message, or the second of a pair of plurals, in as many pieces as it stands in the source.
MESSAGE = re.compile(rf"(?:\b(?:_|N_) \(|\b(?:C_|NC_) \({STRING},\s*|g_dngettext \(GETTEXT_PACKAGE,\s*)"
                     rf"{STRING}(?:\s*{STRING})*(?:,\s*{STRING}(?:\s*{STRING})*)?")
PIECES = re.compile(rf"{STRING}(?:\s*{STRING})*")
DIRECTIVE = re.compile(r"%%|%(\d+\$)?([-+#0]*\d*(?:\.\d+)?(?:hh|h|ll|l|z|t)?[a-zA-Z])")


def numbered(text):
    """One message with its arguments numbered, if it has several and none has a number."""
    found = [each for each in DIRECTIVE.finditer(text) if each.group() != "%%"]
    if len(found) < 2 or any(each.group(1) for each in found) or "*" in text:
        return text
    number = 0

    def put_number(directive):
        nonlocal number
        if directive.group() == "%%":
            return "%%"
        number += 1
        return f"%{number}${directive.group(2)}"

    return DIRECTIVE.sub(put_number, text)


def fix(source):
    return MESSAGE.sub(lambda message: PIECES.sub(lambda text: numbered(text.group()), message.group()),
                       source)


def main():
    for folder, _, names in os.walk(os.path.join(ROOT, "src")):
        for name in sorted(names):
            path = os.path.join(folder, name)
            if not name.endswith((".c", ".h")):
                continue
            with open(path, encoding="utf-8") as file:
                before = file.read()
            after = fix(before)
            if after != before:
                with open(path, "w", encoding="utf-8") as file:
                    file.write(after)
                print(os.path.relpath(path, ROOT))


if __name__ == "__main__":
    main()
