#include "print_terms.hpp"

#include "verdict.hpp"
#include "workings.hpp"

#include <cmath>

namespace desk {
namespace {

std::string label_of(const Link &link, std::int32_t stage) {
    return in_quotes(link.stages[static_cast<std::size_t>(stage)].label);
}

// "at the antenna's terminal" where there is air.
const char *input_words(const Link &link) {
    return link.air() != nullptr ? "at the antenna's terminal" : "at the source's output";
}

std::string floor_words(const Link &link, const lvb_noise &noise) {
    const lvb_noise_conditions &terms = link.noise->entry;
    if (std::isnan(noise.receiver_noise_dbm))
        return "not known: " + label_of(link, noise.no_noise_figure_stage) + " states no noise figure";
    std::string words = "floor " + two(noise.receiver_noise_dbm) + " dBm at the receiver's input, " +
                        two(noise.antenna_noise_dbm) + " dBm " + input_words(link) + ", in " +
                        plain(terms.bandwidth_mhz * 1000.0) + " kHz";
    if (terms.noise_at != LVB_PLACE_NONE)
        words += std::string(", as measured at the ") + lvb_place_name(terms.noise_at);
    if (!std::isnan(noise.noise_figure_db))
        words += "; noise figure of the receive side " + two(noise.noise_figure_db) + " dB, antenna at " +
                 format("%.4g", noise.antenna_temperature_k) + " K";
    return words;
}

std::string carrier_words(const Link &link, const lvb_noise &noise) {
    std::string words = two(noise.far_carrier_to_noise_db) + " dB far, " + two(noise.near_carrier_to_noise_db) +
                        " dB near (carrier to noise)";
    if (link.noise->entry.interference_at != LVB_PLACE_NONE)
        words += "; with interference of " + two(noise.receiver_interference_dbm) + " dBm there " +
                 two(noise.far_carrier_to_noise_plus_interference_db) + " dB far, " +
                 two(noise.near_carrier_to_noise_plus_interference_db) + " dB near";
    if ((link.noise->entry.stated & LVB_STATED_CARRIER_TO_NOISE) == 0) return words + "; what is needed is not stated";
    words += "; needed " + plain(link.noise->entry.carrier_to_noise_db) + " dB, so the far end has " +
             two(std::abs(noise.margin_db)) + " dB " + (noise.margin_db < 0.0 ? "TOO LITTLE" : "to spare");
    if (!std::isnan(noise.sensitivity_dbm))
        words += "; least level " + two(noise.sensitivity_dbm) + " dBm " + input_words(link);
    return words;
}

std::string compression_words(const Link &link, const lvb_noise &noise) {
    const bool missing = (noise.notes & LVB_NOTE_NO_COMPRESSION) != 0;
    if (noise.compressing_stage < 0)
        return missing ? "not known: no stage states its compression" : "nothing compresses";
    const std::uint32_t carriers = link.noise->entry.carriers;
    const std::string together = carriers > 1 ? ", of all " + std::to_string(carriers) + " carriers together," : "";
    std::string words = label_of(link, noise.compressing_stage) + " compresses first, from " +
                        two(noise.compression_dbm) + " dBm " + input_words(link) + " on: the near end's level" +
                        together + " lies " + two(std::abs(noise.compression_headroom_db)) + " dB " +
                        (noise.compression_headroom_db < 0.0 ? "ABOVE it" : "under it");
    return missing ? words + "; others do not state theirs and may come first" : words;
}

std::string product_words(const Link &link, const lvb_noise &noise) {
    if (std::isnan(noise.two_tone_dbm))
        return noise.no_intercept_stage < 0
                   ? "not known"
                   : "not known: " + label_of(link, noise.no_intercept_stage) + " states no intercept";
    const std::uint32_t carriers = link.noise->entry.carriers;
    std::string words = "two equal carriers at the near end's level make third-order products of " +
                        two(noise.two_tone_dbm) + " dBm each at the receiver's input";
    if (carriers > 2)
        words += "; " + std::to_string(carriers) + " carriers at equal spacing " + two(noise.products_dbm) +
                 " dBm together on the middle one";
    words += "; intercept " + two(noise.input_intercept_dbm) + " dBm " + input_words(link);
    if (!std::isnan(noise.spurious_free_range_db))
        words += ", spurious-free range " + two(noise.spurious_free_range_db) + " dB";
    return words;
}

// Every amplifier that costs more than it brings, the worst first.
std::string print_lowered_range(const Link &link, const NoiseBook &book) {
    std::string out;
    const auto tell = [&](std::int32_t stage) {
        const lvb_noise_line &line = book.lines[static_cast<std::size_t>(stage)];
        out +=
            labelled("CAUTION:",
                     "the amplifier " + label_of(link, stage) +
                         " LOWERS RANGE, whatever it adds to the level: with it the spurious-free range changes by " +
                         signed_two(line.range_change_db) + " dB and carrier to noise by " +
                         signed_two(line.carrier_to_noise_change_db) + " dB" +
                         (line.carrier_to_noise_change_db > 0.0 ? "; weigh the one against the other"
                                                                : "; leave it out where you can"));
    };
    const std::int32_t worst = book.noise.range_lowering_stage;
    if (worst < 0) return out;
    tell(worst);
    for (std::size_t i = 0; i < book.lines.size(); ++i)
        if (static_cast<std::int32_t>(i) != worst && (book.lines[i].notes & LVB_NOTE_RANGE_LOWERED) != 0)
            tell(static_cast<std::int32_t>(i));
    return out;
}

std::string limit_name(const Limit &limit) {
    std::string words = limit.label;
    if (limit.rule)
        words = std::string(limit.rule->citation) + " (" + limit.rule->country + ", " + limit.rule->edition + ")";
    words += ", " + std::string(lvb_quantity_name(limit.entry.quantity)) + " at most " + two(limit.entry.limit_dbm) +
             " dBm (" + power_words(limit.entry.limit_dbm) + ")";
    const double low = limit.entry.lowest_mhz;
    const double high = limit.entry.highest_mhz;
    if (low != 0.0 && high != 0.0) return words + " from " + plain(low) + " to " + plain(high) + " MHz";
    if (low != 0.0) return words + " from " + plain(low) + " MHz on";
    return high != 0.0 ? words + " up to " + plain(high) + " MHz" : words;
}

std::string limit_words(const Link &link, const Limit &limit, const lvb_limit_result &result) {
    std::string words = limit_name(limit) + ": ";
    if (result.verdict == LVB_LIMIT_NOT_COVERED)
        words += "NOT COVERED, this says nothing of " + plain(link.frequency_mhz) + " MHz";
    else
        words += two(result.level_dbm) + " dBm, +-" + two(result.worst_db) + " dB worst case, " +
                 two(std::abs(result.room_db)) + " dB " + (result.room_db < 0.0 ? "OVER" : "under");
    if (result.verdict == LVB_LIMIT_HOLDS) words += ": holds";
    if (result.verdict == LVB_LIMIT_DOUBTFUL) words += ": DOUBTFUL, the tolerances together can exceed it";
    if (result.verdict == LVB_LIMIT_EXCEEDED) words += ": EXCEEDED";
    if (limit.rule && limit.rule->remark[0] != '\0') words += "; " + std::string(limit.rule->remark);
    return words;
}

std::string exposure_words_of(const Answer &answer) {
    const Link &link = *answer.link;
    const Exposure &exposure = *link.exposure;
    const KeepAway &keep = *answer.keep_away;
    const auto up = [](double metres) { return two(std::ceil(metres * 100.0) / 100.0) + " m"; };
    std::string words = "people must keep " + up(keep.keep_distance_m) + " or more away from the transmit antenna: " +
                        exposure_limit_words(exposure, keep.limit_w_per_m2) + " at " + plain(link.frequency_mhz) +
                        " MHz, " + two(keep.eirp_dbm) + " dBm e.i.r.p. with every tolerance upwards";
    if (exposure.transmitters > 1)
        words += ", of " + std::to_string(exposure.transmitters) + " such transmitters together";
    words += ", reflections x " + plain(exposure.reflection_factor) + "; computed for the far field";
    if (keep.near_field())
        words += ", which would allow " + up(keep.distance_m) +
                 " but does not hold nearer than a wavelength; the antenna's maker may ask for more";
    if (exposure.rule == LVB_EXPOSURE_ICNIRP_2020)
        words += "; the rule's figures were read where others quote them: check them";
    if (link.direction == "inbound")
        words += "; a transmitter that is worn or held is judged by absorbed power, not by this";
    return words;
}

std::string blocking_words(const lvb_coexistence &result) {
    std::string words = "arrives at the receiver with " + two(result.blocker_dbm) + " dBm, " +
                        two(std::abs(result.blocking_margin_db)) + " dB " +
                        (result.blocking_margin_db < 0.0 ? "ABOVE" : "under") + " the level that blocks it";
    if (result.more_receive_filter_db > 0.0)
        words += "; BLOCKED or too close to it: it needs " + two(result.more_receive_filter_db) +
                 " dB more filter before the receiver";
    if (!std::isnan(result.blocking_separation_m))
        words += "; antennas " + two(result.blocking_separation_m) + " m apart are enough";
    return words;
}

std::string covering_words(const lvb_coexistence &result) {
    std::string words = "the transmitter's noise arrives with " + two(result.noise_dbm) +
                        " dBm and lifts the receiver's floor by " + two(result.noise_rise_db) + " dB";
    if (result.more_transmit_filter_db > 0.0)
        words +=
            "; TOO MUCH: it needs " + two(result.more_transmit_filter_db) + " dB more filter behind the transmitter";
    if (!std::isnan(result.noise_separation_m))
        words += "; antennas " + two(result.noise_separation_m) + " m apart are enough";
    return words;
}

} // namespace

std::string power_words(double dbm) {
    const double milliwatts = lvb_mw_from_dbm(dbm);
    return milliwatts < 1000.0 ? format("%.3g mW", milliwatts) : format("%.3g W", milliwatts / 1000.0);
}

std::string exposure_limit_words(const Exposure &exposure, double limit_w_per_m2) {
    std::string words = format("%.4g W/m2", limit_w_per_m2);
    if (exposure.rule == 0) return words + " as given";
    return words + " for " + (exposure.audience == LVB_AUDIENCE_GENERAL ? "the " : "") +
           lvb_audience_name(exposure.audience) +
           (exposure.audience == LVB_AUDIENCE_GENERAL ? " by " : " exposure by ") + lvb_exposure_name(exposure.rule);
}

std::string print_walk(const Link &link, const Computed &computed) {
    std::string out;
    if (computed.sights) {
        const lvb_pointing &far = computed.sights->far;
        const lvb_pointing &near = computed.sights->near;
        out += labelled("Places:", "the antennas are " + two(far.distance_m) + " m apart far, " + two(near.distance_m) +
                                       " m near; the angle between their polarizations costs " +
                                       two(far.polarization_loss_db) + " dB far, " + two(near.polarization_loss_db) +
                                       " dB near: the levels hold it only as an allowance takes it");
        const std::uint32_t notes = (far.notes | near.notes) & std::uint32_t{LVB_NOTE_INSIDE_FAR_FIELD_DISTANCE};
        for (const std::string &sentence : note_sentences(notes)) out += labelled("NOTE:", sentence);
    }
    if (!computed.path) return out;
    const Path &path = *link.air()->path;
    const double deviation = computed.path->far.standard_deviation_db;
    out += labelled("Path:", lvb_path_name(path.entry.model) +
                                 (std::isnan(deviation)
                                      ? std::string(": the model states no standard deviation; fading comes on top")
                                      : ": from place to place the loss has a standard deviation of " + two(deviation) +
                                            " dB, and fading comes on top; the levels are those of "
                                            "the mean"));
    return out;
}

std::string print_fading(const Link &link, const Computed &computed) {
    if (!computed.fade) return "";
    const Fading &fading = *link.fading;
    const Fade &fade = *computed.fade;
    const double room_db = fade.margin_db - fade.needed_db;
    std::string words = std::string(lvb_fading_name(fading.law())) + " about the far end's level";
    if (fading.branches > 1.0) words += ", best of " + plain(fading.branches) + " branches";
    words += ": it falls below the floor in " + share_words(fade.outage) + " of places and times; the allowed " +
             plain(100.0 * fading.outage) + " % needs " + two(fade.needed_db) + " dB above the floor, so there are " +
             two(std::abs(room_db)) + " dB " + (room_db < 0.0 ? "TOO LITTLE" : "to spare") +
             "; an allowance that holds fading too would count it twice";
    return labelled("Fading:", words);
}

std::string print_noise(const Link &link, const Computed &computed) {
    if (!computed.noise) return "";
    const lvb_noise &noise = computed.noise->noise;
    std::string out = labelled("Noise:", floor_words(link, noise));
    if (!std::isnan(noise.far_carrier_to_noise_db)) out += labelled("C/N:", carrier_words(link, noise));
    out += labelled("Compress:", compression_words(link, noise)) + labelled("Products:", product_words(link, noise));
    return out + print_lowered_range(link, *computed.noise);
}

std::string print_limits(const Answer &answer) {
    const Link &link = *answer.link;
    std::string out;
    for (std::size_t i = 0; i < link.limits.size(); ++i)
        out += labelled("Limit:", ascii(limit_words(link, link.limits[i], answer.computed.limits[i])));
    if (answer.keep_away) out += labelled("Exposure:", exposure_words_of(answer));
    return out;
}

std::string print_pairs(const std::vector<Pair> &pairs) {
    std::string out;
    for (const Pair &pair : pairs) {
        const lvb_coexistence &result = pair.coexistence.result;
        out += std::string(page_columns, '-') + "\n" +
               wrap(ascii("SIDE BY SIDE " + pair.neighbours->name), page_columns, "", "  ");
        out += labelled("Systems:", ascii("transmitter of " + in_quotes(pair.transmitter->name) + " (" +
                                          plain(pair.transmitter->frequency_mhz) + " MHz, " +
                                          two(pair.coexistence.neighbours.transmit_dbm) +
                                          " dBm at its antenna) beside the receiver of " +
                                          in_quotes(pair.receiver->name) + " (" + plain(pair.receiver->frequency_mhz) +
                                          " MHz); from terminal to terminal " + two(result.coupling_loss_db) + " dB"));
        if (!std::isnan(result.blocking_margin_db)) out += labelled("Blocking:", blocking_words(result));
        if (!std::isnan(result.noise_rise_db)) out += labelled("Noise:", covering_words(result));
        if ((result.notes & LVB_NOTE_NEAR_FIELD) != 0)
            out += labelled("NOTE:", "closer than a wavelength: measure the coupling instead");
    }
    return out;
}

} // namespace desk
