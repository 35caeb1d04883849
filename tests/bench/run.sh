#!/bin/sh
# Builds and runs the benchmarks, without sanitizers and optimised as the programs people run.
# The figures belong to the machine they were taken on.
# usage: sh tests/bench/run.sh [COUNT...]     the records with so many orders (1000 10000 100000),
#                                             one table at the end: what, figure, goal, met?
#        sh tests/bench/run.sh --rules [options of the benchmark, as --benchmark_filter=examine]
#                                             how long examining and describing take
# The records are made in $BENCH_FOLDER (build-bench/records), which must lie on a disk, and copies
# of them in /dev/shm. 100000 orders take some GB in both, and the better part of an hour.
set -eu
cd "$(dirname "$0")/../.."

sh apps/setup.sh tests
# GCC 12, optimising, takes the members of a moved variant for uninitialized.
cmake -S . -B build-bench -G Ninja -DCMAKE_BUILD_TYPE=RelWithDebInfo -DWITH_BENCHMARKS=ON \
    -DCMAKE_CXX_FLAGS_RELWITHDEBINFO='-O2 -g1 -DNDEBUG -Wno-maybe-uninitialized' \
    -DCMAKE_COMPILE_WARNING_AS_ERROR=ON >/dev/null
if [ "${1:-}" = --rules ]; then
    shift
    cmake --build build-bench --target framewright_bench
    exec build-bench/tests/bench/framewright_bench "$@"
fi
cmake --build build-bench --target records_bench
[ $# -gt 0 ] || set -- 1000 10000 100000
exec build-bench/tests/bench/records_bench "${BENCH_FOLDER:-build-bench/records}" "$@"
