#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Write the completion of breezeway-cli for bash, from what the program says of its commands.

Usage: make-completion.py BREEZEWAY-CLI OUTPUT
"""
import json
import os
import subprocess
import sys

HEAD = """\
# shellcheck shell=bash
# bash completion for breezeway-cli
# SPDX-License-Identifier: GPL-3.0-or-later
# Made by make-completion.py from "breezeway-cli help --json".

# What may stand at an option of a command: words, "files", "sheets", "rasters", or nothing.
_breezeway_cli_values ()
{
  case "$1 $2" in
"""

MIDDLE = """\
  esac
}

_breezeway_cli_options ()
{
  case "$1" in
"""

TAIL = """\
  esac
}

# What may stand where no option does.
_breezeway_cli_arguments ()
{
  case "$1" in
%s
  esac
}

_breezeway_cli_add ()
{
  local kind=$1 current=$2
  case "$kind" in
    files)
      compopt -o filenames 2>/dev/null
      mapfile -t COMPREPLY < <(compgen -f -- "$current")
      ;;
    sheets)
      compopt -o filenames 2>/dev/null
      mapfile -t COMPREPLY < <(compgen -f -X '!*.bench' -- "$current"; compgen -d -- "$current")
      ;;
    rasters)
      mapfile -t COMPREPLY < <(compgen -W "$(breezeway-cli catalogue rasters --csv 2>/dev/null |
        cut -d, -f1 | tail -n +2 | tr -d '\\r')" -- "$current")
      ;;
    *)
      mapfile -t COMPREPLY < <(compgen -W "$kind" -- "$current")
      ;;
  esac
}

_breezeway_cli ()
{
  local current=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}
  local command=${COMP_WORDS[1]}
  COMPREPLY=()

  if [ "$COMP_CWORD" -eq 1 ]; then
    _breezeway_cli_add "%s help --help --version" "$current"
    return
  fi
  if [ "$command" = help ]; then
    _breezeway_cli_add "%s --json" "$current"
    return
  fi
  # "=" is a word of its own in bash.
  if [ "$current" = = ]; then
    current=
  elif [ "$before" = = ] && [ "$COMP_CWORD" -gt 2 ]; then
    before=${COMP_WORDS[COMP_CWORD-2]}
  fi
  case "$before" in
    -*)
      local values
      values=$(_breezeway_cli_values "$command" "$before")
      if [ -n "$values" ]; then
        if [ "$values" != any ]; then
          _breezeway_cli_add "$values" "$current"
        fi
        return
      fi
      ;;
  esac
  case "$current" in
    -*)
      _breezeway_cli_add "$(_breezeway_cli_options "$command")" "$current"
      ;;
    *)
      _breezeway_cli_add "$(_breezeway_cli_arguments "$command")" "$current"
      ;;
  esac
}

complete -F _breezeway_cli breezeway-cli
"""


def ask(cli, *arguments):
    environment = dict(os.environ, LC_ALL="C.UTF-8", LANGUAGE="")
    answer = subprocess.run([cli, *arguments, "--json"], check=True, capture_output=True,
                            encoding="utf-8", env=environment)
    return json.loads(answer.stdout)


def values_of(option):
    """What may stand at an option; None if it takes nothing."""
    argument = option["argument"]
    if argument is None:
        return None
    if argument == "FILE":
        return "files"
    if argument == "SHEET":
        return "sheets"
    if option["name"] == "--raster":
        return "rasters"
    return argument.replace("|", " ") if "|" in argument else "any"


def arguments_of(command):
    words = command["arguments"].strip("[]")
    if words == "SHEET":
        return "sheets"
    if words.startswith("FILE"):
        return "files"
    if words == "RASTER":
        return "rasters"
    return words.replace("|", " ") if "|" in words else ""


def main():
    cli, output = sys.argv[1:]
    commands = [ask(cli, "help", one["command"]) for one in ask(cli, "help")["commands"]]
    names = " ".join(command["command"] for command in commands)
    with open(output, "w", encoding="utf-8") as out:
        out.write(HEAD)
        for command in commands:
            for option in command["options"]:
                values = values_of(option)
                for name in filter(None, (option["name"], option["letter"])):
                    if values is not None:
                        out.write(f"    '{command['command']} {name}') echo '{values}' ;;\n")
        out.write(MIDDLE)
        for command in commands:
            options = " ".join(option["name"] for option in command["options"])
            out.write(f"    {command['command']}) echo '{options}' ;;\n")
        arguments = "\n".join(f"    {command['command']}) echo '{arguments_of(command)}' ;;"
                              for command in commands if arguments_of(command))
        out.write(TAIL % (arguments, names, names))


if __name__ == "__main__":
    sys.exit(main())
