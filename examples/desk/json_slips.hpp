// The usual slips of a person who writes JSON by hand, told in a person's words.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace desk {

struct Slip {
    std::size_t offset; ///< where a person finds it
    std::string words;
};

/// What a person did wrong where the parser gave up, `failed` being the byte that it could not take; nothing where that
/// is none of the usual slips.
std::optional<Slip> find_slip(std::string_view text, std::size_t failed);

} // namespace desk
