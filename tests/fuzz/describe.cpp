// What the library tells of itself, asked with any numbers; and faults that no call has filled.
#include "fuzz/bytes.hpp"
#include "fuzz/require.hpp"

namespace {

using fuzz::Bytes;
using fuzz::Memory;

void describe_field(Bytes &bytes) {
    const bool any = bytes.once_in(4);
    const auto structure = any ? bytes.raw<std::int32_t>() : static_cast<std::int32_t>(bytes.below(60));
    const auto kind = any ? bytes.raw<std::int32_t>() : static_cast<std::int32_t>(bytes.below(10));
    const auto field = any ? bytes.raw<std::int32_t>() : static_cast<std::int32_t>(bytes.below(400));
    const std::uint32_t size = bytes.size_of(sizeof(lvb_range));
    Memory range = fuzz::result<lvb_range>(size);
    const std::vector<unsigned char> before = range.copy();
    fuzz::Fault fault(bytes);
    const lvb_status status = lvb_describe_field(structure, kind, field,
                                                 bytes.once_in(64) ? nullptr : range.as<lvb_range>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(range.copy() == before);
        return;
    }
    const auto told = range.get<lvb_range>();
    REQUIRE(told.size == size && range.is_zero_from(sizeof told));
    REQUIRE(told.minimum < told.maximum && (told.required == 0 || told.required == 1));
    REQUIRE(fuzz::known(lvb_field_name(field)));
}

void ask_names(Bytes &bytes) {
    const auto code = bytes.once_in(2) ? bytes.raw<std::int32_t>() : static_cast<std::int32_t>(bytes.byte());
    for (const char *name : {lvb_status_name(code),        lvb_field_name(code),
                             lvb_struct_name(code),        lvb_formula_name(code),
                             lvb_instructions_name(code),  lvb_kind_name(code),
                             lvb_basis_name(code),         lvb_reference_name(code),
                             lvb_zone_name(code),          lvb_verdict_name(code),
                             lvb_decided_by_name(code),    lvb_end_name(code),
                             lvb_pattern_name(code),       lvb_path_name(code),
                             lvb_environment_name(code),   lvb_polarization_name(code),
                             lvb_place_name(code),         lvb_quantity_name(code),
                             lvb_limit_verdict_name(code), lvb_exposure_name(code),
                             lvb_audience_name(code),      lvb_direction_name(code),
                             lvb_combine_name(code),       lvb_facing_name(code),
                             lvb_fading_name(code),        lvb_goal_name(code),
                             lvb_tolerances_name(code),    lvb_solution_name(code),
                             lvb_pair_name(code),          lvb_law_name(code),
                             lvb_outcome_name(code),       lvb_note_name(static_cast<std::uint32_t>(code))})
        REQUIRE(name != nullptr && std::strlen(name) > 0 && std::strlen(name) < 64);
    const std::uint32_t size = lvb_struct_size(code);
    REQUIRE(size == 0 || (code >= LVB_STRUCT_FAULT && code < 100 && size % 8 == 0));
    REQUIRE(lvb_version_number() == 1000000 * LVB_VERSION_MAJOR + 1000 * LVB_VERSION_MINOR + LVB_VERSION_PATCH);
    REQUIRE(std::strlen(lvb_version_text()) >= 5);
    const std::int32_t formula = lvb_formula_from_name(lvb_formula_name(code));
    REQUIRE(formula == LVB_FORMULA_NONE || formula == code);
}

// A fault that the host has made up, or damaged: still one sentence, or nothing where its size is wrong.
void tell_fault(Bytes &bytes) {
    lvb_fault fault{};
    const bool plausible = bytes.once_in(2);
    fault.size = bytes.size_of(sizeof fault);
    fault.status = plausible
                       ? -100 * static_cast<std::int32_t>(bytes.below(6)) - static_cast<std::int32_t>(bytes.below(11))
                       : bytes.raw<std::int32_t>();
    fault.structure = plausible ? static_cast<std::int32_t>(bytes.below(100)) : bytes.raw<std::int32_t>();
    fault.field = plausible ? static_cast<std::int32_t>(bytes.below(400)) : bytes.raw<std::int32_t>();
    fault.stage = bytes.raw<std::int32_t>();
    fault.row = bytes.raw<std::int32_t>();
    fault.value = bytes.any_number();
    fault.minimum = bytes.any_number();
    fault.maximum = bytes.any_number();
    Memory memory = fuzz::result<lvb_fault>(fault.size);
    memory.put(fault);
    const std::size_t room = bytes.byte();
    Memory text(room);
    const std::size_t length = lvb_fault_text(memory.as<lvb_fault>(), text.as<char>(), room);
    if (fault.size < sizeof fault || fault.size > 4096) {
        REQUIRE(length == 0 && (room == 0 || *text.as<char>() == '\0'));
        return;
    }
    REQUIRE(length > 1 && length <= 255);
    if (room > 0) REQUIRE(std::strlen(text.as<char>()) == (length < room ? length : room - 1));
    if (room > length) REQUIRE(text.as<char>()[length - 1] == '.');
    REQUIRE(lvb_fault_text(nullptr, text.as<char>(), room) == 0);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    switch (bytes.below(3)) {
    case 0:
        describe_field(bytes);
        break;
    case 1:
        ask_names(bytes);
        break;
    default:
        tell_fault(bytes);
        break;
    }
    return 0;
}
