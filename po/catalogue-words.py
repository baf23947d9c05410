#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Write po/catalogue-words.h: the texts of the built-in catalogue, for translators.

xgettext does not read key files, so the texts stand once more in a header that is no part of the
program. Run it after a change in data/catalogue; `house-words` says when it was forgotten.

Usage: catalogue-words.py [--check]
"""
import os
import re
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
CATALOGUE = os.path.join(ROOT, "data", "catalogue")
HEADER = os.path.join(ROOT, "po", "catalogue-words.h")

# The keys that bw_keyfile_shipped() translates.
TEXT = re.compile(r"^(name|note|source|origin)=(.+)$", re.MULTILINE)

# What a translator is told of the texts of a file.
ABOUT = {
    "adaptors.ini": "a lead, a part or an adaptor",
    "leads.ini": "a kind of coaxial lead",
    "limits.ini": "a standard whose limits a reading is held against",
    "monitors.ini": "a class of monitors, and its inputs",
    "rasters.ini": "a raster: the timing of a picture",
    "sources.ini": "a class of sources",
}

TOP = """/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The texts of data/catalogue for translators, written by po/catalogue-words.py. No part of the program
 * includes this file. Standards keep the names that they have in English. */
"""


def is_to_translate(text):
    """Whether it has a word of its own: "800x600, 60 Hz" and "CTA-861-H" are the same everywhere."""
    return any(word not in ("Hz", "kHz", "MHz", "mm") for word in re.findall(r"[A-Za-z]*[a-z]{2,}", text))


def texts_of(name):
    """Each text of a file once, in its order."""
    with open(os.path.join(CATALOGUE, name), encoding="utf-8") as file:
        found = [match.group(2) for match in TEXT.finditer(file.read())]
    return list(dict.fromkeys(filter(is_to_translate, found)))


def quoted(text):
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def header():
    parts = [TOP]
    seen = set()
    for name, about in ABOUT.items():
        for text in texts_of(name):
            if text in seen:
                continue
            seen.add(text)
            parts.append(f'/* Translators: of {about}. */\nNC_ ("catalogue", {quoted(text)})\n')
    return "\n".join(parts)


def main():
    new = header()
    if sys.argv[1:] != ["--check"]:
        with open(HEADER, "w", encoding="utf-8") as file:
            file.write(new)
        return 0
    with open(HEADER, encoding="utf-8") as file:
        if file.read() == new:
            return 0
    print("po/catalogue-words.h does not hold the texts of data/catalogue; run po/catalogue-words.py")
    return 1


if __name__ == "__main__":
    sys.exit(main())
