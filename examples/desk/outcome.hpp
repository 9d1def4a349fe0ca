// What a command comes to: its text, and the exit code that scripts read.
#pragma once

#include <string>

namespace desk {

constexpr int exit_holds = 0;
constexpr int exit_does_not_hold = 1;
constexpr int exit_bad_input = 2;

/// The lines under a command's help; without `does_not_hold` the command judges nothing.
inline std::string exit_codes(const std::string &holds, const std::string &does_not_hold = "") {
    return "Exit codes: 0 " + holds + ", " + (does_not_hold.empty() ? "" : "1 " + does_not_hold + ", ") +
           "2 bad input or usage.";
}

struct Outcome {
    std::string text;
    int code = exit_holds;
};

} // namespace desk
