#!/bin/sh
# run.sh PROGRAM shared|static SONAME [no-cxx]: the program must succeed, and be linked as said: with the shared library
# of that name, or without any. With no-cxx it must not need the C++ runtime.
set -e
"$1"
needed=$(readelf -d "$1" | grep NEEDED || true)
case "$2:$needed" in
shared:*"[$3]"*) ;;
static:*liblevelbook*) echo "$1 needs the shared library:" "$needed" && exit 1 ;;
static:*) ;;
*) echo "$1 is not linked with $3:" "$needed" && exit 1 ;;
esac
case "$4:$needed" in
no-cxx:*libstdc++* | no-cxx:*libc++*) echo "$1 needs the C++ runtime:" "$needed" && exit 1 ;;
esac
