// The catalogue of cables, and a look-up in it.
#pragma once

#include <levelbook/levelbook.h>

#include <optional>
#include <string>
#include <vector>

namespace desk {

/// Designations of all types of the catalogue.
std::vector<std::string> catalogue_names();

/// Says so of a name, with what is probably meant.
std::string not_in_catalogue(const std::string &name);

/// Every type with its published rows and where each is printed.
std::string print_catalogue();

struct CableQuestion {
    std::string name;
    double frequency_mhz = 0.0;
    double length_m = 0.0;
    std::uint32_t connectors = 0;
    std::optional<double> connector_loss_db;
    std::optional<double> temperature_degc;
};

/// What one piece of cable costs; throws Refusal.
std::string answer_cable(const CableQuestion &question);

} // namespace desk
