// Writes the table of accuracies: levelbook-accuracy FILE [POINTS [KERNEL_POINTS]]
#include "accuracy/table.hpp"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <future>

namespace {

constexpr const char *heading =
    R"(# How near to the exact results

Measured against [MPFR](https://www.mpfr.org) at 192 bits, with every function written anew from the formula of the
header (`oracles.cpp`); this file is written by `cmake --build build --target levelbook_accuracy_table`. A test runs
through the beginning of the same sequences of points and fails when a figure here or a line of the header is exceeded,
or when a line of the header promises far less than was measured.

One ULP is the distance of neighbouring doubles at the exact result: 0.5 is a correctly rounded result. Where results
come close to zero, the header states an absolute error instead, and the column "near zero" holds the worst one there.
"Worst error" is taken over all points: in decibels where the result is in decibels, in degrees where it is a temperature
on a scale (up to 1000 degrees), otherwise relative. Points are random over the whole range (arguments of 0 or from 1e-100 to 1e100 in size, decibels up to 1000), random bit patterns,
both sides of powers of ten and two, near 1, near 0 dB, at ends of the range and of the kernels' intervals.

)";
constexpr const char *columns = "| function | range | stated | points | worst ULP | near zero | worst error |\n"
                                "|---|---|---|---|---|---|---|\n";

template <class Item, class Compute>
std::string rows(const std::vector<Item> &items, Compute compute) {
    std::vector<std::string> texts(items.size());
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        for (std::size_t i; (i = next++) < items.size();) texts[i] = text_of(row_of(items[i], compute(items[i])));
    };
    auto other = std::async(std::launch::async, work);
    work();
    other.get();
    std::string all;
    for (const std::string &text : texts) all += text;
    return all;
}

} // namespace

int main(int count, char **arguments) {
    if (count < 2 || arguments[1][0] == '-')
        return std::fputs("levelbook-accuracy FILE [POINTS [KERNEL_POINTS]]\n", stderr), 2;
    const std::uint64_t points = count > 2 ? std::strtoull(arguments[2], nullptr, 10) : 200000;
    const std::uint64_t kernel_points = count > 3 ? std::strtoull(arguments[3], nullptr, 10) : 10000000;
    std::string text = heading;
    text += "## Plain functions\n\n";
    text += columns;
    text +=
        rows(support::functions(), [&](const support::Function &scalar) { return accuracy::measure(scalar, points); });
    text += "\n## Kernels\n\nAll exponents for 16 mantissas, and then random points, half of them near 1 or 0 dB.\n\n";
    text += columns;
    text += rows(accuracy::kernels(),
                 [&](const accuracy::Kernel &kernel) { return accuracy::search(kernel, kernel_points); });
    std::ofstream(arguments[1]) << text;
    return 0;
}
