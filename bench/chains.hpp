// The chains that are measured: an outbound link of any length, its computed cables by way of the catalogue.
#pragma once

#include <levelbook/levelbook.h>

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace bench {

/// A chain of `stages` stages, at least 12: source; combiner, cable and amplifier in turn; antenna, air, three
/// allowances, antenna, cable, receiver. Lengths that differ by a multiple of three differ by whole turns.
class Chain {
  public:
    explicit Chain(std::size_t count) {
        const lvb_stage turn[] = {stage(LVB_KIND_PASSIVE, LVB_BASIS_MEASURED, -3.5, 0.2), cable(1.5),
                                  stage(LVB_KIND_AMPLIFIER, LVB_BASIS_DATA_SHEET, 4.0, 0.5)};
        stages_.push_back(source());
        for (std::size_t i = 0; stages_.size() + 8 < count; ++i) stages_.push_back(turn[i % 3]);
        stages_.push_back(stage(LVB_KIND_ANTENNA, LVB_BASIS_DATA_SHEET, 6.0, 1.0));
        stages_.push_back(stage(LVB_KIND_AIR, LVB_BASIS_NOT_LOOKED_UP, 0.0, 1.0));
        for (const double gain : {-3.0, -10.0, -15.0})
            stages_.push_back(stage(LVB_KIND_ALLOWANCE, LVB_BASIS_ESTIMATE, gain, 3.0));
        stages_.push_back(stage(LVB_KIND_ANTENNA, LVB_BASIS_ESTIMATE, -2.0, 1.0));
        stages_.push_back(cable(3.0));
        stages_.push_back(receiver());
        finish();
    }

    /// The shortest chains that people ask about: source, cable and receiver; or a bare link of six stages.
    static Chain line_check() { return Chain({source(), cable(15.0), receiver()}); }
    static Chain bare_link() {
        return Chain({source(), cable(15.0), stage(LVB_KIND_ANTENNA, LVB_BASIS_DATA_SHEET, 6.0, 1.0),
                      stage(LVB_KIND_AIR, LVB_BASIS_NOT_LOOKED_UP, 0.0, 0.0),
                      stage(LVB_KIND_ANTENNA, LVB_BASIS_ESTIMATE, 0.0, 1.0), receiver()});
    }

    Chain(const Chain &other) : stages_(other.stages_) { finish(); }
    Chain &operator=(const Chain &) = delete;

    const lvb_link &link() const { return link_; }
    std::size_t size() const { return stages_.size(); }

  private:
    explicit Chain(std::vector<lvb_stage> stages) : stages_(std::move(stages)) { finish(); }

    static lvb_stage stage(std::int32_t kind, std::int32_t basis, double gain_db, double tolerance_db) {
        lvb_stage stage{};
        stage.kind = kind;
        stage.basis = basis;
        stage.gain_db = gain_db;
        stage.tolerance_db = tolerance_db;
        return stage;
    }
    static lvb_stage source() {
        lvb_stage source = stage(LVB_KIND_SOURCE, LVB_BASIS_DATA_SHEET, 0.0, 0.5);
        source.level_dbm = 14.77;
        return source;
    }
    static lvb_stage cable(double length_m) {
        lvb_stage cable = stage(LVB_KIND_CABLE, LVB_BASIS_NOT_LOOKED_UP, 0.0, 0.5);
        cable.cable_type = LVB_CABLE_RG_213_U;
        cable.connector_count = 2;
        cable.length_m = length_m;
        return cable;
    }
    static lvb_stage receiver() {
        lvb_stage receiver = stage(LVB_KIND_RECEIVER, LVB_BASIS_DATA_SHEET, 0.0, 0.0);
        receiver.stated = LVB_STATED_FLOOR | LVB_STATED_WANTED | LVB_STATED_CEILING;
        receiver.floor_dbm = -95.0;
        receiver.wanted_low_dbm = -80.0;
        receiver.wanted_high_dbm = -40.0;
        receiver.ceiling_dbm = -20.0;
        return receiver;
    }
    void finish() {
        link_ = {};
        link_.size = sizeof link_;
        link_.stages = stages_.data();
        link_.stage_count = static_cast<std::uint32_t>(stages_.size());
        link_.stage_size = sizeof(lvb_stage);
        link_.frequency_mhz = 610.0;
        for (const lvb_stage &stage : stages_)
            if (stage.kind == LVB_KIND_AIR) {
                link_.far_distance_m = 40.0;
                link_.near_distance_m = 3.0;
            }
    }

    std::vector<lvb_stage> stages_;
    lvb_link link_{};
};

} // namespace bench
