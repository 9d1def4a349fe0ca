#include "tables/allowances.hpp"

#include "math/constants.hpp"

namespace lvb::tables {
namespace {

constexpr double none = math::not_a_number;

constexpr Allowance printed[] = {
    {none, 3.0, none, "polarization", "polarization of a worn antenna against a fixed one",
     "common practice, no source",
     "what a circular antenna costs against every linear one; a linear pair that is turned further loses more"},
    {none, 3.0, none, "body", "body of one who holds a telephone, 900 MHz",
     "Garg, Wireless Communications and Networking, example 17.4, p. 602; seen in a companion to the book",
     "a telephone at the head in a cellular budget, less than a pack on the body"},
    {none, 1.5, none, "body", "body of one who holds a telephone, a smaller figure",
     "Garg, Wireless Communications and Networking, example 17.8, p. 610; seen in a companion to the book",
     "a second cellular budget of the same book"},
    {5.0, none, 10.0, "body", "antenna worn at the head",
     "Vorobyov and Yarovoy, Progress In Electromagnetics Research M 22, 2012, abstract; seen in print",
     "ultra-wideband antenna; the source gives a range and no usual figure"},
    {10.0, none, 35.0, "body", "antenna worn at belt or torso",
     "Vorobyov and Yarovoy, Progress In Electromagnetics Research M 22, 2012, abstract; seen in print",
     "ultra-wideband antenna; the source gives a range and no usual figure"},
    {20.0, none, 30.0, "body and multipath", "body and multipath together, on stage", "common practice, no source",
     "for both at once: add no other allowance for body or fading to it; a walk test with the real packs decides"},
};
static_assert(sizeof printed / sizeof printed[0] == allowances);

} // namespace

const Allowance &allowance(std::size_t row) noexcept { return printed[row]; }

} // namespace lvb::tables
