# SPDX-License-Identifier: GPL-3.0-or-later
"""What stays in plain letters when every message is in the language of pseudo.py."""
import errno
import os
import re
import subprocess
import sys

PLAIN = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
GREEK = "αβψδεφγηιξκλμνοπρσςτθωχζυϊΑΒΨΔΕΦΓΗΙΞΚΛΜΝΟΠΡΣΪΤΘΩΧΥΖΫ"
TYPED = re.compile(r"^((?:name|title|note|notes|origin|source|model)[a-z_0-9]*=)(.*)$", re.MULTILINE)

# Units and symbols, which are the same in every language.
SYMBOLS = set("Hz kHz MHz GHz ms us ns cm mm um in mV IRE px dB ppm VA kVA mA mJ mH uH mW kW ohm kohm Mohm MiB KiB "
              "uF nF pF mF Pb Pr Cb Cr".split())

# The name of the program, and what libraries say in their own translations.
NOT_OURS = [re.escape(os.strerror(number)) for number in errno.errorcode] + [
    "no-such-[a-z-]+", "Breezeway", "breezeway-cli", "Usage:", r"\[OPTION…\]", "Options:", "Unknown option",
    "Missing argument for", "Cannot parse (?:integer|double) value", "for -", "out of range",
    "Integer value",
]

# A mode line is a file word for word.
MODE_LINE = re.compile(r'\bModeline ".*$', re.MULTILINE)

# A word, a name or an id in plain letters, not inside of a longer one in others.
WORD = re.compile(r"(?<!\w)[A-Za-z][A-Za-z0-9_]*(?:[-./+][A-Za-z0-9_]+)*(?!\w)")
# What a person types, or a file holds: an option, a file, a member, an id.
TYPED_WORDS = re.compile(r"(?<!\w)--?[A-Za-z][\w-]*|[^\s“”\[\]]*\.(?:bench|edid|svg|pdf|png|csv|ini|wav|tsv|ppm|raw)\b"
                         r"|\[[a-z-]+(?: \d+)?\]|“[^”]*”")

IDS = set()


def learn(source_root):
    """The ids and keys of files, and the words of the command line: no words of a language."""
    for folder in ("src/core", "src/cli"):
        for at, _, names in os.walk(os.path.join(source_root, folder)):
            for name in names:
                with open(os.path.join(at, name), encoding="utf-8") as file:
                    text = file.read()
                IDS.update(re.findall(r'[{,(=?:]\s*"([a-z][a-z0-9.+_-]*)"', text))
                IDS.update(re.findall(r'X \(\w+, "([a-z0-9-]+)"', text))
    catalogue = os.path.join(source_root, "data", "catalogue")
    for name in os.listdir(catalogue):
        with open(os.path.join(catalogue, name), encoding="utf-8") as file:
            IDS.update(re.findall(r"^\[([^]/]+)", file.read(), re.MULTILINE))


def make_greek(path):
    """What a person has typed into a sheet, in Greek letters, so that it is none of the program's."""
    with open(path, encoding="utf-8", errors="surrogateescape") as file:
        text = file.read()
    table = str.maketrans(PLAIN, GREEK)
    with open(path, "w", encoding="utf-8", errors="surrogateescape") as file:
        file.write(TYPED.sub(lambda line: line[1] + line[2].translate(table), text))


def is_own(word):
    """Whether it is a word of the program's language, and no id, symbol, standard or abbreviation."""
    return (len(word) > 1 and word not in SYMBOLS and word not in IDS
            and re.search(r"\d", word) is None and re.search(r"[a-z]", word) is not None)


def faults(place, text):
    """A line for each untranslated line of TEXT."""
    if "Project-Id-Version" in text:
        yield f"{place}: an empty text was translated"
    for line in MODE_LINE.sub("", text).splitlines():
        rest = TYPED_WORDS.sub(" ", line)
        for pattern in NOT_OURS:
            rest = re.sub(pattern, " ", rest)
        words = [word for word in WORD.findall(rest) if is_own(word)]
        if words:
            yield f"{place}: {' '.join(words)} ← {line.strip()}"


def skip_without_language(pseudo_cli):
    """Ends the test where the C library goes by no LANGUAGE in the locale C.UTF-8, as later ones do not."""
    env = dict(os.environ, LC_ALL="C.UTF-8", LANGUAGE="xx")
    said = subprocess.run([pseudo_cli, "--help"], capture_output=True, env=env, check=True).stdout
    if "\u27e6".encode() not in said:
        print("1..0 # SKIP this C library takes no LANGUAGE in the locale C.UTF-8")
        sys.exit(0)
