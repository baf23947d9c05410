#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Enter the MIME type in a database of its own and ask GIO what it makes of a bench sheet, once by
its suffix and once by its first group alone.

Usage: check_mime.py PACKAGE.xml
"""
import os
import shutil
import subprocess
import sys
import tempfile

EXPECTED = "application/x-breezeway-bench"
SHEET = "# A comment may come first.\n[bench-sheet]\nformat=1\n"


def content_type(path, env):
    answer = subprocess.run(
        ["gio", "info", "-a", "standard::content-type", path],
        env=env, check=True, capture_output=True, text=True).stdout
    for line in answer.splitlines():
        if line.strip().startswith("standard::content-type:"):
            return line.split(":")[-1].strip()
    return "none"


def main():
    failed = False
    with tempfile.TemporaryDirectory() as folder:
        packages = os.path.join(folder, "data", "mime", "packages")
        os.makedirs(packages)
        shutil.copy(sys.argv[1], packages)
        env = dict(os.environ, XDG_DATA_HOME=os.path.join(folder, "data"))
        subprocess.run(["update-mime-database", os.path.dirname(packages)], env=env, check=True)
        for name, text in (("suffix-alone.bench", "x\n"), ("no-suffix", SHEET)):
            path = os.path.join(folder, name)
            with open(path, "w", encoding="utf-8") as sheet:
                sheet.write(text)
            found = content_type(path, env)
            print(f"{name}: {found}")
            failed = failed or found != EXPECTED
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
