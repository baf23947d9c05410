#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Check the manual and the manual pages that are made of it.

Every command and option that the manual names is one of the program's own; every command, option and
key of a bench sheet stands in its manual page; groff reads the pages without a warning; and what it
makes of them holds every sentence of the manual.

Usage: check_manual.py BREEZEWAY-CLI MANUAL.xml BREEZEWAY.1 BREEZEWAY-CLI.1 BREEZEWAY-BENCH.5
"""
import json
import os
import re
import subprocess
import sys
import xml.etree.ElementTree as ElementTree

WINDOW, CLI, BENCH = range(3)


def ask(cli, *arguments):
    environment = dict(os.environ, LC_ALL="C.UTF-8")
    answer = subprocess.run([cli, *arguments, "--json"], check=True, capture_output=True,
                            encoding="utf-8", env=environment)
    return json.loads(answer.stdout)


def plain(text):
    """Text without what line breaks, justification and no-break spaces change."""
    return " ".join(text.replace("\u00a0", " ").split())


def render(path):
    """What groff makes of a page, as one line of text, and what it complains of."""
    groff = subprocess.run(
        ["groff", "-K", "utf8", "-man", "-ww", "-T", "utf8", "-P", "-cbou", "-rLL=500n", path],
        capture_output=True, encoding="utf-8", check=False)
    return plain(groff.stdout), groff.stderr


def commands_of(cli):
    return {one["command"]: ask(cli, "help", one["command"])["options"]
            for one in ask(cli, "help")["commands"]}


def name_faults(manual, commands):
    """What the manual names and the program has not."""
    faults = []
    for element in manual.iter("command"):
        words = element.text.split()
        known = words == ["help"] or all(word == "help" or word in commands for word in words)
        if not known:
            faults.append(f"there is no command “{element.text}”")
    for element in manual.iter("option"):
        wanted = [element.get("of")] if element.get("of") else list(commands)
        for command in wanted:
            if element.text not in [option["name"] for option in commands[command]]:
                faults.append(f"{command} has no option “{element.text}”")
    for element in manual.iter("code"):
        for line in element.text.splitlines():
            if line.startswith("breezeway-cli ") and line.split()[1] not in commands:
                faults.append(f"there is no command in “{line}”")
    return faults


def text_faults(manual):
    """Signs that would not come to translators as they come to the window."""
    return [f"“{text.strip()}” has a sign that must not stand in a text"
            for element in manual.iter() if element.tag != "code"
            for text in (element.text or "", element.tail or "") if re.search(r"[&<]", text)]


def command_faults(text, commands):
    faults = []
    for name, options in commands.items():
        if f" {name} breezeway-cli {name}" not in text:
            faults.append(f"the command {name} has no place of its own")
        for option in options:
            if option["name"] not in text or plain(option["meaning"]) not in text:
                faults.append(f"{name} {option['name']} is not there")
    return faults


def json_faults(text, commands):
    """Every command has its keys, the first of which is the version."""
    part = text[text.index(" JSON What each command prints"):text.index(" EXIT STATUS ")]
    return [f"the keys of {name} are not there" for name in commands
            if f" {name} format (number)" not in part]


def key_faults(text, keys):
    return [f"[{key['group']}] {key['key']} is not there" for key in keys
            if plain(key["allowed"]) not in text or f" {key['key']}" not in text]


def sentence_faults(manual, texts):
    """Sentences of the manual that none of the pages holds."""
    faults = []
    for element in manual.iter():
        if element.tag not in ("p", "item", "name"):
            continue
        words = "".join(("breezeway-cli " if piece.tag == "command" else "") + (piece.text or "")
                        + (piece.tail if piece is not element and piece.tail else "")
                        for piece in element.iter())
        if not any(plain(words) in text for text in texts):
            faults.append(f"no page says “{plain(words)}”")
    return faults


def report(number, title, faults):
    print(f"{'not ok' if faults else 'ok'} {number} - {title}")
    for fault in faults:
        print(f"# {fault}")


def main():
    cli, path, *pages = sys.argv[1:]
    manual = ElementTree.parse(path).getroot()
    commands = commands_of(cli)
    rendered = [render(page) for page in pages]
    texts = [text for text, _ in rendered]
    print("1..6")
    report(1, "the manual names what the program has", name_faults(manual, commands))
    report(2, "the texts can be translated", text_faults(manual))
    report(3, "groff has nothing to complain of",
           [line for _, said in rendered for line in said.splitlines()])
    report(4, "breezeway-cli(1) has every command and option, and the keys of its JSON",
           command_faults(texts[CLI], commands) + json_faults(texts[CLI], commands))
    report(5, "breezeway-bench(5) has every key",
           key_faults(texts[BENCH], ask(cli, "sheet-check", "--list")["keys"]))
    report(6, "the pages have every sentence of the manual", sentence_faults(manual, texts))


if __name__ == "__main__":
    main()
