#!/bin/sh
# pkg_config.sh LIB_DIR shared|static CC SOURCES_DIR OUTPUT_DIR: builds the C consumer with what pkg-config tells and
# nothing else. The static one is wholly static, so that a library missing from the file does not link.
set -e
export PKG_CONFIG_LIBDIR="$1/pkgconfig" PKG_CONFIG_PATH=
mkdir -p "$5"
pkg-config --validate levelbook
program="$5/pkg_config_$2"
if [ "$2" = static ]; then
    # The words of pkg-config are split on purpose.
    "$3" -static -std=c99 $(pkg-config --static --cflags levelbook) "$4/consumer.c" -o "$program" \
        $(pkg-config --static --libs levelbook)
    case " $(pkg-config --static --libs levelbook) " in *" -lm "*) echo "-lm is not needed" && exit 1 ;; esac
else
    "$3" -std=c99 $(pkg-config --cflags levelbook) "$4/consumer.c" -o "$program" $(pkg-config --libs levelbook)
fi
LD_LIBRARY_PATH="$1" sh "$4/run.sh" "$program" "$2" no-cxx
