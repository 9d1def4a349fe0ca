// lvb_compute_path_loss with paths of every model: refused whole, or the parts add up.
#include "fuzz/paths.hpp"

#include <cmath>

using fuzz::Bytes;
using fuzz::Memory;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    fuzz::Paths paths;
    const lvb_path *path = bytes.once_in(64) ? nullptr : paths.make(bytes);
    const double mhz = bytes.number(100.0, 6000.0), metres = bytes.number(0.01, 200.0);
    const std::uint32_t loss_size = bytes.size_of(sizeof(lvb_path_loss));
    Memory loss = fuzz::result<lvb_path_loss>(loss_size);
    const std::vector<unsigned char> before = loss.copy();
    fuzz::Fault fault(bytes);
    const lvb_status status = lvb_compute_path_loss(
        path, mhz, metres, bytes.once_in(64) ? nullptr : loss.as<lvb_path_loss>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(loss.copy() == before);
        return 0;
    }
    const auto told = loss.get<lvb_path_loss>();
    REQUIRE(told.size == loss_size && loss.is_zero_from(sizeof told));
    REQUIRE(std::isfinite(told.loss_db) && std::isfinite(told.free_space_loss_db));
    REQUIRE(told.loss_db == (told.base_loss_db + told.diffraction_loss_db) + told.obstacle_loss_db);
    REQUIRE(told.diffraction_loss_db >= 0.0 && told.obstacle_loss_db >= 0.0);
    REQUIRE((told.notes & ~std::uint32_t{LVB_NOTE_NEAR_FIELD}) == 0);
    std::int32_t model;
    std::memcpy(&model, reinterpret_cast<const char *>(path) + offsetof(lvb_path, model), sizeof model);
    REQUIRE(fuzz::is_nan(told.break_point_m) == (model != LVB_PATH_TWO_RAY));
    if (model != LVB_PATH_TWO_RAY) return 0;
    REQUIRE(told.base_loss_db > told.free_space_loss_db - 6.1);
    REQUIRE(told.reflection_magnitude >= 0.0 && told.reflection_magnitude < 1.0 + 1e-9);
    REQUIRE(told.grazing_angle_deg >= 0.0 && told.grazing_angle_deg <= 90.0);
    REQUIRE(std::fabs(told.reflection_phase_deg) <= 180.0);
    return 0;
}
