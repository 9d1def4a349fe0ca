// A site of the scenario as the structs that the library takes, and what the library refuses of it.
#pragma once

#include "lend.hpp"

#include <deque>

namespace desk {

/// Holds what the library borrows of a site: the site must stay where it is as long as the library reads it.
class LentSite {
  public:
    /// Asks the library about every chain and antenna by itself; throws Refusal at the line and key that it does not
    /// accept. With candidates, the site must say where antennas may be put.
    LentSite(const Document &document, const Scenario &scenario, const Site &site, bool with_candidates);
    LentSite(const LentSite &) = delete;

    const lvb_site &site() const { return site_; }
    const std::vector<lvb_area> &areas() const { return areas_; }
    const std::vector<lvb_site_antenna> &candidates() const { return lent_candidates_; }
    /// Of the frequency, which is the same in all chains.
    double frequency_mhz() const { return chains_.front().link.frequency_mhz; }
    const lvb_stage *receiver() const; ///< null where the chains end without one
    /// The tolerances together of the chain that has most, for the far and, without those of allowances, the near rule.
    double far_worst_db() const;
    double near_worst_db() const;

    /// Throws the Refusal of a fault that the library found in the site as a whole, or among the candidates.
    [[noreturn]] void refuse(const lvb_fault &fault) const;

  private:
    // A link as the site changes it.
    struct Chain {
        Chain(const Site &site, const SiteAntenna &antenna, const Link &link, std::optional<double> needed_dbm);
        const Value *pattern; // the antenna's own
        std::size_t index;    // of the link in the scenario
        Link link;
        std::size_t own;  // the stage of the site's antenna
        std::size_t pack; // and that of the pack's
        Lent lent;
    };

    const Chain &chain_of(const SiteAntenna &antenna);
    void need_floor_of(const std::vector<SiteAntenna> &antennas);
    void lend_pack_antenna(const Wearer &wearer);
    void lend_facing(const Wearer &wearer);
    void lend(const std::vector<SiteAntenna> &antennas, std::vector<lvb_antenna> &places,
              std::vector<lvb_site_antenna> &lent);
    lvb_fault fault_of(const lvb_site &site) const;
    void check(const SiteAntenna &antenna, const lvb_site_antenna &lent) const;
    [[noreturn]] void refuse_chain(const SiteAntenna &antenna, const lvb_fault &fault) const;
    [[noreturn]] void refuse_pack_antenna(lvb_fault fault) const;
    [[noreturn]] void refuse_antenna(const SiteAntenna &antenna, lvb_fault fault) const;
    [[noreturn]] void refuse_number(const GivenNumbers &numbers, const Value &owner, const lvb_fault &fault) const;

    const Document &document_;
    const Scenario &scenario_;
    const Site &of_;
    std::optional<double> needed_dbm_; // the most that the noise of a chain asks for
    std::deque<Chain> chains_;
    std::vector<lvb_antenna> places_;
    std::vector<lvb_antenna> candidate_places_;
    std::vector<lvb_site_antenna> lent_antennas_;
    std::vector<lvb_site_antenna> lent_candidates_;
    std::vector<lvb_area> areas_;
    std::vector<lvb_screen> screens_;
    lvb_body_table body_{};
    lvb_antenna pack_antenna_{};
    lvb_site site_{};
};

} // namespace desk
