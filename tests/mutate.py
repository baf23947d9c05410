#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Put one slip at a time into a copy of the core and see whether a test notices.

Picks mutations by a seed from the sources and headers of src/core (tests/mutations.py says which
slips there are), compiles each into a copy of the core library, and runs the core tests, then those
of cli and draw, against it: the tests of the file's own room first, quick ones before slow ones, until
one fails. A mutation that no test notices survives, and is printed as file, line and difference.
A mutation that does not compile, or compiles to the same code, is passed over and another is picked.

  tests/mutate.py                        60 mutations over all of core
  tests/mutate.py --count 20 --seed 7 --room core/fit
  tests/mutate.py --kind sign --kind unit --count 1000    all of two kinds that are few
  tests/mutate.py --files '*-result.c' --kind constant    numbers of the files that word results
  tests/mutate.py --list                 which mutations those would be
  tests/mutate.py --try src/core/fit/mains.c '1.1 *' '1.2 *'    a mutation of your own

The tree is copied to and built in _build-mutate, where what was found is also kept: a run that was
stopped goes on where it was, as long as nothing in the tree changed. tests/mutate-equivalent.tsv
lists mutations that change nothing that can be seen, each with the reason; they are passed over.

Exit status: 0 if at most one in twenty survived, 1 if more did, 2 if nothing could be tried.
"""
import argparse
import collections
import concurrent.futures
import dataclasses
import difflib
import fcntl
import fnmatch
import hashlib
import json
import os
import pathlib
import random
import re
import resource
import shlex
import shutil
import signal
import subprocess
import sys
import threading
import time

import mutations

ROOT = pathlib.Path(__file__).resolve().parent.parent
WORK = ROOT / "_build-mutate"
TREE = WORK / "tree"
BUILD = WORK / "build"
TIMES = WORK / "times.json"
EQUIVALENT = ROOT / "tests" / "mutate-equivalent.tsv"
LIBRARY = "libbreezeway-core.so"
SUITES = ("core", "cli", "draw")
SLOW_S = 4.0
GUESSED_S = {"core": 1, "cli": 2, "draw": 6}
# A program that leaves an array stops, as it does under tests/run.sh sanitize.
BOUNDS = "-fsanitize=bounds -fsanitize-undefined-trap-on-error"
MEMORY_BYTES = 4 << 30
FILE_BYTES = 4 << 30  # a test makes a file of this size, without contents


def run(command, **options):
    return subprocess.run(command, text=True, capture_output=True, check=False, **options)


def stop(text):
    print(text, file=sys.stderr)
    sys.exit(2)


# The copy of the tree and its build


def copy_tree():
    """Copy what is built and tested to TREE; a file that did not change keeps its time."""
    wanted = {}
    for top in sorted(ROOT.iterdir()):
        if top.name.startswith((".", "_build")):
            continue
        for path in [top] if top.is_file() else sorted(top.rglob("*")):
            if path.is_file() and "__pycache__" not in path.parts:
                wanted[path.relative_to(ROOT)] = path.read_bytes()
    build_file = pathlib.Path("src/core/meson.build")
    # A shared library is linked once for each mutation, where a static one would be linked into
    # every test.
    static, shared = b"core_lib = static_library(", b"core_lib = shared_library("
    if static not in wanted[build_file]:
        stop(f"{build_file}: the line with \"{static.decode()}\" is missing.")
    wanted[build_file] = wanted[build_file].replace(static, shared)
    for path in [p for p in TREE.rglob("*") if p.is_file() and p.relative_to(TREE) not in wanted]:
        path.unlink()
    fingerprint = hashlib.sha1()
    for path, content in sorted(wanted.items()):
        target = TREE / path
        fingerprint.update(str(path).encode() + b"\0" + content)
        if not target.exists() or target.read_bytes() != content:
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(content)
            shutil.copymode(ROOT / path, target)
    return fingerprint.hexdigest()[:12]


def build_tree():
    if not (BUILD / "build.ninja").exists():
        made = run(["meson", "setup", BUILD, TREE, "-Dbuildtype=custom", "-Ddebug=false",
                    "-Doptimization=2", "-Dc_link_args=-Wl,--enable-new-dtags", f"-Dc_args={BOUNDS}"])
        if made.returncode != 0:
            stop(made.stdout + made.stderr)
    run(["ninja", "-C", BUILD, "build.ninja"])  # what is asked of it below is of the tree as it is now
    targets = [t["filename"][0] for t in json.loads(run(["meson", "introspect", "--targets", BUILD]).stdout)
               if t["type"] == "executable" and ("/tests/core/" in t["defined_in"] or "/tests/cli/" in t["defined_in"]
                                                 or "/tests/draw/" in t["defined_in"] or "/src/cli/" in t["defined_in"])]
    data = [t["filename"][0] for t in json.loads(run(["meson", "introspect", "--targets", BUILD]).stdout)
            if t["type"] == "custom" and "/data/" in t["defined_in"]
            and "/manual/" not in t["defined_in"]]  # the manual asks for the whole window
    built = run(["ninja", "-C", BUILD] + [os.path.relpath(t, BUILD) for t in targets + data])
    if built.returncode != 0:
        stop(built.stdout[-4000:] + built.stderr)


@dataclasses.dataclass
class Commands:
    compile: dict  # of each source below the root, the command and the object it makes
    link: list
    depends: dict  # of each header below the root, the sources that include it


def read_commands():
    compile_of, depends = {}, collections.defaultdict(list)
    for entry in json.loads((BUILD / "compile_commands.json").read_text()):
        path = pathlib.Path(os.path.normpath(os.path.join(entry["directory"], entry["file"])))
        if "libbreezeway-core.so.p" in entry["output"] and path.is_relative_to(TREE / "src"):
            command = shlex.split(entry["command"])
            while not command[1].startswith("-"):
                command.pop(0)  # a wrapper such as ccache
            compile_of[str(path.relative_to(TREE))] = (command, entry["output"])
    source_of = {out: path for path, (_, out) in compile_of.items()}
    target = None
    for line in run(["ninja", "-C", BUILD, "-t", "deps"]).stdout.splitlines():
        if line and not line.startswith(" ") and ": #deps" in line:
            target = source_of.get(line.split(":")[0])
        elif target and line.strip().endswith(".h"):
            header = pathlib.Path(os.path.normpath(BUILD / line.strip()))
            if header.is_relative_to(TREE / "src"):
                depends[str(header.relative_to(TREE))].append(target)
    library = f"src/core/{LIBRARY}"
    link = run(["ninja", "-C", BUILD, "-t", "commands", "-s", library]).stdout.strip()
    return Commands(compile_of, shlex.split(link), depends)


# Which test runs which function


class Unsound(Exception):
    """A test that fails on the core as it is."""


class Trace:
    """The functions of the core that each test runs, from a run of each on an instrumented core. What
    was found out of a test is kept until it, or the programs, change."""

    def __init__(self, commands, bench):
        self.commands, self.bench = commands, bench
        self.folder = WORK / "trace"
        self.folder.mkdir(parents=True, exist_ok=True)
        self.functions = {}  # of each source, (line, name of the function)
        self.ran = {}  # of each test, the (source, line) of the functions that it runs

    def build_object(self, source):
        command, out = self.commands.compile[source]
        made = self.folder / (source.replace("/", "_") + ".o")
        new = command + ["-w", "-g", "-falign-functions=16", "-finstrument-functions"]
        new[new.index("-o") + 1] = str(made)
        new[new.index("-MF") + 1] = f"{made}.d"
        if not made.exists() or made.stat().st_mtime < (BUILD / out).stat().st_mtime:
            if run(new, cwd=BUILD).returncode != 0:
                stop(f"{source} does not compile with -finstrument-functions")
        return out, str(made)

    def build(self, pool):
        objects = dict(pool.map(self.build_object, sorted(self.commands.compile)))
        link = [objects.get(word, word) for word in self.commands.link]
        link[link.index("-o") + 1] = str(self.folder / LIBRARY)
        link += [str(TREE / "tests/mutate-trace.c"), "-Wl,-Bsymbolic"]
        linked = run(link, cwd=BUILD)
        if linked.returncode != 0:
            stop(linked.stderr[-2000:])

    def read_functions(self):
        """The source and line of each function, by its offset. A function of a header, such as g_steal_pointer(),
        is said to stand at its own line of whatever source it was compiled in; it is left out."""
        library = str(self.folder / LIBRARY)
        symbols = [line.split() for line in run(["nm", library]).stdout.splitlines()]
        offsets = sorted({int(s[0], 16) for s in symbols if len(s) == 3 and s[1] in "tT"})
        places = run(["addr2line", "-f", "-e", library],
                     input="\n".join(f"{o:x}" for o in offsets)).stdout.splitlines()
        texts, found = {}, {}
        for offset, function, place in zip(offsets, places[::2], places[1::2]):
            name, _, line = place.rpartition(":")
            path = pathlib.Path(os.path.normpath(BUILD / name))
            if not path.is_relative_to(TREE / "src") or not line.split()[0].isdigit():
                continue
            source, number = str(path.relative_to(TREE)), int(line.split()[0])
            lines = texts.setdefault(source, path.read_text(encoding="utf-8").splitlines())
            head = function.split(".")[0] + " ("  # its name begins a line, and its parameters may take several
            if any(line.startswith(head) for line in lines[max(number - 12, 0):number]):
                found[offset // 16] = (source, number)
        return found

    def trace_test(self, test, functions, state):
        folder = self.folder / test.name
        folder.mkdir(exist_ok=True)
        trace, digest = folder / "trace", folder / "state"
        programs = [pathlib.Path(test.command[0])] + [pathlib.Path(v) for k, v in test.env.items() if k == "BW_CLI"]
        own = hashlib.sha1(state.encode() + b"".join(p.read_bytes() for p in programs)).hexdigest()
        if not digest.exists() or digest.read_text() != own:
            trace.unlink(missing_ok=True)
            if not self.bench.run(test, folder, self.folder, {"BW_TRACE": str(trace)}):
                raise Unsound(test.name)
            digest.write_text(own)
        ran = trace.read_bytes() if trace.exists() else b""
        self.ran[test.name] = {place for at, place in functions.items() if at < len(ran) and ran[at]}

    def take(self, jobs):
        with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
            self.build(pool)
            functions = self.read_functions()
            for source, line in functions.values():
                self.functions.setdefault(source, []).append(line)
            state = hashlib.sha1(b"".join((TREE / s).read_bytes() for s in sorted(self.commands.compile)
                                          + sorted(self.commands.depends))).hexdigest()
            list(pool.map(lambda test: self.trace_test(test, functions, state), self.bench.tests))

    def tests_of(self, mutation):
        """The tests that could notice MUTATION: in a function, those that run it; in a table, a macro or a
        header, those that run anything of its file; in a table that other files see, all."""
        sources = [mutation.path] if mutation.path.endswith(".c") else self.commands.depends[mutation.path]
        if mutation.place == "code" and mutation.path.endswith(".c"):
            line = max((l for l in self.functions.get(mutation.path, []) if l <= mutation.line), default=0)
            return {name for name, ran in self.ran.items() if (mutation.path, line) in ran}
        if mutation.place == "data" and self.is_exported(mutation.path):
            return set(self.ran)
        return {name for name, ran in self.ran.items() if any(source in sources for source, _ in ran)}

    @staticmethod
    def is_exported(path):
        return re.search(r"^(?:const|Bw)\b[^;({]*=\s*\{", (TREE / path).read_text(encoding="utf-8"),
                         re.MULTILINE) is not None


# The tests


@dataclasses.dataclass
class Test:
    name: str
    suite: str
    room: str  # of the core, or ""
    command: list
    env: dict
    seconds: float = 1.0


def read_tests():
    rooms = {p.stem.removeprefix("test_"): p.parent.name for p in (TREE / "tests/core").glob("*/test_*.c")}
    tests = []
    for entry in json.loads(run(["meson", "introspect", "--tests", BUILD]).stdout):
        suite = entry["suite"][0].split(":")[-1]
        # A script that looks for words besides is no test of what is computed, and wants programs of its own.
        if suite in SUITES and f"/tests/{suite}/" in entry["cmd"][0]:
            name = entry["name"]
            room = rooms.get(name.removeprefix("core-"), "") if suite == "core" else ""
            # Without -k the program stops at its first failure.
            tests.append(Test(name, suite, room, [c for c in entry["cmd"] if c != "-k"], entry["env"]))
    return tests


def forbid_excess(patience_s):
    for limit, most in ((resource.RLIMIT_AS, MEMORY_BYTES), (resource.RLIMIT_FSIZE, FILE_BYTES),
                        (resource.RLIMIT_CORE, 0), (resource.RLIMIT_CPU, patience_s)):
        resource.setrlimit(limit, (most, most))


class Bench:
    """The tests, and what is known of them: how long they take, and that they pass as things are."""

    def __init__(self, tests):
        self.tests = tests
        self.lock = threading.Lock()
        self.sound = {test.name: threading.Lock() for test in tests}
        self.passes = {}
        known = json.loads(TIMES.read_text()) if TIMES.exists() else {}
        for test in tests:
            test.seconds = known.get(test.name, GUESSED_S[test.suite])

    def run(self, test, folder, library_folder, more_env=None):
        """Whether TEST passes with the library in LIBRARY_FOLDER; FOLDER is for what it writes. What
        takes far longer than it should fails."""
        env = dict(os.environ, **test.env)
        for kind in ("CACHE", "CONFIG", "DATA", "STATE"):
            env[f"XDG_{kind}_HOME"] = str(folder / test.name / kind.lower())
        env["LD_LIBRARY_PATH"] = str(library_folder)
        env["MALLOC_PERTURB_"] = "170"  # what is read and was never written shows
        env.update(more_env or {})
        # What goes round for ever is stopped by the time that it computes: how long that lasts depends on
        # what else the machine does, so that the clock is for what waits for ever.
        patience_s = 900 if more_env else int(20 + 15 * test.seconds)
        with (folder / "output").open("wb") as output:
            process = subprocess.Popen(test.command, env=env, cwd=folder, stdin=subprocess.DEVNULL,
                                       stdout=output, stderr=output, start_new_session=True,
                                       preexec_fn=lambda: forbid_excess(patience_s))
            timer = threading.Timer(10 * patience_s, os.killpg, (process.pid, signal.SIGKILL))
            timer.start()
            try:
                _, status, used = os.wait4(process.pid, 0)
            finally:
                timer.cancel()
            process.returncode = os.waitstatus_to_exitcode(status)
        if status == 0 and not more_env:
            test.seconds = used.ru_utime + used.ru_stime
        return status == 0

    def is_sound(self, test):
        """Whether TEST passes on the core as it is; found out when it is first asked."""
        with self.sound[test.name]:
            if test.name not in self.passes:
                folder = WORK / "sound" / test.name
                folder.mkdir(parents=True, exist_ok=True)
                self.passes[test.name] = self.run(test, folder, BUILD / "src/core")
            return self.passes[test.name]

    def save_times(self):
        TIMES.write_text(json.dumps({test.name: round(test.seconds, 2) for test in self.tests}, indent=0))


# One mutation


class Trial:
    """Tries mutations, one after the other; several trials run side by side."""

    def __init__(self, number, commands, bench, trace, killers):
        self.folder = WORK / f"trial-{number}"
        self.commands, self.bench, self.trace, self.killers = commands, bench, trace, killers
        (self.folder / "lib").mkdir(parents=True, exist_ok=True)

    def compile(self, mutation, text):
        """The objects that differ, by the name of the one each replaces; None if it is no program."""
        include = self.folder / "include"
        room = pathlib.Path(mutation.path).parent
        mutated_room = include / room.relative_to("src")
        shutil.rmtree(include, ignore_errors=True)
        mutated_room.mkdir(parents=True)
        # A header is found beside the file that includes it, so the whole room is taken along.
        for header in (TREE / room).glob("*.h"):
            shutil.copy(header, mutated_room)
        sources = [mutation.path] if mutation.path.endswith(".c") else self.commands.depends[mutation.path]
        for source in sources:
            if pathlib.Path(source).parent == room:
                shutil.copy(TREE / source, mutated_room)
        (mutated_room / pathlib.Path(mutation.path).name).write_text(text, encoding="utf-8")
        changed = {}
        for i, source in enumerate(sorted(set(sources))):
            command, out = self.commands.compile[source]
            made = self.folder / f"{i}.o"
            at = command.index("-c")
            own = include / pathlib.Path(source).relative_to("src")
            file = own if own.exists() else command[at + 1]
            new = [command[0], f"-I{include}"] + command[1:at] + ["-w", "-c", str(file)]
            new[new.index("-o") + 1] = str(made)
            if "-MF" in new:
                new[new.index("-MF") + 1] = str(self.folder / "deps")
            if run([c for c in new if not c.startswith("-Werror=")], cwd=BUILD).returncode != 0:
                return None
            if made.read_bytes() != (BUILD / out).read_bytes():
                changed[out] = str(made)
        return changed

    def link(self, changed):
        command = [changed.get(word, word) for word in self.commands.link]
        command[command.index("-o") + 1] = str(self.folder / "lib" / LIBRARY)
        return run(command, cwd=BUILD).returncode == 0

    def order(self, mutation):
        room = pathlib.Path(mutation.path).parts[2]
        known = self.killers.get(mutation.key)
        seen = self.killers.get(mutation.path, collections.Counter())

        def rank(test):
            return (test.name != known, test.seconds > SLOW_S, SUITES.index(test.suite),
                    test.room != room, -seen[test.name], test.seconds)
        able = self.trace.tests_of(mutation)
        return sorted((test for test in self.bench.tests if test.name in able), key=rank)

    def result(self, mutation, text):
        """"same", "no program", "survived", or the name of the test that noticed."""
        changed = self.compile(mutation, text)
        if changed is None:
            return "no program"
        if not changed:
            return "same"
        if not self.link(changed):
            return "no program"
        for test in self.order(mutation):
            if not self.bench.run(test, self.folder, self.folder / "lib"):
                if not self.bench.is_sound(test):
                    raise Unsound(test.name)
                return test.name
        return "survived"


# Choosing


def read_equivalent():
    found = set()
    if EQUIVALENT.exists():
        for line in EQUIVALENT.read_text(encoding="utf-8").splitlines():
            if line and not line.startswith("#"):
                path, before, after, _reason = line.split("\t")
                found.add((path, before, after))
    return found


def candidates(room, seed, kinds, name):
    """All mutations of KINDS, in files that are called like NAME, in the order in which they are to be tried:
    the kinds take turns by chance."""
    chance = random.Random(seed)
    by_kind = {kind: [] for kind in kinds}
    base = ROOT / "src" / room
    for path in sorted(p for p in base.rglob("*.[ch]") if fnmatch.fnmatch(p.name, name)):
        text = path.read_text(encoding="utf-8")
        for mutation in mutations.find_mutations(str(path.relative_to(ROOT)), text, chance.choice):
            if mutation.kind in by_kind:
                by_kind[mutation.kind].append(mutation)
    for found in by_kind.values():
        chance.shuffle(found)
    while any(by_kind.values()):
        yield by_kind[chance.choice([k for k in kinds if by_kind[k]])].pop()


def own_mutation(path, before, after):
    text = (ROOT / path).read_text(encoding="utf-8")
    if text.count(before) != 1:
        stop(f"{path}: the text to replace stands there {text.count(before)} times; it must be once.")
    return mutations.Source(path, text).make("own", text.index(before), before, after)


def show(mutation):
    text = (TREE / mutation.path).read_text(encoding="utf-8")
    lines = difflib.unified_diff(text.splitlines(), mutation.apply(text).splitlines(), lineterm="", n=0)
    changed = [line for line in lines if line[:1] in "+-" and line[:3] not in ("+++", "---")]
    return f"{mutation.path}:{mutation.line}: {mutation.kind}\n" + "\n".join("  " + c for c in changed)


# The run


class Log:
    """What was found, a line of JSON each; what was found with another tree only sets the order."""

    def __init__(self, path, tree):
        self.path, self.tree = path, tree
        self.results, self.killers = {}, {}
        self.lock = threading.Lock()
        if path.exists():
            for line in path.read_text().splitlines():
                entry = json.loads(line)
                if entry["tree"] == tree:
                    self.results[entry["key"]] = entry["result"]
                self.learn(entry["key"], entry["path"], entry["result"])

    def learn(self, key, path, result):
        if result not in ("same", "no program", "survived"):
            self.killers[key] = result
            self.killers.setdefault(path, collections.Counter())[result] += 1

    def add(self, mutation, result, seconds):
        with self.lock, self.path.open("a") as log:
            self.results[mutation.key] = result
            self.learn(mutation.key, mutation.path, result)
            log.write(json.dumps({"tree": self.tree, "key": mutation.key, "path": mutation.path,
                                  "line": mutation.line, "kind": mutation.kind, "result": result,
                                  "seconds": round(seconds, 1), "before": mutation.line_before,
                                  "after": mutation.line_after}) + "\n")


class Run:
    def __init__(self, stream, count, log, equivalent):
        self.stream, self.count, self.log, self.equivalent = stream, count, log, equivalent
        self.lock = threading.Lock()
        self.promised, self.passed_over, self.survivors, self.killed = 0, 0, [], 0
        self.start = time.monotonic()

    def next_mutation(self):
        with self.lock:
            if self.promised >= self.count:
                return None
            for mutation in self.stream:
                if (mutation.path, mutation.line_before, mutation.line_after) not in self.equivalent:
                    self.promised += 1
                    return mutation
            return None

    def note(self, mutation, result):
        with self.lock:
            if result in ("same", "no program"):
                self.promised -= 1
                self.passed_over += 1
                if self.passed_over > 50 + self.count:
                    self.count = 0  # the compiler is at fault, not the mutations
                return
            if result == "survived":
                self.survivors.append(mutation)
            else:
                self.killed += 1
            done = self.killed + len(self.survivors)
            print(f"[{done}/{self.count}] {time.monotonic() - self.start:5.0f} s  "
                  f"{mutation.path}:{mutation.line} {mutation.kind}: {result}", flush=True)

    def work(self, trial):
        while (mutation := self.next_mutation()) is not None:
            result, start = self.log.results.get(mutation.key), time.monotonic()
            if result is None:
                text = (TREE / mutation.path).read_text(encoding="utf-8")
                result = trial.result(mutation, mutation.apply(text))
                self.log.add(mutation, result, time.monotonic() - start)
            self.note(mutation, result)

    def report(self):
        for mutation in sorted(self.survivors, key=lambda m: (m.path, m.line)):
            print("\nsurvived " + show(mutation))
        done = self.killed + len(self.survivors)
        if done == 0:
            stop("Nothing was tried.")
        print(f"\n{self.killed} of {done} noticed, {len(self.survivors)} survived "
              f"({100 * len(self.survivors) / done:.1f} %), {time.monotonic() - self.start:.0f} s")
        return 0 if 20 * len(self.survivors) <= done else 1


def parse_arguments():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=60, help="how many mutations to try (60)")
    parser.add_argument("--seed", type=int, default=1, help="which ones (1)")
    parser.add_argument("--room", default="core", help="below src: core, core/fit, ... (core)")
    parser.add_argument("--files", default="*", metavar="NAME", help="in files called like this alone")
    parser.add_argument("--kind", action="append", choices=mutations.KINDS, metavar="KIND",
                        help=f"of this kind alone; may be given several times ({', '.join(mutations.KINDS)})")
    parser.add_argument("--jobs", type=int, default=os.cpu_count(), help="mutations tried at once")
    parser.add_argument("--list", action="store_true", help="only say what would be tried")
    parser.add_argument("--try", nargs=3, dest="own", action="append", metavar=("FILE", "OLD", "NEW"),
                        help="a mutation of your own; may be given several times")
    args = parser.parse_args()
    if args.count < 1 or args.jobs < 1:
        parser.error("--count and --jobs must be at least 1")
    if not (ROOT / "src" / args.room).is_dir() or args.room.split("/")[0] != "core":
        parser.error(f"there is no room {args.room}; rooms are core/" +
                     ", core/".join(sorted(p.name for p in (ROOT / "src/core").iterdir() if p.is_dir())))
    if not any(fnmatch.fnmatch(p.name, args.files) for p in (ROOT / "src" / args.room).rglob("*.[ch]")):
        parser.error(f"no source or header in {args.room} is called {args.files}")
    args.kind = [kind for kind in mutations.KINDS if args.kind is None or kind in args.kind]
    return args


def list_mutations(args):
    equivalent, left = read_equivalent(), args.count
    for mutation in candidates(args.room, args.seed, args.kind, args.files):
        if (mutation.path, mutation.line_before, mutation.line_after) in equivalent:
            continue
        print(f"{mutation.path}:{mutation.line}: {mutation.kind}\n  -{mutation.line_before}\n  +{mutation.line_after}")
        left -= 1
        if left == 0:
            return


def main():
    args = parse_arguments()
    if args.list:
        return list_mutations(args)
    if args.own:
        stream, count, name = iter([own_mutation(*own) for own in args.own]), len(args.own), "own"
    else:
        stream, count = candidates(args.room, args.seed, args.kind, args.files), args.count
        name = "-".join(args.room.split("/") + [str(args.seed)])
        if args.files != "*":
            name += "-" + re.sub(r"\W+", "-", args.files)
        if len(args.kind) < len(mutations.KINDS):
            name += "-" + "-".join(kind.replace(" ", "-") for kind in args.kind)
    stream = iter(list(stream))
    WORK.mkdir(exist_ok=True)
    lock = (WORK / "lock").open("w")
    try:
        fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        stop(f"Another run uses {WORK}.")
    tree = copy_tree()
    build_tree()
    bench, commands = Bench(read_tests()), read_commands()
    trace = Trace(commands, bench)
    try:
        trace.take(args.jobs)
    except Unsound as error:
        stop(f"{error} fails on the core as it is.")
    log = Log(WORK / f"{name}.jsonl", tree)
    current = Run(stream, count, log, read_equivalent())
    with concurrent.futures.ThreadPoolExecutor(args.jobs) as pool:
        trials = [Trial(i, commands, bench, trace, log.killers) for i in range(args.jobs)]
        futures = [pool.submit(current.work, trial) for trial in trials]
        try:
            for future in concurrent.futures.as_completed(futures):
                future.result()
        except Unsound as error:
            current.count = 0
            stop(f"{error} fails on the core as it is.")
        finally:
            bench.save_times()
    return current.report()


if __name__ == "__main__":
    sys.exit(main())
