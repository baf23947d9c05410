#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Does to the window whatever comes, under sanitizers: clicks, keys, typing, pages, undo, saving,
# dragging (tests/app/window/test_random.c). Everything goes to folders below the build directory.
#   tests/random.sh [MINUTES] [SEED]     ten minutes, and a seed of its own, which it prints
# What it does follows from the seed: to see a fault again, give the one that was printed. The log of
# the last run, with each thing that it did, is _build-random/meson-logs/random.txt.
set -euo pipefail
# shellcheck source=src/setup.sh
. "$(dirname "${BASH_SOURCE[0]}")/../src/setup.sh"

build=$project_root/_build-random
minutes=${1:-10}
seed=${2:-$((RANDOM * 32768 + RANDOM))}

if ! [[ $minutes =~ ^[0-9]+$ && $seed =~ ^[0-9]+$ ]]; then
  echo "Usage: tests/random.sh [MINUTES] [SEED], both whole numbers" >&2
  exit 2
fi

need_for_tests
configure_build "$build" -Dwerror=true -Db_sanitize=address,undefined -Db_lundef=false \
  "-Dc_args=-fno-sanitize-recover=all -fsanitize=float-cast-overflow"
ninja -C "$build" tests/app/test-app-random src/app/breezeway
ninja -C "$build" data/gschemas.compiled

echo "Random actions for $minutes min, seed $seed"
# The toolkit keeps some things until the end: no leaks are looked for.
export ASAN_OPTIONS=detect_leaks=0 UBSAN_OPTIONS=print_stacktrace=1
export BW_RANDOM_SECONDS=$((minutes * 60)) BW_RANDOM_SEED=$seed
rm -rf "$build/tests/scratch/app-random"
if meson test -C "$build" --no-rebuild --logbase random --timeout-multiplier 0 app-random; then
  grep "^# Done" "$build/meson-logs/random.txt"
else
  grep -v "^Inherited\|^command:" "$build/meson-logs/random.txt" | tail -n 60
  echo "Again: tests/random.sh $minutes $seed" >&2
  exit 1
fi
