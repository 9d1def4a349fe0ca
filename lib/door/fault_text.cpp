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

void put_stage(Writer &out, const lvb_fault &fault) noexcept {
    if (fault.stage == LVB_STAGE_TRANSMIT) return out.put("transmit");
    if (fault.stage == LVB_STAGE_RECEIVE) return out.put("receive");
    if (fault.stage < 0) return;
    out.put("stages[");
    out.put_whole(static_cast<std::uint64_t>(fault.stage));
    out.put(']');
}

void put_row(Writer &out, const lvb_fault &fault) noexcept {
    if (fault.row < 0) return;
    out.put('[');
    out.put_whole(static_cast<std::uint64_t>(fault.row));
    out.put(']');
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

// An array of elements that have no path of their own; null for every other struct.
const char *array_of(std::int32_t structure) noexcept {
    switch (structure) {
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

// items[3].cost, readings[2].level_dbm.
bool put_element(Writer &out, const lvb_fault &fault) noexcept {
    const char *array = fault.row < 0 ? nullptr : array_of(fault.structure);
    if (array == nullptr) return false;
    out.put(array);
    put_row(out, fault);
    if (fault.field == LVB_FIELD_SIZE) return true;
    out.put('.');
    out.put(lvb_field_name(fault.field));
    return true;
}

// How an element of a site's antennas, candidates or a choice's needs leads to what it lends; null where the fault is in
// no such thing.
const char *element_path(const lvb_fault &fault) noexcept {
    if (fault.row < 0) return nullptr;
    switch (fault.structure) {
    case LVB_STRUCT_STAGE:
    case LVB_STRUCT_LINK:
        return "link.";
    case LVB_STRUCT_ANTENNA:
        return "antenna.";
    case LVB_STRUCT_PATTERN:
        return fault.stage >= 0 ? "link." : "antenna.pattern.";
    default:
        return nullptr;
    }
}

// The field as a programmer writes it: stages[2].cable_table.frequency_mhz[3], stages[4].path.edges[1].height_m.
void put_path(Writer &out, const lvb_fault &fault) noexcept {
    if (put_element(out, fault)) return;
    const char *lent = fault.stage >= 0 || fault.stage == LVB_STAGE_TRANSMIT || fault.stage == LVB_STAGE_RECEIVE
                           ? lent_path(fault.structure)
                           : nullptr;
    const char *of_element = element_path(fault);
    if (of_element != nullptr) {
        out.put("element");
        put_row(out, fault);
        out.put('.');
        out.put(of_element);
    }
    const bool whole_stage = fault.structure == LVB_STRUCT_STAGE && fault.field == LVB_FIELD_SIZE;
    const bool edge = fault.structure == LVB_STRUCT_EDGE && fault.row >= 0;
    if (lent != nullptr) {
        put_stage(out, fault);
        if (whole_stage) return;
        out.put('.');
        out.put(lent);
    } else if (fault.structure != LVB_STRUCT_NONE && of_element == nullptr) {
        out.put(struct_name(edge ? LVB_STRUCT_PATH : fault.structure));
        out.put('.');
    }
    if (edge) {
        out.put("edges");
        put_row(out, fault);
        if (fault.field == LVB_FIELD_SIZE) return;
        out.put('.');
    }
    out.put(lvb_field_name(fault.field));
    if (!edge && of_element == nullptr) put_row(out, fault);
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
        return "kind of pattern";
    case LVB_STRUCT_SITE:
        return "facing";
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
    default:
        return "kind of stage";
    }
}

void put_value(Writer &out, const lvb_fault &fault) noexcept {
    put_path(out, fault);
    out.put(" is ");
    out.put(fault.value);
}

void put_allowed(Writer &out, const lvb_fault &fault) noexcept {
    if (math::is_nan(fault.minimum) || math::is_nan(fault.maximum)) return;
    out.put("; allowed ");
    out.put(fault.minimum);
    out.put(" to ");
    out.put(fault.maximum);
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
            put_stage(out, fault);
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
        out.put(" is missing");
        return put_allowed(out, fault);
    case LVB_E_NOT_STATED:
        put_value(out, fault);
        return out.put(", but its bit in `stated` is not set");
    case LVB_E_UNUSED:
        if (fault.field == LVB_FIELD_SINGLE) {
            put_value(out, fault);
            out.put(", but this formula has fewer arguments");
            return put_allowed(out, fault);
        }
        put_path(out, fault);
        out.put(" is filled, but this ");
        out.put(user_of_field(fault.structure));
        return out.put(" has no use for it");
    case LVB_E_CONFLICT:
        put_path(out, fault);
        if (fault.structure == LVB_STRUCT_SITE_ANTENNA) return out.put(" differs from that of the first antenna");
        if (fault.structure == LVB_STRUCT_SCREEN) return out.put(" stands less than 0.01 m from the screen");
        if (fault.structure == LVB_STRUCT_COLUMNS || fault.structure == LVB_STRUCT_GRID ||
            (fault.structure >= LVB_STRUCT_MAP && fault.structure <= LVB_STRUCT_PLACE) ||
            fault.field == LVB_FIELD_LOWEST_MARGIN_DB || fault.field == LVB_FIELD_LOWEST_HEADROOM_DB)
            return out.put(" overlaps another array of the call");
        return out.put(" says again what another field already says; give one of them");
    case LVB_E_ORDER:
        put_value(out, fault);
        out.put(", which is on the wrong side of its neighbour");
        return put_allowed(out, fault);
    case LVB_E_UNKNOWN_VALUE:
    case LVB_E_UNKNOWN_KIND:
        put_value(out, fault);
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
        out.put("frequency_mhz is ");
        out.put(fault.value);
        out.put(", too far outside the table");
        if (fault.stage >= 0) out.put(" of ");
        put_stage(out, fault);
        return put_allowed(out, fault);
    case LVB_E_NOT_FOUND:
        put_value(out, fault);
        if (fault.structure == LVB_STRUCT_READING && math::is_nan(fault.maximum))
            return out.put(", where the level is radiated: there is no point to measure");
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
