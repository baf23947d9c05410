#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Takes a picture of each page of the window with the demonstration sheet:
#   data/screenshots/make-screenshots.sh [FOLDER]
# Without FOLDER, fit.png beside this script is made anew, which the README shows. With it, all pages
# are written there, for the software catalogue (-Dscreenshots_url).
set -euo pipefail
# shellcheck source=src/setup.sh
. "$(dirname "${BASH_SOURCE[0]}")/../../src/setup.sh"

build=$project_root/_build
folder=${1:-}
home=$(mktemp -d)
trap 'rm -rf "$home"' EXIT

need_for_tests
configure_build "$build" -Dwerror=true >/dev/null
ninja -C "$build" tests/app/picture-window data/gschemas.compiled >/dev/null
env HOME="$home" XDG_CONFIG_HOME="$home" XDG_DATA_HOME="$home" XDG_STATE_HOME="$home" \
  XDG_CACHE_HOME="$home" DBUS_SESSION_BUS_ADDRESS=disabled: GDK_BACKEND=x11 GIO_USE_VFS=local \
  GSETTINGS_BACKEND=memory GSETTINGS_SCHEMA_DIR="$build/data" GSK_RENDERER=cairo GTK_A11Y=none \
  LC_ALL=C.UTF-8 xvfb-run -a -s '-screen 0 1920x1080x24' \
  "$build/tests/app/picture-window" "$home"
if [ -n "$folder" ]; then
  mkdir -p "$folder"
  cp "$home"/*.png "$folder"
else
  cp "$home/fit.png" "$project_root/data/screenshots/fit.png"
fi
