#!/bin/sh
# How long `framewright classify --batch` takes for every pattern of both arches (131,068 lines).
# usage: sh tests/bench/classify_batch.sh build/apps/cli/framewright
set -eu
program=$1
lines=$(mktemp)
trap 'rm -f "$lines"' EXIT

# Each number from 1 to 65534 is a pattern: bit k set, tooth k of the arch missing.
awk 'BEGIN {
    split("18 17 16 15 14 13 12 11 21 22 23 24 25 26 27 28", upper, " ")
    split("48 47 46 45 44 43 42 41 31 32 33 34 35 36 37 38", lower, " ")
    for (pattern = 1; pattern < 65535; ++pattern) {
        u = l = ""; rest = pattern
        for (k = 1; k <= 16; ++k) {
            if (rest % 2) { u = u "," upper[k]; l = l "," lower[k] }
            rest = int(rest / 2)
        }
        print "upper missing=" substr(u, 2)
        print "lower missing=" substr(l, 2)
    }
}' > "$lines"

wc -l < "$lines"
start=$(date +%s%N)
"$program" classify --batch < "$lines" | sort | uniq -c
end=$(date +%s%N)
echo "$(( (end - start) / 1000000 )) ms for classifying, sorting and counting"
