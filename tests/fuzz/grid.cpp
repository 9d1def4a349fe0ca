// lvb_compute_grid with chains of every kind: refused whole, or every level is that of lvb_compute_budget, bit for bit.
#include "fuzz/stages.hpp"
#include "support/link.hpp"

namespace {

using fuzz::Bytes;
using fuzz::Memory;

Memory make_axis(Bytes &bytes, std::size_t count, double low, double high) {
    Memory axis(count * sizeof(double));
    const double first = bytes.between(low, high), last = bytes.between(low, high);
    for (std::size_t i = 0; i < count; ++i)
        axis.put(first + (last - first) * static_cast<double>(i) / static_cast<double>(count), i * sizeof(double));
    for (std::uint32_t odd = bytes.below(4); odd > 0; --odd) {
        const double number = bytes.number(low, high);
        axis.put(number, bytes.raw<std::uint16_t>() % count * sizeof(double));
    }
    return axis;
}

double budget_level(lvb_link link, double frequency_mhz, double distance_m, std::int32_t end) {
    link.frequency_mhz = frequency_mhz;
    link.far_distance_m = distance_m;
    link.near_distance_m = 0.0;
    if (!support::has_air(link))
        link.far_distance_m = 0.0; // a budget without air takes no distance, a grid does not use it
    lvb_budget budget{};
    budget.size = sizeof budget;
    lvb_fault fault{};
    fault.size = sizeof fault;
    if (lvb_compute_budget(&link, &budget, nullptr, 0, &fault) == LVB_OK)
        return end == LVB_END_FAR ? budget.far_end.level_dbm : budget.near_end.level_dbm;
    REQUIRE(fault.field == LVB_FIELD_FREQUENCY_MHZ || fault.field == LVB_FIELD_FAR_DISTANCE_M);
    return std::numeric_limits<double>::quiet_NaN();
}

void require_levels(const lvb_grid &grid, const Memory &levels, const lvb_bad *told) {
    lvb_link link{};
    std::memcpy(&link, grid.link, sizeof link);
    link.size = sizeof link;
    const std::uint64_t values = grid.frequency_count * grid.distance_count;
    const std::uint64_t step = grid.distance_count > 8 ? grid.distance_count / 5 : 1; // budgets at some distances
    std::uint64_t bad = 0, first = values;
    for (std::uint64_t k = 0; k < values; ++k) {
        const auto level = levels.get<double>(k * sizeof(double));
        if (fuzz::is_nan(level) && bad++ == 0) first = k;
        if (k % step != 0) continue;
        const double distance_m = grid.distance_m == nullptr ? 0.0 : grid.distance_m[k % grid.distance_count];
        const double expected = budget_level(link, grid.frequency_mhz[k / grid.distance_count], distance_m, grid.end);
        REQUIRE((fuzz::is_nan(level) && fuzz::is_nan(expected)) || std::memcmp(&level, &expected, sizeof level) == 0);
    }
    if (told != nullptr) REQUIRE(told->count == bad && told->first == first && told->reserved == 0);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    fuzz::Lenders lenders;

    lvb_link link{};
    link.size = bytes.size_of(sizeof link);
    link.frequency_mhz = bytes.any_number(); // not used
    link.far_distance_m = bytes.any_number();
    if (bytes.once_in(3)) {
        link.stated = LVB_STATED_TEMPERATURE;
        link.temperature_degc = bytes.number(-100.0, 200.0);
    }
    const std::vector<std::int32_t> kinds = fuzz::make_kinds(bytes);
    Memory stages(kinds.size() * sizeof(lvb_stage));
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        lvb_stage stage = fuzz::make_stage(bytes, kinds[i], lenders);
        if (bytes.once_in(32)) fuzz::spoil(bytes, stage, lenders);
        stages.put(stage, i * sizeof stage);
    }
    link.stages = bytes.once_in(64) ? nullptr : stages.as<const lvb_stage>();
    link.stage_count = static_cast<std::uint32_t>(kinds.size());
    link.stage_size = sizeof(lvb_stage);
    Memory lent_link = fuzz::result<lvb_link>(link.size);
    lent_link.put(link);
    lent_link.zero_from(sizeof link);

    const std::size_t frequencies = 1 + bytes.below(3);
    const std::size_t distances = bytes.once_in(3) ? 1 + bytes.byte() : 1 + bytes.below(5);
    Memory mhz = make_axis(bytes, frequencies, 30.0, 3000.0), metres = make_axis(bytes, distances, 0.01, 1000.0);
    Memory scratch(2 * distances * sizeof(double)), levels(frequencies * distances * sizeof(double));

    lvb_grid grid{};
    grid.size = bytes.size_of(sizeof grid);
    grid.end = static_cast<std::int32_t>(bytes.below(2));
    grid.instructions = static_cast<std::int32_t>(bytes.below(4));
    if (grid.instructions > (lvb_best_instructions() & ~LVB_INSTRUCTIONS_ASKED)) grid.instructions = 0;
    grid.frequency_count = frequencies;
    grid.distance_count = distances;
    grid.link = bytes.once_in(64) ? nullptr : lent_link.as<const lvb_link>();
    grid.frequency_mhz = mhz.as<const double>();
    grid.distance_m = metres.as<const double>();
    grid.scratch = scratch.as<double>();
    grid.level_dbm = levels.as<double>();
    grid.user = reinterpret_cast<const void *>(std::uintptr_t{bytes.byte()}); // never read

    // at most one thing that does not belong; some of them only where the chain has air
    bool sound = true, sound_without_air = true;
    if (bytes.once_in(8)) {
        sound = sound_without_air = false;
        switch (bytes.below(11)) {
        case 0:
            grid.end = bytes.raw<std::int32_t>() | 2;
            break;
        case 1:
            grid.instructions = bytes.raw<std::int32_t>() | 4;
            break;
        case 2:
            grid.reserved = bytes.raw<std::uint32_t>() | 1;
            break;
        case 3: // counts without memory behind them are only given where they must be refused
            grid.frequency_count = std::uint64_t{LVB_MAX_VALUES} + 1 + (bytes.raw<std::uint64_t>() >> 1);
            break;
        case 4:
            grid.distance_count = std::uint64_t{LVB_MAX_VALUES} + 1 + (bytes.raw<std::uint64_t>() >> 1);
            break;
        case 5:
            grid.frequency_mhz = nullptr;
            break;
        case 6:
            grid.distance_m = nullptr;
            sound_without_air = true;
            break;
        case 7:
            grid.scratch = nullptr;
            sound_without_air = true;
            break;
        case 8:
            grid.scratch = grid.level_dbm + bytes.below(2) * (frequencies * distances - 1);
            sound_without_air = true;
            break;
        case 9: // nothing to compute, and no arrays for it
            (bytes.once_in(2) ? grid.frequency_count : grid.distance_count) = 0;
            grid.frequency_mhz = grid.distance_m = nullptr;
            grid.scratch = grid.level_dbm = nullptr;
            sound = sound_without_air = true;
            break;
        default:
            grid.level_dbm = nullptr;
            break;
        }
    }
    Memory lent = fuzz::result<lvb_grid>(grid.size);
    lent.put(grid);
    if (!bytes.once_in(16)) lent.zero_from(sizeof grid);
    const std::uint32_t bad_size = bytes.size_of(sizeof(lvb_bad));
    Memory bad = fuzz::result<lvb_bad>(bad_size);
    const bool give_bad = !bytes.once_in(4);
    const std::vector<unsigned char> bad_before = bad.copy(), scratch_before = scratch.copy(),
                                     levels_before = levels.copy(), mhz_before = mhz.copy(),
                                     metres_before = metres.copy();
    fuzz::Fault fault(bytes);
    const lvb_status status = lvb_compute_grid(bytes.once_in(64) ? nullptr : lent.as<const lvb_grid>(),
                                               give_bad ? bad.as<lvb_bad>() : nullptr, fault.pointer());
    fault.require(status);
    REQUIRE(mhz.copy() == mhz_before && metres.copy() == metres_before);
    if (status != LVB_OK) {
        REQUIRE(bad.copy() == bad_before && scratch.copy() == scratch_before && levels.copy() == levels_before);
        return 0;
    }
    REQUIRE(support::has_air(link) ? sound : sound_without_air);
    if (!give_bad) {
        require_levels(grid, levels, nullptr);
        return 0;
    }
    const auto told = bad.get<lvb_bad>();
    REQUIRE(told.size == bad_size && bad.is_zero_from(sizeof told));
    require_levels(grid, levels, &told);
    return 0;
}
