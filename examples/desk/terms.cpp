#include "terms.hpp"

namespace desk {

using Words = std::vector<std::string>;

const Words &pattern_words() {
    static const Words words = {"isotropic", "half-wave dipole", "cosine", "cuts", "helix"};
    return words;
}

const Words &path_words() {
    static const Words words = {"free space", "two-ray", "log-distance", "indoor", "site-general", "radiating cable"};
    return words;
}

const Words &environment_words() {
    static const Words words = {"office in sight",       "office out of sight",      "corridor in sight",
                                "corridor out of sight", "industrial hall in sight", "industrial hall out of sight"};
    return words;
}

const Words &polarization_words() {
    static const Words words = {"vertical", "horizontal"};
    return words;
}

const Words &place_words() {
    static const Words words = {"antenna", "receiver"};
    return words;
}

const Words &exposure_words() {
    static const Words words = {"47 CFR 1.1310", "ICNIRP 2020"};
    return words;
}

const Words &audience_words() {
    static const Words words = {"general public", "occupational"};
    return words;
}

const Words &fading_words() {
    static const Words words = {"Rayleigh", "Rice", "Nakagami", "log-normal", "Suzuki"};
    return words;
}

const Words &law_words() {
    static const Words words = {"rectangular", "triangular", "normal", "arc sine"};
    return words;
}

} // namespace desk
