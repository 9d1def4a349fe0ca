// A level with its tolerance against a limit.
#pragma once

namespace lvb::limits {

enum class Verdict { holds = 1, doubtful, exceeded, not_covered };

/// Sums of decibels are rounded: a level this near to the limit is at the limit.
inline constexpr double at_the_limit_db = 1e-9;

inline Verdict judge(double room_db, double worst_db) noexcept {
    if (room_db < -at_the_limit_db) return Verdict::exceeded;
    return room_db - worst_db < -at_the_limit_db ? Verdict::doubtful : Verdict::holds;
}

} // namespace lvb::limits
