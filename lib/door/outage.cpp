#include "door/outage.hpp"

#include "door/site_fields.hpp"
#include "fading/multipath.hpp"
#include "fading/shadowing.hpp"

namespace lvb::door {
namespace {

using Outage = double (*)(double margin_db, double parameter) noexcept;
double rayleigh_outage(double margin_db, double) noexcept { return fading::rayleigh_outage_below_mean(margin_db); }
constexpr Outage laws[] = {nullptr,
                           rayleigh_outage,
                           fading::rice_outage_below_mean,
                           fading::nakagami_outage_below_mean,
                           fading::lognormal_outage_below_median,
                           fading::suzuki_outage_below_median_of_means};
static_assert(sizeof laws / sizeof laws[0] == LVB_FADING_SUZUKI + 1);

} // namespace

bool take_outage(Refusal &refusal, const AskedOutage &asked, const chain::Window &window, Place place,
                 map::Fading &fading) noexcept {
    fading = {nullptr, 0.0};
    if (asked.law < LVB_FADING_NONE || asked.law > LVB_FADING_SUZUKI)
        return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_FADING, asked.law, LVB_FADING_NONE,
                      LVB_FADING_SUZUKI);
    if (!asked.is_taken && asked.law != LVB_FADING_NONE)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_FADING, asked.law);
    if (!check_used(refusal, asked.parameter, fading_range(asked.law), place, LVB_FIELD_FADING_PARAMETER)) return false;
    if (asked.law == LVB_FADING_NONE)
        return !asked.is_needed ||
               refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_FADING, 0.0, LVB_FADING_RAYLEIGH, LVB_FADING_SUZUKI);
    if (!window.has_floor) return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_FLOOR_DBM, 0.0);
    fading = {laws[asked.law], asked.parameter};
    return true;
}

} // namespace lvb::door
