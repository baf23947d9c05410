#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds Breezeway and opens the demo bench sheet, or the sheets that are named:
#   src/start.sh [SHEET.bench]...
# Without a display it prints the fit of each sheet and writes its report as a PDF.
set -euo pipefail
# shellcheck source=src/setup.sh
. "$(dirname "${BASH_SOURCE[0]}")/setup.sh"

build=$project_root/_build

has_display () {
  [ -n "${WAYLAND_DISPLAY:-}${DISPLAY:-}" ] &&
    timeout 20 "$build/src/app/probe-display" >/dev/null 2>&1
}

# report_sheet SHEET: the fit as text, and the report as a PDF in this folder if it can be written.
report_sheet () {
  local cli=$build/src/cli/breezeway-cli folder=${PWD%/} pdf
  if [ ! -w "$folder/" ]; then
    folder=${TMPDIR:-/tmp}
  fi
  pdf=$folder/$(basename "$1" .bench)-bench-sheet.pdf
  "$cli" fit "$1"
  "$cli" report "$1" -o "$pdf"
  echo "The bench sheet as a PDF: $pdf"
}

need_for_build
configure_build "$build"
ninja -C "$build" src/app/breezeway src/app/probe-display src/cli/breezeway-cli data/gschemas.compiled

if [ $# -eq 0 ]; then
  set -- "$project_root/data/demo.bench"
fi
export GSETTINGS_SCHEMA_DIR=$build/data
if has_display; then
  exec "$build/src/app/breezeway" "$@"
fi
echo "There is no display, so this is what can be shown without one."
for sheet in "$@"; do
  report_sheet "$sheet"
done
