#!/bin/sh
# pkg_config.sh LIB_DIR shared|static SONAME CC SOURCES_DIR OUTPUT_DIR: builds the C consumer with what pkg-config tells
# and nothing else. The static one is wholly static, so that a library missing from the file does not link.
set -e
folder=$1 kind=$2 soname=$3 compiler=$4 sources=$5 output=$6
export PKG_CONFIG_LIBDIR="$folder/pkgconfig" PKG_CONFIG_PATH=
mkdir -p "$output"
pkg-config --validate levelbook
program="$output/pkg_config_$kind"
all=
[ "$kind" = shared ] || all=--static
compile=$(pkg-config $all --cflags levelbook)
link=$(pkg-config $all --libs levelbook)
case " $link " in *" -lm "*) echo "-lm is not needed" && exit 1 ;; esac
[ "$kind" = shared ] || link="-static $link"
# pkg-config tells words quoted for a shell.
eval "\"\$compiler\" -std=c99 $compile \"\$sources/consumer.c\" -o \"\$program\" $link"
LD_LIBRARY_PATH="$folder" sh "$sources/run.sh" "$program" "$kind" "$soname" no-cxx
