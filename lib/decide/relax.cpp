// In a file of its own, which is optimized whatever the rest is compiled for.
#include "decide/relax.hpp"

namespace lvb::decide {

void relax(float *to, const float *from, std::size_t count, float cost, bool two) noexcept {
    if (two)
        for (std::size_t i = 0; i < count; ++i) {
            const float next = from[i] < from[i + 1] ? from[i] : from[i + 1];
            const float sum = next + cost;
            to[i] = sum < to[i] ? sum : to[i];
        }
    else
        for (std::size_t i = 0; i < count; ++i) {
            const float sum = from[i] + cost;
            to[i] = sum < to[i] ? sum : to[i];
        }
}

void relax_need(float *to, const float *from, std::size_t count, float excess, float part, bool two) noexcept {
    const std::size_t right = two ? 1 : 0;
    for (std::size_t i = 0; i < count; ++i) {
        const float next = from[i] < from[i + right] ? from[i] : from[i + right];
        const float sum = excess + next * part;
        const float need = sum < largest_need ? sum : largest_need;
        to[i] = need < to[i] ? need : to[i];
    }
}

} // namespace lvb::decide
