// A transmitter beside a receiver of another system: blocking by its level, and its noise where the receiver listens.
// Sources: ITU-R P.525 (free space), ITU-R P.372 (sum of noise powers).
//
// Valid input only. What is not known is NaN, and so is what would follow from it.
#pragma once

namespace lvb::coexistence {

struct Neighbours {
    double transmit_dbm;       ///< at the transmit antenna's terminal
    double coupling_db;        ///< loss from terminal to terminal at the transmit frequency
    double noise_coupling_db;  ///< the same at the receive frequency
    double separation_m;       ///< NaN where the coupling was measured
    double receive_loss_db;    ///< at both frequencies
    double receive_filter_db;  ///< at the transmit frequency
    double transmit_filter_db; ///< at the receive frequency
    double blocking_dbm;       ///< at the receiver
    double transmit_noise_dbm; ///< in the receiver's bandwidth, at the transmit antenna's terminal were there no filter
    double receiver_noise_dbm; ///< in its bandwidth
    double wanted_margin_db;
    double wanted_rise_db; ///< above 0
};

/// Loss from terminal to terminal in free space.
double free_space_coupling_db(double frequency_mhz, double separation_m, double gains_dbi) noexcept;

/// Noise in a bandwidth of a transmitter that states it in dBc/Hz.
double noise_dbm(double transmit_dbm, double dbc_per_hz, double bandwidth_mhz) noexcept;

/// What lacks, and two ways to restore it.
struct Remedy {
    double more_filter_db;
    double separation_m;
};

struct Effect {
    double blocker_dbm, blocking_margin_db;
    double noise_dbm, noise_rise_db;
    Remedy blocking, noise;
};

Effect effect(const Neighbours &neighbours) noexcept;

} // namespace lvb::coexistence
