#!/bin/sh
# From a fresh clone on a bare Debian machine to the work done, in one command:
#
#   sh cmake/bootstrap.sh demo             build, and compute the demo production
#   sh cmake/bootstrap.sh test             build, and run all tests: plainly, and under the sanitizers; the quick ones
#                                          of a build by a second compiler too; and lint
#   sh cmake/bootstrap.sh lint             look for defects and carelessness in the library's sources
#   sh cmake/bootstrap.sh bench [OPTION..] build, and measure the speed (options go to Google Benchmark)
#   sh cmake/bootstrap.sh fuzz [SECONDS]   build, and feed the library hostile input (60 seconds in all, unless given)
#
# It installs the packages that are missing with apt-get (as root directly, otherwise with sudo) and nothing when all are
# there. The build tree is build/: libraries in build/lib, programs in build/bin.
set -eu
unset CDPATH
cd "$(dirname "$0")/.."

usage() { sed -n '2,/^set -eu/{/^#/s/^# \{0,1\}//p;}' "cmake/bootstrap.sh"; }
say() { echo "levelbook: $*"; }
fail() {
    echo "levelbook: $*" >&2
    exit 1
}

# What the build of programs, tests and benchmarks needs, and what some commands need beside it.
build_packages="cmake ninja-build g++ libgtest-dev libbenchmark-dev nlohmann-json3-dev libcli11-dev"
test_packages="clang-14 pkg-config binutils valgrind libmpfr-dev gappa
    python3 python3-cffi python3-numpy python3-scipy python3-scikit-rf"
bench_packages="libsleef-dev python3 python3-numpy python3-cffi"
lint_packages="clang-tidy-14 cppcheck"
fuzz_packages="clang-14 libclang-rt-14-dev"

is_installed() { [ "$(dpkg-query -W -f='${db:Status-Status}' "$1" 2>/dev/null)" = installed ]; }

apt() { $as_root env DEBIAN_FRONTEND=noninteractive apt-get -q "$@" >>"$apt_log" 2>&1; }

# need PACKAGE...: installs those that are missing.
need() {
    if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
        say "this is not a Debian machine; the build needs what Debian calls: $*"
        return
    fi
    missing=
    for package in "$@"; do is_installed "$package" || missing="$missing $package"; done
    [ -n "$missing" ] || return 0
    as_root=
    if [ "$(id -u)" != 0 ]; then
        as_root="sudo -n"
        if ! sudo -n true 2>/dev/null; then
            echo "apt-get update && apt-get install -y --no-install-recommends$missing" >&2
            fail "packages are missing: run the line above as root, and then this command again"
        fi
    fi
    say "installing$missing"
    apt_log=$(mktemp)
    # Unquoted on purpose: a list of words.
    if apt update && apt install -y --no-install-recommends $missing; then
        rm -f "$apt_log"
    else
        tail -n 20 "$apt_log" >&2
        fail "apt-get could not install$missing (its whole output: $apt_log)"
    fi
}

jobs=$(nproc 2>/dev/null || echo 2)

# Sanitizers of this age fail now and then where the system places programs at widely random addresses: they get fixed
# ones, where the system allows that.
if fixed="setarch $(uname -m) -R" && $fixed true 2>/dev/null; then :; else fixed=; fi

configure_options=

# build PRESET [TARGET...]: configures and builds; tells only what went wrong.
build() {
    preset=$1
    shift
    say "building (preset $preset)"
    log=build/$preset.log
    mkdir -p build
    if ! { cmake --preset "$preset" $configure_options && $fixed cmake --build --preset "$preset" -j "$jobs" --target "${@:-all}"; } >"$log" 2>&1; then
        tail -n 60 "$log" >&2
        fail "the build failed (its whole output: $log)"
    fi
}

# check PRESET [TARGET...]: builds a tree, or some of it, and runs its tests.
check() {
    build "$@"
    say "testing (preset $1)"
    $fixed ctest --preset "$1" -j "$jobs" || fail "tests failed (preset $1)"
}

# desk ARGUMENT...: shows a command of levelbook-desk with its answer. 1 says that something does not hold.
desk() {
    printf '\n$ levelbook-desk'
    for word in "$@"; do case $word in *' '*) printf ' "%s"' "$word" ;; *) printf ' %s' "$word" ;; esac; done
    printf '\n'
    status=0
    build/bin/levelbook-desk "$@" || status=$?
    [ "$status" -le 1 ] || fail "the demo failed (exit code $status)"
}

command=${1-}
[ $# = 0 ] || shift
case "$command" in
demo)
    need $build_packages
    build dev levelbook_shared levelbook_static levelbook-desk levelbook-evidence first_budget
    for scenario in examples/desk/demo/*.json; do
        status=0
        build/bin/levelbook-desk budget "$scenario" || status=$?
        # 1 says that some link does not hold: the demo production has links that fail by design.
        [ "$status" -le 1 ] || fail "the demo failed (exit code $status)"
    done
    for question in map walk place; do
        status=0
        walk=
        [ "$question" != walk ] || walk="to the far platform"
        build/bin/levelbook-desk "$question" examples/desk/demo/nine_tin_herons.json "arena, monitors A" \
            ${walk:+"$walk"} --brief || status=$?
        [ "$status" -le 1 ] || fail "the demo failed at its $question (exit code $status)"
    done
    day=examples/desk/demo/one_day.json
    say "a day with the desk, morning: what the plan lacks, and what to take from the stock"
    desk rank $day "Platform as planned"
    desk choose $day
    desk compare $day "Platform as planned" "Platform as built"
    say "noon: how far the singer may walk, and how sure it is"
    desk solve $day "Platform as built" --unknown far_distance_m --margin 3 --tolerances worst
    desk sure $day "Platform as planned"
    desk sure $day "Platform as built"
    say "before the doors open the pack reads too little: where it is lost"
    desk locate $day "Platform as built" "monitor pack=-63.5@3" --uncertainty 1
    desk locate $day "Platform as built"
    ;;
test)
    need $build_packages $test_packages $lint_packages
    configure_options=-DLEVELBOOK_REQUIRE_ALL_TESTS=ON
    check dev
    build dev levelbook_lint
    check address
    check thread contract_tests # the tests that start threads
    check clang
    need $fuzz_packages
    build fuzz levelbook_fuzz # what the fuzzers find is no test, but they must build
    say "all tests passed: plainly, under the address and undefined-behaviour sanitizers, the threads under the thread sanitizer;" \
        "the quick ones with a second compiler; lint finds nothing in the library; the fuzzers build"
    ;;
lint)
    need $build_packages $lint_packages
    build dev levelbook_lint
    say "nothing found"
    ;;
bench)
    need $build_packages $bench_packages
    build dev levelbook_bench
    build/bin/levelbook-bench --benchmark_min_time=0.05 "$@"
    # Debian's python3 by its path: another one may stand before it, without these packages.
    build/bin/levelbook-table \
        "/usr/bin/python3 bench/python_side.py build/bench/plain/levelbook.cdef.h build/lib/liblevelbook.so"
    build/bin/levelbook-choices
    ;;
fuzz)
    seconds=${1-60}
    case "$seconds" in '' | *[!0-9]*) fail "fuzz takes a number of seconds, not '$seconds'" ;; esac
    need $build_packages $fuzz_packages
    build fuzz levelbook_fuzz
    targets=$(ls build/fuzz/bin/fuzz)
    each=$((seconds / $(echo $targets | wc -w)))
    [ "$each" -gt 0 ] || each=1
    for target in $targets; do
        say "fuzzing with $target for $each s"
        found=build/fuzz/found/$target
        mkdir -p "$found"
        $fixed "build/fuzz/bin/fuzz/$target" -max_total_time="$each" -max_len=2048 -print_final_stats=1 \
            -artifact_prefix="$found/crash-" "$found" "tests/fuzz/corpus/$target" >"$found.log" 2>&1 || {
            tail -n 40 "$found.log" >&2
            fail "$target found a defect (its whole output: $found.log)"
        }
        grep -E 'number_of_executed_units|cov: ' "$found.log" | tail -n 2
    done
    say "nothing found"
    ;;
help | -h | --help) usage ;;
*)
    usage >&2
    exit 2
    ;;
esac
