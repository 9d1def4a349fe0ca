#!/bin/sh
# Runs a Sollya recipe: every number that it prints as a coefficient or constant must stand in the kernel.
#   recipes.sh SOLLYA RECIPE KERNEL
set -eu
printed=$("$1" --warnonstderr "$2" 2>/dev/null | grep -v 'at most' | grep -o -e '-\{0,1\}0x1[0-9a-f.]*p[-+]\{0,1\}[0-9]*')
[ "$(echo "$printed" | wc -l)" -ge 10 ] || { echo "the recipe printed too few numbers" >&2; exit 1; }
missing=0
for number in $printed; do
    number=${number#-} # signs stand where the kernel adds
    grep -q -e "$number" "$3" || { echo "$3 lacks $number" >&2; missing=1; }
done
exit $missing
