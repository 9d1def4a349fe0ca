#!/bin/sh
# run.sh PROGRAM shared|static [no-cxx]: the program must succeed, and be linked as said. With no-cxx it must not need
# the C++ runtime.
set -e
"$1"
needed=$(readelf -d "$1" | grep NEEDED || true)
case "$2:$needed" in
shared:*liblevelbook.so.0*) ;;
static:*liblevelbook*) echo "$1 needs the shared library:" "$needed" && exit 1 ;;
static:*) ;;
*) echo "$1 is not linked with the shared library:" "$needed" && exit 1 ;;
esac
case "$3:$needed" in
no-cxx:*libstdc++* | no-cxx:*libc++*) echo "$1 needs the C++ runtime:" "$needed" && exit 1 ;;
esac
