// Name of a struct as the header writes it; the other names are public functions.
#pragma once

#include <levelbook/levelbook.h>

#include <cstdint>

namespace lvb::door {

const char *struct_name(std::int32_t structure) noexcept;

} // namespace lvb::door
