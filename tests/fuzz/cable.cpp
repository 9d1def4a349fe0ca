// The cable's entries: the loss of a run, the catalogue, and names typed by people.
#include "fuzz/tables.hpp"

#include <cmath>

namespace {

using fuzz::Bytes;
using fuzz::Memory;

void compute_loss(Bytes &bytes) {
    fuzz::Tables tables;
    lvb_cable_run run{};
    run.size = bytes.size_of(sizeof run);
    run.frequency_mhz = bytes.number(0.1, 6000.0);
    run.length_m = bytes.number(0.001, 10000.0);
    run.connector_count = bytes.once_in(16) ? bytes.raw<std::uint32_t>() : bytes.below(8);
    run.connector_loss_db = bytes.once_in(2) ? bytes.number(0.0, 10.0) : 0.0;
    run.stated = bytes.once_in(16) ? bytes.raw<std::uint32_t>() : bytes.below(2);
    run.temperature_degc = run.stated == LVB_STATED_TEMPERATURE ? bytes.number(-100.0, 200.0) : 0.0;
    const lvb_cable_table *table = bytes.once_in(2) ? tables.cable(bytes) : nullptr;
    if (table == nullptr || bytes.once_in(8)) run.cable_type = static_cast<std::int32_t>(bytes.below(20)) - 1;

    Memory lent = fuzz::result<lvb_cable_run>(run.size);
    lent.put(run);
    if (!bytes.once_in(16)) lent.zero_from(sizeof run);
    const std::uint32_t size = bytes.size_of(sizeof(lvb_cable_loss));
    Memory loss = fuzz::result<lvb_cable_loss>(size);
    const std::vector<unsigned char> before = loss.copy();
    fuzz::Fault fault(bytes);
    const lvb_cable_run *in = bytes.once_in(64) ? nullptr : lent.as<const lvb_cable_run>();
    lvb_cable_loss *out = bytes.once_in(64) ? nullptr : loss.as<lvb_cable_loss>();
    const lvb_status status = lvb_compute_cable_loss(in, table, out, fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(loss.copy() == before);
        return;
    }
    const auto told = loss.get<lvb_cable_loss>();
    REQUIRE(told.size == size && loss.is_zero_from(sizeof told));
    REQUIRE(std::isfinite(told.loss_db) && told.attenuation_db_per_100m > 0.0);
    REQUIRE(told.cable_loss_db > 0.0 && told.connectors_loss_db >= 0.0);
    REQUIRE(told.loss_db == told.cable_loss_db + told.connectors_loss_db);
    REQUIRE((told.notes & ~std::uint32_t{LVB_NOTE_EXTRAPOLATED}) == 0);
}

void describe(Bytes &bytes) {
    const std::int32_t type = bytes.once_in(4) ? bytes.raw<std::int32_t>()
                                               : static_cast<std::int32_t>(bytes.below(lvb_cable_type_count() + 2));
    const std::uint32_t info_size = bytes.size_of(sizeof(lvb_cable_info));
    Memory info = fuzz::result<lvb_cable_info>(info_size);
    const std::vector<unsigned char> info_before = info.copy();
    fuzz::Fault fault(bytes);
    const lvb_status status =
        lvb_describe_cable(type, bytes.once_in(64) ? nullptr : info.as<lvb_cable_info>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) REQUIRE(info.copy() == info_before);
    else {
        const auto told = info.get<lvb_cable_info>();
        REQUIRE(told.size == info_size && info.is_zero_from(sizeof told) && told.reserved == 0);
        REQUIRE(told.cable_type == type && told.row_count > 0 && told.lowest_mhz <= told.highest_mhz);
        REQUIRE(told.usable_lowest_mhz < told.lowest_mhz && told.usable_highest_mhz > told.highest_mhz);
        REQUIRE(lvb_cable_type_from_name(told.name) == type && std::strlen(told.description) > 0);
    }

    const std::uint32_t index = bytes.once_in(4) ? bytes.raw<std::uint32_t>() : bytes.below(16);
    const std::uint32_t row_size = bytes.size_of(sizeof(lvb_cable_row));
    Memory row = fuzz::result<lvb_cable_row>(row_size);
    const std::vector<unsigned char> row_before = row.copy();
    fuzz::Fault row_fault(bytes);
    const lvb_status row_status =
        lvb_describe_cable_row(type, index, bytes.once_in(64) ? nullptr : row.as<lvb_cable_row>(), row_fault.pointer());
    row_fault.require(row_status);
    if (row_status != LVB_OK) REQUIRE(row.copy() == row_before);
    else {
        const auto told = row.get<lvb_cable_row>();
        REQUIRE(told.size == row_size && row.is_zero_from(sizeof told) && told.reserved == 0);
        REQUIRE(told.frequency_mhz > 0.0 && told.attenuation_db_per_100m > 0.0);
        REQUIRE(std::strlen(told.source) > 0 && told.remark != nullptr);
    }
}

void look_up_name(Bytes &bytes) {
    REQUIRE(lvb_cable_type_from_name(nullptr) == LVB_CABLE_NONE);
    std::string name;
    if (bytes.once_in(2)) name = "RG-213/U"; // to be spoiled
    for (std::size_t i = bytes.below(24); i > 0; --i) {
        const char c = static_cast<char>(bytes.byte());
        if (!name.empty() && bytes.once_in(2)) name[bytes.below(static_cast<std::uint32_t>(name.size()))] = c;
        else name.push_back(c);
    }
    Memory exact(std::strlen(name.c_str()) + 1);
    std::memcpy(exact.as<char>(), name.c_str(), exact.size());
    const std::int32_t type = lvb_cable_type_from_name(exact.as<char>());
    REQUIRE(type >= LVB_CABLE_NONE && type <= static_cast<std::int32_t>(lvb_cable_type_count()));
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    switch (bytes.below(4)) {
    case 0:
        describe(bytes);
        break;
    case 1:
        look_up_name(bytes);
        break;
    default:
        compute_loss(bytes);
        break;
    }
    return 0;
}
