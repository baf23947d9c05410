# SPDX-License-Identifier: GPL-3.0-or-later
"""Every command line that recording.py records."""

import itertools
import os
import re
import shlex

from recording_program import all_sheets


class Case:
    """Commands that are run one after the other, and the files that they write.

    In a command, "{out}" stands for the name of the case's own files, without suffix, and
    "{stdout}" for what the command before it printed.
    """

    def __init__(self, group, name, *commands, files=()):
        self.group = group
        self.name = re.sub(r"[^A-Za-z0-9.=+-]+", "_", name).strip("_")[:120]
        self.commands = commands
        self.files = files

    def key(self):
        return f"{self.group}/{self.name}"


def both(group, name, args):
    """The same command in text and as JSON."""
    yield Case(group, name, args)
    yield Case(group, name + " json", [*args, "--json"])


def drawing(group, name, args):
    return Case(group, name, [*args, "-o", "{out}.svg"], files=(".svg",))


def table(group, name, args):
    return Case(group, name, [*args, "-o", "{out}.csv"], files=(".csv",))


def lines_of(text):
    return [line for line in text.strip().splitlines() if line]


# Commands that only list, and wrong ones

def cases_of_help(cli):
    commands = cli.run(["--help"])[1].split("Commands:")[1]
    yield Case("help", "all", ["--help"])
    yield Case("help", "version", ["--version"])
    for name in re.findall(r"^  (\S+)  +\S", commands, re.MULTILINE):
        yield Case("help", name, [name, "--help"])
        yield Case("help", name + " by help", ["help", name])
        yield Case("help", name + " for scripts", ["help", name, "--json"])
        yield Case("help", name + " with nothing", [name])
        yield Case("help", name + " wrong option", [name, "--no-such-option"])
    for words in ("catalogue", "catalogue rasters", "catalogue monitors", "catalogue sources",
                  "catalogue adaptors", "timing --list", "solve --list", "readings --list",
                  "sheet-check --list"):
        yield from both("catalogue", words, words.split())


# Wrong in one way each.
WRONG_USAGE = """
no-such-command
--no-such-option
help fit hookup
--version fit
timing no-such-raster
timing vesa-dmt-04 vesa-dmt-05
timing --cvt=640x480
timing --cvt=640x480@0
timing --cvt=0x480@60
timing --cvt=640x480@60,wide
timing --cvt=640x480@60 vesa-dmt-04
timing --gtf=640x480@60,reduced
timing --gtf-line-rate=31kHz
timing --modeline=nonsense
timing --edid=demo.bench
timing --edid=no-such-file.edid
timing --which=2 vesa-dmt-04
timing --for-monitor=demo.bench
identify
identify --line-rate=15.7
identify --line-rate=15.7 --sheet=demo.bench
identify --line-rate=15.7kHz --tolerance=-1%
identify --line-rate=15.7kHz --interlaced --progressive
identify --line-rate=15.7kHz --most=0
identify --field-rate=60kV
identify --line-rate=15.7 --field-rate=60
identify --line-rate=15,7kHz --field-rate=60.1
identify --line-rate=31.47kHz --field-rate=70Hz --accuracy=0.1%
identify --line-rate=15.7kHz --accuracy=1V
solve
solve line-rate
solve 'line-rate=4 V'
solve no-such=1
solve line-rate=15kHz line-rate=16kHz
levels
levels --system=pal --kind=composite
levels --system=pal-b --kind=rgb --sync=on-y
levels --system=pal-b --kind=composite --bars=50
levels --system=pal-b --kind=composite --loop=150ohm
levels --system=pal-b --kind=composite --capacitor=2F
readings line_sync=4.7us
readings --standard=none line_sync=4.7us
readings --standard=smpte-170m line_sync=4.7
readings --standard=smpte-170m line_sync=4.75us --accuracy=3%
readings --standard=smpte-170m line_sync=4.75us --sheet=demo.bench
readings --standard=smpte-170m sync_level=40IRE
cause --system=pal-b --kind=composite
cause --system=pal-b --kind=composite --white=-1000V
cause --system=ntsc-m --kind=composite --white=50IRE --sync-level=20IRE
cause --system=pal-b --kind=composite --white=600mV --accuracy=1%
cause --system=pal-b --kind=composite --conductor=pb --white=1V
cause demo.bench --white=1V
cause demo.bench --source=9 --input=1 --white=1V
detail
detail --diagonal=14in --aspect=4:3
detail --diagonal=14in --aspect=0:3 --mask=dot
detail demo.bench --source=1 --input=99
pad
pad --from=5V --to=6V
pad --from=5V --to=0V
pad --from=5V --to=300mV --series=e48
draw vesa-dmt-04
draw vesa-dmt-04 -o x.svg
draw vesa-dmt-04 --view=levels -o x.svg
draw vesa-dmt-04 --view=line -o x.gif
draw vesa-dmt-04 --view=line -o no/such/folder/x.svg
draw vesa-dmt-04 --view=line -o x.svg --size=1x1x1
draw vesa-dmt-04 --view=field --system=pal-b -o x.svg
draw vesa-dmt-04 --view=blanking --standard=smpte-170m -o x.svg
waveform
waveform --system=pal-b -o x.csv
waveform --system=pal-b --kind=composite --line=9999 -o x.csv
waveform --system=pal-b --kind=composite --rate=1Hz -o x.csv
sync 525-59.94-interlaced
sync 525-59.94-interlaced --gate=nand
sync 525-59.94-interlaced --gate=xor --field=3
edid demo.bench
edid no-such-file.bench -o x.edid
display
display no-such-file.edid
display demo.bench
fit
fit no-such-file.bench
fit demo.bench demo.bench
fit demo.bench --source=nobody
hookup demo.bench
hookup demo.bench --source=1
hookup demo.bench --source=1 --input=1 --alternative=99
report demo.bench
report demo.bench -o no/such/folder/x.pdf
sheet-check
catalogue valves
"""


def cases_of_usage(_):
    for number, words in enumerate(lines_of(WRONG_USAGE), 1):
        yield Case("usage", f"{number:02} {words}", shlex.split(words))


# The demo with one line in another's place: wrong in one way each.
WRONG_LINES = [
    ("format=1", "format=0"),
    ("format=1", "format=2"),
    ("format=1", ""),
    ("[bench-sheet]", "[sheet]"),
    ("[monitor]", "[tube]"),
    ("[source 1]", "[source"),
    ("[input 1]", "[input 1]\n[input 1]"),
    ("title=", "title=\udcff"),
    ("diagonal=19 in", "diagonal=19 kHz"),
    ("diagonal=19 in", "diagonal=19"),
    ("diagonal=19 in", "diagonal=900 in"),
    ("diagonal=19 in", "diagonal="),
    ("diagonal=19 in", ""),
    ("aspect=4:3", "aspect=4"),
    ("aspect=4:3", "aspect=4:0"),
    ("mask=slot", "mask=shadow"),
    ("overscan_h=5 %", "overscan_h=31 %"),
    ("wide_switch=yes", "wide_switch=maybe"),
    ("line_rates=15.5 kHz .. 16 kHz;", "line_rates=16 kHz .. 15.5 kHz;"),
    ("signals=yc", "signals=yc; yuv"),
    ("systems=ntsc-m; ntsc-j; pal-b", "systems="),
    ("syncs=in-video", "syncs=on-y"),
    ("polarities=negative", "polarities="),
    ("raster=vesa-dmt-04", "raster=vesa-dmt-99"),
    ("signal=yc", "signal=rgb"),
    ("video_level=700 mV", "video_level=700"),
    ("video_level=700 mV", "video_level=99 V"),
    ("coupling=ac", "coupling=dc-ac"),
    ("sync_stated=open", "sync_stated=short"),
]
NO_SHEETS = {"empty": "", "no-group": "key=value\n", "binary": "\0\1\2\xff" * 50}


def cases_of_wrong_sheets(cli):
    demo = all_sheets()[0].text
    for number, (old, new) in enumerate(WRONG_LINES, 1):
        assert old in demo, f"the demo has no “{old}” any more"
        file = f"wrong-{number:02}.bench"
        text = demo.replace(old, new, 1)
        with open(os.path.join(cli.folder, file), "wb") as wrong:
            wrong.write(text.encode("utf-8", "surrogateescape"))
        yield from both("wrong-sheets", f"{number:02} {old} to {new}", ["sheet-check", file])
        yield Case("wrong-sheets", f"{number:02} fit", ["fit", file])
    for name, text in NO_SHEETS.items():
        with open(os.path.join(cli.folder, name + ".bench"), "wb") as wrong:
            wrong.write(text.encode("latin-1"))
        yield from both("wrong-sheets", name, ["sheet-check", name + ".bench"])


# Rasters

COMPUTED = """
--cvt=640x480@60
--cvt=1024x768@75
--cvt=1280x1024@60,reduced
--cvt=1600x1200@85
--cvt=720x576@50,interlaced
--cvt=720x480@60,margins
--cvt=1920x1080@60,reduced,margins
--cvt=1920x1080@60,interlaced,margins
--cvt=320x240@60
--cvt=1366x768@60
--gtf=640x480@60
--gtf=800x600@72
--gtf=1024x768@75,interlaced
--gtf=1152x864@75,margins
--gtf=1280x1024@85
--gtf=320x240@60
--gtf=1600x1200@60,interlaced,margins
--gtf-line-rate=31.5kHz --active=640x480
--gtf-line-rate=48kHz --active=1024x768 --interlaced
--gtf-line-rate=64kHz --active=1280x1024 --margins
--gtf-pixel-clock=25.175MHz --active=640x480
--gtf-pixel-clock=135MHz --active=1280x1024 --margins
--gtf-pixel-clock=44.9MHz --active=1024x768 --interlaced
"""
WISHES = ["320x240 60", "640x480 60", "720x576 50", "800x600 75", "1280x1024 74", "384x288 49.9"]


def all_rasters(cli):
    return cli.json("catalogue", "rasters")["rasters"]


def cases_of_timing(cli):
    for raster in (r["id"] for r in all_rasters(cli)):
        yield from both("timing", raster, ["timing", raster])
        yield Case("timing", raster + " as modeline and back", ["timing", raster, "--as-modeline"],
                   ["timing", "--modeline={stdout}", "--as-modeline"])
    for raster in ("vesa-dmt-04", "vesa-dmt-0f", "cta-861-vic-6", "cta-861-vic-5", "vesa-dmt-29"):
        yield Case("timing", raster + " from modeline", ["timing", raster, "--as-modeline"],
                   ["timing", "--modeline={stdout}"])


def cases_of_computed(_):
    for words in lines_of(COMPUTED):
        args = ["timing", *words.split()]
        yield from both("computed", words, args)
        yield Case("computed", words + " modeline", [*args, "--as-modeline"])
    for sheet in all_sheets():
        wishes = WISHES if sheet.name == "demo" else WISHES[:3]
        for wish, scan in itertools.product(wishes, ([], ["--interlaced"])):
            size, rate = wish.split()
            args = ["timing", f"--for-monitor={sheet.file}", f"--active={size}",
                    f"--field-rate={rate}", *scan]
            yield Case("computed", " ".join(["for", sheet.name, wish, *scan]), args)


SEEN = """
--line-rate=15.73kHz
--field-rate=50Hz
--line-rate=15.7kHz --field-rate=60Hz --tolerance=1%
--line-rate=15.625kHz --lines-per-field=312
--line-rate=15.625kHz --lines-per-field=312.5 --interlaced
--line-rate=15.734kHz --progressive --field-sync=3
--field-rate=59.94Hz --tri-level
--field-rate=60Hz --bi-level --most=3
--line-rate=33.75kHz --line-sync=1.2us --tri-level
--line-rate=78.9kHz --field-rate=74Hz
--line-rate=10.125kHz --field-rate=50Hz
--line-rate=31.469kHz --line-sync=3.8us --most=20
--line-rate=24.83kHz --field-rate=56.4Hz --tolerance=5%
"""


def cases_of_identify(cli):
    rates = sorted({(f"--line-rate={r['line_rate_hz'] / 1e3:.3f}kHz",
                     f"--field-rate={r['field_rate_hz']:.2f}Hz") for r in all_rasters(cli)})
    for number, pair in enumerate(rates):
        args = ["identify", *pair]
        yield Case("identify", " ".join(pair), args)
        if number % 4 == 0:
            yield Case("identify", " ".join(pair) + " json", [*args, "--json"])
    for rate in sorted(set(itertools.chain.from_iterable(rates)))[::4]:
        yield Case("identify", rate + " alone", ["identify", rate])
    for words in lines_of(SEEN):
        yield from both("identify", "seen " + words, ["identify", *words.split()])


SOLVE = """
line-rate=15.734kHz
field-rate=50Hz lines-per-frame=625
--interlaced field-rate=50Hz lines-per-frame=625
line-period=64us h-blanking-time=12us h-sync-time=4.7us
pixel-clock=25.175MHz h-total=800px lines-per-frame=525lines
--interlaced pixel-clock=13.5MHz h-total=858px lines-per-frame=525 h-active=720px
line-rate=31.469kHz field-rate=59.94Hz
line-rate=15.625kHz field-rate=50Hz --interlaced
h-total=800 h-active=640 h-front-porch=16 h-sync=96
h-total=800 h-active=640 h-front-porch=16 h-sync=96 pixel-clock=25.175MHz
h-active-share=80% h-sync-share=7% line-rate=31.5kHz
lines-per-field=262 v-active=240 v-sync=3 v-front-porch=3
--interlaced lines-per-field=262.5 v-active=242.5 line-rate=15734.27Hz
frame-rate=25Hz --interlaced line-rate=15.625kHz
line-rate=15kHz line-period=64us
h-total=800 h-active=640 h-blanking=100
h-blanking-share=120%
field-rate=50Hz lines-per-frame=625 line-rate=15.7kHz --interlaced
h-active-time=52us line-rate=15.625kHz h-active=720
h-front-porch-time=1.5us h-sync-time=4.7us h-back-porch-time=5.8us line-period=64us
v-blanking=25 v-active=287.5 line-rate=15.625kHz --interlaced
"""
GATES = ["and", "or", "xor", "xnor", "standard"]
GATE_OPTIONS = """
--h-polarity=positive
--v-polarity=positive
--field=2
--offset=20us
--delay=500ns --field=2
--loop=first
--time-constant=3 --rate-error=2%
--time-constant=40 --picture-width=380mm
"""


def cases_of_solve(_):
    for words in lines_of(SOLVE):
        yield from both("solve", words, ["solve", *words.split()])


def cases_of_sync(cli):
    for raster in (r["id"] for r in all_rasters(cli)):
        for gate in GATES:
            yield Case("sync", f"{raster} {gate}", ["sync", raster, f"--gate={gate}"])
        yield Case("sync", f"{raster} json", ["sync", raster, "--gate=xor", "--json"])
    for raster, gate in itertools.product(
            ("525-59.94-interlaced", "262-60.05-progressive", "vesa-dmt-04"), GATES):
        args = ["sync", raster, f"--gate={gate}"]
        for words in lines_of(GATE_OPTIONS):
            yield Case("sync", f"{raster} {gate} {words}", [*args, *words.split()])
        yield drawing("sync", f"{raster} {gate} drawn", args)


# Levels

SYSTEMS = ["none", "ntsc-m", "ntsc-j", "ntsc-4.43", "pal-b", "pal-m", "pal-n", "pal-60", "secam-l"]
SIGNALS = ["rgb", "component", "yc", "composite", "luminance"]
SYNCS = ["separate", "composite-sync", "on-green", "on-y", "in-video"]


def cases_of_levels(_):
    for system, kind in itertools.product(SYSTEMS, SIGNALS):
        args = ["levels", f"--system={system}", f"--kind={kind}"]
        for bars in ("75", "100", "ebu"):
            yield from both("levels", f"{system} {kind} {bars}", [*args, f"--bars={bars}"])
        for sync in SYNCS:
            yield from both("levels", f"{system} {kind} {sync}", [*args, f"--sync={sync}"])
        yield from both("levels", f"{system} {kind} capacitor", [*args, "--capacitor=220uF"])


def cases_of_pad(_):
    for start, end, driver, load in itertools.product(
            ("5V", "3.3V", "2.4V", "900mV"), ("300mV", "700mV", "1.41V"),
            ("0ohm", "47ohm", "100ohm"), ("75ohm", "1kohm", "2.2kohm")):
        yield Case("pad", f"{start} {end} {driver} {load}",
                   ["pad", f"--from={start}", f"--to={end}", f"--driver={driver}",
                    f"--load={load}"])
    for series, tolerance in itertools.product(("e12", "e24", "e96"), ("5 %", "10 %", "0 %")):
        yield from both("pad", f"{series} {tolerance}",
                        ["pad", "--from=5V", "--to=300mV", "--driver=50ohm", f"--series={series}",
                         f"--supply-tolerance={tolerance}"])
    for args in ("--loss=6dB", "--loss=20dB --load=50ohm --from=1V", "--match --driver=75ohm --load=50ohm",
                 "--match --driver=50ohm --load=300ohm --from=1V", "--match --driver=75ohm",
                 "--match --from=5V --to=300mV --driver=50ohm", "--match --loss=6dB"):
        yield from both("pad", args, ["pad", *args.split()])


def cases_of_work_back(_):
    for args in ("--open=2.45V --loaded=380mV", "--open=1V --loaded=2V", "--level=1V --behind=282ohm --wanted=0.7V",
                 "--level=1V --behind=282ohm --wanted=5V", "--level=1.4V", "--level=9V",
                 "--drop=3V,2.5V,100ohm --drop=3V,1.5V,330ohm", "--drop=3V,714.3mV,240ohm",
                 "--driver=5V,470ohm --driver=5V,1kohm", "--pin=8 --reading=4.9V", "--pin=16 --reading=5V",
                 "--pin=9 --reading=1V", "--subcarrier=3.5756MHz", "--subcarrier=5MHz"):
        yield from both("work-back", args, ["work-back", *args.split()])


def cases_of_service(_):
    for args in ("capacitor --value=1000uF --voltage=35V",
                 "capacitor --value=1000uF --voltage=35V --measured=850uF --esr=0.3ohm --at=120Hz",
                 "capacitor --value=100uF --voltage=200V --esr=1ohm --at=100kHz",
                 "capacitor --value=10uF --voltage=500V --measured=15uF",
                 "capacitor --value=470uF --voltage=40V --rated-life=2000h --rated-temp=105C "
                 "--temp=65C --ripple=1.3 --hours-a-day=6",
                 "field-scan --capacitor=1000uF --resistance=8ohm --scan=15.68ms --retrace=1ms",
                 "field-scan --capacitor=1200uF --resistance=8ohm --inductance=9.4mH "
                 "--field-rate=50Hz",
                 "field-scan --rows=22,18,12 --resistance=12ohm --field-rate=50Hz",
                 "field-scan --rows=18,22,12 --resistance=12ohm --field-rate=50Hz",
                 "line-scan --supply=130V --inductance=1.2mH --capacitor=9.1nF --scan=52.6us",
                 "supply --mains=230V,50Hz --plate=100-120V,50/60Hz,2.4A --field-rate=59.94Hz "
                 "--reservoir=220uF --load=0.4A",
                 "supply --mains=230V,50Hz --plate=230V --field-rate=50Hz --reservoir=1uF --load=1A "
                 "--half-wave"):
        yield from both("service", args, args.split())


def typed_reading(limit, place):
    """A reading, as typed: 0 for the middle of what is allowed, -1 and 1 for its ends."""
    ends = [e for e in (limit["allowed_low"], limit["allowed_high"]) if e is not None]
    middle, half = (ends[0] + ends[-1]) / 2, (ends[-1] - ends[0]) / 2
    value = middle + place * (half or abs(middle) * 0.01)
    return f"{limit['id']}={value:.9f} {limit['unit'] or ''}".strip()


PLACES = {"middle": 0, "low end": -1, "near the high end": 0.97, "above": 1.2, "far below": -3}


def cases_of_readings(cli):
    for standard in cli.json("readings", "--list")["standards"]:
        args = ["readings", f"--standard={standard['id']}"]
        limits = cli.json(*args, "--list")["standards"][0]["limits"]
        yield from both("readings", standard["id"] + " list", [*args, "--list"])
        for word, place in PLACES.items():
            typed = [typed_reading(limit, place) for limit in limits]
            yield from both("readings", f"{standard['id']} {word}", [*args, *typed])
        for limit in limits:
            yield Case("readings", f"{standard['id']} {limit['id']} alone",
                       [*args, typed_reading(limit, 0.5)])


# What a scope may read.
SCOPE = {
    "right": "--white=0.7V --sync-level=0.3V",
    "no load": "--white=1.4V --sync-level=0.6V",
    "two loads": "--white=0.467V --sync-level=0.2V",
    "half": "--white=0.35V --sync-level=0.15V --burst=0.15V",
    "weak sync": "--white=0.7V --sync-level=0.12V",
    "no sync": "--white=0.7V --sync-level=0V",
    "logic": "--sync-level=4.2V",
    "wrong way": "--sync-level=0.3V --sync-polarity=positive",
    "black lifted": "--white=0.714V --black=0.054V --sync-level=0.286V",
    "weak burst": "--burst=0.15V --white=0.7V",
    "no load, burst": "--burst=0.6V --white=1.4V --sync-level=0.6V",
    "d.c.": "--dc=2.5V --white=0.7V",
    "tilt": "--tilt=12% --white=0.7V",
    "tilt behind a capacitor": "--tilt=12% --capacitor=220uF",
    "line tilt": "--line-tilt=8% --white=0.68V",
}
CONDUCTORS = ["rgb on-green r", "rgb on-green g", "rgb composite-sync sync", "rgb separate h",
              "rgb separate v", "component on-y y", "component on-y pb", "yc in-video y",
              "yc in-video c"]


def cases_of_cause(_):
    for system, kind in itertools.product(SYSTEMS, SIGNALS):
        args = ["cause", f"--system={system}", f"--kind={kind}"]
        for word, readings in SCOPE.items():
            yield Case("cause", f"{system} {kind} {word}", [*args, *readings.split()])
        yield Case("cause", f"{system} {kind} json", [*args, *SCOPE["no load"].split(), "--json"])
    for words in CONDUCTORS:
        kind, sync, conductor = words.split()
        system = "pal-b" if kind == "yc" else "none"
        for word in ("right", "no load", "two loads", "wrong way", "logic"):
            yield Case("cause", f"{words} {word}",
                       ["cause", f"--system={system}", f"--kind={kind}", f"--sync={sync}",
                        f"--conductor={conductor}", *SCOPE[word].split()])


# Drawings of rasters and signals

# Those of broadcasting and closed circuits, and one of each manner of the others.
DRAWN = """
525-59.94-interlaced
625-50-interlaced
525-60-interlaced
262-60.05-progressive
312-50.08-progressive
314-49.76-progressive
525-59.94-progressive
625-50-progressive
750-60-progressive
1125-59.94-interlaced
1125-50-interlaced
1125-60-progressive
1023-60-interlaced
cta-861-vic-6
cta-861-vic-32
cta-861-vic-39
vesa-dmt-01
vesa-dmt-04
vesa-dmt-0f
vesa-dmt-24
vesa-dmt-29
vesa-dmt-4b
"""
VIEWS = ["line", "blanking", "field", "map"]


def cases_of_draw(cli):
    rasters = lines_of(DRAWN)
    for raster, view in itertools.product(rasters, VIEWS):
        yield drawing("draw", f"{view} {raster}", ["draw", raster, f"--view={view}"])
    for raster, view in itertools.product(rasters[:3], VIEWS):
        args = ["draw", raster, f"--view={view}"]
        yield drawing("draw", f"{view} {raster} dark", [*args, "--theme=dark"])
        yield drawing("draw", f"{view} {raster} small", [*args, "--theme=light", "--size=480x320"])
        yield Case("draw", f"{view} {raster} json", [*args, "-o", "{out}.svg", "--json"])
    for system, raster in itertools.product(SYSTEMS, rasters[:3]):
        yield drawing("draw", f"field {raster} {system}",
                      ["draw", raster, "--view=field", f"--system={system}"])
    for standard in cli.json("readings", "--list")["standards"]:
        yield drawing("draw", f"blanking by {standard['id']}",
                      ["draw", standard["raster"], "--view=blanking",
                       f"--standard={standard['id']}"])
    for words in ("--cvt=1024x768@75", "--gtf=640x480@60,margins",
                  "--for-monitor=demo.bench --active=320x240 --field-rate=60"):
        yield drawing("draw", "line " + words, ["draw", *words.split(), "--view=line"])


CONTENTS = ["bars", "ramp", "multiburst", "pulse-and-window", "crosshatch"]
WAVEFORM_OPTIONS = """
--bars=100
--line=30
--line=300 --frame=1
--frame=3
--span=field
--span=frame
--rate=27MHz
--loads=none
--loads=two
--line=1 --loads=none
"""
WAVEFORM_SYNCS = ["rgb separate", "rgb composite-sync", "rgb on-green", "component on-y",
                  "component separate", "luminance in-video", "composite composite-sync"]


def cases_of_waveform(_):
    for system, kind, content in itertools.product(SYSTEMS, SIGNALS, CONTENTS):
        args = ["waveform", f"--system={system}", f"--kind={kind}", f"--content={content}"]
        yield table("waveform", f"{system} {kind} {content}", [*args, "--json"])
        if content == "bars":
            yield drawing("waveform", f"{system} {kind} {content} drawn", args)
    for system, words in itertools.product(("ntsc-m", "pal-b", "secam-l"),
                                           lines_of(WAVEFORM_OPTIONS)):
        args = ["waveform", f"--system={system}", "--kind=composite", *words.split()]
        yield table("waveform", f"{system} {words}", args)
        if "span" not in words:
            yield drawing("waveform", f"{system} {words} drawn", args)
    for words, raster in itertools.product(
            WAVEFORM_SYNCS, ("525-59.94-interlaced", "vesa-dmt-04", "1125-60-interlaced")):
        kind, sync = words.split()
        args = ["waveform", "--system=none", f"--kind={kind}", f"--sync={sync}",
                f"--raster={raster}"]
        yield table("waveform", f"{words} {raster}", args)
        yield drawing("waveform", f"{words} {raster} drawn", args)


TUBES = """
--diagonal=14in --aspect=4:3 --mask=slot --pitch=0.42mm
--diagonal=20in --aspect=16:9 --mask=grille --pitch=0.31mm --raster=1125-60-interlaced \
--bandwidth=30MHz --kind=component
--diagonal=9in --aspect=4:3 --mask=mono --spot=0.2mm --raster=625-50-interlaced \
--bandwidth=8MHz --kind=luminance --claim=800
--diagonal=21in --aspect=5:4 --mask=dot --pitch=0.26mm --raster=vesa-dmt-24 \
--bandwidth=120MHz --kind=rgb
--diagonal=21in --aspect=4:3 --mask=slot --raster=525-59.94-interlaced --kind=composite \
--system=ntsc-m --bandwidth=6MHz --filter=comb
--diagonal=21in --aspect=4:3 --mask=slot --raster=625-50-interlaced --kind=composite \
--system=pal-b --bandwidth=6MHz --filter=trap --lead=10MHz
--diagonal=21in --aspect=4:3 --mask=slot --pitch=0.8mm --raster=625-50-interlaced --kind=yc \
--system=secam-l --bandwidth=6MHz --kell=0.64 --interlace=0.7 --detail=4MHz
"""


def cases_of_detail(_):
    for number, words in enumerate(lines_of(TUBES), 1):
        yield from both("detail", f"tube {number}", ["detail", *words.split()])


# Bench sheets

CELL_SCOPE = {
    "right": "--white=0.7V --sync-level=0.3V",
    "low, lifted, d.c.": "--white=0.47V --black=0.05V --dc=1V",
    "own sync 1.41 V": "--conductor=sync --sync-level=1.41V --sync-polarity=positive",
}


def cases_of_sheet(sheet):
    group = "sheets/" + sheet.name
    report = ["report", sheet.file, "-o", "{out}.pdf"]
    edid = ["edid", sheet.file, "-o", "{out}.edid"]
    read = [["timing", "--edid={out}.edid", f"--which={n}", "--as-modeline"] for n in (1, 2, 3)]

    yield from both(group, "check", ["sheet-check", sheet.file])
    yield from both(group, "fit", ["fit", sheet.file])
    yield Case(group, "fit findings", ["fit", sheet.file, "--findings"])
    yield Case(group, "report", report, [*report, "--json"], files=(".pdf",))
    yield Case(group, "edid", edid, [*edid, "--json"], *read, files=(".edid",))
    for cell in sheet.cells():
        yield from cases_of_cell(group, sheet, cell)
    for cell in sheet.diagonal():
        yield from cases_of_drawn_cell(group, sheet, cell)


def cell_words(sheet, cell):
    return [sheet.file, f"--source={cell[0]}", f"--input={cell[1]}"], f"{cell[0]}-{cell[1]}"


def cases_of_cell(group, sheet, cell):
    args, name = cell_words(sheet, cell)
    yield from both(group, f"{name} detail", ["detail", *args])
    yield Case(group, f"{name} hookup", ["hookup", *args, "--csv={out}.csv"], files=(".csv",))
    yield Case(group, f"{name} hookup json", ["hookup", *args, "--json"])
    for word, readings in CELL_SCOPE.items():
        yield Case(group, f"{name} cause {word}", ["cause", *args, *readings.split()])


def cases_of_drawn_cell(group, sheet, cell):
    args, name = cell_words(sheet, cell)
    plan = ["hookup", *args]
    yield Case(group, f"{name} fit alone", ["fit", *args, "--findings"])
    yield Case(group, f"{name} plan drawn", [*plan, "-o", "{out}.svg", "--pdf={out}.pdf"],
               files=(".svg", ".pdf"))
    yield Case(group, f"{name} other plans", [*plan, "--alternative=2"], [*plan, "--alternative=3"])
    yield Case(group, f"{name} other series", [*plan, "--series=e12"],
               [*plan, "--series=e96", "--json"])
    yield Case(group, f"{name} cause json", ["cause", *args, *SCOPE["no load"].split(), "--json"])
    yield table(group, f"{name} waveform", ["waveform", *args, "--json"])
    yield drawing(group, f"{name} waveform drawn", ["waveform", *args])


def all_cases(cli):
    makers = (cases_of_help, cases_of_usage, cases_of_wrong_sheets, cases_of_timing,
              cases_of_computed, cases_of_identify, cases_of_solve, cases_of_sync, cases_of_levels,
              cases_of_pad, cases_of_work_back, cases_of_service, cases_of_readings, cases_of_cause, cases_of_draw, cases_of_waveform,
              cases_of_detail)
    cases = list(itertools.chain.from_iterable(maker(cli) for maker in makers))
    for sheet in all_sheets():
        cases += cases_of_sheet(sheet)
    names = set()
    for case in cases:
        assert case.key() not in names, f"two cases are called {case.key()}"
        names.add(case.key())
    return cases
