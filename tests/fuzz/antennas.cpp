// The entries of antennas, bodies and allowances: refused whole, or numbers that a pattern can have.
#include "fuzz/patterns.hpp"

#include <cmath>

namespace {

using fuzz::Bytes;
using fuzz::Memory;

constexpr double infinity = std::numeric_limits<double>::infinity();

void require_gain(double gain_dbi, std::uint32_t notes) {
    REQUIRE(gain_dbi == -infinity || (std::isfinite(gain_dbi) && gain_dbi < 200.0));
    if (gain_dbi == -infinity) REQUIRE((notes & LVB_NOTE_NULL) != 0);
}

void ask_pattern(Bytes &bytes) {
    fuzz::Patterns patterns;
    const lvb_pattern *pattern = bytes.once_in(64) ? nullptr : patterns.pattern(bytes);
    const double azimuth = bytes.number(-360.0, 360.0), elevation = bytes.number(-90.0, 90.0);
    const std::uint32_t size = bytes.size_of(sizeof(lvb_pattern_gain));
    Memory gain = fuzz::result<lvb_pattern_gain>(size);
    const std::vector<unsigned char> before = gain.copy();
    fuzz::Fault fault(bytes);
    const lvb_status status = lvb_compute_pattern_gain(
        pattern, azimuth, elevation, bytes.once_in(64) ? nullptr : gain.as<lvb_pattern_gain>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(gain.copy() == before);
        return;
    }
    const auto told = gain.get<lvb_pattern_gain>();
    REQUIRE(told.size == size && gain.is_zero_from(sizeof told));
    require_gain(told.gain_dbi, told.notes);
    REQUIRE((told.notes & ~std::uint32_t{LVB_NOTE_EXTRAPOLATED}) ==
            (told.gain_dbi == -infinity ? std::uint32_t{LVB_NOTE_NULL} : 0u));
    REQUIRE(std::isfinite(told.maximum_dbi) && told.gain_dbi <= told.maximum_dbi);
}

// An antenna in memory of its own, of this or a later size.
Memory make_antenna(Bytes &bytes, fuzz::Patterns &patterns) {
    lvb_antenna made{};
    made.size = bytes.size_of(sizeof made);
    made.x_m = bytes.number(-50.0, 50.0);
    made.y_m = bytes.number(-50.0, 50.0);
    made.z_m = bytes.number(-1e6, 1e6);
    made.azimuth_deg = bytes.number(-360.0, 360.0);
    made.tilt_deg = bytes.number(-90.0, 90.0);
    made.roll_deg = bytes.number(-360.0, 360.0);
    made.polarization_deg = bytes.number(-360.0, 360.0);
    made.ellipticity = bytes.number(-1.0, 1.0);
    made.largest_dimension_m = bytes.number(0.0, 1000.0);
    if (bytes.once_in(2)) made.pattern = patterns.pattern(bytes);
    if (made.pattern != nullptr && !bytes.once_in(4)) made.polarization_deg = made.ellipticity = 0.0; // as for a dipole
    if (made.pattern != nullptr && bytes.once_in(4)) made.ellipticity = -0.95;                        // as for a helix
    if (bytes.once_in(32)) made.reserved = bytes.raw<std::uint32_t>();
    made.label = reinterpret_cast<const char *>(std::uintptr_t{bytes.byte()}); // never read
    Memory memory = fuzz::result<lvb_antenna>(made.size);
    memory.put(made);
    if (!bytes.once_in(16)) memory.zero_from(sizeof made);
    return memory;
}

void point(Bytes &bytes) {
    fuzz::Patterns patterns;
    Memory transmit = make_antenna(bytes, patterns), receive = make_antenna(bytes, patterns);
    const double mhz = bytes.number(30.0, 3000.0);
    const std::uint32_t size = bytes.size_of(sizeof(lvb_pointing));
    Memory pointing = fuzz::result<lvb_pointing>(size), back = fuzz::result<lvb_pointing>(size);
    const std::vector<unsigned char> before = pointing.copy();
    fuzz::Fault fault(bytes);
    const lvb_antenna *t = bytes.once_in(64) ? nullptr : transmit.as<const lvb_antenna>();
    const lvb_antenna *r = bytes.once_in(64) ? nullptr : receive.as<const lvb_antenna>();
    const lvb_status status =
        lvb_compute_pointing(t, r, mhz, bytes.once_in(64) ? nullptr : pointing.as<lvb_pointing>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(pointing.copy() == before);
        return;
    }
    const auto told = pointing.get<lvb_pointing>();
    REQUIRE(told.size == size && pointing.is_zero_from(sizeof told));
    REQUIRE(told.distance_m >= 0.01 && std::isfinite(told.distance_m));
    REQUIRE(std::fabs(told.transmit_azimuth_deg) <= 180.0 && std::fabs(told.receive_azimuth_deg) <= 180.0);
    REQUIRE(std::fabs(told.transmit_elevation_deg) <= 90.0 && std::fabs(told.receive_elevation_deg) <= 90.0);
    require_gain(told.transmit_gain_dbi, told.notes);
    require_gain(told.receive_gain_dbi, told.notes);
    REQUIRE(told.polarization_loss_db >= 0.0); // +infinity where nothing is received
    REQUIRE(told.far_field_distance_m >= 0.0 && std::isfinite(told.far_field_distance_m));

    // The other way round the two see the same.
    REQUIRE(lvb_compute_pointing(r, t, mhz, back.as<lvb_pointing>(), nullptr) == LVB_OK);
    const auto other = back.get<lvb_pointing>();
    REQUIRE(other.distance_m == told.distance_m && other.notes == told.notes);
    REQUIRE(other.transmit_gain_dbi == told.receive_gain_dbi && other.receive_gain_dbi == told.transmit_gain_dbi);
    REQUIRE(other.transmit_azimuth_deg == told.receive_azimuth_deg);
    if (told.polarization_loss_db < 60.0)
        REQUIRE(std::fabs(other.polarization_loss_db - told.polarization_loss_db) < 1e-9);
}

void ask_body(Bytes &bytes) {
    fuzz::Patterns patterns;
    const lvb_body_table *table = bytes.once_in(64) ? nullptr : patterns.body(bytes);
    const double facing = bytes.number(-360.0, 360.0);
    double loss = -7.0;
    fuzz::Fault fault(bytes);
    const lvb_status status =
        lvb_compute_body_loss(table, facing, bytes.once_in(64) ? nullptr : &loss, fault.pointer());
    fault.require(status);
    if (status != LVB_OK) REQUIRE(loss == -7.0);
    else REQUIRE(loss >= 0.0 && loss <= 200.0);
}

void describe(Bytes &bytes) {
    const std::uint32_t index = bytes.once_in(2) ? bytes.raw<std::uint32_t>() : bytes.below(12);
    const std::uint32_t size = bytes.size_of(sizeof(lvb_allowance_info));
    Memory info = fuzz::result<lvb_allowance_info>(size);
    const std::vector<unsigned char> before = info.copy();
    fuzz::Fault fault(bytes);
    const lvb_status status =
        lvb_describe_allowance(index, bytes.once_in(64) ? nullptr : info.as<lvb_allowance_info>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(info.copy() == before);
        return;
    }
    const auto told = info.get<lvb_allowance_info>();
    REQUIRE(index < lvb_allowance_count() && told.size == size && info.is_zero_from(sizeof told));
    REQUIRE(told.reserved == 0 && std::strlen(told.source) > 0 && told.remark != nullptr);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    switch (bytes.below(8)) {
    case 0:
        describe(bytes);
        break;
    case 1:
        ask_body(bytes);
        break;
    case 2:
    case 3:
        ask_pattern(bytes);
        break;
    default:
        point(bytes);
        break;
    }
    return 0;
}
