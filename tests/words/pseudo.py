#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Make a translation of every message into a language that nobody speaks.

Each letter gets an accent, each vowel stands twice, which makes a text about a third longer, and
brackets show where the text begins and ends. Whatever a program then says in plain letters has not
been translated, a bracket that is missing has been cut off, and the text is still readable.

Usage: pseudo.py TEMPLATE.pot OUT.po LOCALE_FOLDER
"""
import os
import re
import subprocess
import sys

LANGUAGE = "xx"
OPEN, CLOSE = "⟦", "⟧"

PLAIN = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
ACCENTED = "áƀçďéƒğĥíĵķłɱñóþɋřšťúṽŵẋýžÁƁÇĎÉƑĞĤÍĴĶŁṀÑÓÞɊŘŠŤÚṼŴẊÝŽ"
ACCENTS = {ord(plain): accented * (2 if plain in "aeiouAEIOU" else 1)
           for plain, accented in zip(PLAIN, ACCENTED)}

# What is put into a message, or is markup, stays as it is.
DIRECTIVE = re.compile(r"%(?:\d+\$)?[-+#0']*(?:\*(?:\d+\$)?|\d+)?(?:\.(?:\*(?:\d+\$)?|\d+))?"
                       r"(?:hh|h|ll|l|z|j|t|L)?[a-zA-Z%]|%<[A-Za-z0-9]+>")
MARKUP = re.compile(r"</?[a-z]+(?: [^<>]*)?>|&[a-z]+;")
ESCAPE = re.compile(r"\\.")


def pseudo(text, has_directives):
    """TEXT, as it stands between quotation marks of a .po file, in the language that nobody speaks."""
    kept = [ESCAPE, MARKUP] + ([DIRECTIVE] if has_directives else [])
    pattern = re.compile("|".join(f"(?:{each.pattern})" for each in kept))
    head, body, tail = re.fullmatch(r"((?:\\n| )*)(.*?)((?:\\n| )*)", text, re.DOTALL).groups()
    said = []
    at = 0
    for keep in pattern.finditer(body):
        said += [body[at:keep.start()].translate(ACCENTS), keep.group()]
        at = keep.end()
    said.append(body[at:].translate(ACCENTS))
    return head + OPEN + "".join(said) + CLOSE + tail


def strings_of(entry):
    """The strings of one entry of a template by their keyword, each joined to one line."""
    strings = {}
    keyword = None
    for line in entry.splitlines():
        found = re.match(r'(?:(msgctxt|msgid|msgid_plural|msgstr(?:\[\d\])?) )?"(.*)"$', line)
        if found is None:
            continue
        keyword = found.group(1) or keyword
        strings[keyword] = strings.get(keyword, "") + found.group(2)
    return strings


def is_formatted(entry):
    return re.search(r"^#,.*(?<!no-)c-format", entry, re.MULTILINE) is not None


def translate(entry):
    strings = strings_of(entry)
    formatted = is_formatted(entry)
    lines = ["#, c-format"] if formatted else []
    if "msgctxt" in strings:
        lines.append(f'msgctxt "{strings["msgctxt"]}"')
    lines.append(f'msgid "{strings["msgid"]}"')
    if "msgid_plural" not in strings:
        lines.append(f'msgstr "{pseudo(strings["msgid"], formatted)}"')
    else:
        lines.append(f'msgid_plural "{strings["msgid_plural"]}"')
        lines.append(f'msgstr[0] "{pseudo(strings["msgid"], formatted)}"')
        lines.append(f'msgstr[1] "{pseudo(strings["msgid_plural"], formatted)}"')
    return "\n".join(lines)


# What gettext() gives for an empty text: seen on a screen, it shows that one was translated.
HEADER = r'''msgid ""
msgstr ""
"Project-Id-Version: breezeway\n"
"Language: \n"
"MIME-Version: 1.0\n"
"Content-Type: text/plain; charset=UTF-8\n"
"Content-Transfer-Encoding: 8bit\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\n"'''


def main():
    with open(sys.argv[1], encoding="utf-8") as template:
        entries = template.read().split("\n\n")
    messages = [entry for entry in entries[1:] if strings_of(entry).get("msgid")]
    with open(sys.argv[2], "w", encoding="utf-8") as out:
        out.write("\n\n".join([HEADER, *map(translate, messages)]) + "\n")
    folder = os.path.join(sys.argv[3], LANGUAGE, "LC_MESSAGES")
    os.makedirs(folder, exist_ok=True)
    subprocess.run(["msgfmt", "--check-format", "-o", os.path.join(folder, "breezeway.mo"), sys.argv[2]],
                   check=True)


if __name__ == "__main__":
    main()
