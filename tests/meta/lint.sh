#!/bin/sh
# How the code is written: layers, clang-format, clang-tidy. Every complaint is an error.
set -eu
cd "$(dirname "$0")/../.."

sh tests/meta/layers.sh
git ls-files '*.h' '*.cpp' | xargs clang-format --dry-run --Werror
cmake --preset lint >/dev/null
/usr/bin/python3 tests/meta/tidy.py build-lint
echo 'layers, format and tidy are clean'
