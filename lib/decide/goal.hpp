// What may be wanted of a link, read from its result.
#pragma once

#include "chain/ledger.hpp"

namespace lvb::decide {

enum class Goal : std::int32_t {
    margin = 1,
    headroom,
    balance,
    far_from_middle,
    near_from_middle,
    far_level,
    near_level,
    eirp
};
enum class Tolerances : std::int32_t { none, worst, rss };

/// NaN where the link does not have it.
inline double figure_of(const chain::Result &result, Goal goal, Tolerances tolerances) noexcept {
    const chain::End &far = result.far_end, &near = result.near_end;
    const auto against = [&](const chain::End &end) noexcept {
        if (tolerances == Tolerances::worst) return end.worst_db;
        return tolerances == Tolerances::rss ? end.rss_db : 0.0;
    };
    switch (goal) {
    case Goal::margin:
        return far.margin_db - against(far);
    case Goal::headroom:
        return near.headroom_db - against(near);
    case Goal::balance:
        return far.margin_db - near.headroom_db;
    case Goal::far_from_middle:
        return far.from_middle_db;
    case Goal::near_from_middle:
        return near.from_middle_db;
    case Goal::far_level:
        return far.level_dbm;
    case Goal::near_level:
        return near.level_dbm;
    case Goal::eirp:
        break;
    }
    return tolerances == Tolerances::worst ? result.eirp_dbm + result.eirp_worst_db : result.eirp_dbm;
}

} // namespace lvb::decide
