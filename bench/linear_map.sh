#!/bin/sh
# linear_map.sh COUNT_PROGRAM: proves by counted instructions that the cost of a map grows linearly with its points, its
# antennas and its screens.
#
# As in linear.sh, two runs that differ in the number of calls take the start of the program out, and a further step up
# must cost four times one that is a quarter as long: from 8 to 16 as much as four times from 2 to 4. A cost of n log n
# would give 6 times and more, a quadratic one 16 times. Allowed are 3.9 to 4.1 times.
set -eu

instructions() { # ROWS ANTENNAS SCREENS CALLS
    told=$(valgrind --tool=callgrind --callgrind-out-file=/dev/null "$program" map "$@" 2>&1) || true
    counted=$(echo "$told" | sed -n 's/.*Collected : \([0-9]*\).*/\1/p')
    [ -n "$counted" ] || echo "$told" >&2
    echo "$counted"
}
cost() { # ROWS ANTENNAS SCREENS: instructions of 2 calls
    more=$(instructions "$@" 3)
    less=$(instructions "$@" 1)
    [ -n "$more" ] && [ -n "$less" ] && echo $((more - less))
}
judge() { # WHAT, and the costs of 2, 4, 8 and 16 of it
    near=$(($3 - $2)) far=$(($5 - $4))
    echo "8 more $1 further up cost $((100 * far / near)) % of 2 more further down (linear: 400)"
    [ "$near" -gt 0 ] && [ $((10 * far)) -lt $((41 * near)) ] && [ $((10 * far)) -gt $((39 * near)) ]
}

program=$1
judge "rows" "$(cost 2 2 1)" "$(cost 4 2 1)" "$(cost 8 2 1)" "$(cost 16 2 1)"
judge "antennas" "$(cost 2 2 1)" "$(cost 2 4 1)" "$(cost 2 8 1)" "$(cost 2 16 1)"
judge "screens" "$(cost 2 1 2)" "$(cost 2 1 4)" "$(cost 2 1 8)" "$(cost 2 1 16)"
