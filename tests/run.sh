#!/bin/sh
# All tests on a bare Debian 12, as root or with sudo: installs, builds with warnings as errors and
# with AddressSanitizer and UndefinedBehaviorSanitizer, and runs everything through CTest.
set -eu
cd "$(dirname "$0")/.."

sh apps/setup.sh tests
launcher=''
command -v ccache >/dev/null && launcher=-DCMAKE_CXX_COMPILER_LAUNCHER=ccache
cmake -S . -B build-tests -G Ninja -DCMAKE_BUILD_TYPE=Debug -DWITH_SANITIZERS=ON \
    -DCMAKE_CXX_FLAGS_DEBUG=-g1 -DCMAKE_COMPILE_WARNING_AS_ERROR=ON $launcher >/dev/null
cmake --build build-tests
export QT_QPA_PLATFORM=offscreen
export ASAN_OPTIONS=detect_leaks=1 UBSAN_OPTIONS=print_stacktrace=1
export LSAN_OPTIONS="suppressions=$PWD/tests/support/leaks_of_libraries.txt:print_suppressions=0"
ctest --test-dir build-tests --output-on-failure --parallel 2 "$@"
