// Two sequences of stages side by side: which stage of one answers to which of the other, in order.
//
// Source: longest common subsequence, Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, 15.4; here with two
// kinds of match, the better of which outweighs any number of the other.
#pragma once

#include <cstddef>
#include <cstdint>

namespace lvb::decide {

inline constexpr std::uint32_t most_compared = 1024;

/// What is best where a stage of each sequence comes next.
enum class Pairing : std::uint8_t { first_only, second_only, kind, label };

/// Fills the table of steps, a row of second_count for each stage of the first sequence, from the end. `match` tells
/// for a stage of each whether they are no pair (first_only), or one by kind or by label.
template <class Match>
void align(std::uint32_t first_count, std::uint32_t second_count, std::uint8_t *steps, Match match) noexcept {
    constexpr std::uint32_t by_label = 2048;    // more than all matches by kind together
    std::uint32_t best[most_compared + 1] = {}; // of the rest after this row, from each place of the second on
    for (std::uint32_t i = first_count; i-- > 0;) {
        std::uint32_t diagonal = 0; // of the row below, one place on
        for (std::uint32_t j = second_count; j-- > 0;) {
            const std::uint32_t below = best[j];
            const Pairing met = match(i, j);
            const std::uint32_t worth = met == Pairing::label ? by_label : met == Pairing::kind ? 1u : 0u;
            Pairing step = met;
            std::uint32_t value = diagonal + worth;
            if (worth == 0 || value < below || value < best[j + 1]) {
                step = below >= best[j + 1] ? Pairing::first_only : Pairing::second_only;
                value = step == Pairing::first_only ? below : best[j + 1];
            }
            steps[std::size_t{i} * second_count + j] = static_cast<std::uint8_t>(step);
            best[j] = value;
            diagonal = below;
        }
    }
}

} // namespace lvb::decide
