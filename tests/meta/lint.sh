#!/bin/sh
# How the code is written: layers, clang-format, clang-tidy, GCC's warnings. Every complaint is an
# error. usage: sh tests/meta/lint.sh [--tests]    clang-tidy over the tests too, eight minutes more
set -eu
cd "$(dirname "$0")/../.."

sh tests/meta/layers.sh
git ls-files '*.h' '*.cpp' | xargs clang-format-22 --dry-run --Werror
cmake --preset lint >/dev/null
/usr/bin/python3 tests/meta/tidy.py build-lint "$@"
echo 'layers, format and tidy are clean'
