#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Build without tests on a system that seems to lack what only the tests need, install into a prefix
and into a staging folder, and run what was installed: the command line, and the window as the session
starts it, by D-Bus from the desktop entry.

To be run with a display. The build stays in FOLDER, so that the next run is quick.

Usage: check_install.py SOURCE_ROOT FOLDER
"""
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

APP = "org.breezeway.Breezeway"
TEST_ONLY = ("json-glib-1.0", "libxcvt", "fftw3f")
INSTALLED = {
    "bin/breezeway",
    "bin/breezeway-cli",
    f"share/applications/{APP}.desktop",
    "share/bash-completion/completions/breezeway-cli",
    "share/breezeway/demo.bench",
    f"share/dbus-1/services/{APP}.service",
    f"share/glib-2.0/schemas/{APP}.gschema.xml",
    f"share/icons/hicolor/scalable/apps/{APP}.svg",
    "share/icons/hicolor/scalable/mimetypes/application-x-breezeway-bench.svg",
    f"share/icons/hicolor/symbolic/apps/{APP}-symbolic.svg",
    "share/licenses/breezeway/LICENSE",
    "share/man/man1/breezeway.1",
    "share/man/man1/breezeway-cli.1",
    "share/man/man5/breezeway-bench.5",
    f"share/metainfo/{APP}.metainfo.xml",
    f"share/mime/packages/{APP}.xml",
}
# What the tools of the desktop make of these after an installation.
MADE = ("share/applications/mimeinfo.cache", "share/glib-2.0/schemas/gschemas.compiled",
        "share/icons/hicolor/icon-theme.cache", "share/mime/")
PATIENCE_S = 60


def run(*command, env=None):
    done = subprocess.run(command, capture_output=True, encoding="utf-8", env=env, check=False)
    if done.returncode != 0:
        raise SystemExit(f"Bail out! {' '.join(map(str, command))}: {done.stdout[-2000:]}"
                         f"{done.stderr[-2000:]}".replace("\n", "\n# "))
    return done.stdout


def build_environment(folder):
    """The environment of the build: a pkg-config that does not know what only tests need."""
    tools = folder / "tools"
    tools.mkdir(parents=True, exist_ok=True)
    wrapper = tools / "pkg-config"
    wrapper.write_text("#!/bin/sh\nfor word; do\n  case \"$word\" in\n"
                       f"    {'|'.join(TEST_ONLY)}) exit 1 ;;\n  esac\ndone\n"
                       f"exec {shutil.which('pkg-config')} \"$@\"\n", encoding="utf-8")
    wrapper.chmod(0o755)
    env = {name: value for name, value in os.environ.items()
           if name not in ("GSETTINGS_SCHEMA_DIR", "G_DEBUG", "G_SLICE", "MALLOC_CHECK_", "DESTDIR",
                           "MALLOC_PERTURB_")}
    return dict(env, PKG_CONFIG=str(wrapper))


def files_below(folder):
    return {str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file()}


def faults_of_files(folder, made):
    found = files_below(folder)
    extra = [f"{name} is installed and not expected" for name in sorted(found - INSTALLED)
             if not (made and name.startswith(MADE))]
    missing = [f"{name} is missing" for name in sorted(INSTALLED - found)]
    if made:
        missing += [f"{name} was not made" for name in MADE if not (folder / name).exists()]
    return extra + missing


def faults_of_command(prefix, env):
    cli, demo = prefix / "bin/breezeway-cli", prefix / "share/breezeway/demo.bench"
    faults = []
    if not run(cli, "--version", env=env).startswith("breezeway-cli "):
        faults.append("breezeway-cli does not say its version")
    if "with parts" not in run(cli, "fit", demo, env=env):
        faults.append("breezeway-cli does not judge the demonstration")
    return faults


def has_window(env):
    """Whether a window shows the demonstration, whose file is its title."""
    asked = subprocess.run(["xdotool", "search", "--onlyvisible", "--name", "^demo.bench$"],
                           capture_output=True, encoding="utf-8", env=env, check=False)
    return asked.stdout.strip() != ""


def in_session(prefix):
    """To be run within a session bus: start by D-Bus, look for the window, quit."""
    env = dict(os.environ)
    deadline = time.monotonic() + PATIENCE_S
    run("gapplication", "launch", APP, str(prefix / "share/breezeway/demo.bench"), env=env)
    while not has_window(env):
        if time.monotonic() > deadline:
            raise SystemExit("the window did not come")
        time.sleep(0.2)
    run("gapplication", "action", APP, "quit", env=env)


def faults_of_session(prefix, env):
    with tempfile.TemporaryDirectory() as home:
        session = dict(env, HOME=home, GTK_A11Y="none",
                       XDG_DATA_DIRS=f"{prefix / 'share'}:/usr/local/share:/usr/share",
                       **{f"XDG_{kind}_HOME": f"{home}/{kind}"
                          for kind in ("CACHE", "CONFIG", "DATA", "STATE")})
        session.pop("DBUS_SESSION_BUS_ADDRESS", None)
        done = subprocess.run(
            ["dbus-run-session", "--", sys.executable, __file__, "--session", str(prefix)],
            capture_output=True, encoding="utf-8", env=session, check=False,
            timeout=2 * PATIENCE_S)
    return [] if done.returncode == 0 else (done.stdout + done.stderr).splitlines()


def report(number, title, faults):
    print(f"{'not ok' if faults else 'ok'} {number} - {title}")
    for fault in faults:
        print(f"# {fault}")


def main():
    if sys.argv[1] == "--session":
        in_session(pathlib.Path(sys.argv[2]))
        return
    source, folder = map(pathlib.Path, sys.argv[1:])
    env = build_environment(folder)
    build, prefix, staging = folder / "build", folder / "prefix", folder / "staging"
    for old in (prefix, staging):
        shutil.rmtree(old, ignore_errors=True)
    if not (build / "build.ninja").exists():
        shutil.rmtree(build, ignore_errors=True)
        run("meson", "setup", build, source, f"--prefix={prefix}", "-Dtests=false", env=env)
    print("1..4", flush=True)
    run("meson", "install", "-C", build, env=env)
    run("meson", "install", "-C", build, "--no-rebuild", "--destdir", staging, env=env)
    report(1, "all is installed into the prefix", faults_of_files(prefix, True))
    report(2, "all is installed into the staging folder",
           faults_of_files(staging / prefix.relative_to("/"), False))
    report(3, "the command line runs", faults_of_command(prefix, env))
    report(4, "the session starts the window", faults_of_session(prefix, env))


if __name__ == "__main__":
    main()
