#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Check that every include of the source tree points up the order of the house.

The layers are core, draw, then the two faces app and cli, and a layer's rooms stand in the order
that its meson.build lists. A file may include from its own room, from rooms above it in its own
layer, and from any room of a layer below. A header whose name ends in -private.h stays in its room.
No topics include each other in a circle. What is written straight into a layer's folder (main.c) may
include from all its rooms. DEVELOPERS.md has the same rooms in the same order.

  check_order.py SOURCE_ROOT            prints TAP
  check_order.py --graph SOURCE_ROOT    prints which room uses which, for a person or for Graphviz
"""
import pathlib
import re
import sys

BELOW = {"core": [], "draw": ["core"], "app": ["draw", "core"], "cli": ["draw", "core"]}
INCLUDE = re.compile(r'^#include "([^"]+)"', re.MULTILINE)
TABLE = re.compile(r"^\| `src/(\w+)` \|.*\n\|---\|---\|\n((?:\|.*\n)+)", re.MULTILINE)
ROOMS = re.compile(r"_rooms = \[(.*?)\]", re.DOTALL)


def rooms_of(source, layer):
    text = (source / layer / "meson.build").read_text(encoding="utf-8")
    return re.findall(r"'([^']+)'", ROOMS.search(text)[1])


def rooms_in_the_text(root):
    """The rooms of each layer as DEVELOPERS.md lists them: in the first column of its table."""
    text = (root / "DEVELOPERS.md").read_text(encoding="utf-8")
    return {layer: [room for row in rows.splitlines()
                    for room in re.findall(r"`(\w+)`", row.split("|")[1])]
            for layer, rows in TABLE.findall(text)}


def included_files(source, path):
    """The files of the tree that PATH includes; what is generated, or a system's, is left out."""
    for name in INCLUDE.findall(path.read_text(encoding="utf-8")):
        for found in (path.parent / name, source / name):
            if found.exists():
                yield found.relative_to(source)
                break


def fault_of(rooms, path, target):
    """What is wrong with the include of TARGET in PATH, or None."""
    layer, other = path.parts[0], target.parts[0]
    if target.name.endswith("-private.h") and path.parent != target.parent:
        return f"{target} is private to its room"
    if other != layer:
        return None if other in BELOW[layer] else f"{layer} must not know {other}"
    if len(path.parts) == 2 or path.parts[1] == target.parts[1]:
        return None
    if len(target.parts) == 2:
        return f"{target} stands outside the rooms"
    order = rooms[layer]
    if order.index(target.parts[1]) > order.index(path.parts[1]):
        return f"room {target.parts[1]} comes after {path.parts[1]}"
    return None


def circle_from(graph, start):
    """A circle of topics through START, as a list, or None."""
    stack, seen = [(start, [start])], set()
    while stack:
        at, way = stack.pop()
        for target in graph.get(at, []):
            if target == start:
                return way
            if target not in seen:
                seen.add(target)
                stack.append((target, way + [target]))
    return None


def topic_of(path):
    """A source file, its header and its private header are one topic."""
    return path.with_name(path.stem.removesuffix("-private"))


def between_topics(graph):
    topics = {}
    for path, targets in graph.items():
        topic = topic_of(path)
        topics.setdefault(topic, set()).update({topic_of(t) for t in targets} - {topic})
    return topics


def print_graph(rooms, graph):
    """Each room with the rooms that it uses, in their order: what a room uses stands before it."""
    order = [(layer, room) for layer in BELOW for room in rooms[layer]]
    uses = {room: set() for room in order}
    for path, targets in graph.items():
        if path.parts[:2] in uses:
            uses[path.parts[:2]].update(t.parts[:2] for t in targets if t.parts[:2] != path.parts[:2])
    print("digraph rooms {")
    for room in order:
        used = " ".join(f'"{"/".join(other)}"' for other in order if other in uses[room])
        print(f'  "{"/".join(room)}" -> {{ {used} }};')
    print("}")


def report(number, title, faults):
    print(f"{'not ok' if faults else 'ok'} {number} - {title}")
    for fault in sorted(faults):
        print(f"# {fault}")


def main():
    root = pathlib.Path(sys.argv[-1])
    source = root / "src"
    rooms = {layer: rooms_of(source, layer) for layer in BELOW}
    graph = {}
    for layer in BELOW:
        for path in sorted((source / layer).rglob("*.[ch]")):
            graph[path.relative_to(source)] = list(included_files(source, path))

    if "--graph" in sys.argv:
        print_graph(rooms, graph)
        return

    homeless = [f"{p}: its room is not in {p.parts[0]}/meson.build" for p in graph
                if len(p.parts) > 2 and p.parts[1] not in rooms[p.parts[0]]]
    upward = [f"{path}: {fault}" for path, targets in graph.items() for target in targets
              if not homeless and (fault := fault_of(rooms, path, target))]
    topics = between_topics(graph)
    ways = [way for topic in topics if (way := circle_from(topics, topic))]
    circles = [" -> ".join(map(str, way + way[:1]))
               for way in {frozenset(way): way for way in ways}.values()]
    told = rooms_in_the_text(root)
    untold = [f"{layer}: the build has {', '.join(rooms[layer])}, DEVELOPERS.md has "
              f"{', '.join(told.get(layer, []))}"
              for layer in BELOW if told.get(layer) != rooms[layer]]
    print("1..4")
    report(1, "every file is in a room that the build knows", homeless)
    report(2, "every include points up the order of the rooms", upward)
    report(3, "no topics include each other in a circle", circles)
    report(4, "DEVELOPERS.md has the rooms in their order", untold)


if __name__ == "__main__":
    main()
