#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Write the manual pages breezeway(1), breezeway-cli(1) and breezeway-bench(5).

What stands in manual.xml is taken from there. The commands with their options, the keys of a bench
sheet and the cautions are asked of breezeway-cli, the options of the window of breezeway, the keys of
the window of its list of shortcuts, and the date of the release of the metainfo: each is written down
once.

The keys of the JSON are those that the commands below print of the demonstration.

Usage: manual-to-man.py --cli BREEZEWAY-CLI --app BREEZEWAY --metainfo FILE --shortcuts FILE
                        --demo SHEET --version VERSION MANUAL.xml BREEZEWAY.1 BREEZEWAY-CLI.1 BREEZEWAY-BENCH.5
"""
import argparse
import json
import os
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

# How elements of running text are set: a font of roff.
FONTS = {"key": "B", "menu": "B", "button": "B", "view": "B", "field": "B", "program": "B",
         "command": "B", "option": "B", "file": "I", "word": "I"}

NAMES = {
    "breezeway": "workbench for video signal and timing calculation",
    "breezeway-cli": "video signal and timing calculation without a screen",
    "breezeway-bench": "the file of a bench sheet",
}


# What is run for the keys of each command's JSON, so that every form of its result occurs. {demo} is the
# demonstration and {out} a file that is not kept.
RUNS = {
    "timing": ["525-59.94-interlaced", "cta-861-vic-5",
               "--for-monitor {demo} --active 640x480 --field-rate 60Hz", "--edid {out}.bin"],
    "identify": ["--line-rate 15.734kHz --field-rate 59.94Hz"],
    "solve": ["--list", "pixel-clock=27MHz h-total=858px"],
    "levels": ["--system ntsc-m --kind composite --bars 75",
               "--system pal-b --kind rgb --sync on-green --capacitor 220uF",
               "--system pal-b --kind component --sync on-y"],
    "readings": ["--list", "--list --standard smpte-170m",
                 "--standard smpte-170m line_sync=4.9us"],
    "cause": ["--system ntsc-m --kind composite --sync-level 570mV --white 1.42V",
              "{demo} --source 1 --input 1 --white 1.42V --dc 1V"],
    "detail": ["{demo} --source 1 --input 1", "{demo} --source 3 --input 3"],
    "work-back": ["--open 2.45V --loaded 380mV", "--level 1V --behind 282ohm --load 78ohm --wanted 0.7V",
                  "--level 1.4V", "--drop 3V,2.5V,100ohm", "--driver 5V,470ohm --driver 5V,1kohm",
                  "--pin 16 --reading 5V", "--subcarrier 3.5756MHz"],
    "pad": ["--from 5V --to 0.3V", "--match --driver 75ohm --load 50ohm", "--loss 6dB"],
    "capacitor": ["--value 1000uF --voltage 35V --measured 850uF --esr 0.3ohm --at 120Hz --rated-life 2000h "
                  "--rated-temp 105C --temp 65C", "--value 100uF --voltage 200V --measured 90uF"],
    "field-scan": ["--capacitor 1000uF --resistance 12ohm --field-rate 50Hz",
                   "--rows 18,22,12 --resistance 12ohm --scan 18ms"],
    "line-scan": ["--supply 130V --inductance 1.2mH --capacitor 9.1nF --scan 52.6us"],
    "supply": ["--mains 230V,50Hz --plate 115V,60Hz,1A --field-rate 50Hz --reservoir 220uF --load 0.4A"],
    "draw": ["525-59.94-interlaced --view line -o {out}.svg"],
    "waveform": ["--system pal-b --kind composite -o {out}.csv"],
    "sync": ["525-59.94-interlaced --gate xor", "525-59.94-interlaced --gate and -o {out}.svg"],
    "edid": ["{demo} -o {out}.bin"],
    "display": ["{out}.bin", "{out}.bin -o {out}.bench"],
    "fit": ["{demo}"],
    "hookup": ["{demo} --source 4 --input 3 --length 5m", "{demo} --source 8 --input 1"],
    "sheet-check": ["{demo}", "--list"],
    "report": ["{demo} -o {out}.pdf"],
    "catalogue": [""],
}


class Asked:
    """What the programs say of themselves."""

    def __init__(self, arguments):
        self.cli = arguments.cli
        self.app = arguments.app
        self.demo = arguments.demo
        everything = self.ask("help", "--json")
        self.cautions = everything["cautions"]
        self.commands = [self.ask("help", one["command"], "--json")
                         for one in everything["commands"]]
        self.keys = self.ask("sheet-check", "--list", "--json")["keys"]

    def run(self, *command):
        environment = dict(os.environ, LC_ALL="C.UTF-8", LANGUAGE="")
        return subprocess.run(command, check=True, capture_output=True, text=True,
                              encoding="utf-8", env=environment).stdout

    def ask(self, *arguments):
        return json.loads(self.run(self.cli, *arguments))

    def json_keys(self):
        """For each command the keys of its JSON: key, kind of value, meaning."""
        found = {}
        with tempfile.TemporaryDirectory() as folder:
            out = os.path.join(folder, "out")
            self.run(self.cli, "edid", self.demo, "-o", out + ".bin")
            for command, runs in RUNS.items():
                keys = found.setdefault(command, {})
                for words in runs:
                    words = [word.format(demo=self.demo, out=out) for word in words.split()]
                    for one in self.ask(command, *words, "--keys", "--json")["keys"]:
                        known = keys.setdefault(one["key"], one)
                        if known["type"] == "not known here":
                            known["type"] = one["type"]
                        known["meaning"] = known["meaning"] or one["meaning"]
        return found

    def app_options(self):
        """The options of the window, as pairs of option and meaning."""
        found = re.findall(r"^  ((?:-\w, )?--\S+) +(\S.*)$", self.run(self.app, "--help"),
                           re.MULTILINE)
        return [one for one in found if not one[0].startswith("--help-")]


# roff

def escape(text):
    """Text as roff takes it: its backslashes and hyphens mean themselves."""
    return text.replace("\\", "\\e").replace("-", "\\-").replace("\u00a0", "\\~")


def prose(text):
    """The same for sentences, where a hyphen within a word may be broken at."""
    return re.sub(r"(?<=[a-z])\\-(?=[a-z])", "-", escape(text))


def line(text):
    """A whole line: what begins like a request of roff does not become one."""
    return "\\&" + text if text.startswith((".", "'")) else text


def running(element):
    """The text of an element with its inline elements."""
    parts = [prose(collapse(element.text or ""))]
    for child in element:
        words = escape("".join(child.itertext()))
        if child.tag == "command":
            words = escape("breezeway-cli ") + words
        parts.append(f"\\f{FONTS[child.tag]}{words}\\fR")
        parts.append(prose(collapse(child.tail or "")))
    return line("".join(parts).strip())


def collapse(text):
    """Text with one space for each stretch of white space."""
    return re.sub(r"\s+", " ", text)


class Page:
    """One manual page that is being written."""

    def __init__(self, name, section, arguments, date):
        self.lines = [
            '.\\" SPDX-License-Identifier: GPL-3.0-or-later',
            '.\\" Made by manual-to-man.py; what it says is to be changed where it comes from.',
            f'.TH {name} {section} {date} "Breezeway {arguments.version}"',
            ".nh",
            ".SH NAME",
            f"{escape(name)} \\- {NAMES[name]}",
        ]

    def add(self, *lines):
        self.lines.extend(lines)

    def heading(self, text):
        self.add(f".SH {escape(text.upper())}")

    def subheading(self, text):
        self.add(f".SS {escape(text)}")

    def paragraph(self, text):
        self.add(".PP", line(prose(text)))

    def term(self, head, *paragraphs):
        """HEAD is roff already, the paragraphs are text."""
        self.add(".TP", head)
        self.add(*(line(prose(text)) for text in paragraphs if text))

    def code(self, text):
        self.add(".PP", ".RS 4", ".nf", *(line(escape(one)) for one in text.strip("\n").split("\n")),
                 ".fi", ".RE")

    def write(self, path):
        with open(path, "w", encoding="utf-8") as out:
            out.write("\n".join(self.lines) + "\n")


# The manual

def add_block(page, block, asked):
    if block.tag == "p":
        page.add(".PP", running(block))
    elif block.tag == "code":
        page.code(block.text)
    elif block.tag == "caution":
        page.add(".PP", "\\fBCaution.\\fR " + prose(asked.cautions[block.get("of")]))
    elif block.tag == "steps":
        for number, item in enumerate(block, 1):
            page.add(f".IP {number}. 4", running(item))
    elif block.tag == "list":
        for item in block:
            page.add(".IP \\(bu 4", running(item))
    elif block.tag == "terms":
        for term in block:
            page.add(".TP", f"\\fB{running(term.find('name'))}\\fR", running(term.find("item")))
    elif block.tag == "section":
        page.subheading(block.find("title").text)
        for inner in block:
            if inner.tag != "title":
                add_block(page, inner, asked)


def add_page(page, source, asked):
    for block in source:
        if block.tag != "title":
            add_block(page, block, asked)


def add_see_also(page, name):
    pages = [("breezeway", 1), ("breezeway-cli", 1), ("breezeway-bench", 5)]
    page.heading("See also")
    page.add(", ".join(f"\\fB{escape(one)}\\fR({section})" for one, section in pages
                       if one != name))


# breezeway(1)

def accelerator(text):
    """Keys as a person writes them: "<Control>n" is Ctrl+N."""
    names = {"<Control>": "Ctrl+", "<Shift>": "Shift+", "question": "?", "comma": ",", "plus": "+",
             "minus": "-", "Return": "Enter"}
    parts = re.findall(r"<\w+>|\w+", text)
    return "".join(names.get(part, part.upper() if len(part) == 1 else part) for part in parts)


def add_page_keys(page, manual):
    for source in manual:
        key = source.find("p/key")
        if key is not None and re.fullmatch(r"Ctrl\+\d", key.text):
            page.term(f"\\fB{escape(key.text)}\\fR", f"{source.find('title').text} page")


def add_shortcuts(page, path, manual):
    page.heading("Keys")
    for group in ElementTree.parse(path).iter("object"):
        if group.get("class") != "GtkShortcutsGroup":
            continue
        page.subheading(group.find("property[@name='title']").text)
        if group.find("child") is None: # the pages, which the window fills in
            add_page_keys(page, manual)
        for one in group.iter("object"):
            if one.get("class") == "GtkShortcutsShortcut":
                keys = one.find("property[@name='accelerator']").text.split()
                heads = ", ".join(f"\\fB{escape(accelerator(key))}\\fR" for key in keys)
                page.term(heads, one.find("property[@name='title']").text)


def write_window(arguments, manual, asked, date, path):
    page = Page("breezeway", 1, arguments, date)
    sources = [one for one in manual if one.get("man") == "breezeway"]
    page.heading("Synopsis")
    page.add("\\fBbreezeway\\fR [\\fB\\-\\-version\\fR] [\\fISHEET\\fR.bench ...]")
    page.heading("Description")
    for block in sources[0].findall("p"):
        add_block(page, block, asked)
    page.heading("Options")
    for option, meaning in asked.app_options():
        page.term(f"\\fB{escape(option)}\\fR", meaning)
    for source in sources:
        page.heading(source.find("title").text)
        for block in source:
            if block.tag != "title" and not (source is sources[0] and block.tag == "p"):
                add_block(page, block, asked)
    page.heading("Words")
    add_page(page, next(one for one in manual if one.get("id") == "words"), asked)
    add_shortcuts(page, arguments.shortcuts, manual)
    page.heading("Files")
    page.term("\\fI$XDG_STATE_HOME/breezeway\\fR", "Drafts of sheets that are not saved.")
    page.term("\\fI$XDG_DATA_HOME/breezeway/catalogue\\fR", "Your own entries of the catalogue.")
    add_see_also(page, "breezeway")
    page.write(path)


# breezeway-cli(1)

def option_head(option):
    head = f"\\fB{escape(option['name'])}\\fR"
    if option["argument"]:
        head += f"=\\fI{escape(option['argument'])}\\fR"
    return f"\\fB{escape(option['letter'])}\\fR, {head}" if option["letter"] else head


def add_command(page, command):
    page.subheading(command["command"])
    page.add(f"\\fBbreezeway\\-cli {escape(command['command'])}\\fR [\\fIOPTION\\fR...] "
             f"\\fI{escape(command['arguments'])}\\fR".replace(" \\fI\\fR", ""))
    page.paragraph(command["summary"] + ".")
    if command["description"]:
        page.paragraph(command["description"])
    for option in command["options"]:
        page.term(option_head(option), option["meaning"] + ".")


def add_json_keys(page, asked):
    page.heading("JSON")
    page.paragraph("What each command prints with --json. A key below another stands after a dot, "
                   "one in the objects of a list after []. The end of a key is the unit of its "
                   "number: _hz, _s, _v, _m, _ohm, _f and _w are SI, _db decibels, _deg degrees, _ire "
                   "IRE, _ppm millionths, _tvl TV lines per picture height; shares and tolerances are "
                   "fractions. Any value may be null where it is not known.")
    for command, keys in asked.json_keys().items():
        page.subheading(command)
        for key in keys.values():
            kind = "" if key["type"] == "not known here" else f" ({key['type']})"
            meaning = f": {prose(key['meaning'])}" if key["meaning"] else ""
            page.add(f"\\fB{escape(key['key'])}\\fR{kind}{meaning}", ".br")


def write_cli(arguments, manual, asked, date, path):
    page = Page("breezeway-cli", 1, arguments, date)
    source = next(one for one in manual if one.get("man") == "breezeway-cli")
    page.heading("Synopsis")
    page.add("\\fBbreezeway\\-cli\\fR \\fICOMMAND\\fR [\\fIOPTION\\fR...] [\\fIARGUMENT\\fR...]",
             ".br", "\\fBbreezeway\\-cli help\\fR [\\fICOMMAND\\fR] [\\fB\\-\\-json\\fR]",
             ".br", "\\fBbreezeway\\-cli \\-\\-version\\fR")
    page.heading("Description")
    add_page(page, source, asked)
    page.heading("Commands")
    for command in asked.commands:
        add_command(page, command)
    add_json_keys(page, asked)
    page.heading("Exit status")
    page.term("0", "Done.")
    page.term("1", "The input is bad, or the output cannot be written: one line on standard error "
              "names the file, the place and the fault.")
    page.term("2", "Wrong usage.")
    page.heading("Cautions")
    page.paragraph(asked.cautions["set"])
    page.paragraph(asked.cautions["hook_up"])
    add_see_also(page, "breezeway-cli")
    page.write(path)


# breezeway-bench(5)

def add_keys(page, asked):
    heading = None
    for key in asked.keys:
        if (key["group"], key["group_title"]) != heading:
            heading = key["group"], key["group_title"]
            page.subheading(f"[{key['group']}] {key['group_title']}")
        required = ", required" if key["required"] else ""
        page.term(f"\\fB{escape(key['key'])}\\fR{required}",
                  key["meaning"].rstrip(".") + ".", f"Allowed: {key['allowed']}.")


def write_file(arguments, manual, asked, date, path):
    page = Page("breezeway-bench", 5, arguments, date)
    page.heading("Description")
    add_page(page, next(one for one in manual if one.get("man") == "breezeway-bench"), asked)
    page.heading("Keys")
    add_keys(page, asked)
    add_see_also(page, "breezeway-bench")
    page.write(path)


def main():
    parser = argparse.ArgumentParser()
    for option in ("--cli", "--app", "--metainfo", "--shortcuts", "--demo",
                   "--version"):
        parser.add_argument(option, required=True)
    parser.add_argument("manual")
    parser.add_argument("pages", nargs=3)
    arguments = parser.parse_args()
    manual = ElementTree.parse(arguments.manual).getroot()
    asked = Asked(arguments)
    date = ElementTree.parse(arguments.metainfo).find("releases/release").get("date")
    for write, path in zip((write_window, write_cli, write_file), arguments.pages):
        write(arguments, manual, asked, date, path)


if __name__ == "__main__":
    sys.exit(main())
