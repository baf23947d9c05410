# SPDX-License-Identifier: GPL-3.0-or-later
# shellcheck shell=bash
# What src/start.sh and tests/run.sh share: find the project, install what it needs, configure a
# build directory. To be sourced, not run.

project_root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd -P)

build_packages=(
  adwaita-icon-theme
  build-essential
  fonts-dejavu-core
  gettext
  libglib2.0-bin
  libgtk-4-dev
  libjson-glib-dev
  librsvg2-common
  meson
  ninja-build
  pkg-config
)
test_packages=(
  appstream
  at-spi2-core
  clang
  dbus
  desktop-file-utils
  edid-decode
  groff-base
  libclang-rt-dev
  libfftw3-dev
  libgtk-4-bin
  librsvg2-bin
  libxcvt-dev
  locales
  poppler-utils
  python3
  python3-numpy
  shared-mime-info
  xauth
  xdotool
  xvfb
)

# Set once packages were installed: what a build directory knows of the system is then out of date.
packages_installed=

# missing_packages PACKAGE...: prints those that are not installed, one a line.
missing_packages () {
  local package
  for package in "$@"; do
    if [ "$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null)" != installed ]; then
      echo "$package"
    fi
  done
}

# need_debian_packages PACKAGE...: installs what is missing as root; else says how, and ends.
need_debian_packages () {
  local missing
  mapfile -t missing < <(missing_packages "$@")
  if [ "${#missing[@]}" -eq 0 ]; then
    return
  fi
  if [ "$(id -u)" -ne 0 ]; then
    {
      echo "These packages are missing: ${missing[*]}"
      echo "Install them, then start again:"
      echo "  sudo apt-get update && sudo apt-get install --no-install-recommends ${missing[*]}"
    } >&2
    exit 1
  fi
  echo "Installing missing packages: ${missing[*]}"
  export DEBIAN_FRONTEND=noninteractive
  if ! apt-get update -qq </dev/null ||
     ! apt-get install -y -qq --no-install-recommends -o Dpkg::Use-Pty=0 "${missing[@]}" </dev/null
  then
    echo "The packages could not be installed: ${missing[*]}" >&2
    exit 1
  fi
  packages_installed=yes
}

# need_commands COMMAND...: for a system without dpkg: says what is missing, and ends.
need_commands () {
  local command missing=()
  for command in "$@"; do
    command -v "$command" >/dev/null || missing+=("$command")
  done
  if [ "${#missing[@]}" -gt 0 ] ||
     ! pkg-config --exists 'glib-2.0 >= 2.74' 'gtk4 >= 4.8' pangocairo json-glib-1.0; then
    {
      echo "This is not Debian, so nothing is installed for you. Breezeway needs:"
      echo "  a C compiler, pkg-config, meson (1.0 or newer), ninja, gettext,"
      echo "  GLib 2.74, GTK 4.8, pango, cairo and json-glib or newer, with their headers"
      if [ "${#missing[@]}" -gt 0 ]; then
        echo "Commands that are missing: ${missing[*]}"
      fi
    } >&2
    exit 1
  fi
}

need_for_build () {
  if command -v dpkg-query >/dev/null && command -v apt-get >/dev/null; then
    need_debian_packages "${build_packages[@]}"
  else
    need_commands cc glib-compile-schemas meson msgfmt ninja pkg-config
  fi
}

need_for_tests () {
  if command -v dpkg-query >/dev/null && command -v apt-get >/dev/null; then
    need_debian_packages "${build_packages[@]}" "${test_packages[@]}"
  else
    need_commands cc glib-compile-schemas meson msgfmt ninja pkg-config \
      appstreamcli dbus-run-session desktop-file-validate groff gtk4-builder-tool pdftotext python3 \
      update-mime-database xauth xdotool xvfb-run
  fi
}

# is_configured DIR: whether DIR is a whole build directory of this very source tree.
is_configured () {
  [ -f "$1/build.ninja" ] &&
    grep -qF "\"source\": \"$project_root\"" "$1/meson-info/meson-info.json" 2>/dev/null &&
    grep -qF "\"build\": \"$1\"" "$1/meson-info/meson-info.json"
}

# configure_build DIR [-DOPTION=VALUE]...: makes DIR if need be, and sets what is not set yet.
configure_build () {
  local build=$1 option setting changes=()
  shift
  if ! is_configured "$build"; then
    rm -rf "$build"
    meson setup "$build" "$project_root" "$@"
    return
  fi
  for option in "$@"; do
    setting=${option#-D}
    if ! grep -qxF "${setting%%=*} = ${setting#*=}" "$build/meson-private/cmd_line.txt"; then
      changes+=("$option")
    fi
  done
  if [ "${#changes[@]}" -gt 0 ]; then
    meson configure "$build" "${changes[@]}"
  fi
  if [ -n "$packages_installed" ]; then
    meson setup --reconfigure "$build" "$project_root"
  fi
}
