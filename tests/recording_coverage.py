# SPDX-License-Identifier: GPL-3.0-or-later
"""Which outcomes of the fit the bench sheets of the recording reach, for recording.py.

Whoever adds a rule, a reason, a remedy or a kind adds a sheet that has it, or a line to
CANNOT_OCCUR. Outcomes and remedies are read from what `fit --json` says, kinds from the sheets.
"""

import concurrent.futures
import itertools
import json
import os
import re
import sys
import tempfile

from recording_program import Cli, own_sheets, stop

SEVERITIES = ["ok", "not-judged", "tight", "curable", "fatal"]
YES_OR_NO = "it holds or it does not: no margin is kept"
CANNOT_OCCUR = {
    ("mains", "fatal"): "a transformer or another supply gives what the plate asks for",
    ("sync-drive", "fatal"): "a resistor or a stronger output drives every load",
    ("colour-system", "curable"): "without its colour the picture shows",
    ("colour-system", "fatal"): "a transcoder takes every colour system",
    ("sync-kind", "tight"): YES_OR_NO,
    ("sync-kind", "fatal"): "some part makes every form of sync from every other",
    ("sync-polarity", "tight"): YES_OR_NO,
    ("sync-polarity", "fatal"): "an inverter takes every sync",
    ("sync-level", "fatal"): "a resistor or an amplifier brings every level",
    ("sync-shape", "tight"): YES_OR_NO,
    ("sync-shape", "fatal"): "a converter of sync takes both shapes",
    ("video-level", "fatal"): "an attenuator or an amplifier brings every level",
    ("setup", "fatal"): "the black level can be set on every set",
    ("termination", "fatal"): "a load can be added or taken off",
    ("coupling", "fatal"): "a capacitor or a clamp finds black",
    ("bandwidth", "curable"): "no part widens the amplifiers of the set",
    ("bandwidth", "fatal"): "a soft picture still shows",
    ("black", "curable"): "the picture shows, dark or veiled",
    ("black", "fatal"): "the picture shows, dark or veiled",
    ("back-porch", "curable"): "the picture shows, flattened",
    ("back-porch", "fatal"): "the picture shows, flattened",
    ("sync-width", "curable"): "what cures it is another raster",
    ("sync-width", "fatal"): "many separators take it",
    ("picture-start", "curable"): "the picture shows, without its left edge",
    ("picture-start", "fatal"): "the picture shows, without its left edge",
    ("mains-beat", "tight"): "the picture locks whatever the beat",
    ("mains-beat", "curable"): "no part changes the mains",
    ("mains-beat", "fatal"): "the picture shows with hum as well",
    ("aspect", "tight"): YES_OR_NO,
    ("aspect", "fatal"): "the size can be set on every set",
    ("visible-area", "tight"): YES_OR_NO,
    ("visible-area", "fatal"): "the size can be set on every set",
    ("lead", "tight"): YES_OR_NO,
    ("lead", "fatal"): "a lead can be made for any two plugs",
}

# The reasons of each rule, and what a sentence has that gives this reason; the first that matches.
# A sentence that none matches is a fault of this table. What nothing cures has one reason, and what
# the raster of a converter replaces another.
RATE = {
    "between": "is outside this input's .*; a scan converter",
    "below": "is below this input",
    "above": "is above this input",
    "near edge": "near the edge of",
    "holds": "lies inside",
}
LEVEL = {
    "not needed": "^The part in the way",
    "cured by termination": "with the right termination it is inside",
    "below": ", below this input's",
    "above": ", above this input's",
    "near edge": "near the edge of",
    "holds": ", inside ",
}
BLANKING = {
    "near edge": "little more than",
    "below": "folds over",
    "holds": "retrace needs",
}
OF_SYNC = {
    "not needed": "^The part in the way|^Sync that comes with the video",
    "not taken": "; this input takes ",
    "holds": ", which this input takes|^Use ",
}
REASONS = {
    "signal-kind": {
        "not taken": "; this input takes ",
        "monochrome": "shows in monochrome",
        "colour lost": "^Only the luminance",
        "green alone": "green alone, through a lead",
        "subcarrier seen": "luminance only: .* fine dots",
        "holds": "^This input takes ",
    },
    "colour-system": {
        "not needed": "^No colour decoder",
        "monochrome": "as it is meant to be",
        "subcarrier seen": "^A monochrome set",
        "colour lost": "; this input decodes ",
        "holds": "^This input decodes ",
    },
    "line-rate": RATE,
    "field-rate": RATE,
    "line-count": {
        "wrong scan": "does not take such a raster",
        "wrong count": "this input counts",
        "other count": "half of",
        "holds": ": taken",
    },
    "sync-kind": OF_SYNC,
    "sync-polarity": OF_SYNC,
    "sync-level": LEVEL,
    "sync-shape": OF_SYNC,
    "line-blanking": BLANKING,
    "field-blanking": BLANKING,
    "black": {
        "not needed": "is not entered; it is taken to be",
        "not taken": "takes for black what stands",
        "other count": "shows as a veil",
        "holds": "^The source is black in its blanking",
    },
    "back-porch": {
        "not needed": "has no clamp that needs it|^The part in the way",
        "below": "too short for a clamp",
        "near edge": "black may wander",
        "holds": "; a clamp is well served",
    },
    "sync-width": {
        "not needed": "have no width in common",
        "below": "a separator may miss it",
        "above": "may be taken for field sync",
        "holds": "inside the usual",
    },
    "picture-start": {
        "not needed": "a set has its own phase",
        "below": "missing or folded over",
        "holds": "the phase control reaches the rest",
    },
    "video-level": LEVEL,
    "setup": {
        "not needed": "^The part in the way",
        "above": "comes out lifted",
        "below": "shadows are crushed",
        "holds": "as this input expects|not said to expect",
    },
    "mains": {
        "above": "outside the rating|a little outside|above the rated|below the rated",
        "holds": "suits the rating|plate asks for",
    },
    "sync-drive": {
        "not needed": "^Sync does not come",
        "above": "without harm",
        "near edge": "strong logic",
        "holds": "The logic output of sync gives",
    },
    "termination": {
        "unterminated": ": not terminated",
        "double terminated": "more than once",
        "other resistance": "not 75 Ω: a return loss",
        "voltage driven": "drives it as a voltage",
        "made open": "is made for the level",
        "holds": "ends in one load",
    },
    "coupling": {
        "not needed": "^The part in the way",
        "black wanders": "black moves by up to",
        "near edge": "near the edge of",
        "d.c. offset": "; this input takes",
        "holds": "^Black is found",
    },
    "bandwidth": {
        "below": "softer than the source",
        "holds": "passes the source's",
    },
    "mains-beat": {
        "no beat": "stands still",
        "flicker": "flicker or wobble",
        "slow beat": "a hum bar drifts",
    },
    "aspect": {
        "other aspect": "circles come out as ovals",
        "wide switch": "with the set's switch",
        "holds": "meant for the tube's aspect ratio",
    },
    "visible-area": {
        "overscanned": "the whole picture matters",
        "holds": "fall outside the glass|whole picture is on the glass",
    },
    "lead": {
        "same connector": "at both ends",
        "crossed": "two 21-pin forms",
        "adapting lead": "^A lead from",
    },
}
OUT_OF_REACH = "out of reach"
OTHER_RASTER = "other raster"
NOT_JUDGED = "not judged"
SAYS_OTHER_RASTER = "^Not judged: the set does not lock|^Not judged for the source"
NOT_OF_THE_RASTER = {"mains", "signal-kind", "colour-system", "line-rate", "field-rate", "line-count",
                     "termination", "lead"}

# How the sentences of each remedy begin; the first that matches. A sentence that begins with none
# of them is a fault of this table.
REMEDIES = {
    "mains-transformer": "mains transformer",
    "mains-converter": "supply of the voltage and frequency",
    "terminator": "75 Ω terminator at the",
    "termination-on": "termination switch to 75 Ω",
    "termination-off": "termination switch to high impedance",
    "unload-loop": "take the 75 Ω load off",
    "series-resistor": "series resistor of",
    "series-resistor, of the drive": "the series resistor that",
    "video-pad": "matched 75 Ω attenuator",
    "minimum-loss-pad": "minimum-loss pad at",
    "matching-resistor": "matching resistor of",
    "shunt-resistor": "shunt resistor of",
    "video-amplifier": "video amplifier",
    "sync-amplifier": "sync amplifier",
    "sync-combiner": "sync combiner",
    "sync-adder": "sync adder",
    "sync-mover": "sync separator and adder",
    "sync-separator": "sync separator",
    "sync-inverter": "sync inverter",
    "sync-reshaper": "converter of tri-level",
    "encoder": "encoder",
    "decoder": "colour decoder",
    "transcoder": "transcoder",
    "yc-mixer": "mixer of Y and C",
    "yc-separator": "separator of composite",
    "luma-matrix": "matrix of R, G and B",
    "distributor": "distribution amplifier",
    "colour-transcoder": "colour system transcoder",
    "scan-converter": "scan converter",
    "coupling-capacitor": "coupling capacitor",
    "clamp": "clamp",
    "black-level": "set the black level",
    "aspect-switch": "aspect switch",
    "size, underscan": "underscan switch",
    "size, height": "height control",
    "size, width": "width control",
    "crossed-lead": "lead wired from one 21-pin",
}

# The keys of a sheet that name kinds.
KEYS = ["mask", "connectors", "connector", "signals", "signal", "systems", "system", "syncs",
        "shapes", "polarities", "scans", "termination", "sync_termination", "clamp", "coupling",
        "sync_stated", "sync_polarity"]


class Coverage:
    """The sheets, by name, that have each outcome, reason, remedy and kind."""

    def __init__(self):
        self.outcomes = {}
        self.reasons = {}
        self.remedies = {}
        self.kinds = {}
        self.faults = []

    def rules(self):
        return list(dict.fromkeys(rule for rule, _ in self.outcomes))

    def add_finding(self, sheet, finding):
        rule, severity, says = finding["rule"], finding["severity"], finding["says"]
        reason = reason_of(rule, severity, says)
        remedy = finding["remedy"]
        if reason is None:
            self.faults.append(f"{sheet}: REASONS has nothing for {rule}: {says}")
        self.outcomes.setdefault((rule, severity), set()).add(sheet)
        self.reasons.setdefault((rule, reason), set()).add(sheet)
        if remedy is None:
            return
        kind = next((k for k, begins in REMEDIES.items() if remedy.startswith(begins)), None)
        if kind is None:
            self.faults.append(f"{sheet}: REMEDIES has nothing for {rule}: {remedy}")
        self.remedies.setdefault(kind, set()).add(sheet)

    def add_kinds(self, sheet):
        for line in sheet.text.splitlines():
            key, _, value = line.partition("=")
            for kind in (word.strip() for word in value.split(";") if key in KEYS):
                self.kinds.setdefault((key, kind), set()).add(sheet.name)


def reason_of(rule, severity, says):
    if severity == "fatal":
        return OUT_OF_REACH
    if severity == "not-judged":
        lacks = "^Not judged: “.*” of the .* is not known|^A lead .*, complete but for [0-9]+ pins?: "
        return NOT_JUDGED if re.search(lacks, says) else None
    if re.search(SAYS_OTHER_RASTER, says):
        return OTHER_RASTER
    reasons = REASONS.get(rule, {})
    return next((reason for reason, words in reasons.items() if re.search(words, says)), None)


def gather(cli):
    coverage = Coverage()
    for sheet in own_sheets():
        coverage.add_kinds(sheet)
        for cell in cli.json("fit", sheet.file)["cells"]:
            for finding in cell["findings"]:
                coverage.add_finding(sheet.name, finding)
    return coverage


# What is missing


def missing_outcomes(coverage):
    for rule, severity in itertools.product(coverage.rules(), SEVERITIES):
        reached = (rule, severity) in coverage.outcomes
        if not reached and (rule, severity) not in CANNOT_OCCUR:
            yield f"no sheet has {rule} {severity}"
        if reached and (rule, severity) in CANNOT_OCCUR:
            yield (f"{rule} {severity} occurs, and CANNOT_OCCUR says: "
                   f"{CANNOT_OCCUR[rule, severity]}")


def missing_reasons(coverage):
    for rule in coverage.rules():
        reasons = list(REASONS.get(rule, []))
        if rule not in NOT_OF_THE_RASTER:
            reasons.append(OTHER_RASTER)
        for reason in reasons:
            if (rule, reason) not in coverage.reasons:
                yield f"no sheet has {rule}: {reason}"


def allowed_kinds(cli, key):
    """What may stand behind KEY, as the program says it when something else stands there."""
    text = re.sub(rf"^{key}=.*\n", "", own_sheets()[0].text, flags=re.MULTILINE)
    text = re.sub(r"^(name=.*)$", rf"\1\n{key}=?", text, flags=re.MULTILINE)
    with open(os.path.join(cli.folder, "no-such-kind.bench"), "w", encoding="utf-8") as file:
        file.write(text)
    said = cli.run(["sheet-check", "no-such-kind.bench"])[2]
    listed = re.search(rf"\] {key}: .*allowed: (.*)$", said, re.MULTILINE)
    if listed is None:
        stop(f"the program does not say which kinds {key} may name: {said}")
    return re.split(r", |; ", listed[1].strip())


def missing_kinds(cli, coverage):
    for remedy in REMEDIES:
        if remedy not in coverage.remedies:
            yield f"no sheet needs the remedy {remedy}"
    for key in KEYS:
        for kind in allowed_kinds(cli, key):
            if (key, kind) not in coverage.kinds:
                yield f"no sheet has {key}={kind}"


# Printing


def print_rules(coverage):
    print("In how many sheets each rule comes out so (– cannot occur)")
    print(f"  {'rule':16}" + "".join(f"{s:>9}" for s in SEVERITIES))
    for rule in coverage.rules():
        counts = ["–" if (rule, s) in CANNOT_OCCUR else len(coverage.outcomes.get((rule, s), ()))
                  for s in SEVERITIES]
        print(f"  {rule:16}" + "".join(f"{c:>9}" for c in counts))
    print("\nFor which reasons")
    for rule in coverage.rules():
        reasons = [f"{reason} {len(sheets)}" for (of, reason), sheets in coverage.reasons.items()
                   if of == rule]
        print(f"  {rule}: " + ", ".join(reasons))
    print("\nWhat cannot occur")
    for (rule, severity), why in CANNOT_OCCUR.items():
        print(f"  {rule} {severity}: {why}")


def print_kinds(coverage):
    print("\nRemedies")
    print("  " + ", ".join(f"{r} {len(coverage.remedies.get(r, ()))}" for r in REMEDIES))
    print("\nKinds")
    for key in KEYS:
        kinds = sorted((k, len(sheets)) for (of, k), sheets in coverage.kinds.items() if of == key)
        print(f"  {key}: " + ", ".join(f"{kind} {n}" for kind, n in kinds))


def count(words):
    counts = {}
    for word in words:
        counts[word] = counts.get(word, 0) + 1
    return counts


def print_plans(cli, jobs):
    """What the hook-up plans of all cells are made of."""
    commands = [["hookup", sheet.file, f"--source={source}", f"--input={place}", "--json"]
                for sheet in own_sheets() for source, place in sheet.cells()]
    with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
        plans = [json.loads(out) for _, out, _ in pool.map(cli.run, commands)]
    steps = [step for plan in plans for step in plan["chain"]]
    verdicts = count(f"{p['verdict_before']} to {p['verdict_after']}" for p in plans)
    used = {step["id"] for step in steps}
    unused = [a["id"] for a in cli.json("catalogue", "adaptors")["adaptors"] if a["id"] not in used]
    print(f"\nPlans of {len(plans)} cells")
    for title, counts in (("verdict before and after", verdicts),
                          ("steps", count(step["kind"] for step in steps))):
        print(f"  {title}: " + ", ".join(f"{word} {n}" for word, n in sorted(counts.items())))
    print("  adaptors of the catalogue that no plan has: " + (", ".join(unused) or "none"))


def run(args):
    with tempfile.TemporaryDirectory(prefix="recording-") as folder:
        cli = Cli(args.build_dir, folder)
        coverage = gather(cli)
        faults = [*coverage.faults, *missing_outcomes(coverage), *missing_reasons(coverage),
                  *missing_kinds(cli, coverage)]
        if not args.quiet:
            print_rules(coverage)
            print_kinds(coverage)
            print_plans(cli, args.jobs)
    for fault in faults:
        print(fault, file=sys.stderr)
    return 1 if faults else 0
