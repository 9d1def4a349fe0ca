// What the transmit side of a chain puts out, conducted and radiated, without allowances.
#pragma once

#include "antenna/dipole.hpp"
#include "chain/ledger.hpp"
#include "math/constants.hpp"
#include "units/quantity.hpp"

namespace lvb::chain {

using units::Quantity;

struct Power {
    double level_dbm, worst_db;
};

/// Takes the lines of a ledger in order, up to the first antenna, and then what the ledger sums up: the e.i.r.p. is
/// its.
class Transmit {
  public:
    void take(Kind kind, const Line &line) noexcept {
        has_antenna_ = has_antenna_ || kind == Kind::antenna;
        if (has_antenna_) return;
        const Power now{line.near_end.level_dbm, line.near_end.worst_db};
        antenna_input_ = now;
        if (kind == Kind::source || kind == Kind::amplifier) raise_output(now);
    }

    void close(const Result &sums) noexcept { eirp_ = {sums.eirp_dbm, sums.eirp_worst_db}; }

    bool has_antenna() const noexcept { return has_antenna_; }

    /// Of a chain with an antenna, but for the transmitter's output.
    Power power(Quantity quantity) const noexcept {
        switch (quantity) {
        case Quantity::transmitter_output:
            return {output_dbm_, highest_output_dbm_ - output_dbm_};
        case Quantity::antenna_input:
            return antenna_input_;
        case Quantity::erp:
            return {antenna::dbd_from_dbi(eirp_.level_dbm), eirp_.worst_db};
        case Quantity::eirp:
            return eirp_;
        }
        return eirp_;
    }

  private:
    // Of several outputs the highest counts, and the highest that tolerances let any of them reach.
    void raise_output(const Power &now) noexcept {
        const double reach = now.level_dbm + now.worst_db;
        if (!(output_dbm_ >= now.level_dbm)) output_dbm_ = now.level_dbm;
        if (!(highest_output_dbm_ >= reach)) highest_output_dbm_ = reach;
    }

    bool has_antenna_ = false;
    double output_dbm_ = math::not_a_number, highest_output_dbm_ = math::not_a_number;
    Power antenna_input_{math::not_a_number, math::not_a_number};
    Power eirp_{math::not_a_number, math::not_a_number};
};

} // namespace lvb::chain
