#include "math/elementary.hpp"

#include "math/angle.hpp"
#include "math/decibel.hpp"

namespace lvb::math {

double ten_log10(double x) noexcept { return kernel::ten_log10(x); }
double ten_log10_1p(double x) noexcept { return kernel::ten_log10_1p(x); }
double power_of_db(double db) noexcept { return kernel::power_of_db(db); }
double power_of_db_m1(double db) noexcept { return kernel::power_of_db_m1(db); }
double cos_deg(double angle_deg) noexcept { return kernel::cos_deg(angle_deg); }
double abs_sin_deg(double angle_deg) noexcept { return kernel::abs_sin_deg(angle_deg); }

} // namespace lvb::math
