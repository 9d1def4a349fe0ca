// What of a transmitter's power a rule limits. Source: ITU Radio Regulations 1.161, 1.162.
#pragma once

#include <cstdint>

namespace lvb::units {

enum class Quantity : std::int32_t { transmitter_output = 1, antenna_input, erp, eirp };

} // namespace lvb::units
