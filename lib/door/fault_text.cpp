// One plain sentence for a fault, with no printf and no locale.
#include "door/check.hpp"
#include "door/names.hpp"

namespace lvb::door {
namespace {

// Writes into the caller's buffer what fits, and counts everything.
class Writer {
  public:
    Writer(char *text, std::size_t capacity) noexcept : text_(text), room_(text == nullptr ? 0 : capacity) {}

    void put(char c) noexcept {
        if (length_ + 1 < room_) text_[length_] = c;
        ++length_;
    }
    void put(const char *words) noexcept {
        while (*words != '\0') put(*words++);
    }
    void put_whole(std::uint64_t number) noexcept {
        char digits[20];
        int count = 0;
        do digits[count++] = static_cast<char>('0' + number % 10);
        while ((number /= 10) != 0);
        while (count > 0) put(digits[--count]);
    }
    void put(double number) noexcept;
    std::size_t finish() noexcept {
        if (room_ > 0) text_[length_ < room_ ? length_ : room_ - 1] = '\0';
        return length_;
    }

  private:
    char *text_;
    std::size_t room_;
    std::size_t length_ = 0;
};

constexpr int significant = 9;
constexpr double smallest_significand = 1e8; // 10^(significant - 1)
constexpr double largest_significand = 1e9;
constexpr double largest_whole = 1e12;

// Up to nine significant digits: plainly where the number is of ordinary size, otherwise with a power of ten. It is for
// reading; it does not promise the nearest decimal of the ninth digit.
void Writer::put(double number) noexcept {
    if (math::is_nan(number)) return put("not a number");
    if (number < 0.0) put('-');
    double size = math::abs(number);
    if (size == math::infinity) return put("infinity");
    if (size < largest_whole && size == static_cast<double>(static_cast<std::uint64_t>(size)))
        return put_whole(static_cast<std::uint64_t>(size)); // counts and sizes in full
    int point = significant;                                // digits before the decimal point
    for (; size >= largest_significand; ++point) size /= 10.0;
    for (; size < smallest_significand; --point) size *= 10.0;
    auto whole = static_cast<std::uint64_t>(size + 0.5); // NOLINT(bugprone-incorrect-roundings): far below 2^52
    if (whole == static_cast<std::uint64_t>(largest_significand)) {
        whole /= 10;
        ++point;
    }
    char digits[significant];
    for (int i = significant - 1; i >= 0; --i, whole /= 10) digits[i] = static_cast<char>('0' + whole % 10);
    int count = significant;
    while (count > 1 && digits[count - 1] == '0') --count;

    const bool plain = point > -4 && point <= 12;
    const int before = plain ? point : 1;
    if (before <= 0) put("0.");
    for (int i = before; i < 0; ++i) put('0');
    for (int i = 0; i < count || i < before; ++i) {
        if (i == before && before > 0) put('.');
        put(i < count ? digits[i] : '0');
    }
    if (plain) return;
    put('e');
    if (point - 1 < 0) put('-');
    put_whole(static_cast<std::uint64_t>(point - 1 < 0 ? 1 - point : point - 1));
}

void put_index(Writer &out, std::int32_t index) noexcept {
    out.put('[');
    out.put_whole(static_cast<std::uint64_t>(index));
    out.put(']');
}

void put_stage(Writer &out, const lvb_fault &fault) noexcept {
    if (fault.stage == LVB_STAGE_TRANSMIT) return out.put("transmit");
    if (fault.stage == LVB_STAGE_RECEIVE) return out.put("receive");
    if (fault.stage == LVB_STAGE_PACK) return out.put("pack_antenna");
    if (fault.stage < 0) return;
    out.put("stages");
    put_index(out, fault.stage);
}

// How a stage or an antenna leads to what it lends; null for every other struct.
const char *lent_path(std::int32_t structure) noexcept {
    switch (structure) {
    case LVB_STRUCT_CABLE_TABLE:
        return "cable_table.";
    case LVB_STRUCT_GAIN_TABLE:
        return "gain_table.";
    case LVB_STRUCT_PATTERN:
        return "pattern.";
    case LVB_STRUCT_AZIMUTH_CUT:
        return "pattern.azimuth_cut.";
    case LVB_STRUCT_ELEVATION_CUT:
        return "pattern.elevation_cut.";
    case LVB_STRUCT_BODY_TABLE:
        return "body_table.";
    case LVB_STRUCT_PATH:
    case LVB_STRUCT_EDGE:
        return "path.";
    case LVB_STRUCT_STAGE:
    case LVB_STRUCT_ANTENNA:
        return "";
    default:
        return nullptr;
    }
}

// The struct in which the field stands. Of the links that needs and candidates lend a fault says that they are the
// need's or the candidate's.
std::int32_t struct_of(const lvb_fault &fault) noexcept {
    if (fault.structure != LVB_STRUCT_NEED && fault.structure != LVB_STRUCT_PLACE) return fault.structure;
    if (fault.stage >= 0) return LVB_STRUCT_STAGE;
    return fault.stage == LVB_STAGE_LINK ? std::int32_t{LVB_STRUCT_LINK} : fault.structure;
}

// Whether all chains of a site must have the same of a field.
bool is_shared(const lvb_fault &fault) noexcept {
    const std::int32_t structure = struct_of(fault);
    if (structure == LVB_STRUCT_LINK) return fault.field == LVB_FIELD_FREQUENCY_MHZ || fault.field == LVB_FIELD_STAGES;
    return structure == LVB_STRUCT_STAGE &&
           (fault.field == LVB_FIELD_FLOOR_DBM || fault.field == LVB_FIELD_WANTED_LOW_DBM ||
            fault.field == LVB_FIELD_WANTED_HIGH_DBM || fault.field == LVB_FIELD_CEILING_DBM);
}

// The array in which an element of a struct stands that a fault names by `row`; null for every other struct. A link is
// that of a site's antenna.
const char *array_of(std::int32_t structure) noexcept {
    switch (structure) {
    case LVB_STRUCT_LINK:
    case LVB_STRUCT_STAGE:
    case LVB_STRUCT_PATTERN:
    case LVB_STRUCT_ANTENNA:
    case LVB_STRUCT_SITE_ANTENNA:
        return "antennas";
    case LVB_STRUCT_PLACE:
        return "candidates";
    case LVB_STRUCT_SCREEN:
        return "screens";
    case LVB_STRUCT_AREA:
        return "areas";
    case LVB_STRUCT_ITEM:
        return "items";
    case LVB_STRUCT_SLOT:
        return "slots";
    case LVB_STRUCT_NEED:
        return "needs";
    case LVB_STRUCT_READING:
        return "readings";
    case LVB_STRUCT_SPREAD:
        return "spreads";
    case LVB_STRUCT_TALLY:
        return "tallies";
    case LVB_STRUCT_QUANTILE:
        return "quantiles";
    default:
        return nullptr;
    }
}

// Where `row` tells the element of an array: items[3], antennas[1].link.stages[2], antennas[0].pattern, areas[2].
bool put_owner(Writer &out, const lvb_fault &fault) noexcept {
    const char *array = array_of(fault.structure);
    if (fault.row < 0 || array == nullptr) return false;
    const std::int32_t structure = struct_of(fault);
    const bool of_stage = fault.stage >= 0 && (structure == LVB_STRUCT_STAGE || structure == LVB_STRUCT_PATTERN);
    out.put(array);
    put_index(out, fault.structure == LVB_STRUCT_AREA && fault.stage >= 0 ? fault.stage : fault.row);
    if (of_stage || structure == LVB_STRUCT_LINK) out.put(".link");
    if (of_stage) {
        out.put('.');
        put_stage(out, fault);
    }
    if (structure == LVB_STRUCT_PATTERN) out.put(".pattern");
    return true;
}

// items[3].cost, antennas[1].link.frequency_mhz, needs[1].link.stages[2].gain_db, areas[2].x_m[5].
bool put_element(Writer &out, const lvb_fault &fault) noexcept {
    if (!put_owner(out, fault)) return false;
    const std::int32_t structure = struct_of(fault);
    const bool has_size = structure == LVB_STRUCT_LINK || structure == LVB_STRUCT_ANTENNA ||
                          structure == LVB_STRUCT_PATTERN || structure == LVB_STRUCT_PLACE;
    if (fault.field == LVB_FIELD_SIZE && !has_size) return true;
    out.put('.');
    out.put(lvb_field_name(fault.field));
    if (structure == LVB_STRUCT_AREA && fault.stage >= 0) put_index(out, fault.row);
    return true;
}

// The field as a programmer writes it: stages[2].cable_table.frequency_mhz[3], stages[4].path.edges[1].height_m.
void put_path(Writer &out, const lvb_fault &fault) noexcept {
    if (put_element(out, fault)) return;
    const bool named = fault.stage >= LVB_STAGE_PACK && fault.stage != LVB_STAGE_NONE;
    const char *lent = named ? lent_path(fault.structure) : nullptr;
    const bool whole_stage = fault.structure == LVB_STRUCT_STAGE && fault.field == LVB_FIELD_SIZE;
    const bool edge = fault.structure == LVB_STRUCT_EDGE && fault.row >= 0;
    if (lent != nullptr) {
        put_stage(out, fault);
        if (whole_stage) return;
        out.put('.');
        out.put(lent);
    } else if (fault.structure != LVB_STRUCT_NONE) {
        out.put(lvb_struct_name(edge ? LVB_STRUCT_PATH : fault.structure));
        out.put('.');
    }
    if (edge) {
        out.put("edges");
        put_index(out, fault.row);
        if (fault.field == LVB_FIELD_SIZE) return;
        out.put('.');
    }
    out.put(lvb_field_name(fault.field));
    if (!edge && fault.row >= 0) put_index(out, fault.row);
}

// What has no use for an unused field.
const char *user_of_field(std::int32_t structure) noexcept {
    switch (structure) {
    case LVB_STRUCT_COLUMNS:
        return "formula";
    case LVB_STRUCT_PATH:
        return "model";
    case LVB_STRUCT_NEIGHBOURS:
        return "set-up";
    case LVB_STRUCT_PATTERN:
    case LVB_STRUCT_PLACE: // a candidate's pattern
        return "kind of pattern";
    case LVB_STRUCT_MAP:
        return "law";
    case LVB_STRUCT_ANTENNA:
        return "antenna's pattern";
    case LVB_STRUCT_SWEEP:
        return "chain";
    case LVB_STRUCT_SOLVE:
        return "question";
    case LVB_STRUCT_READING:
        return "point";
    case LVB_STRUCT_SPREAD:
        return "law";
    case LVB_STRUCT_TRIALS:
        return "kind of trials";
    case LVB_STRUCT_NEED:
        return "link";
    default:
        return "kind of stage";
    }
}

// The name of a code, where the library has names for the field's codes; null elsewhere.
const char *code_name(const lvb_fault &fault, std::int32_t code) noexcept {
    switch (fault.field) {
    case LVB_FIELD_KIND:
        return struct_of(fault) == LVB_STRUCT_PATTERN || struct_of(fault) == LVB_STRUCT_PLACE ? nullptr
                                                                                              : lvb_kind_name(code);
    case LVB_FIELD_BASIS:
        return lvb_basis_name(code);
    case LVB_FIELD_QUANTITY:
        return lvb_quantity_name(code);
    case LVB_FIELD_FIELD:
        return lvb_field_name(code);
    case LVB_FIELD_STRUCTURE:
        return lvb_struct_name(code);
    default:
        return nullptr;
    }
}

// A number, and behind it what it stands for: 6 (air). The host may have made the fault up: its number need not be a
// code.
void put_number(Writer &out, const lvb_fault &fault, double number) noexcept {
    out.put(number);
    if (!(number >= 0.0 && number <= 10000.0)) return;
    const char *name = code_name(fault, static_cast<std::int32_t>(number));
    if (name == nullptr || same_text(name, "unknown")) return;
    out.put(" (");
    out.put(name);
    out.put(')');
}

void put_value(Writer &out, const lvb_fault &fault) noexcept {
    put_path(out, fault);
    out.put(" is ");
    put_number(out, fault, fault.value);
}

void put_allowed(Writer &out, const lvb_fault &fault) noexcept {
    if (math::is_nan(fault.minimum) || math::is_nan(fault.maximum)) return;
    out.put("; allowed ");
    put_number(out, fault, fault.minimum);
    if (fault.maximum == math::infinity) return out.put(" and more");
    out.put(" to ");
    put_number(out, fault, fault.maximum);
}

struct Stated {
    std::uint32_t bit;
    std::int32_t field;
    const char *name;
};
constexpr Stated stated[] = {
    {LVB_STATED_TEMPERATURE, LVB_FIELD_TEMPERATURE_DEGC, "LVB_STATED_TEMPERATURE"},
    {LVB_STATED_FLOOR, LVB_FIELD_FLOOR_DBM, "LVB_STATED_FLOOR"},
    {LVB_STATED_WANTED, LVB_FIELD_WANTED_LOW_DBM, "LVB_STATED_WANTED"},
    {LVB_STATED_WANTED, LVB_FIELD_WANTED_HIGH_DBM, "LVB_STATED_WANTED"},
    {LVB_STATED_CEILING, LVB_FIELD_CEILING_DBM, "LVB_STATED_CEILING"},
    {LVB_STATED_NOISE_FIGURE, LVB_FIELD_NOISE_FIGURE_DB, "LVB_STATED_NOISE_FIGURE"},
    {LVB_STATED_INTERCEPT, LVB_FIELD_INTERCEPT_DBM, "LVB_STATED_INTERCEPT"},
    {LVB_STATED_COMPRESSION, LVB_FIELD_COMPRESSION_DBM, "LVB_STATED_COMPRESSION"},
    {LVB_STATED_CARRIER_TO_NOISE, LVB_FIELD_CARRIER_TO_NOISE_DB, "LVB_STATED_CARRIER_TO_NOISE"},
    {LVB_STATED_BLOCKING, LVB_FIELD_BLOCKING_DBM, "LVB_STATED_BLOCKING"},
    {LVB_STATED_TRANSMIT_NOISE, LVB_FIELD_TRANSMIT_NOISE_DBM, "LVB_STATED_TRANSMIT_NOISE"},
    {LVB_STATED_RECEIVER_NOISE, LVB_FIELD_RECEIVER_NOISE_DBM, "LVB_STATED_RECEIVER_NOISE"},
    {LVB_STATED_EIRP_LIMIT, LVB_FIELD_EIRP_LIMIT_DBM, "LVB_STATED_EIRP_LIMIT"},
};

void put_not_stated(Writer &out, const lvb_fault &fault) noexcept {
    put_value(out, fault);
    out.put(", but its bit ");
    for (const Stated &each : stated)
        if (each.field == fault.field) {
            out.put(each.name);
            out.put(' ');
        }
    out.put("in `stated` is not set");
}

// The lowest bit that may not be set, by its name where it has one.
bool put_bit(Writer &out, const lvb_fault &fault) noexcept {
    const bool bits = fault.field == LVB_FIELD_STATED || fault.field == LVB_FIELD_WORST_CASE;
    const auto is_whole = [](double x) noexcept { return x >= 0.0 && x <= 4294967295.0; };
    if (!bits || !is_whole(fault.value) || !is_whole(fault.maximum)) return false;
    const std::uint32_t stray = static_cast<std::uint32_t>(fault.value) & ~static_cast<std::uint32_t>(fault.maximum);
    if (stray == 0) return false;
    const std::uint32_t lowest = stray & (~stray + 1);
    put_path(out, fault);
    out.put(" has the bit ");
    for (const Stated &each : stated)
        if (fault.field == LVB_FIELD_STATED && each.bit == lowest) {
            out.put(each.name);
            out.put(", which this ");
            out.put(struct_of(fault) == LVB_STRUCT_STAGE ? "kind of stage" : "struct");
            out.put(" has no use for");
            return true;
        }
    out.put_whole(lowest);
    out.put(", which this library does not know");
    return true;
}

// What a value is held against that must not lie below (or above) it.
const char *neighbour(const lvb_fault &fault) noexcept {
    switch (fault.field) {
    case LVB_FIELD_NEAR_DISTANCE_M:
        return "far_distance_m";
    case LVB_FIELD_WANTED_LOW_DBM:
        return "floor_dbm";
    case LVB_FIELD_WANTED_HIGH_DBM:
        return "wanted_low_dbm";
    case LVB_FIELD_CEILING_DBM:
        return "the limit before it";
    case LVB_FIELD_TOP_M:
        return "bottom_m";
    case LVB_FIELD_HIGHEST_MHZ:
        return "lowest_mhz";
    case LVB_FIELD_OUTER_DIAMETER_MM:
        return "1.01 times inner_diameter_mm";
    case LVB_FIELD_NEED:
    case LVB_FIELD_STAGE:
    case LVB_FIELD_ITEMS:
        return "the next in order";
    default:
        return "its neighbour";
    }
}

void put_order(Writer &out, const lvb_fault &fault) noexcept {
    const bool above = fault.value > fault.maximum, below = fault.value < fault.minimum;
    put_value(out, fault);
    out.put(above ? ", which is above " : below ? ", which is below " : ", which is not above ");
    out.put(neighbour(fault));
    out.put(" (");
    out.put(above ? fault.maximum : fault.minimum);
    out.put(')');
    put_allowed(out, fault);
}

// What to do about a field that is filled in vain, where more can be said than that; null elsewhere.
const char *use_of(const lvb_fault &fault) noexcept {
    constexpr double own_antenna = LVB_KIND_ANTENNA;
    if (struct_of(fault) == LVB_STRUCT_STAGE && fault.field == LVB_FIELD_PATTERN && fault.value == own_antenna)
        return " is filled, but this is the site's own antenna: give the pattern to its lvb_antenna instead";
    if (fault.structure == LVB_STRUCT_MAP && fault.field == LVB_FIELD_FADING)
        return " is filled, but the map has no array `outage` to put its result in: give one, or no law of fading";
    if (fault.structure == LVB_STRUCT_WALK && fault.field == LVB_FIELD_FADING)
        return " is filled, but the walk has neither an array `outage` nor a result: give one, or no law of fading";
    if ((fault.structure == LVB_STRUCT_ANTENNA || fault.structure == LVB_STRUCT_PLACE) && fault.row >= 0 &&
        (fault.field == LVB_FIELD_POLARIZATION_DEG || fault.field == LVB_FIELD_ELLIPTICITY))
        return " is filled, but counts only with a pack_antenna of the site, and never with a half-wave dipole: turn "
               "that by roll_deg";
    if (fault.stage == LVB_STAGE_PACK && fault.field >= LVB_FIELD_X_M && fault.field <= LVB_FIELD_Z_M)
        return " is filled, but the pack has no place of its own: it is wherever the map or walk asks";
    if (fault.structure != LVB_STRUCT_SITE) return nullptr;
    switch (fault.field) {
    case LVB_FIELD_FACING:
        return " is filled, but without a body_table or pack_antenna it changes nothing: give one, or leave facing 0";
    case LVB_FIELD_FACING_ANTENNA:
        return " is filled, but counts only with LVB_FACING_ANTENNA or LVB_FACING_AWAY, and a body_table or "
               "pack_antenna";
    case LVB_FIELD_FACING_AZIMUTH_DEG:
        return " is filled, but counts only with LVB_FACING_AZIMUTH, and a body_table or pack_antenna";
    case LVB_FIELD_FACING_X_M:
    case LVB_FIELD_FACING_Y_M:
        return " is filled, but counts only with LVB_FACING_POINT, and a body_table or pack_antenna";
    case LVB_FIELD_MOST_POLARIZATION_LOSS_DB:
        return " is filled, but counts only with a pack_antenna";
    default:
        return nullptr;
    }
}

// What is missing where the field's name alone would mislead; null elsewhere.
const char *lack_of(const lvb_fault &fault) noexcept {
    if (struct_of(fault) == LVB_STRUCT_LINK && fault.field == LVB_FIELD_STAGES)
        return " hold no air, which a site needs";
    if (fault.structure == LVB_STRUCT_SITE && fault.field == LVB_FIELD_AREAS)
        return ": no point of the grid lies in them";
    if (fault.structure == LVB_STRUCT_WALK && fault.field == LVB_FIELD_CORNER_COUNT)
        return ": the walk has no length, all its corners are in one place";
    return nullptr;
}

// Sentences about a stage's place in the chain; null for every other status.
const char *chain_sentence(lvb_status status) noexcept {
    switch (status) {
    case LVB_E_NO_SOURCE:
        return "the chain must begin with a source";
    case LVB_E_SECOND_SOURCE:
        return "a chain has only one source";
    case LVB_E_NO_TRANSMIT_ANTENNA:
        return "the air needs an antenna before it";
    case LVB_E_NO_RECEIVE_ANTENNA:
        return "the air needs an antenna after it";
    case LVB_E_SECOND_AIR:
        return "a chain has only one air";
    case LVB_E_ANTENNA_OUT_OF_PLACE:
        return "an antenna stands before the air and one after it, and no other";
    case LVB_E_STAGE_IN_AIR:
        return "only air and allowances stand between the two antennas";
    case LVB_E_AFTER_RECEIVER:
        return "nothing follows the receiver";
    default:
        return nullptr;
    }
}

void put_sentence(Writer &out, const lvb_fault &fault) noexcept {
    if (fault.status == LVB_E_NO_TRANSMIT_ANTENNA && fault.structure == LVB_STRUCT_LIMIT)
        return out.put("the limit needs a transmit antenna in the chain");
    if (const char *sentence = chain_sentence(fault.status)) {
        if (fault.stage >= 0) {
            if (!put_owner(out, fault)) put_stage(out, fault);
            out.put(" (");
            // The host may have made the fault up: its value need not be a kind.
            constexpr double first = LVB_KIND_SOURCE, last = LVB_KIND_RECEIVER;
            const bool is_kind = fault.value >= first && fault.value <= last;
            out.put(lvb_kind_name(is_kind ? static_cast<std::int32_t>(fault.value) : 0));
            out.put("): ");
        }
        return out.put(sentence);
    }
    switch (fault.status) {
    case LVB_OK:
        return out.put("nothing was refused");
    case LVB_E_NULL:
        put_path(out, fault);
        return out.put(" is null, but must be given");
    case LVB_E_UNKNOWN_TAIL:
        put_path(out, fault);
        out.put(": the struct is longer than the ");
        out.put(fault.maximum);
        return out.put(" bytes that this library knows, and the rest is not zero");
    case LVB_E_RESERVED:
        put_path(out, fault);
        return out.put(" is reserved and must be zero");
    case LVB_E_NAN:
        put_value(out, fault);
        return put_allowed(out, fault);
    case LVB_E_BELOW_RANGE:
        put_value(out, fault);
        out.put(", which is too low");
        return put_allowed(out, fault);
    case LVB_E_ABOVE_RANGE:
        put_value(out, fault);
        out.put(", which is too high");
        return put_allowed(out, fault);
    case LVB_E_MISSING:
        put_path(out, fault);
        if (const char *lack = lack_of(fault)) return out.put(lack);
        out.put(" is missing");
        return put_allowed(out, fault);
    case LVB_E_NOT_STATED:
        return put_not_stated(out, fault);
    case LVB_E_UNUSED:
        if (fault.field == LVB_FIELD_SINGLE) {
            put_value(out, fault);
            out.put(", but this formula has fewer arguments");
            return put_allowed(out, fault);
        }
        put_path(out, fault);
        if (const char *use = use_of(fault)) return out.put(use);
        out.put(" is filled, but this ");
        out.put(user_of_field(struct_of(fault)));
        return out.put(" has no use for it");
    case LVB_E_CONFLICT:
        if (fault.structure == LVB_STRUCT_SCREEN) {
            out.put(fault.field == LVB_FIELD_CANDIDATES ? "candidates[" : "antennas[");
            out.put(fault.value);
            out.put("] stands less than 0.01 m from screens");
            return put_index(out, fault.row);
        }
        put_path(out, fault);
        if (fault.structure == LVB_STRUCT_ITEM && fault.field == LVB_FIELD_KIND)
            return out.put(" cannot stand in for the first item of its slot");
        if (fault.row >= 0 && is_shared(fault))
            return out.put(
                " differs from that of an antenna before it; all chains of a site have one frequency and window");
        if (fault.structure == LVB_STRUCT_COLUMNS || fault.structure == LVB_STRUCT_GRID ||
            fault.structure == LVB_STRUCT_TRIALS || fault.structure == LVB_STRUCT_CHOICE ||
            fault.structure == LVB_STRUCT_COMPARE ||
            (fault.structure >= LVB_STRUCT_MAP && fault.structure <= LVB_STRUCT_PLACE) ||
            fault.field == LVB_FIELD_LOWEST_MARGIN_DB || fault.field == LVB_FIELD_LOWEST_HEADROOM_DB)
            return out.put(" overlaps another array of the call");
        return out.put(" says again what another field already says; give one of them");
    case LVB_E_ORDER:
        return put_order(out, fault);
    case LVB_E_UNKNOWN_VALUE:
    case LVB_E_UNKNOWN_KIND:
        if (put_bit(out, fault)) return;
        put_value(out, fault);
        if (fault.structure == LVB_STRUCT_ITEM && fault.field == LVB_FIELD_KIND)
            return out.put(", which cannot be an item of a stock");
        if (fault.field == LVB_FIELD_INSTRUCTIONS) {
            out.put(", which this library or this processor does not have");
            put_allowed(out, fault);
            return out.put(", or what lvb_best_instructions gave");
        }
        out.put(", which this library does not know");
        return put_allowed(out, fault);
    case LVB_E_TABLE_EMPTY:
        put_path(out, fault);
        return out.put(": the table has no rows");
    case LVB_E_TABLE_UNSORTED:
        put_value(out, fault);
        out.put(", below the row before it (");
        out.put(fault.minimum);
        return out.put(fault.field == LVB_FIELD_FREQUENCY_MHZ ? "); frequencies must rise" : "); angles must rise");
    case LVB_E_TABLE_DUPLICATE:
        if (fault.structure == LVB_STRUCT_AREA) return out.put("the corners of an area lie on one line");
        put_value(out, fault);
        return out.put(fault.row == 0 ? ", a whole turn from the last row" : ", the same as in the row before it");
    case LVB_E_TABLE_TOO_STEEP:
        put_value(out, fault);
        out.put(fault.row == 0 ? ", too far from the last row" : ", too far from the row before it");
        return put_allowed(out, fault);
    case LVB_E_OUTSIDE_TABLE:
        out.put("frequency_mhz");
        if (fault.row >= 0) put_index(out, fault.row); // of a sweep's list
        out.put(" is ");
        out.put(fault.value);
        out.put(", too far outside the table");
        if (fault.stage >= 0) out.put(" of ");
        put_stage(out, fault);
        return put_allowed(out, fault);
    case LVB_E_NOT_FOUND:
        put_value(out, fault);
        if (fault.structure == LVB_STRUCT_READING && math::is_nan(fault.maximum))
            return out.put(", where the level is radiated: there is no point to measure");
        if (fault.structure == LVB_STRUCT_SOLVE && fault.field == LVB_FIELD_FIELD)
            return out.put(", which cannot be solved for there");
        out.put(fault.structure == LVB_STRUCT_SOLVE ? ", which this link does not have" : ", of which there is none");
        return put_allowed(out, fault);
    default: // sizes, counts, infinities
        put_value(out, fault);
        return put_allowed(out, fault);
    }
}

} // namespace
} // namespace lvb::door

extern "C" size_t lvb_fault_text(const lvb_fault *fault, char *text, size_t capacity) {
    using namespace lvb::door;
    Writer out(text, capacity);
    if (fault_is_usable(fault)) {
        lvb_fault copy;
        std::memcpy(&copy, fault, sizeof copy);
        put_sentence(out, copy);
        out.put('.');
    }
    return out.finish();
}
