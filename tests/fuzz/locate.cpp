// lvb_locate_fault with chains and readings of every kind: refused whole, or probabilities that add up.
#include "fuzz/stages.hpp"

#include <cmath>

namespace {

using fuzz::Bytes;
using fuzz::Memory;

void require_suspects(const Memory &suspects, std::uint32_t step, std::uint32_t stages,
                      const lvb_locate_result &result) {
    double sum = result.none_probability;
    std::uint32_t span = 0;
    for (std::uint32_t i = 0; i < stages; ++i) {
        const auto suspect = suspects.get<lvb_suspect>(std::size_t{i} * step);
        REQUIRE(suspect.span == span || suspect.span == span + 1);
        span = suspect.span;
        sum += suspect.probability;
        REQUIRE(suspect.reserved == 0 && suspect.probability >= 0.0 && suspect.probability <= result.probability);
        REQUIRE(std::isfinite(suspect.fault_db) && suspect.standard_deviation_db > 0.0);
        if (!fuzz::is_nan(suspect.expected_bits))
            REQUIRE(suspect.expected_bits >= 0.0 && suspect.expected_bits <= result.expected_bits);
        for (std::size_t tail = sizeof suspect; tail < step; ++tail)
            REQUIRE(suspects.get<unsigned char>(std::size_t{i} * step + tail) == 0);
    }
    REQUIRE(std::fabs(sum - 1.0) < 1e-9);
    REQUIRE(result.fault_p_value >= 0.0 && result.fault_p_value <= 1.0);
    REQUIRE(result.reading_count > 1 || result.fault_p_value == 1.0 || result.fault_p_value == result.p_value);
    const auto top = suspects.get<lvb_suspect>(std::size_t{result.stage} * step);
    REQUIRE(top.probability == result.probability && top.fault_db == result.fault_db);
    REQUIRE(suspects.get<lvb_suspect>(std::size_t{result.next_stage} * step).expected_bits == result.expected_bits);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    fuzz::Lenders lenders;

    const std::vector<std::int32_t> kinds = fuzz::make_kinds(bytes);
    Memory stages(kinds.size() * sizeof(lvb_stage));
    bool air = false;
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        lvb_stage stage = fuzz::make_stage(bytes, kinds[i], lenders);
        if (bytes.once_in(48)) fuzz::spoil(bytes, stage, lenders);
        air = air || stage.kind == LVB_KIND_AIR;
        stages.put(stage, i * sizeof stage);
    }
    lvb_link link{};
    link.size = bytes.size_of(sizeof link);
    link.frequency_mhz = bytes.between(30.0, 3000.0);
    if (air) link.far_distance_m = bytes.number(0.01, 1000.0);
    link.stages = stages.as<const lvb_stage>();
    link.stage_count = static_cast<std::uint32_t>(kinds.size());
    link.stage_size = sizeof(lvb_stage);
    Memory lent_link = fuzz::result<lvb_link>(link.size);
    lent_link.put(link);
    lent_link.zero_from(sizeof link);

    lvb_locate locate{};
    locate.reading_count = bytes.once_in(8) ? bytes.below(LVB_MAX_READINGS + 1) : bytes.below(6);
    locate.reading_size = bytes.size_of(sizeof(lvb_reading));
    const bool element_size_is_good = locate.reading_size >= sizeof(lvb_reading) && locate.reading_size <= 4096;
    const std::size_t step = element_size_is_good ? locate.reading_size : 0;
    Memory readings(locate.reading_count * step);
    readings.zero_from(0);
    for (std::size_t i = 0; i < locate.reading_count && step != 0; ++i) {
        lvb_reading reading{};
        reading.stage = bytes.below(static_cast<std::uint32_t>(kinds.size()) + (bytes.once_in(16) ? 2 : 0));
        reading.level_dbm = bytes.number(-300.0, 200.0);
        reading.uncertainty_db = bytes.once_in(16) ? HUGE_VAL : bytes.number(0.001, 100.0);
        if (bytes.once_in(8)) reading.distance_m = bytes.number(0.01, 1e9);
        if (bytes.once_in(64)) reading.reserved = bytes.byte();
        readings.put(reading, i * step);
    }
    locate.readings = bytes.once_in(64) || locate.reading_count == 0 ? nullptr : readings.as<const lvb_reading>();
    // a count without memory behind it is only given where the count alone must be refused
    if (bytes.once_in(64)) locate.reading_count = LVB_MAX_READINGS + 1 + bytes.raw<std::uint16_t>();
    locate.size = bytes.size_of(sizeof locate);
    locate.link = bytes.once_in(64) ? nullptr : lent_link.as<const lvb_link>();
    locate.uncertainty_db = bytes.once_in(8) ? bytes.number(0.001, 100.0) : bytes.between(0.001, 3.0);
    locate.fault_probability = bytes.number(1e-6, 0.999999);
    locate.fault_spread_db = bytes.number(0.1, 100.0);
    locate.false_alarm = bytes.number(1e-6, 0.5);
    if (bytes.once_in(64)) locate.reserved = bytes.raw<std::uint32_t>();
    locate.user = reinterpret_cast<const void *>(std::uintptr_t{bytes.byte()}); // never read
    Memory lent = fuzz::result<lvb_locate>(locate.size);
    lent.put(locate);
    if (!bytes.once_in(16)) lent.zero_from(sizeof locate);

    const std::uint32_t result_size = bytes.size_of(sizeof(lvb_locate_result));
    Memory result = fuzz::result<lvb_locate_result>(result_size);
    const std::uint32_t suspect_size = bytes.size_of(sizeof(lvb_suspect));
    const bool suspect_size_is_good = suspect_size >= sizeof(lvb_suspect) && suspect_size <= 4096;
    Memory suspects(suspect_size_is_good ? kinds.size() * suspect_size : 1);
    const bool give_suspects = !bytes.once_in(4);
    const std::vector<unsigned char> before = result.copy(), suspects_before = suspects.copy(),
                                     readings_before = readings.copy();
    fuzz::Fault fault(bytes);
    const lvb_status status =
        lvb_locate_fault(lent.as<const lvb_locate>(), bytes.once_in(64) ? nullptr : result.as<lvb_locate_result>(),
                         give_suspects ? suspects.as<lvb_suspect>() : nullptr, suspect_size, fault.pointer());
    fault.require(status);
    REQUIRE(readings.copy() == readings_before);
    if (status != LVB_OK) {
        REQUIRE(result.copy() == before && suspects.copy() == suspects_before);
        return 0;
    }
    const auto told = result.get<lvb_locate_result>();
    REQUIRE(told.size == result_size && result.is_zero_from(sizeof told));
    REQUIRE(told.reading_count <= locate.reading_count && told.reserved == 0);
    REQUIRE(told.p_value >= 0.0 && told.p_value <= 1.0 && told.chi_square >= 0.0);
    REQUIRE(told.none_probability >= 0.0 && told.probability >= 0.0 && told.span_probability <= 1.0 + 1e-9);
    REQUIRE(told.span_first <= told.stage && told.stage <= told.span_last && told.span_last < kinds.size());
    REQUIRE(told.consistent == (told.p_value >= (locate.false_alarm == 0.0 ? 0.01 : locate.false_alarm)));
    if (give_suspects) require_suspects(suspects, suspect_size, link.stage_count, told);
    return 0;
}
