#!/bin/sh
# All tests on a bare Debian 12, as root or with sudo: installs, builds with warnings as errors and
# with AddressSanitizer and UndefinedBehaviorSanitizer, and runs everything through CTest, an entry
# for each suite. Clang builds it, in a third of the time that GCC takes for the same.
# Options are CTest's: `sh tests/run.sh -R Kennedy` runs the suites of that name. A single case:
# build-tests/tests/domain/domain_tests --gtest_filter='Kennedy.*'
set -eu
cd "$(dirname "$0")/.."

sh apps/setup.sh tests
begun=$(date +%s)
cmake --preset tests >/dev/null
cmake --build build-tests
echo "build took $(($(date +%s) - begun)) s"

# Records are kept in memory where the disk is not the subject: each commit waits for a disk.
shm=/dev/shm
if [ -w $shm ] && [ "$(df -Pk $shm | awk 'NR == 2 {print $4}')" -ge 262144 ]; then
    TMPDIR=$(mktemp -d $shm/framewright-tests-XXXXXX)
    export TMPDIR
    trap 'rm -rf "$TMPDIR"' EXIT
    trap 'exit 1' INT TERM
fi
export QT_QPA_PLATFORM=offscreen
export ASAN_OPTIONS=detect_leaks=1 UBSAN_OPTIONS=print_stacktrace=1
export ASAN_SYMBOLIZER_PATH=/usr/bin/llvm-symbolizer-22 # the lines of a stack
export LSAN_OPTIONS="suppressions=$PWD/tests/support/leaks_of_libraries.txt:print_suppressions=0"
find build-tests -name '*_suites.cmake' -exec cat {} + |
    awk '/^# [0-9]+ cases$/ {n += $2} END {print n " test cases in all"}'
ctest --test-dir build-tests --output-on-failure --parallel 2 "$@"
