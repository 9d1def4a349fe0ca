// count STAGES CALLS: computes one chain that many times and prints nothing. A tool that counts instructions runs it.
// count map ROWS ANTENNAS SCREENS CALLS: the same with a map of that many rows.
#include "chains.hpp"
#include "sites.hpp"

#include <cstdlib>
#include <cstring>

namespace {

int compute_chains(std::size_t stages, int calls) {
    const bench::Chain chain(stages);
    std::vector<lvb_level> levels(chain.size());
    lvb_budget budget{};
    budget.size = sizeof budget;
    for (; calls > 0; --calls)
        if (lvb_compute_budget(&chain.link(), &budget, levels.data(), sizeof(lvb_level), nullptr) != LVB_OK) return 1;
    return 0;
}

int compute_maps(std::size_t rows, std::size_t antennas, std::size_t screens, int calls) {
    constexpr std::uint64_t columns = 256;
    const bench::Site site(antennas, 2.97, screens);
    std::vector<double> levels(columns * rows);
    const lvb_map map = site.map(columns, rows, LVB_INSTRUCTIONS_BASELINE, levels.data());
    lvb_map_summary summary{};
    summary.size = sizeof summary;
    for (; calls > 0; --calls)
        if (lvb_compute_map(&map, &summary, nullptr) != LVB_OK) return 1;
    return 0;
}

std::size_t number(const char *text) { return static_cast<std::size_t>(std::atoi(text)); }

} // namespace

int main(int argc, char **argv) {
    if (argc == 3) return compute_chains(number(argv[1]), std::atoi(argv[2]));
    if (argc == 6 && std::strcmp(argv[1], "map") == 0)
        return compute_maps(number(argv[2]), number(argv[3]), number(argv[4]), std::atoi(argv[5]));
    return 2;
}
