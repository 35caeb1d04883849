#!/bin/sh
# Which branches of domain/rules and domain/design the tests never take; fails unless all are taken.
# Not part of .ci/run: it builds the domain once more, which takes a minute or two.
# usage: sh tests/meta/coverage.sh
set -eu
cd "$(dirname "$0")/../.."

sh apps/setup.sh tests
flags=--coverage
# The clean-up that exceptions cause counts as branches nobody wrote. Code that throws nothing can
# be built without it.
if grep -rqE '\bthrow\b' domain --include='*.h' --include='*.cpp'; then
    echo 'note: domain holds a throw, so branches of the clean-up behind exceptions are counted too'
else
    flags="$flags -fno-exceptions"
fi
# Anew each time: what an earlier build left behind would be counted.
rm -rf build-coverage
cmake -S . -B build-coverage -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG='-O0 -g1' \
    -DCMAKE_CXX_FLAGS="$flags" >/dev/null
programs='rules_tests domain_tests drawing_tests meta_tests'
# shellcheck disable=SC2086 # one word per program is what is wanted
cmake --build build-coverage --target $programs

for program in $programs; do
    "build-coverage/tests/${program%_tests}/$program" --gtest_brief=1
done
gcovr --root . --filter 'domain/(rules|design)/' --exclude-throw-branches \
    --exclude-unreachable-branches --json build-coverage/coverage.json \
    build-coverage/domain build-coverage/tests
/usr/bin/python3 tests/meta/coverage.py build-coverage/coverage.json
