#!/bin/sh
# Searches for a prescription file that breaks reading, examining or writing, and goes on for so many
# seconds (60). What breaks something is kept in build-fuzz/broken: make it small (the fuzzer's
# -minimize_crash=1), give it a name that says what it is, and put it into tests/fuzz/corpus.
# usage: sh tests/fuzz/run.sh [SECONDS]
set -eu
cd "$(dirname "$0")/../.."

sh apps/setup.sh tests
cmake -S . -B build-fuzz -G Ninja -DCMAKE_CXX_COMPILER=clang++-22 -DCMAKE_BUILD_TYPE=Debug \
    -DCMAKE_CXX_FLAGS_DEBUG='-O1 -g1' -DWITH_SANITIZERS=ON -DWITH_FUZZER=ON >/dev/null
cmake --build build-fuzz --target prescription_fuzzer
mkdir -p build-fuzz/found build-fuzz/broken
export ASAN_OPTIONS=detect_leaks=0 UBSAN_OPTIONS=print_stacktrace=1
# New finds go into the first folder; the others are only read.
build-fuzz/tests/fuzz/prescription_fuzzer build-fuzz/found tests/fuzz/corpus apps/cli/demo \
    -max_total_time="${1:-60}" -max_len=16000 -timeout=10 -rss_limit_mb=2048 \
    -artifact_prefix=build-fuzz/broken/ -print_final_stats=1
