#include "cable/attenuation.hpp"

#include "math/elementary.hpp"
#include "math/search.hpp"

namespace lvb::cable {
namespace {

constexpr double copper_per_degc = 0.00393; // at 20 degC, IEC 60028

} // namespace

double conductor_factor(double temperature_degc) noexcept {
    return math::sqrt(1.0 + copper_per_degc * (temperature_degc - table_temperature_degc));
}

double usual_connector_loss_db(double frequency_mhz) noexcept { return 0.05 * math::sqrt(frequency_mhz / 1000.0); }

Attenuation attenuation(const Table &table, double frequency_mhz, double temperature_degc) noexcept {
    const double *f = table.frequency_mhz;
    const double *a = table.attenuation_db_per_100m;
    const double warm = conductor_factor(temperature_degc);
    const bool outside = frequency_mhz < f[0] || frequency_mhz > f[table.rows - 1];
    if (table.rows == 1) return {a[0] * math::sqrt(frequency_mhz / f[0]) * warm, outside};

    const std::size_t i = math::interval(f, table.rows, frequency_mhz);
    // A = c sqrt(f) + d f, so A / sqrt(f) is a straight line in sqrt(f) through both ends of the interval.
    const double root_0 = math::sqrt(f[i]);
    const double root_1 = math::sqrt(f[i + 1]);
    const double slope_0 = a[i] / root_0;
    const double slope_1 = a[i + 1] / root_1;
    const double dielectric = (slope_1 - slope_0) / (root_1 - root_0);
    const double conductor = slope_0 - dielectric * root_0;
    const double root = math::sqrt(frequency_mhz);
    // From the nearer row, so that every tabulated frequency gives its row exactly.
    const std::size_t nearer = frequency_mhz - f[i] > f[i + 1] - frequency_mhz ? i + 1 : i;
    if (dielectric >= 0.0 && conductor >= 0.0) {
        const double root_nearer = nearer == i ? root_0 : root_1;
        const double at_20 = a[nearer] + conductor * (root - root_nearer) + dielectric * (frequency_mhz - f[nearer]);
        return {at_20 + conductor * root * (warm - 1.0), outside};
    }
    const double exponent = math::ten_log10(a[i + 1] / a[i]) / math::ten_log10(f[i + 1] / f[i]);
    return {a[nearer] * math::power(frequency_mhz / f[nearer], exponent) * warm, outside};
}

Loss loss(const Run &run, double frequency_mhz, double temperature_degc) noexcept {
    const Attenuation a = attenuation(run.table, frequency_mhz, temperature_degc);
    const double each = run.connector_loss_db > 0.0 ? run.connector_loss_db : usual_connector_loss_db(frequency_mhz);
    return {a, a.db_per_100m * (run.length_m / 100.0), run.connectors * each};
}

} // namespace lvb::cable
