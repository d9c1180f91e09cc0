#!/usr/bin/env python3
"""unity.py MOST FILE...: which C++ files of a folder can be compiled as one.

Prints "GROUP FILE" lines. A group has at most MOST files, and no two of them give a name that is
theirs alone (in an unnamed namespace, or an alias) two meanings, or one that a header of the other
declares, however far it is included. What this overlooks ends as an error of the compiler, not as a wrong program:
such files must then differ in their names.
"""
import functools
import os
import re
import sys

TOP = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..')

COMMENT = re.compile(r'//[^\n]*|/\*.*?\*/', re.S)
RAW = re.compile(r'R"(\w*)\(.*?\)\1"', re.S)
TYPE = re.compile(r'(?:struct|class|enum class|enum|union)\s+(\w+)')
ALIAS = re.compile(r'(?:using\s+(\w+)|namespace\s+(\w+))\s*=\s*([^;]+);')
SPACE = re.compile(r'^(?:inline )?namespace [\w:]*::(\w+) \{', re.M)
HEADER = re.compile(r'^#include "([^"]+)"', re.M)
TAKEN = re.compile(r'using ([\w:]+::(\w+));')
MACRO = re.compile(r'#\s*define\s+(\w+)')
NAMED = re.compile(r'\b([A-Za-z_]\w*)\s*(?:\(|=|\{|;|\[)')
CONSTANTS = re.compile(r'^(?:inline )?const(?:expr)? [^;]*;', re.M)
NESTED = re.compile(r'\([^()]*\)|\{[^{}]*\}|<[^<>]*>')
LISTED = re.compile(r'(\w+)\s*(?:[=\[]|$)')
NO_NAME = ('namespace', 'using', 'template', 'TEST_CASE', 'static_assert', 'extern', 'WORD')


def names_of(constants):
    """The names that one declaration gives to several constants."""
    flat = None
    while flat != constants:
        flat, constants = constants, NESTED.sub('', constants)
    return [LISTED.search(part.strip())[1] for part in constants.split(',')
            if LISTED.search(part.strip())]


def declared(text, where):
    """What the lines without indentation declare: name -> what an alias stands for, or where."""
    found = {}
    for line in text.split('\n'):
        macro = MACRO.match(line)
        if macro:
            found[macro[1]] = where
        if not line or line[0] in ' \t#})':
            continue
        alias = ALIAS.match(line)
        taken = TAKEN.match(line)
        if taken:
            found[taken[2]] = taken[1]
        elif alias:
            found[alias[1] or alias[2]] = alias[3].strip()
        elif TYPE.match(line):
            found[TYPE.match(line)[1]] = where
        elif not line.startswith(NO_NAME):
            named = NAMED.search(line)
            if named and '::' + named[1] not in line.split('(')[0]:
                found[named[1]] = where
    for constants in CONSTANTS.findall(text):
        found.update((name, where) for name in names_of(constants[:-1]))
    found.update((name, 'namespace') for name in SPACE.findall(text))
    return found


def without_comments(path):
    with open(path, encoding='utf-8') as file:
        return COMMENT.sub('', RAW.sub('""', file.read()))


@functools.cache
def declared_by(header):
    """The names that a header of the project declares, and those of the headers that it reads."""
    path = os.path.join(TOP, header)
    if not os.path.exists(path):
        return frozenset()
    text = without_comments(path)
    return frozenset(declared(text, header)).union(*map(declared_by, HEADER.findall(text)))


def meanings(path):
    """The names that a file declares, and `shared`: those of the project's headers that it reads."""
    text = without_comments(path)
    shared = frozenset().union(*map(declared_by, HEADER.findall(text)))
    own = {name: what for name, what in declared(text, path).items() if name not in shared}
    return own, shared


def groups(most, paths):
    made = []
    for path in paths:
        own, shared = meanings(path)
        for files, taken, seen in made:
            if (len(files) < most and shared.isdisjoint(taken) and seen.isdisjoint(own)
                    and all(taken.get(name, what) == what for name, what in own.items())):
                break
        else:
            files, taken, seen = [], {}, set()
            made.append((files, taken, seen))
        files.append(path)
        taken.update(own)
        seen.update(shared)
    return made


if __name__ == '__main__':
    for number, (files, _, _) in enumerate(groups(int(sys.argv[1]), sys.argv[2:])):
        for name in files:
            print(number, name)
