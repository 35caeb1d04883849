#!/bin/sh
# Builds and runs the benchmarks, without sanitizers and optimised as the programs people run (-O2).
# The figures belong to the machine they were taken on.
# usage: sh tests/bench/run.sh [options of the benchmark, as --benchmark_filter=examine]
set -eu
cd "$(dirname "$0")/../.."

sh apps/setup.sh tests
# GCC 12, optimising, takes the members of a moved variant for uninitialized.
cmake -S . -B build-bench -G Ninja -DCMAKE_BUILD_TYPE=Release -DWITH_BENCHMARKS=ON \
    -DCMAKE_CXX_FLAGS_RELEASE='-O2 -DNDEBUG -Wno-maybe-uninitialized' \
    -DCMAKE_COMPILE_WARNING_AS_ERROR=ON >/dev/null
cmake --build build-bench --target framewright_bench
build-bench/tests/bench/framewright_bench "$@"
