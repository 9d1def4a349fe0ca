// JSON files.
#pragma once

#include "document.hpp"

namespace desk {

/// Reads a file; throws Refusal for anything that is not one JSON value within the limits.
Document read_json(const std::string &file);

} // namespace desk
