#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds Breezeway and runs its tests; the last line is "N passed, N failed".
#   tests/run.sh              everything: all tests, then core and fuzz again under sanitizers
#   tests/run.sh NAME...      some tests: a suite (core draw cli app fuzz house), a test (core-fit),
#                             or all tests that end so (fit)
#   tests/run.sh sanitize     only the second part
set -euo pipefail
# shellcheck source=src/setup.sh
. "$(dirname "${BASH_SOURCE[0]}")/../src/setup.sh"

build=$project_root/_build
asan_build=$project_root/_build-asan
logs=()

# run_tests BUILD LOG [ARGUMENT]...: results go to LOG.json, which count.py reads; where nothing was
# built or run there is none, and that counts as a failure.
run_tests () {
  local dir=$1 log=$2
  shift 2
  logs+=("$dir/meson-logs/$log.json")
  rm -rf "$dir/tests/scratch" "$dir/meson-logs/$log.json"
  meson test -C "$dir" --logbase "$log" "$@" || true
}

build_all () {
  configure_build "$build" -Dwerror=true && ninja -C "$build"
}

# With clang, libFuzzer searches for bad input as well; the sanitizers are the same.
build_sanitized () {
  local compiler=${CC:-cc} instrument="-fno-sanitize-recover=all -fsanitize=float-cast-overflow"
  if command -v clang >/dev/null; then
    compiler=clang
    instrument+=,fuzzer-no-link
  fi
  CC=$compiler configure_build "$asan_build" -Db_sanitize=address,undefined -Db_lundef=false \
    "-Dc_args=$instrument"
}

run_sanitized () {
  if build_sanitized; then
    export UBSAN_OPTIONS=print_stacktrace=1
    run_tests "$asan_build" sanitized --suite core --suite fuzz --timeout-multiplier 4
  else
    logs+=("$asan_build/meson-logs/sanitized.json")
  fi
}

# select_tests WORD...: prints the names of the tests that the words mean.
select_tests () {
  local word all found
  all=$(meson test -C "$build" --list 2>/dev/null | sed -n 's/^breezeway:\([^ ]*\) \/ /\1 /p')
  for word in "$@"; do
    found=$(awk -v word="$word" '
      $1 == word || $2 == word || substr ("-" $2, length ($2) + 1 - length (word)) == "-" word {
        print $2
      }' <<<"$all")
    if [ -z "$found" ]; then
      echo "There is no suite or test of the name \"$word\". The tests are:" >&2
      awk '{ print "  " $2 }' <<<"$all" >&2
      return 1
    fi
    echo "$found"
  done
}

need_for_tests

if [ "${1:-}" = sanitize ]; then
  run_sanitized
elif ! build_all; then
  echo "The build failed." >&2
  logs+=("$build/meson-logs/all.json")
  rm -f "${logs[@]}"
elif [ $# -gt 0 ]; then
  names=$(select_tests "$@") || exit 2
  mapfile -t names < <(sort -u <<<"$names")
  run_tests "$build" selected "${names[@]}"
else
  run_tests "$build" all
  run_sanitized
fi
exec python3 "$project_root/tests/count.py" "${logs[@]}"
