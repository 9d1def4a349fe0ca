// Small arithmetic of the reference files: numbers, + - * /, calls of the library's plain functions, and results of
// the chain or cable that a case sets up. Functions are found by name in the table derived from the header.
#pragma once

#include <functional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace reference {

/// A plain function of the library.
struct Function {
    std::string_view name;
    std::size_t arity;
    double (*call)(std::span<const double>);
};

/// All plain functions that the header declares.
std::span<const Function> plain_functions();

/// What is wrong with a piece of text; the reader adds file and line.
struct Malformed : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// A parsed expression.
struct Expression {
    enum class Kind { number, call, result, add, subtract, multiply, divide, negate };
    Kind kind = Kind::number;
    double number = 0.0;
    const Function *function = nullptr; // of a call
    std::string result;                 // name of a set-up's result
    std::vector<Expression> parts;      // operands or arguments
};

/// Tells with how many arguments a set-up's result is read, or -1 where there is none of that name.
using ResultArity = std::function<int(std::string_view name)>;
/// Gives the value of a set-up's result.
using ResultValue = std::function<double(std::string_view name, std::span<const double> arguments)>;

/// Throws Malformed.
Expression parse_expression(std::string_view text, const ResultArity &arity_of);
double evaluate(const Expression &expression, const ResultValue &value_of);
/// Whether the library computes any part of it.
bool asks_the_library(const Expression &expression);

/// A whole text as a finite number or "infinity", in any locale; throws Malformed.
double parse_number(std::string_view text);

std::string_view trimmed(std::string_view text);

} // namespace reference
