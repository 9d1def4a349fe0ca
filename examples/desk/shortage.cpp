#include "shortage.hpp"

#include <algorithm>
#include <set>

namespace desk {
namespace {

// Places and items matched, as many as can be; by augmenting paths, a textbook method.
class Matching {
  public:
    Matching(const std::vector<std::vector<std::uint32_t>> &candidates, const std::vector<std::uint32_t> &counts)
        : candidates_(candidates), counts_(counts), holders_(counts.size()) {
        for (std::size_t place = 0; place < candidates.size(); ++place) {
            std::set<std::uint32_t> tried;
            if (!fill(place, tried)) empty_.push_back(place);
        }
    }

    const std::vector<std::size_t> &empty() const { return empty_; }

    // The items that a way of exchanges leads to from an empty place: all are taken, and only by places that want
    // nothing else (the theorem of Hall).
    std::set<std::uint32_t> wanted_from(std::size_t place) {
        std::set<std::uint32_t> tried;
        fill(place, tried);
        return tried;
    }

  private:
    bool fill(std::size_t place, std::set<std::uint32_t> &tried) {
        for (const std::uint32_t item : candidates_[place]) {
            if (!tried.insert(item).second) continue;
            std::vector<std::size_t> &holders = holders_[item];
            if (holders.size() < counts_[item]) {
                holders.push_back(place);
                return true;
            }
            for (std::size_t &holder : holders)
                if (fill(holder, tried)) {
                    holder = place;
                    return true;
                }
        }
        return false;
    }

    const std::vector<std::vector<std::uint32_t>> &candidates_;
    const std::vector<std::uint32_t> &counts_;
    std::vector<std::vector<std::size_t>> holders_; // of each item, the places that have one
    std::vector<std::size_t> empty_;
};

} // namespace

std::vector<Shortage> shortages(const std::vector<std::vector<std::uint32_t>> &candidates,
                                const std::vector<std::uint32_t> &counts) {
    Matching matching(candidates, counts);
    std::vector<std::set<std::uint32_t>> wanted;
    std::vector<Shortage> all;
    for (const std::size_t place : matching.empty()) {
        std::set<std::uint32_t> items = matching.wanted_from(place);
        if (items.empty()) all.push_back({{place}, {}, 0});
        else wanted.push_back(std::move(items));
    }
    // What shares an item is one shortage.
    for (std::size_t i = 0; i < wanted.size(); ++i)
        for (std::size_t k = wanted.size(); k-- > i + 1;) {
            const auto shared = [&](std::uint32_t item) { return wanted[i].contains(item); };
            if (std::none_of(wanted[k].begin(), wanted[k].end(), shared)) continue;
            wanted[i].merge(wanted[k]);
            wanted.erase(wanted.begin() + static_cast<std::ptrdiff_t>(k));
            k = wanted.size();
        }
    for (const std::set<std::uint32_t> &items : wanted) {
        Shortage shortage;
        shortage.items.assign(items.begin(), items.end());
        for (const std::uint32_t item : items) shortage.left += counts[item];
        for (std::size_t place = 0; place < candidates.size(); ++place) {
            const auto among = [&](std::uint32_t item) { return items.contains(item); };
            const std::vector<std::uint32_t> &of_place = candidates[place];
            if (!of_place.empty() && std::all_of(of_place.begin(), of_place.end(), among))
                shortage.places.push_back(place);
        }
        all.push_back(std::move(shortage));
    }
    return all;
}

} // namespace desk
