#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Runs a command of the project in the Debian release that this machine does not have: 13 (trixie),
# or 12 (bookworm) on a machine with 13. To be run as root, on Debian.
#   tests/other-debian.sh                          all tests
#   tests/other-debian.sh ./tests/run.sh app       one suite
#   tests/other-debian.sh ./src/start.sh           what there is to see without a display
# The release is made once, in _build-RELEASE/root, and used again; remove the folder to have it made
# anew. The command gets a copy of the tree as it stands, without its build directories, and neither
# display nor network. The logs of the tests are left in _build-RELEASE/logs.
set -euo pipefail
# shellcheck source=src/setup.sh
. "$(dirname "${BASH_SOURCE[0]}")/../src/setup.sh"

fail () {
  echo "$0: $*" >&2
  exit 1
}

# this_release: prints the code name of this machine's Debian release.
this_release () {
  (
    . /etc/os-release
    if [ "$ID" = debian ]; then
      echo "${VERSION_CODENAME:-}"
    fi
  ) 2>/dev/null || true
}

# mirror: prints where this machine gets Debian from. apt reads its own sources, of whatever form.
mirror () {
  # shellcheck disable=SC2016 # apt fills in what looks like a command
  apt-get indextargets --format '$(RELEASE) $(COMPONENT) $(REPO_URI)' 'Created-By: Packages' |
    awk -v release="$(this_release)" '
      $2 == "main" && ($1 == release || $1 ~ /^(old)*stable$|^testing$/) { print $3; exit }'
}

# trust: prints "[trusted=yes]" where this machine takes its packages without a signature.
trust () {
  if grep -rqiE '^(Trusted: *yes|deb \[[^]]*trusted=yes)' /etc/apt/sources.list \
       /etc/apt/sources.list.d --include='*.list' --include='*.sources' 2>/dev/null; then
    echo "[trusted=yes]"
  fi
}

# network_options: prints what apt was told here of proxies, certificates and clocks.
network_options () {
  apt-config dump | grep -E '^Acquire::(https?::|Check-|Max-|Retries|ForceIPv|Allow)' |
    grep -v 'Proxy-Auto-Detect' || true
}

# in_private UNSHARE-OPTION... COMMAND [ARGUMENT]...: runs COMMAND with mounts and processes of its
# own. They go with it, and it goes with this script, however that ends.
in_private () {
  setpriv --pdeathsig KILL unshare --mount --pid --fork --kill-child "$@"
}

# make_root: makes the release in $root. What stops half way is made anew the next time.
make_root () {
  local from
  from=$(mirror)
  if [ -z "$from" ]; then
    fail "apt has no Debian archive in its sources from which to make $release"
  fi
  need_debian_packages mmdebstrap
  rm -rf --one-file-system "$work"
  mkdir -p "$work"
  network_options >"$work/apt.conf"
  echo "Making Debian $release in $root"
  if ! in_private --mount-proc mmdebstrap --quiet --mode=root --variant=minbase \
         --include=ca-certificates --aptopt="$work/apt.conf" --dpkgopt=force-unsafe-io \
         "$release" "$root" "deb $(trust) $from $release main"; then
    fail "Debian $release could not be made; is there a network?"
  fi
  touch "$work/made"
}

# in_root [UNSHARE-OPTION]... COMMAND [ARGUMENT]...: runs COMMAND in the copy of the tree.
in_root () {
  local options=() proxies=() name
  while [[ $1 == --* ]]; do
    options+=("$1")
    shift
  done
  for name in http_proxy https_proxy no_proxy; do
    if [ -n "${!name:-}" ]; then
      proxies+=("$name=${!name}")
    fi
  done
  # shellcheck disable=SC2016 # for the inner shells
  in_private "${options[@]}" bash -euc '
    root=$1
    shift
    mount -t proc proc "$root/proc"
    mount -t tmpfs tmpfs "$root/tmp"
    mount -t tmpfs tmpfs "$root/dev/shm"
    exec env -i "$@"
  ' - "$root" "${proxies[@]}" HOME=/root LANG=C.UTF-8 PATH=/usr/sbin:/usr/bin:/sbin:/bin TERM=dumb \
    chroot "$root" bash -c 'cd "$1" && shift && exec "$@"' - "$copy" "$@"
}

# copy_tree: brings the copy of the tree up to date, and leaves its build directories.
copy_tree () {
  mkdir -p "$root$copy"
  find "$root$copy" -mindepth 1 -maxdepth 1 ! -name '_build*' -exec rm -rf {} +
  # Status 1 of tar: the folder changed while it was read, as when a build begins in it.
  { tar -C "$project_root" -c --exclude='./_build*' --exclude=./.git . || [ $? -eq 1 ]; } |
    tar -C "$root$copy" -x --no-same-owner
}

bring_logs () {
  rm -rf "$work/logs"
  mkdir -p "$work/logs"
  cp "$root$copy"/_build*/meson-logs/*.{json,txt} "$work/logs" 2>/dev/null || true
}

case $(this_release) in
  '') fail "this is not Debian, so there is no archive to make another release from" ;;
  trixie) release=bookworm ;;
  *) release=trixie ;;
esac
if [ "$(id -u)" -ne 0 ]; then
  fail "only root can make a Debian $release and work in it"
fi
work=$project_root/_build-$release
root=$work/root
copy=/root/breezeway
if [ $# -eq 0 ]; then
  set -- ./tests/run.sh
fi
packages=need_for_build
if [ "$(basename "$1")" = run.sh ]; then
  packages=need_for_tests
fi

if [ ! -e "$work/made" ]; then
  make_root
fi
cp -L /etc/resolv.conf "$root/etc/resolv.conf" 2>/dev/null || true
copy_tree
# With warnings as errors from the start: else tests/run.sh would compile again what src/start.sh did.
in_root bash -euc ". src/setup.sh; $packages; configure_build \"\$project_root/_build\" -Dwerror=true" ||
  fail "Debian $release could not be prepared for the command; see above"
status=0
in_root --net "$@" || status=$?
bring_logs
exit "$status"
