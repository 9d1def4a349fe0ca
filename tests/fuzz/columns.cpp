// lvb_compute_columns with any columns: refused whole, or every value is that of the plain function, bit for bit.
#include "fuzz/bytes.hpp"
#include "fuzz/require.hpp"
#include "support/functions.hpp"

#include <utility>

namespace {

using fuzz::Bytes;
using fuzz::Memory;

// A column that is ordinary from its first value to its last, but for a few values; its memory ends where it ends.
Memory make_column(Bytes &bytes, const support::Interval &interval, std::size_t count) {
    Memory column(count * sizeof(double));
    const double low = support::within(interval, bytes.between(0.0, 1.0));
    const double high = support::within(interval, bytes.between(0.0, 1.0));
    for (std::size_t i = 0; i < count; ++i)
        column.put(low + (high - low) * static_cast<double>(i) / static_cast<double>(count), i * sizeof(double));
    if (count != 0)
        for (std::uint32_t odd = bytes.below(4); odd > 0; --odd) {
            const double number = bytes.any_number();
            column.put(number, bytes.raw<std::uint16_t>() % count * sizeof(double));
        }
    return column;
}

bool identical(double a, double b) {
    return (fuzz::is_nan(a) && fuzz::is_nan(b)) || std::memcmp(&a, &b, sizeof a) == 0;
}

void require_results(const support::Function &scalar, std::uint32_t single, std::size_t count,
                     const std::vector<std::vector<unsigned char>> &arguments, const Memory &result,
                     const lvb_bad *told) {
    std::uint64_t bad = 0, first = count;
    for (std::size_t k = 0; k < count; ++k) {
        double x[3] = {};
        for (std::size_t i = 0; i < scalar.range.size(); ++i)
            std::memcpy(&x[i], &arguments[i][(single >> i & 1u) != 0 ? 0 : k * sizeof(double)], sizeof(double));
        const double expected = scalar.call(x);
        REQUIRE(identical(result.get<double>(k * sizeof(double)), expected));
        if (fuzz::is_nan(expected) && bad++ == 0) first = k;
    }
    if (told != nullptr) REQUIRE(told->count == bad && told->first == first && told->reserved == 0);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    const auto formulas = static_cast<std::uint32_t>(support::functions().size());
    const std::uint32_t row = bytes.byte() % formulas;
    const support::Function &scalar = support::functions()[row];
    const std::size_t arity = scalar.range.size();

    lvb_columns columns{};
    columns.size = bytes.size_of(sizeof columns);
    columns.formula = static_cast<std::int32_t>(row) + 1;
    columns.instructions = static_cast<std::int32_t>(bytes.below(4));
    if (columns.instructions > (lvb_best_instructions() & ~LVB_INSTRUCTIONS_ASKED)) columns.instructions = 0;
    if (columns.instructions != 0 && bytes.once_in(2)) columns.instructions |= LVB_INSTRUCTIONS_ASKED;
    columns.single = bytes.below(1u << arity);
    const std::size_t length = bytes.once_in(3) ? bytes.byte() : bytes.below(3) * 128u + bytes.below(3);
    const std::size_t count = support::is_slow(scalar.name) ? length % 16 : length;
    columns.count = count;

    std::vector<Memory> memory;
    std::vector<std::vector<unsigned char>> before;
    for (std::size_t i = 0; i < arity; ++i) {
        // a single value is there even where there are none
        const std::size_t values = (columns.single >> i & 1u) != 0 ? 1 : count;
        memory.push_back(make_column(bytes, scalar.range[i], values));
        before.push_back(memory.back().copy());
    }
    Memory apart(count * sizeof(double));
    const double *arguments[3] = {};
    for (std::size_t i = 0; i < arity; ++i) arguments[i] = memory[i].as<const double>();
    // the result may be one of the arguments
    Memory *result = &apart;
    const std::uint32_t in_place = bytes.below(8);
    if (in_place < arity && (columns.single >> in_place & 1u) == 0) result = &memory[in_place];
    columns.result = result->as<double>();
    // single values may lie in the result; each counts as it is when the call begins
    for (std::size_t i = 0; i < arity; ++i)
        if ((columns.single >> i & 1u) != 0 && count != 0 && bytes.once_in(4)) {
            const std::size_t at = bytes.raw<std::uint16_t>() % count * sizeof(double);
            if (result == &apart) result->put(bytes.number(0.0, 1000.0), at);
            arguments[i] = columns.result + at / sizeof(double);
        }
    for (std::size_t i = 0; i < arity; ++i)
        if ((columns.single >> i & 1u) != 0) {
            memory[i].put(*arguments[i]);
            before[i] = memory[i].copy();
        }

    // at most one thing that does not belong
    bool sound = true;
    if (bytes.once_in(8)) {
        sound = false;
        switch (bytes.below(7)) {
        case 0:
            columns.formula = bytes.raw<std::int32_t>();
            if (columns.formula >= 1 && columns.formula <= static_cast<std::int32_t>(formulas)) columns.formula = 0;
            break;
        case 1: // with ASKED only sets that this processor has: the library takes the caller's word
            columns.instructions = bytes.raw<std::int32_t>() | 4;
            break;
        case 2:
            columns.single |= 1u << (arity + bytes.below(static_cast<std::uint32_t>(32 - arity)));
            break;
        case 3: // a count without memory behind it is only given where it must be refused
            columns.count = std::uint64_t{LVB_MAX_VALUES} + 1 + (bytes.raw<std::uint64_t>() >> 1);
            break;
        case 4:
            if (arity == 3 || bytes.once_in(2)) {
                arguments[bytes.below(static_cast<std::uint32_t>(arity))] = nullptr;
                sound = count == 0;
            } else {
                arguments[2] = apart.as<const double>();
            }
            break;
        case 5: // one value further than a column
            for (std::size_t i = 0; i < arity; ++i)
                if (count > 2 && (columns.single >> i & 1u) == 0) {
                    result = &memory[i];
                    columns.result = result->as<double>() + 1;
                    columns.count = count - 1;
                }
            sound = columns.count == count;
            break;
        default:
            columns.result = nullptr;
            sound = count == 0;
            break;
        }
    }
    columns.argument_1 = arguments[0];
    columns.argument_2 = arguments[1];
    columns.argument_3 = arguments[2];

    Memory lent = fuzz::result<lvb_columns>(columns.size);
    lent.put(columns);
    if (!bytes.once_in(16)) lent.zero_from(sizeof columns);
    const std::uint32_t bad_size = bytes.size_of(sizeof(lvb_bad));
    Memory bad = fuzz::result<lvb_bad>(bad_size);
    const bool give_bad = !bytes.once_in(4);
    const std::vector<unsigned char> bad_before = bad.copy(), result_before = result->copy();
    fuzz::Fault fault(bytes);
    const lvb_status status = lvb_compute_columns(bytes.once_in(64) ? nullptr : lent.as<const lvb_columns>(),
                                                  give_bad ? bad.as<lvb_bad>() : nullptr, fault.pointer());
    fault.require(status);
    for (std::size_t i = 0; i < arity; ++i)
        if (&memory[i] != result) REQUIRE(memory[i].copy() == before[i]);
    if (status != LVB_OK) {
        REQUIRE(result->copy() == result_before && bad.copy() == bad_before);
        return 0;
    }
    REQUIRE(sound);
    if (!give_bad) {
        require_results(scalar, columns.single, count, before, *result, nullptr);
        return 0;
    }
    const auto told = bad.get<lvb_bad>();
    REQUIRE(told.size == bad_size && bad.is_zero_from(sizeof told));
    require_results(scalar, columns.single, count, before, *result, &told);
    return 0;
}
