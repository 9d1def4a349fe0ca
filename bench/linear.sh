#!/bin/sh
# linear.sh COUNT_PROGRAM: proves by counted instructions that the cost of a budget grows linearly with its stages.
#
# Instructions are counted, not seconds: the same program gives the same count on every run. Two runs that differ only
# in the number of calls take the start of the program out. The chains of 12, 24, 48 and 96 stages differ by whole turns
# of the same three stages, so with a linear cost a further stage costs the same everywhere: the 48 stages from 48 to 96
# cost four times the 12 stages from 12 to 24. A cost of n log n would give 5.4 times, a quadratic one 16 times. Allowed
# are 4.1 times, for the search of the same table may take another branch. The whole then cannot exceed eight times
# 12 stages by more than the same share, so 96 stages must cost less than 8.2 times.
set -eu

instructions() { # STAGES CALLS
    told=$(valgrind --tool=callgrind --callgrind-out-file=/dev/null "$program" "$1" "$2" 2>&1) || true
    counted=$(echo "$told" | sed -n 's/.*Collected : \([0-9]*\).*/\1/p')
    [ -n "$counted" ] || echo "$told" >&2
    echo "$counted"
}
cost() { # STAGES: instructions of 100 calls
    more=$(instructions "$1" 110)
    less=$(instructions "$1" 10)
    [ -n "$more" ] && [ -n "$less" ] && echo $((more - less))
}

program=$1
of_12=$(cost 12) of_24=$(cost 24) of_48=$(cost 48) of_96=$(cost 96)
echo "instructions of one budget: 12 stages $((of_12 / 100)), 24 $((of_24 / 100)), 48 $((of_48 / 100))," \
    "96 $((of_96 / 100))"
near=$((of_24 - of_12)) far=$((of_96 - of_48))
echo "48 stages further up cost $((100 * far / near)) % of 12 stages further down (linear: 400)"
[ "$near" -gt 0 ] && [ $((10 * far)) -lt $((41 * near)) ] && [ $((10 * of_96)) -lt $((82 * of_12)) ]
