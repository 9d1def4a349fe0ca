#include "reference/expression.hpp"

#include <levelbook/levelbook.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <utility>

namespace reference {
namespace {

template <typename... Doubles>
constexpr std::size_t arity_of(double (*)(Doubles...)) {
    return sizeof...(Doubles);
}

template <auto function>
double call(std::span<const double> arguments) {
    return [&]<std::size_t... i>(std::index_sequence<i...>) { return function(arguments[i]...); }
    (std::make_index_sequence<arity_of(function)>{});
}

// The header's one function of a number that also takes codes.
double exposure_limit(double exposure, double audience, double frequency_mhz) {
    return lvb_exposure_limit_w_per_m2(static_cast<std::int32_t>(exposure), static_cast<std::int32_t>(audience),
                                       frequency_mhz);
}

#define REFERENCE_FUNCTION(name, range, accuracy) {#name, arity_of(&name), &call<&name>},
#define LVB_SCALAR_1 REFERENCE_FUNCTION
#define LVB_SCALAR_2 REFERENCE_FUNCTION
#define LVB_SCALAR_3 REFERENCE_FUNCTION
#define LVB_SCALAR_4 REFERENCE_FUNCTION
#define LVB_SCALAR_5 REFERENCE_FUNCTION
#define LVB_SCALAR_6 REFERENCE_FUNCTION
#define LVB_SCALAR_7 REFERENCE_FUNCTION
#define LVB_SCALAR_8 REFERENCE_FUNCTION
constexpr Function functions[] = {
#include "levelbook_scalars.inc"
    {"lvb_exposure_limit_w_per_m2", 3, &call<&exposure_limit>},
};

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

class Parser {
  public:
    Parser(std::string_view text, const ResultArity &result_arity) : text_(text), result_arity_(result_arity) {}

    Expression whole() {
        Expression expression = sum();
        skip_blanks();
        if (at_ != text_.size()) fail("unexpected '" + std::string(text_.substr(at_)) + "'");
        return expression;
    }

  private:
    [[noreturn]] void fail(const std::string &what) const {
        throw Malformed(what + " in '" + std::string(text_) + "'");
    }

    void skip_blanks() {
        while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    }

    bool take(char c) {
        skip_blanks();
        if (at_ == text_.size() || text_[at_] != c) return false;
        ++at_;
        return true;
    }

    static Expression operation(Expression::Kind kind, std::vector<Expression> parts) {
        Expression expression;
        expression.kind = kind;
        expression.parts = std::move(parts);
        return expression;
    }

    Expression sum() {
        Expression left = product();
        for (;;) {
            if (take('+')) left = operation(Expression::Kind::add, {left, product()});
            else if (take('-')) left = operation(Expression::Kind::subtract, {left, product()});
            else return left;
        }
    }

    Expression product() {
        Expression left = factor();
        for (;;) {
            if (take('*')) left = operation(Expression::Kind::multiply, {left, factor()});
            else if (take('/')) left = operation(Expression::Kind::divide, {left, factor()});
            else return left;
        }
    }

    Expression factor() {
        if (++depth_ > 100) fail("too deeply nested");
        Expression expression;
        if (take('-')) expression = operation(Expression::Kind::negate, {factor()});
        else if (take('(')) {
            expression = sum();
            if (!take(')')) fail("missing ')'");
        } else {
            skip_blanks();
            if (at_ == text_.size()) fail("a value is missing");
            if (is_letter(text_[at_])) expression = named();
            else expression = number();
        }
        --depth_;
        return expression;
    }

    Expression number() {
        Expression expression;
        const char *begin = text_.data() + at_;
        const auto [end, error] = std::from_chars(begin, text_.data() + text_.size(), expression.number);
        if (error != std::errc{}) fail("'" + std::string(text_.substr(at_)) + "' is not a number");
        at_ += static_cast<std::size_t>(end - begin);
        return expression;
    }

    Expression named() {
        const std::size_t begin = at_;
        while (at_ < text_.size() && (is_letter(text_[at_]) || is_digit(text_[at_]))) ++at_;
        const std::string name(text_.substr(begin, at_ - begin));
        Expression expression;
        if (name == "infinity") {
            expression.number = std::numeric_limits<double>::infinity();
            return expression;
        }
        if (take('(')) {
            do expression.parts.push_back(sum());
            while (take(','));
            if (!take(')')) fail("missing ')'");
        }
        std::size_t wanted = 0;
        const auto found = std::find_if(std::begin(functions), std::end(functions),
                                        [&](const Function &function) { return function.name == name; });
        if (found != std::end(functions)) {
            expression.kind = Expression::Kind::call;
            expression.function = found;
            wanted = found->arity;
        } else {
            const int arity = result_arity_(name);
            if (arity < 0) fail("unknown function or result '" + name + "'");
            expression.kind = Expression::Kind::result;
            expression.result = name;
            wanted = static_cast<std::size_t>(arity);
        }
        if (expression.parts.size() != wanted)
            fail("'" + name + "' takes " + std::to_string(wanted) + " arguments, not " +
                 std::to_string(expression.parts.size()));
        return expression;
    }

    std::string_view text_;
    const ResultArity &result_arity_;
    std::size_t at_ = 0;
    int depth_ = 0;
};

} // namespace

std::span<const Function> plain_functions() { return functions; }

Expression parse_expression(std::string_view text, const ResultArity &arity_of) {
    return Parser(text, arity_of).whole();
}

double evaluate(const Expression &expression, const ResultValue &value_of) {
    std::vector<double> parts;
    for (const Expression &part : expression.parts) parts.push_back(evaluate(part, value_of));
    switch (expression.kind) {
    case Expression::Kind::number:
        return expression.number;
    case Expression::Kind::call:
        return expression.function->call(parts);
    case Expression::Kind::result:
        return value_of(expression.result, parts);
    case Expression::Kind::add:
        return parts[0] + parts[1];
    case Expression::Kind::subtract:
        return parts[0] - parts[1];
    case Expression::Kind::multiply:
        return parts[0] * parts[1];
    case Expression::Kind::divide:
        return parts[0] / parts[1];
    case Expression::Kind::negate:
        return -parts[0];
    }
    return std::numeric_limits<double>::quiet_NaN();
}

bool asks_the_library(const Expression &expression) {
    if (expression.kind == Expression::Kind::call || expression.kind == Expression::Kind::result) return true;
    return std::any_of(expression.parts.begin(), expression.parts.end(), asks_the_library);
}

double parse_number(std::string_view text) {
    if (text == "infinity") return std::numeric_limits<double>::infinity();
    if (text == "-infinity") return -std::numeric_limits<double>::infinity();
    double number = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(number))
        throw Malformed("'" + std::string(text) + "' is not a number");
    return number;
}

std::string_view trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t\r");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

} // namespace reference
