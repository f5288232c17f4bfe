#!/usr/bin/env bash
# scripts/demo and scripts/test one after the other, in a small project of their own that has the house's presets, options
# and names and nothing to compile: what is built, which suites run and what the last lines say of it.
set -uo pipefail
house=$(cd "$(dirname "$0")/../.." && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
cd "$scratch" || exit 1

mkdir scripts
cp "$house/scripts/test" "$house/scripts/lib-demo.sh" scripts/
cp "$house/CMakePresets.json" .
printf '#!/bin/sh\n' >scripts/install
chmod +x scripts/install
cat >CMakeLists.txt <<'PROJECT'
cmake_minimum_required(VERSION 3.25)
project(Small LANGUAGES NONE)
option(COLDIRON_PLUGIN "" ON)
option(COLDIRON_TESTS "" ON)
add_custom_target(coldiron)
add_custom_target(demo_take)
if(COLDIRON_PLUGIN)
    set(made ${CMAKE_BINARY_DIR}/Source/plugin/coldiron_plugin_artefacts/Release)
    add_custom_target(plugin ALL
        COMMAND ${CMAKE_COMMAND} -E make_directory ${made}/VST3/Coldiron.vst3 ${made}/LV2/Coldiron.lv2 ${made}/Standalone
        COMMAND ${CMAKE_COMMAND} -E copy /bin/true ${made}/Standalone/Coldiron)
endif()
if(COLDIRON_TESTS)
    enable_testing()
    add_test(NAME circuit COMMAND true)
    add_test(NAME guitar COMMAND test ! -e ${CMAKE_SOURCE_DIR}/guitar-is-broken)
    if(COLDIRON_PLUGIN)
        add_test(NAME plugin COMMAND true)
    endif()
endif()
PROJECT

faults=0
fault() {
    echo "FAULT: $*"
    faults=$((faults + 1))
}
# run_test STATUS [ARGUMENTS]: what scripts/test says is in $said
run_test() {
    local wanted=$1 status=0
    shift
    said=$(bash scripts/test "$@" 2>&1) || status=$?
    echo "== scripts/test $*: exit $status"
    echo "$said" | tail -n 8
    ((status == 0)) && [[ $wanted != 0 ]] && fault "scripts/test $* ended well"
    ((status != 0)) && [[ $wanted == 0 ]] && fault "scripts/test $* failed"
    return 0
}
says() { grep -Eqx -- "$1" <<<"$said" || fault "no line says: $1"; }
does_not_say() { ! grep -Eq -- "$1" <<<"$said" || fault "it says: $1"; }
demo_builds() { bash -c 'set -euo pipefail; . scripts/lib-demo.sh; build_quickly' >/dev/null || fault "the demo does not build"; }
plugin_in_cache() { sed -n 's/^COLDIRON_PLUGIN:[A-Z]*=//p' build/CMakeCache.txt; }

# The README's two commands in their order: the demo wants no JUCE, and the tests want everything.
demo_builds
[[ $(plugin_in_cache) == OFF ]] || fault "the demo asks for the plugin"
demo_builds
[[ $(plugin_in_cache) == OFF ]] || fault "a second demo asks for the plugin"
run_test 0
[[ $(plugin_in_cache) == ON ]] || fault "scripts/test leaves the plugin away"
says "All 3 suites ran: circuit guitar plugin"
says "3 passed, 0 failed"
for ends in VST3/Coldiron.vst3 LV2/Coldiron.lv2 Standalone/Coldiron; do
    path=$(grep -Eo "build/[^ ]*$ends" <<<"$said" | head -n 1)
    [[ -n $path && -e $path ]] || fault "no path of $ends that exists: '$path'"
done

# A demo after the tests leaves the plugin as it is.
demo_builds
[[ $(plugin_in_cache) == ON ]] || fault "the demo switches the plugin off"

# Tests switched off before are switched on.
cmake --preset release -DCOLDIRON_TESTS=OFF >/dev/null
run_test 0
says "3 passed, 0 failed"

# A choice does not claim to be all.
run_test 0 -R circuit
says "1 of 3 suites ran: circuit"
says "1 passed, 0 failed"
does_not_say "All|[Ee]very test"
run_test 1 -R no-such-suite
says "0 of 3 suites ran"
does_not_say "All|[Ee]very test"

# A failure is counted, and the end is a failure.
touch guitar-is-broken
run_test 1
says "2 passed, 1 failed"
says "Failed: guitar"
does_not_say "[Ee]very test passed"
rm guitar-is-broken

# A plugin that is not there is not said to lie anywhere.
sed -i 's|add_custom_target(plugin ALL|add_custom_target(plugin|' CMakeLists.txt
rm -rf build
run_test 1
says "scripts/test: VST3 was not built"
does_not_say "build/.*vst3"

echo
echo "tests/scripts/test-script.sh: $faults faults"
((faults == 0))
