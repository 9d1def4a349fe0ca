#include "survey.hpp"

#include <algorithm>

namespace desk {
namespace {

bool states(const lvb_stage *receiver, std::uint32_t what) {
    return receiver != nullptr && (receiver->stated & what) != 0;
}

} // namespace

Grounds::Grounds(const Site &of, const LentSite &lent)
    : site(&of), frequency_mhz(lent.frequency_mhz()), has_floor(states(lent.receiver(), LVB_STATED_FLOOR)),
      has_wanted(states(lent.receiver(), LVB_STATED_WANTED)), has_ceiling(states(lent.receiver(), LVB_STATED_CEILING)),
      floor_dbm(has_floor ? lent.receiver()->floor_dbm : 0.0),
      ceiling_dbm(has_ceiling ? lent.receiver()->ceiling_dbm : 0.0), far_worst_db(lent.far_worst_db()),
      near_worst_db(lent.near_worst_db()) {}

bool Grounds::is_doubtful(double margin_db, double headroom_db) const {
    return !(margin_db < 0.0) && !(headroom_db < 0.0) && (margin_db < far_worst_db || headroom_db < near_worst_db);
}

NearField::NearField(double frequency_mhz, const std::vector<SiteAntenna> &antennas) {
    const double wavelength_m = lvb_wavelength_m_from_mhz(frequency_mhz);
    for (const SiteAntenna &antenna : antennas) {
        const lvb_antenna &at = antenna.place.entry;
        const double far_field_m = lvb_far_field_distance_m(frequency_mhz, at.largest_dimension_m);
        balls_.push_back({at.x_m, at.y_m, at.z_m, std::max(wavelength_m, far_field_m)});
    }
}

bool NearField::holds(double x_m, double y_m, double z_m) const {
    return std::any_of(balls_.begin(), balls_.end(), [&](const Ball &ball) {
        return std::hypot(x_m - ball.x_m, y_m - ball.y_m, z_m - ball.z_m) < ball.radius_m;
    });
}

void Points::resize(std::size_t points) {
    for (std::vector<double> *values : {&level_dbm, &margin_db, &headroom_db}) values->resize(points);
    if (site->fading) outage.resize(points);
    zone.resize(points);
    serving.resize(points);
}

std::size_t Points::most_outage() const {
    std::size_t most = 0;
    for (std::size_t i = 1; i < outage.size(); ++i)
        if (outage[i] > outage[most] || is_blank(most)) most = i; // a blank point has NaN
    return most;
}

void Points::count(std::size_t i, bool in_near_field, Counts &into) const {
    if (is_doubtful(margin_db[i], headroom_db[i])) ++into.doubtful;
    if (in_near_field) ++into.near_field;
    if (!outage.empty() && outage[i] > wanted_outage()) ++into.over_outage;
}

void Points::take_best_branch() {
    for (double &share : outage)
        if (!std::isnan(share)) share = lvb_selection_outage(share, site->fading->branches);
}

void need_antennas(const Document &document, const Site &site) {
    if (site.antennas.empty())
        document.refuse(*site.value, "antennas is missing; this site has only candidates for place");
}

} // namespace desk
