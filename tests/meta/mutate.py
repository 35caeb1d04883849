"""The mutation run: does a test notice when a rule is changed?

Changes domain/rules/*.cpp and domain/design/*.cpp in one place at a time: a comparison, a limit by
one small unit, "and" for "or", true for false, one severity for another. Each such mutant is
compiled and linked into the test programs, and these are run: a test that fails, or never ends,
kills it. A mutant that no test kills is a survivor and wants an explanation in
mutation_survivors.txt.

Fails where fewer than 90 % of the mutants are killed, where a survivor is not explained, or where
an explanation fits no survivor. Not part of .ci/run: a full run takes half an hour on two
cores.

usage: mutate.py [--file FILE]... [--list] [--sample N] [--seed S] [--jobs N]
"""
import argparse
import concurrent.futures
import glob
import json
import os
import random
import re
import resource
import shlex
import subprocess
import sys
import threading
import time

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
BUILD = os.path.join(ROOT, "build-mutation")
EXPLAINED = os.path.join(ROOT, "tests/meta/mutation_survivors.txt")
MUTATED = ["domain/rules/*.cpp", "domain/design/*.cpp"]
PROGRAMS = ["meta_tests", "rules_tests", "domain_tests"]
SLOW = 50  # ms; slower tests are run only on a mutant that the others let live
LEAST_KILLED = 90.0
MEMORY = 4 << 30  # a mutant that grows for ever is stopped, not the machine

# ---- finding the places -------------------------------------------------------------------------

# Everything in which no mutation is looked for comes first.
TOKEN = re.compile(r"""
    (?P<comment>//[^\n]*|/\*.*?\*/)
  | (?P<directive>^[ ]*\#[^\n]*)
  | (?P<string>"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])+')
  | (?P<number>\b\d[\d']*(?:\.\d+)?\w*)
  | (?P<word>[A-Za-z_]\w*)
  | (?P<operator><=>|<<=|>>=|<<|>>|<=|>=|==|!=|&&|\|\||->|<|>)
""", re.VERBOSE | re.MULTILINE | re.DOTALL)

COMPARISONS = {"<": ["<=", ">="], "<=": ["<", ">"], ">": [">=", "<="], ">=": [">", "<"],
               "==": ["!="], "!=": ["=="]}
LOGIC = {"&&": "||", "||": "&&"}
SEVERITIES = {"Missing": "Conflict", "Conflict": "Caution", "Caution": "Missing"}
NUMBER = re.compile(r"(\d[\d']*)(\.\d+)?(_[a-z]+|[uUlLzZfF]*)$")


class Mutant:
    def __init__(self, file, source, start, end, text, kind):
        self.file, self.start, self.end, self.text, self.kind = file, start, end, text, kind
        self.source = source
        line_start = source.rfind("\n", 0, start) + 1
        line_end = source.find("\n", start)
        line = source[line_start:line_end]
        self.line = source.count("\n", 0, start) + 1
        self.before = line.strip()
        self.after = (line[:start - line_start] + text + line[end - line_start:]).strip()
        self.where = place_of(source, start)
        old = source[start:end]
        same = [m.start() for m in re.finditer(tokens_like(old), line)]
        turn = same.index(start - line_start) + 1
        self.change = f"{old} -> {text}" + (f" (no. {turn})" if len(same) > 1 else "")
        self.state = None
        self.by = ""

    def key(self):
        return (self.file, self.where, self.before, self.change)

    def mutated(self):
        return self.source[:self.start] + self.text + self.source[self.end:]


def tokens_like(old):
    """The same token again on the line: `<` is not part of `<=`, 2 not part of 25."""
    if re.match(r"\w", old):
        return r"(?<![\w'])" + re.escape(old) + r"(?![\w'])"
    return r"(?<![<>=!&|])" + re.escape(old) + r"(?![<>=&|])"


def place_of(source, at):
    """The rule's id where it is a row of a table, else the function or constant."""
    name = ""
    for line in re.finditer(r"^[A-Za-z][^\n]*", source[:at], re.MULTILINE):
        text = line.group()
        if re.match(r"(namespace|using|template|public|private|case)\b", text):
            continue
        named = re.match(r".*?([\w:]+)(?=\(|\[| =|\{|;)", re.sub(r"<[^()]*>", "", text))
        if named:
            name = named.group(1)
    if name == "kRules":
        rows = re.findall(r'\.id = "([^"]+)"', source[:at])
        return rows[-1] if rows else name
    return name


def beside(number):
    """A number one small unit more and less: one, or one of its last decimal."""
    written = NUMBER.match(number)
    if not written:
        return []
    whole, decimals, unit = written.groups()
    places = len(decimals) - 1 if decimals else 0
    count = int((whole + (decimals or "")).replace("'", "").replace(".", ""))
    numbers = []
    for other in (count + 1, count - 1):
        digits = f"{other:0{places + 1}}"
        if other >= 0:
            numbers.append((f"{digits[:-places]}.{digits[-places:]}" if places else digits) + unit)
    return numbers


def is_spaced(source, start, end):
    """clang-format sets spaces round a comparison and none inside the brackets of a template."""
    return source[start - 1].isspace() and source[end].isspace()


def mutants_of(file):
    with open(os.path.join(ROOT, file), encoding="utf-8") as opened:
        source = opened.read()
    found = []

    def add(start, end, text, kind):
        found.append(Mutant(file, source, start, end, text, kind))

    for token in TOKEN.finditer(source):
        start, end, text = token.start(), token.end(), token.group()
        if token.lastgroup == "operator":
            if source[:start].rstrip().endswith("operator") or not is_spaced(source, start, end):
                continue
            for other in COMPARISONS.get(text, []):
                add(start, end, other, "comparison")
            if text in LOGIC:
                add(start, end, LOGIC[text], "logic")
        elif token.lastgroup == "number":
            # Arguments of templates, and the place of an element, are no limits.
            if source[start - 1] == "[" or re.search(r"<[\w:][\w:, <>]*$", source[:start]):
                continue
            for other in beside(text):
                add(start, end, other, "limit")
        elif token.lastgroup == "word":
            if text in ("true", "false"):
                add(start, end, "false" if text == "true" else "true", "truth")
            elif text in SEVERITIES and source[:start].endswith(".severity = Severity::"):
                add(start, end, SEVERITIES[text], "severity")
            elif text in ("contradict", "advise") and source[start - 1] == ".":
                add(start, end, "add", "severity")
    return found


# ---- trying them --------------------------------------------------------------------------------


def run(command, **options):
    return subprocess.run(command, cwd=options.pop("cwd", BUILD), stdout=subprocess.PIPE,
                          stderr=subprocess.STDOUT, text=True, errors="replace", **options)


def must(command, **options):
    done = run(command, **options)
    if done.returncode != 0:
        sys.exit(done.stdout + "\nfailed: " + " ".join(command))
    return done.stdout


def bounded():
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


class Workshop:
    """Builds everything once; then makes and tries one mutant at a time per thread."""

    def __init__(self, files):
        must(["cmake", "-S", ROOT, "-B", BUILD, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Debug",
              "-DCMAKE_CXX_FLAGS_DEBUG=-O1",
              "-DCMAKE_CXX_FLAGS=-w -D_GLIBCXX_ASSERTIONS"], cwd=ROOT)
        must(["cmake", "--build", BUILD, "--target"] + PROGRAMS, cwd=ROOT)
        with open(os.path.join(BUILD, "compile_commands.json"), encoding="utf-8") as opened:
            commands = {os.path.relpath(each["file"], ROOT): shlex.split(each["command"])
                        for each in json.load(opened)}
        self.compilers = {file: self.without_files(commands[file]) for file in files}
        self.prelude = self.precompiled(files)
        self.links = {program: self.link_of(program) for program in PROGRAMS}
        rounds = [each for program in PROGRAMS for each in self.rounds_of(program)]
        self.rounds = sorted(rounds, key=lambda each: each[0])
        self.seats = {}
        self.lock = threading.Lock()

    @staticmethod
    def without_files(command):
        """The compiler and its options; a mutant is compiled more often than it is run."""
        kept = command[next(n for n, part in enumerate(command) if part.endswith("++")):]
        return kept[:kept.index("-o")] + ["-O0"]

    def precompiled(self, files):
        """The headers are the same for every mutant, and most of the work."""
        headers = []
        for file in files:
            with open(os.path.join(ROOT, file), encoding="utf-8") as opened:
                headers += re.findall(r"^#include .*$", opened.read(), re.MULTILINE)
        prelude = os.path.join(BUILD, "prelude.h")
        with open(prelude, "w", encoding="utf-8") as written:
            written.write("\n".join(dict.fromkeys(headers)) + "\n")
        must(self.compilers[files[0]] + ["-x", "c++-header", prelude, "-o", prelude + ".gch"])
        return prelude

    @staticmethod
    def link_of(program):
        line = must(["ninja", "-t", "commands", program]).strip().split("\n")
        line = [each for each in line if " -o tests/" in each and each.find(program) >= 0
                and "-c " not in each][-1]
        line = re.sub(r"^: && ", "", line).split(" && ")[0]
        return shlex.split(line)

    def rounds_of(self, program):
        """The quick tests, and the slow ones: what to run, and how many seconds it may take."""
        path = self.links[program][self.links[program].index("-o") + 1]
        told = must([os.path.join(BUILD, path)])
        passed = re.findall(r"^\[ +OK \] (\S+?)(?:, where .*)? \((\d+) ms\)$", told, re.MULTILINE)
        times = {name: int(ms) for name, ms in passed}
        slow = [name for name, ms in times.items() if ms >= SLOW]
        taken = sum(times[name] for name in slow) / 1000
        rest = sum(times.values()) / 1000 - taken
        rounds = [(0, program, "--gtest_filter=-" + ":".join(slow), 10 + 10 * rest)]
        if slow:
            rounds.append((1, program, "--gtest_filter=" + ":".join(slow), 10 + 10 * taken))
        return rounds

    def seat(self):
        with self.lock:
            mine = self.seats.setdefault(threading.get_ident(), len(self.seats))
        folder = os.path.join(BUILD, f"mutant-{mine}")
        os.makedirs(folder, exist_ok=True)
        return folder

    def attempt(self, mutant):
        folder = self.seat()
        source = os.path.join(folder, "mutant.cpp")
        made = os.path.join(folder, "mutant.o")
        with open(source, "w", encoding="utf-8") as written:
            written.write(mutant.mutated())
        compiled = run(self.compilers[mutant.file] +
                       ["-include", self.prelude, "-o", made, "-c", source])
        if compiled.returncode != 0:
            mutant.state, mutant.by = "not compiling", compiled.stdout.strip().split("\n")[0]
            return
        linked = set()
        for _, program, chosen, limit in self.rounds:
            if program not in linked:
                self.link(program, made, os.path.join(folder, program))
                linked.add(program)
            try:
                ended = run([os.path.join(folder, program), chosen, "--gtest_fail_fast",
                             "--gtest_brief=1"], timeout=limit, preexec_fn=bounded)
            except subprocess.TimeoutExpired:
                mutant.state, mutant.by = "killed", f"{program}, by time-out"
                return
            if ended.returncode != 0:
                mutant.state, mutant.by = "killed", program
                return
        mutant.state = "survived"

    def link(self, program, made, target):
        # The mutant comes before the archive, which then has nothing to add in its place.
        command = list(self.links[program])
        command[command.index("-o") + 1] = target
        must(command[:1] + ["-fuse-ld=lld", made] + command[1:])


# ---- telling ------------------------------------------------------------------------------------


def explanations():
    """file :: function or rule :: line :: mutation :: why"""
    explained = {}
    if not os.path.exists(EXPLAINED):
        return explained
    with open(EXPLAINED, encoding="utf-8") as opened:
        for number, line in enumerate(opened, 1):
            if not line.strip() or line.startswith("#"):
                continue
            parts = line.strip().split(" :: ")
            if len(parts) != 5 or not parts[4]:
                sys.exit(f"{EXPLAINED}:{number}: expected file :: function or rule :: line :: "
                         "mutation :: why")
            explained[tuple(parts[:4])] = parts[4]
    return explained


def report(mutants, files, is_whole, write):
    explained = explanations()
    survivors = [mutant for mutant in mutants if mutant.state == "survived"]
    killed = [mutant for mutant in mutants if mutant.state == "killed"]
    broken = [mutant for mutant in mutants if mutant.state == "not compiling"]
    counted = len(killed) + len(survivors)
    share = 100 * len(killed) / counted if counted else 100.0
    unexplained = [each for each in survivors if each.key() not in explained]
    for each in survivors:
        why = explained.get(each.key())
        write(f"{each.file}:{each.line}: {each.where}: {each.change}")
        write(f"    {each.before}")
        write(f"    {each.after}")
        write(f"    {'explained: ' + why if why else 'NOT EXPLAINED'}")
    stale = []
    if is_whole:
        keys = {each.key() for each in survivors}
        stale = [key for key in explained if key not in keys and
                 (key[0] in files or not os.path.exists(os.path.join(ROOT, key[0])))]
    for key in stale:
        write("no survivor any more, take it out: " + " :: ".join(key))
    for kind in sorted({each.kind for each in mutants}):
        of_kind = [each for each in mutants if each.kind == kind]
        write(f"{kind:>12}: " + ", ".join(
            f"{sum(1 for each in of_kind if each.state == state)} {state}"
            for state in ("killed", "survived", "not compiling")))
    late = sum(1 for each in killed if each.by.endswith("time-out"))
    write(f"{len(mutants)} mutants: {len(killed)} killed ({late} by time-out), {len(survivors)} "
          f"survived ({len(unexplained)} not explained), {len(broken)} not compiling; "
          f"{share:.1f} % killed, {LEAST_KILLED:.0f} % asked")
    return 0 if share >= LEAST_KILLED and not unexplained and not stale else 1


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--file", action="append", help="only this file; may be repeated")
    parser.add_argument("--list", action="store_true", help="the mutants, without trying them")
    parser.add_argument("--sample", type=int, help="only so many, drawn at random")
    parser.add_argument("--seed", type=int, default=1, help="of the drawing")
    parser.add_argument("--jobs", type=int, default=os.cpu_count())
    asked = parser.parse_args()

    files = sorted(os.path.relpath(path, ROOT) for pattern in MUTATED
                   for path in glob.glob(os.path.join(ROOT, pattern)))
    if asked.file:
        unknown = [file for file in asked.file if file not in files]
        if unknown:
            sys.exit(f"not among the mutated files: {', '.join(unknown)}")
        files = asked.file
    mutants = [mutant for file in files for mutant in mutants_of(file)]
    if asked.sample and asked.sample < len(mutants):
        mutants = random.Random(asked.seed).sample(mutants, asked.sample)
    if asked.list:
        for each in mutants:
            print(f"{each.file}:{each.line}: {each.where}: {each.change}    {each.before}")
        print(f"{len(mutants)} mutants")
        return 0

    workshop = Workshop(files)
    start = time.monotonic()
    with concurrent.futures.ThreadPoolExecutor(asked.jobs) as pool:
        for done, _ in enumerate(pool.map(workshop.attempt, mutants), 1):
            if done % 50 == 0:
                print(f"{done} of {len(mutants)} after {time.monotonic() - start:.0f} s",
                      file=sys.stderr)
    lines = []
    result = report(mutants, files, not asked.sample, lines.append)
    with open(os.path.join(BUILD, "report.txt"), "w", encoding="utf-8") as written:
        written.write("\n".join(lines) + "\n")
    print("\n".join(lines))
    return result


if __name__ == "__main__":
    sys.exit(main())
