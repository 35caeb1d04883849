"""Reads what gcovr counted: figures per file, every branch not taken; fails if there is one.

usage: coverage.py COVERAGE.json

Two things no test can reach are left out: the way out of a `switch` that no enumerator takes (the
house has no `default`), and the `return` behind such a switch that the compiler asks for.
"""
import json
import re
import sys


def lines_behind_switches(source):
    """Numbers of the return lines that follow the closing brace of a switch."""
    behind = set()
    for start, line in enumerate(source):
        opened = re.match(r"( *)switch \(", line)
        if not opened:
            continue
        end = next(n for n in range(start, len(source)) if source[n] == opened.group(1) + "}")
        if end + 1 < len(source) and source[end + 1].lstrip().startswith("return"):
            behind.add(end + 2)
    return behind


def missed_branches(line, text):
    missed = sum(1 for branch in line["branches"] if branch["count"] == 0)
    if line["count"] > 0 and re.match(r" *switch \(", text):
        missed = max(0, missed - 1)
    return missed


def main():
    with open(sys.argv[1], encoding="utf-8") as report:
        files = json.load(report)["files"]
    all_branches = all_missed = lines_missed = 0
    for file in sorted(files, key=lambda each: each["file"]):
        with open(file["file"], encoding="utf-8") as opened:
            source = opened.read().split("\n")
        behind = lines_behind_switches(source)
        branches = missed = 0
        places = []
        for line in file["lines"]:
            if line.get("gcovr/noncode"):
                continue
            number = line["line_number"]
            text = source[number - 1]
            count = missed_branches(line, text)
            branches += len(line["branches"])
            missed += count
            if line["count"] == 0 and number not in behind:
                lines_missed += 1
                places.append(f"  {file['file']}:{number}: never run: {text.strip()}")
            elif count:
                places.append(f"  {file['file']}:{number}: {count} of {len(line['branches'])} "
                              f"branches not taken: {text.strip()}")
        share = 100 * (branches - missed) / branches if branches else 100
        print(f"{share:6.1f} %  {branches - missed:4} of {branches:4} branches  {file['file']}")
        if places:
            print("\n".join(places))
        all_branches += branches
        all_missed += missed
    share = 100 * (all_branches - all_missed) / all_branches
    print(f"{share:6.1f} %  {all_branches - all_missed} of {all_branches} branches taken; "
          f"{all_missed} not, {lines_missed} lines never run")
    return 1 if all_missed or lines_missed else 0


if __name__ == "__main__":
    sys.exit(main())
