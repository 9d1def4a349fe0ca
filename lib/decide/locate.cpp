#include "decide/locate.hpp"

#include "math/elementary.hpp"
#include "math/special.hpp"

namespace lvb::decide {
namespace {

constexpr double bits_per_db = 0.33219280948873623; // log2(10) / 10

// A culprit of a smaller probability adds nothing to what is to be learned.
constexpr double negligible = 1e-100;

double exponential(double x) noexcept { return math::power_of_db(x * math::db_per_neper); }

bool stands_before(const Reading &a, const Reading &b) noexcept {
    if (a.stage != b.stage) return a.stage < b.stage;
    if (a.excess_db != b.excess_db) return a.excess_db < b.excess_db;
    return a.variance_db2 < b.variance_db2;
}

// Along the chain; at one point in an order of their own, so that the order in which they come changes no bit.
void sort(Reading *readings, std::uint32_t count) noexcept {
    for (std::uint32_t i = 1; i < count; ++i) {
        const Reading reading = readings[i];
        std::uint32_t at = i;
        for (; at > 0 && stands_before(reading, readings[at - 1]); --at) readings[at] = readings[at - 1];
        readings[at] = reading;
    }
}

// What an estimate becomes with one more reading, after the walk has widened it.
Estimate with(const Estimate &estimate, double walked_db2, const Reading &reading) noexcept {
    const double widened = estimate.variance_db2 + walked_db2;
    const double share_left = reading.variance_db2 / (widened + reading.variance_db2);
    return {reading.excess_db + share_left * (estimate.departure_db - reading.excess_db), widened * share_left,
            share_left};
}

// What one more reading adds to chi-square.
double surprise(const Estimate &estimate, double walked_db2, const Reading &reading) noexcept {
    const double off = reading.excess_db - estimate.departure_db;
    return off * off / (estimate.variance_db2 + walked_db2 + reading.variance_db2);
}

// A next reading as one hypothesis predicts it.
struct Outlook {
    double probability, departure_db, variance_db2;
};

// exp(-d) of the distance d of Bhattacharyya between two normal distributions.
double overlap(const Outlook &a, const Outlook &b) noexcept {
    const double sum = a.variance_db2 + b.variance_db2;
    const double apart = a.departure_db - b.departure_db;
    return math::sqrt(2.0 * math::sqrt(a.variance_db2 * b.variance_db2) / sum) *
           exponential(-0.25 * apart * apart / sum);
}

// At least so many bits a reading tells of which hypothesis is true.
double information_bits(const Outlook *outlooks, std::uint32_t count) noexcept {
    double bits = 0.0;
    for (std::uint32_t i = 0; i < count; ++i) {
        double alike = 0.0;
        for (std::uint32_t k = 0; k < count; ++k)
            alike += outlooks[k].probability * (k == i ? 1.0 : overlap(outlooks[i], outlooks[k]));
        bits -= outlooks[i].probability * (bits_per_db * math::ten_log10(alike));
    }
    return bits > 0.0 ? bits : 0.0;
}

} // namespace

Findings::Findings(const Prior &prior, Reading *readings, std::uint32_t count) noexcept
    : prior_(prior), spans_(count + 1) {
    sort(readings, count);
    std::uint32_t first = 0;
    for (std::uint32_t i = 0; i < spans_; ++i) {
        const std::uint32_t end = i < count ? readings[i].stage + 1 : prior_.stages;
        span_[i].first = first;
        span_[i].end = end;
        first = end;
    }
    pass_forwards(readings);
    pass_backwards(readings);
    weigh();
}

void Findings::pass_forwards(const Reading *readings) noexcept {
    span_[0].before = {0.0, 0.0, 1.0};
    for (std::uint32_t i = 0; i + 1 < spans_; ++i) {
        Span &span = span_[i];
        const double walked = walk_db2(span.end) - walk_db2(span.first);
        span.chi_square = chi_square_;
        chi_square_ += surprise(span.before, walked, readings[i]);
        span_[i + 1].before = with(span.before, walked, readings[i]);
    }
    span_[spans_ - 1].chi_square = chi_square_;
}

void Findings::pass_backwards(const Reading *readings) noexcept {
    const std::uint32_t last = spans_ - 1;
    span_[last].behind = {0.0, math::infinity, 1.0};
    double chi_square = 0.0; // of the readings so far
    for (std::uint32_t i = last; i-- > 0;) {
        const Reading &reading = readings[i];
        const Span &next = span_[i + 1];
        if (i + 1 == last) span_[i].behind = {reading.excess_db, reading.variance_db2, 0.0};
        else {
            const double walked = walk_db2(next.end) - walk_db2(next.first);
            chi_square += surprise(next.behind, walked, reading);
            span_[i].behind = with(next.behind, walked, reading);
        }
        span_[i].chi_square += chi_square;
    }
}

// The jump in a span is what the readings behind it say of the departure, less what those before it predict. How much
// likelier it makes the readings than no fault is a ratio of two normal densities of that difference.
void Findings::weigh() noexcept {
    const double fault_db2 = prior_.fault_variance_db2;
    double exponent[most_readings + 1] = {}; // 0 where a fault is not seen
    double largest = 0.0;                    // no fault
    for (std::uint32_t i = 0; i < spans_; ++i) {
        Span &span = span_[i];
        span.fault_db = 0.0;
        span.variance_db2 = fault_db2;
        if (i + 1 == spans_) continue;
        const double jump_db = span.behind.departure_db - span.before.departure_db;
        const double jump_db2 =
            span.behind.variance_db2 + (span.before.variance_db2 + (walk_db2(span.end) - walk_db2(span.first)));
        const double believed = fault_db2 / (jump_db2 + fault_db2);
        span.fault_db = believed * jump_db;
        span.variance_db2 = believed * jump_db2;
        exponent[i] = 0.5 * (jump_db * jump_db / jump_db2 * believed -
                             math::nepers_per_db * math::ten_log10((jump_db2 + fault_db2) / jump_db2));
        if (exponent[i] > largest && span.first < span.end) largest = exponent[i];
    }
    const double of_each = prior_.fault_probability / prior_.stages;
    none_ = (1.0 - prior_.fault_probability) * exponential(-largest);
    double sum = none_;
    for (std::uint32_t i = 0; i < spans_; ++i) {
        Span &span = span_[i];
        span.probability = span.first < span.end ? of_each * exponential(exponent[i] - largest) : 0.0;
        sum += span.probability * (span.end - span.first);
    }
    none_ /= sum;
    for (std::uint32_t i = 0; i < spans_; ++i) span_[i].probability /= sum;
}

double Findings::expected_bits(std::uint32_t i, std::uint32_t stage, double variance_db2) const noexcept {
    const Span &here = span_[i];
    const double at = prior_.walk_db2[stage];
    const double before_db2 = here.before.variance_db2 + (at - walk_db2(here.first));
    const double behind_db2 = here.behind.variance_db2 + (walk_db2(here.end) - at);
    const bool open = behind_db2 == math::infinity;
    // The departure here is a mean of both sides' estimates; a fault elsewhere shifts it by what they see of that
    // fault.
    const double share_before = open ? 1.0 : behind_db2 / (before_db2 + behind_db2);
    const double common_db2 = before_db2 * share_before + variance_db2;

    Outlook outlooks[most_readings + 3];
    std::uint32_t count = 0;
    const auto add = [&](double probability, double fault_db, double fault_db2) noexcept {
        if (probability > negligible) outlooks[count++] = {probability, fault_db, common_db2 + fault_db2};
    };
    const auto add_stages = [&](const Span &span, std::uint32_t stages, double seen) noexcept {
        add(span.probability * stages, span.fault_db * seen, span.variance_db2 * (seen * seen));
    };
    add(none_, 0.0, 0.0);
    add_stages(here, stage + 1 - here.first, share_before);
    add_stages(here, here.end - (stage + 1), share_before - 1.0);
    double seen = share_before;
    for (std::uint32_t k = i; k > 0; --k) {
        seen *= span_[k].before.share_left;
        add_stages(span_[k - 1], span_[k - 1].end - span_[k - 1].first, seen);
    }
    seen = share_before - 1.0;
    for (std::uint32_t k = i; k + 1 < spans_; ++k) {
        seen *= span_[k].behind.share_left;
        add_stages(span_[k + 1], span_[k + 1].end - span_[k + 1].first, seen);
    }
    return information_bits(outlooks, count);
}

double chi_square_above(std::uint32_t degrees, double chi_square) noexcept {
    if (degrees == 0) return 1.0;
    return math::gamma_tails(0.5 * degrees, {math::ten_log10(chi_square / degrees), 0.0}).above;
}

} // namespace lvb::decide
