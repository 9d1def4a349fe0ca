// count STAGES CALLS: computes one chain that many times and prints nothing. A tool that counts instructions runs it.
#include "chains.hpp"

#include <cstdlib>

int main(int argc, char **argv) {
    if (argc != 3) return 2;
    const bench::Chain chain(static_cast<std::size_t>(std::atoi(argv[1])));
    std::vector<lvb_level> levels(chain.size());
    lvb_budget budget{};
    budget.size = sizeof budget;
    for (int calls = std::atoi(argv[2]); calls > 0; --calls)
        if (lvb_compute_budget(&chain.link(), &budget, levels.data(), sizeof(lvb_level), nullptr) != LVB_OK) return 1;
    return 0;
}
