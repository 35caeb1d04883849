"""clang-tidy over every source file but the tests, two at a time; each complaint is an error. GCC, which the
program is built with, reads those of the program too, for its warnings are others than Clang's and
the tests are built with Clang. No header is precompiled here, so a file must name what it includes.

A clean verdict is remembered in ${XDG_CACHE_HOME:-~/.cache}/framewright-tidy under a hash of all
it rests on: the preprocessed source, the project's own files in it as they were written (comments
switch checks off), .clang-tidy, the arguments and the versions of clang-tidy and GCC. Complaints are not
remembered, and nothing depends on the folder: delete it, or set it to nowhere, and all is examined.

usage: python3 tests/meta/tidy.py BUILD_FOLDER [--tests] [--jobs N] [--times] [FILE...]
"""

import argparse
import hashlib
import json
import os
import re
import shlex
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
TIDY = "clang-tidy-22"
COMPILER = "clang++-22"
GCC = "g++"
# The analyzer follows calls into small functions only: three quarters of its time go into the
# large ones of the libraries.
SHALLOW = ["--extra-arg=" + word for word in ("-Xclang", "-analyzer-config", "-Xclang", "mode=shallow")]
ARGUMENTS = {
    # Where the analyzer would mostly follow the macros of GoogleTest, seeds are meant to be constant,
    # numbers are written by the other end of the same test, and minutes are 4 * 60.
    "tests/": ["--checks=-clang-analyzer-*,-bugprone-random-generator-seed,"
               "-bugprone-unchecked-string-to-number-conversion,"
               "-bugprone-implicit-widening-of-multiplication-result,"
               "-clang-diagnostic-c2y-extensions"],
    # A widget belongs to its parent, which the analyzer takes for nobody.
    "apps/desktop/": [*SHALLOW, "--checks=-clang-analyzer-cplusplus.NewDeleteLeaks"],
    "": SHALLOW,
}
# What is examined when no file is named, what of it with --tests alone, and what GCC reads.
USUAL = ["domain/*.cpp", "storage/*.cpp", "reports/*.cpp", "apps/*.cpp"]
TESTS = ["tests/*.cpp"]
GCC_READS = ("domain/", "storage/", "reports/", "apps/")
OF_CLANG_ALONE = ("-fsanitize=fuzzer-no-link",)
MARKER = re.compile(rb'^# \d+ "([^"]+)"', re.MULTILINE)


def arguments_for(path):
    return next(words for folder, words in ARGUMENTS.items() if path.startswith(folder))


def options_of(command):
    """What the compile command says of the source and how to read it, and the source."""
    kept, skip = [], False
    for word in shlex.split(command)[1:]:
        if not skip and word not in ("-c", "-o"):
            kept.append(word)
        skip = word == "-o"
    return kept


def preprocessor_call(command):
    """The compile command, made to print the preprocessed source."""
    return [COMPILER, *options_of(command), "-E", "-w"]


def gcc_call(command):
    """Templates are made and warned of too; nothing is generated."""
    kept = [word for word in options_of(command) if word not in OF_CLANG_ALONE]
    return [GCC, *kept, "-fsyntax-only"]


class Verdicts:
    """The folder of the clean verdicts: an empty file for each, named by its hash."""

    def __init__(self, build):
        cache = os.environ.get("XDG_CACHE_HOME") or os.path.expanduser("~/.cache")
        self.folder = os.path.join(cache, "framewright-tidy")
        version = b"".join(
            subprocess.run([program, "--version"], check=True, capture_output=True).stdout
            for program in (TIDY, GCC))
        with open(os.path.join(ROOT, ".clang-tidy"), "rb") as checks:
            self.common = version + checks.read()
        with open(os.path.join(build, "compile_commands.json"), encoding="utf-8") as file:
            self.entries = {os.path.relpath(entry["file"], ROOT): entry for entry in json.load(file)}

    def key(self, path):
        """None where the source cannot be preprocessed: clang-tidy then says why."""
        entry = self.entries[path]
        source = subprocess.run(preprocessor_call(entry["command"]), cwd=entry["directory"],
                                capture_output=True, check=False)
        if source.returncode != 0:
            return None
        # Two clones of one state share their verdicts.
        made = hashlib.sha256(source.stdout.replace(ROOT.encode(), b"."))
        for part in (self.common, json.dumps(arguments_for(path)).encode(),
                     entry["command"].replace(ROOT, ".").encode()):
            made.update(hashlib.sha256(part).digest())
        for name in sorted(set(MARKER.findall(source.stdout))):
            if name.startswith(ROOT.encode() + b"/"):
                with open(name, "rb") as file:
                    made.update(hashlib.sha256(file.read()).digest())
        return made.hexdigest()

    def is_clean(self, key):
        return key is not None and os.path.exists(os.path.join(self.folder, key))

    def remember(self, key):
        try:
            os.makedirs(self.folder, exist_ok=True)
            with open(os.path.join(self.folder, key), "wb"):
                pass
        except OSError:
            pass  # a cache that cannot be written costs time only


def examine(path, verdicts, build):
    """(path, "known", "clean" or "complaints", seconds, what clang-tidy said)"""
    start = time.monotonic()
    key = verdicts.key(path)
    if verdicts.is_clean(key):
        return path, "known", time.monotonic() - start, ""
    ran = subprocess.run([TIDY, "-p", build, "--quiet", *arguments_for(path), path], cwd=ROOT,
                         capture_output=True, text=True, check=False)
    clean = ran.returncode == 0 and not ran.stdout.strip()
    said = "" if clean else ran.stdout + ran.stderr
    if path.startswith(GCC_READS):
        entry = verdicts.entries[path]
        read = subprocess.run(gcc_call(entry["command"]), cwd=entry["directory"],
                              capture_output=True, text=True, check=False)
        clean = clean and read.returncode == 0
        said += read.stderr
    if clean and key is not None:
        verdicts.remember(key)
    return path, "clean" if clean else "complaints", time.monotonic() - start, said


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    parser.add_argument("build")
    parser.add_argument("files", nargs="*", help="all but the tests if none is named")
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--times", action="store_true", help="seconds of each file")
    parser.add_argument("--tests", action="store_true", help="the tests as well")
    given = parser.parse_intermixed_args()
    build = os.path.abspath(given.build)
    usual = USUAL + TESTS if given.tests else USUAL
    files = given.files or subprocess.run(["git", "ls-files", *usual], cwd=ROOT,
                                          check=True, capture_output=True, text=True).stdout.split()
    verdicts = Verdicts(build)
    if strangers := [path for path in files if path not in verdicts.entries]:
        sys.exit("in no target, so nobody knows how it is compiled: " + " ".join(strangers))

    counted = {"known": 0, "clean": 0, "complaints": 0}
    with ThreadPoolExecutor(given.jobs) as pool:
        for path, verdict, seconds, said in pool.map(lambda path: examine(path, verdicts, build), files):
            counted[verdict] += 1
            if given.times:
                print(f"{seconds:6.1f} s  {path}")
            if said:
                print(said, flush=True)
    print(f"clang-tidy: {len(files)} files, {counted['known']} known to be clean, "
          f"{counted['complaints']} with complaints")
    return 1 if counted["complaints"] else 0


if __name__ == "__main__":
    sys.exit(main())
