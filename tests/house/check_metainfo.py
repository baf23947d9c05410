#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Let appstreamcli validate the description of the program, and fail at every error and warning but
those that were reviewed.

Usage: check_metainfo.py METAINFO.xml
"""
import re
import subprocess
import sys

REVIEWED = {
    # AppStream 1.0 warns of it and 0.16 does not. The project has no page of its own on the web.
    "url-homepage-missing",
}
ISSUE = re.compile(r"^\s*([EW]): [^ ]+: ([a-z0-9-]+)", re.MULTILINE)


def main():
    run = subprocess.run(["appstreamcli", "validate", "--no-net", "--no-color", sys.argv[1]],
                         capture_output=True, text=True)
    print(run.stdout + run.stderr)
    tags = {tag for _, tag in ISSUE.findall(run.stdout)}
    faults = sorted(tags - REVIEWED)
    if faults:
        print("Not reviewed:", ", ".join(faults))
    return 1 if faults or (run.returncode != 0 and not tags) else 0


if __name__ == "__main__":
    sys.exit(main())
