// The plain functions of the header: each checks its domain and calls one model.
#include <levelbook/levelbook.h>

#include "door/domain.hpp"
#include "door/models.hpp"

using namespace lvb;
using namespace lvb::door;

extern "C" {

// Names of parameters and functions take no parentheses.
// NOLINTBEGIN(bugprone-macro-parentheses)
#define LVB_FORMULA_ONE(name, a, a_domain, a_ordinary, model)                                                          \
    double lvb_##name(double a) { return a_domain(a) ? model(a) : not_a_number; }
#define LVB_FORMULA_ONE_PLAIN(name, a, a_domain, model) LVB_FORMULA_ONE(name, a, a_domain, , model)
#define LVB_FORMULA_TWO(name, a, a_domain, b, b_domain, a_ordinary, b_ordinary, model)                                 \
    double lvb_##name(double a, double b) { return a_domain(a) && b_domain(b) ? model(a, b) : not_a_number; }
#define LVB_FORMULA_TWO_PLAIN(name, a, a_domain, b, b_domain, model)                                                   \
    LVB_FORMULA_TWO(name, a, a_domain, b, b_domain, , , model)
#define LVB_FORMULA_THREE_PLAIN(name, a, a_domain, b, b_domain, c, c_domain, model)                                    \
    double lvb_##name(double a, double b, double c) {                                                                  \
        return a_domain(a) && b_domain(b) && c_domain(c) ? model(a, b, c) : not_a_number;                              \
    }
// NOLINTEND(bugprone-macro-parentheses)
#include "door/formulas.inc"

} // extern "C"
