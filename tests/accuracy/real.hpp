// Real numbers of 192 bits, correctly rounded by MPFR: the judge of the library's accuracy.
#pragma once

#include <mpfr.h>

#include <cmath>

namespace accuracy {

class Real {
  public:
    Real(double x) : Real() { mpfr_set_d(value_, x, MPFR_RNDN); }
    Real(const Real &other) : Real() { mpfr_set(value_, other.value_, MPFR_RNDN); }
    Real(Real &&other) noexcept : Real() { mpfr_swap(value_, other.value_); }
    Real &operator=(Real other) noexcept {
        mpfr_swap(value_, other.value_);
        return *this;
    }
    ~Real() { mpfr_clear(value_); }

    /// The decimal number as it is printed, not the double next to it.
    static Real decimal(const char *text) {
        Real result;
        mpfr_set_str(result.value_, text, 10, MPFR_RNDN);
        return result;
    }
    static Real pi() {
        Real result;
        mpfr_const_pi(result.value_, MPFR_RNDN);
        return result;
    }

    friend Real operator+(const Real &a, const Real &b) { return apply(mpfr_add, a, b); }
    friend Real operator-(const Real &a, const Real &b) { return apply(mpfr_sub, a, b); }
    friend Real operator*(const Real &a, const Real &b) { return apply(mpfr_mul, a, b); }
    friend Real operator/(const Real &a, const Real &b) { return apply(mpfr_div, a, b); }
    friend Real operator-(const Real &a) { return apply(mpfr_neg, a); }
    friend bool operator<(const Real &a, const Real &b) { return mpfr_less_p(a.value_, b.value_) != 0; }

    friend Real abs(const Real &a) { return apply(mpfr_abs, a); }
    friend Real sqrt(const Real &a) { return apply(mpfr_sqrt, a); }
    friend Real log10(const Real &a) { return apply(mpfr_log10, a); }
    friend Real ten_to(const Real &a) { return apply(mpfr_exp10, a); }
    friend Real log10_1p(const Real &a) { return apply(mpfr_log10p1, a); }  // log10(1 + a)
    friend Real ten_to_m1(const Real &a) { return apply(mpfr_exp10m1, a); } // 10^a - 1
    friend Real cos_of_degrees(const Real &a) { return turned(mpfr_cosu, a); }
    friend Real sin_of_degrees(const Real &a) { return turned(mpfr_sinu, a); }
    friend Real arc_sine_in_degrees(const Real &a) { return turned(mpfr_asinu, a); }
    friend Real arc_tangent_in_degrees(const Real &y, const Real &x) {
        Real result;
        mpfr_atan2u(result.value_, y.value_, x.value_, 360UL, MPFR_RNDN);
        return result;
    }
    friend Real squared(const Real &a) { return apply(mpfr_sqr, a); }
    friend Real exp(const Real &a) { return apply(mpfr_exp, a); }
    friend Real expm1(const Real &a) { return apply(mpfr_expm1, a); }
    friend Real log(const Real &a) { return apply(mpfr_log, a); }
    friend Real log1p(const Real &a) { return apply(mpfr_log1p, a); }
    friend Real erfc(const Real &a) { return apply(mpfr_erfc, a); }
    friend Real lgamma(const Real &a) { return apply(mpfr_lngamma, a); }

    double rounded() const { return mpfr_get_d(value_, MPFR_RNDN); }
    bool is_number() const { return mpfr_number_p(value_) != 0; }
    bool is_zero() const { return mpfr_zero_p(value_) != 0; }
    /// Distance of neighbouring doubles at this size; that of the smallest ones below them.
    double ulp() const {
        const long exponent = is_zero() ? -1074 : static_cast<long>(mpfr_get_exp(value_)) - 53;
        return std::ldexp(1.0, static_cast<int>(exponent < -1074 ? -1074 : exponent));
    }

  private:
    Real() { mpfr_init2(value_, 192); }

    template <class Function, class... Arguments>
    static Real apply(Function function, const Arguments &...arguments) {
        Real result;
        function(result.value_, arguments.value_..., MPFR_RNDN);
        return result;
    }
    template <class Function>
    static Real turned(Function function, const Real &degrees) {
        Real result;
        function(result.value_, degrees.value_, 360UL, MPFR_RNDN);
        return result;
    }

    mpfr_t value_;
};

// So that they are found for plain doubles too.
Real log10_1p(const Real &a);
Real ten_to_m1(const Real &a);
Real ten_to(const Real &a);
Real cos_of_degrees(const Real &a);
Real sin_of_degrees(const Real &a);
Real arc_tangent_in_degrees(const Real &y, const Real &x);
Real squared(const Real &a);

} // namespace accuracy
