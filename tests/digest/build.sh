#!/bin/sh
# Builds the library's sources anew with one compiler at one level of optimization, the loops over columns too, and
# compares the digest. Unchanged sources are not built again.
#
#   build.sh COMPILER LEVEL DIGEST_SOURCE_FOLDER PROJECT GENERATED WORK [RUNNER..]
set -eu
compiler=$1 level=$2 here=$3 project=$4 generated=$5 work=$6
shift 6
mkdir -p "$work"
if [ ! -x "$work/digest" ] ||
    [ -n "$(find "$project/lib" "$project/include" "$here" "$generated" -type f -newer "$work/digest")" ]; then
    flags="-std=c++20 $level -ffp-contract=off -fno-exceptions -fno-rtti -fno-threadsafe-statics -fno-math-errno
        -DLVB_BUILDING -DLVB_STATIC -I $project/lib -I $project/include -I $generated"
    machine=$("$compiler" -dumpmachine)
    objects=
    for source in "$project"/lib/*/*.cpp; do
        special=
        case $source in
        */loops_avx2.cpp) special=-mavx2 ;;
        */loops_avx512.cpp) special="-mavx512f -mavx512dq -mavx512vl -mprefer-vector-width=512" ;;
        */loops_baseline.cpp | */column.cpp) special=-fno-trapping-math ;;
        esac
        case $source:$machine in
        */loops_avx*:x86_64*) special="$special -fno-trapping-math" ;;
        */loops_avx*) continue ;;
        esac
        object=$work/$(basename "$(dirname "$source")")_$(basename "$source" .cpp).o
        # Unquoted on purpose: lists of words.
        "$compiler" $flags $special -c "$source" -o "$object"
        objects="$objects $object"
    done
    "$compiler" -std=c++20 -O1 -ffp-contract=off -DLVB_STATIC -I "$project/include" -I "$generated" \
        "$here/digest.cpp" $objects ${LEVELBOOK_DIGEST_LINK-} -o "$work/digest.new"
    mv "$work/digest.new" "$work/digest"
fi
"$@" "$work/digest" "$here/digest.txt"
