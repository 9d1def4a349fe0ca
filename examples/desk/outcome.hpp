// What a command comes to: its text, and the exit code that scripts read.
#pragma once

#include <string>

namespace desk {

constexpr int exit_holds = 0;
constexpr int exit_does_not_hold = 1;
constexpr int exit_bad_input = 2;

struct Outcome {
    std::string text;
    int code = exit_holds;
};

} // namespace desk
