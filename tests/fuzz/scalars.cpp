// Every plain function of doubles with any bit patterns: NaN outside the range that the header states, and only there.
#include "fuzz/bytes.hpp"
#include "fuzz/require.hpp"
#include "support/functions.hpp"

namespace {

// The one case that the header refuses inside its ranges: zero times infinity.
bool is_zero_times_infinity(const support::Function &scalar, const double *x) {
    return scalar.name == "lvb_thermal_noise_dbm" && x[0] * x[1] != x[0] * x[1];
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    fuzz::Bytes bytes(data, size);
    do {
        const support::Function &scalar =
            support::functions()[bytes.raw<std::uint16_t>() % support::functions().size()];
        if (support::is_slow(scalar.name) && bytes.below(8) != 0) continue;
        double x[3] = {};
        bool inside = true;
        for (std::size_t i = 0; i < scalar.range.size(); ++i) {
            const support::Interval &interval = scalar.range[i];
            const std::uint32_t kind = bytes.below(8);
            x[i] = kind == 0   ? interval.low
                   : kind == 1 ? interval.high
                   : kind < 5  ? support::within(interval, bytes.between(0.0, 1.0))
                               : bytes.any_number();
            inside = inside && interval.holds(x[i]);
        }
        const double result = scalar.call(x);
        const bool must_be_nan = !inside || is_zero_times_infinity(scalar, x);
        if (fuzz::is_nan(result) != must_be_nan)
            std::fprintf(stderr, "%s(%.17g, %.17g, %.17g) gives %.17g\n", scalar.name.c_str(), x[0], x[1], x[2],
                         result);
        REQUIRE(fuzz::is_nan(result) == must_be_nan);

        // Minus zero is zero: it gives the same value.
        if (must_be_nan) continue;
        for (double &argument : x)
            if (argument == 0.0) argument = -argument;
        if (scalar.call(x) != result)
            std::fprintf(stderr, "%s(%.17g, %.17g, %.17g) depends on a zero's sign\n", scalar.name.c_str(), x[0], x[1],
                         x[2]);
        REQUIRE(scalar.call(x) == result);
    } while (!bytes.empty());
    return 0;
}
