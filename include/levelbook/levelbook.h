/**
 * @file
 * levelbook: link budgets for short wireless audio links, in C99.
 *
 * levelbook keeps the level book of a radio link: every gain and loss from transmitter to receiver, entered in
 * order, summed, and judged against the window that the receiver needs.
 *
 * Promises
 *  - The caller owns all memory. No function allocates, locks, prints, reads files, keeps state, touches the locale
 *    or calls back. Every function may be called from any thread, also from an interrupt or an audio thread.
 *  - Bad input is refused with a status and a fault that says which stage, which field, what came and what is
 *    allowed. Nothing is written to the results of a refused call; only the fault is.
 *  - Strings that a function returns are constant text that lives as long as the library.
 *  - Pointers in a struct are borrowed for the time of the call; user pointers are never read, labels of stages only by
 *    lvb_compute_comparison.
 *
 * Structs
 *  - A struct's first member is `size`; set it to sizeof the struct. The elements of an array of structs carry no size
 *    of their own: it is passed with the array. A zeroed struct with its size set is valid, or it is refused with a
 *    fault that names the missing field.
 *  - Zero means the neutral default. Where zero is also a real value that must be told from "not given" (a window's
 *    limit of 0 dBm, 0 degC), the struct has a member `stated`: set the bit of every such field that you give. A value
 *    without its bit is refused, never ignored. A source's level_dbm is taken as it is: 0 is 0 dBm.
 *  - An array that is lent has its count: a count without the array is refused (LVB_E_NULL), and so is an array whose count
 *    is 0 (LVB_E_MISSING). (Where a count says how much is to be computed, as in lvb_columns, lvb_grid and lvb_map, 0 is
 *    nothing to do.)
 *  - A field that does not belong to what a struct describes must be zero; a filled one is refused, never ignored. (A
 *    link's temperature may be given whether or not it has a cable to use it.)
 *  - Results must not overlap the structs and tables that a call reads, but for what a function says itself.
 *  - Of a result struct only `size` is read; whatever its other members hold, they are written over.
 *  - Fields are only ever appended. A library newer than its caller reads the missing tail as zero. A tail that the
 *    library does not know must be zero, or the call is refused; in a result such a tail is set to zero.
 *
 * Units: MHz, m, dBm, dB, degrees, degC, W, mW, as each name says. Gains are signed and losses in a chain are negative
 * gains; a function or field named `loss` is positive when power is lost.
 *
 * Numbers: IEEE binary64 with round to nearest, the default of every C program. A thread that flushes subnormal numbers
 * to zero gets the same bits wherever arguments and results are normal numbers; another rounding mode is not served.
 *
 * Cautions. A prediction does not replace a walk test with the real packs. Radiated power and frequencies are set
 * by the national regulator and the licence. Keep people away from radiating antennas by the exposure rules in force.
 * Where national rules and this library differ, the rules win.
 */
#ifndef LEVELBOOK_LEVELBOOK_H
#define LEVELBOOK_LEVELBOOK_H

#include <stddef.h>
#include <stdint.h>

/** The version of this header; lvb_version_number tells that of the library which runs. */
#define LVB_VERSION_MAJOR 0
#define LVB_VERSION_MINOR 1 /**< see LVB_VERSION_MAJOR */
#define LVB_VERSION_PATCH 0 /**< see LVB_VERSION_MAJOR */

/* LVB_STATIC: define it when you link the static archive, or to hand this header to a binding generator.
 * LVB_BUILDING is for levelbook's own build. */
#if defined(LVB_STATIC)
#define LVB_API
#elif defined(_WIN32)
#if defined(LVB_BUILDING)
#define LVB_API __declspec(dllexport)
#else
#define LVB_API __declspec(dllimport)
#endif
#elif defined(__GNUC__)
#define LVB_API __attribute__((visibility("default")))
#else
#define LVB_API
#endif

#ifdef __cplusplus
extern "C" {
#endif

/* ------------------------------------------------------------------------------------------------------------
 * Status, fault and text.
 * ---------------------------------------------------------------------------------------------------------- */

/** Outcome of a call: LVB_OK or a negative LVB_E_ value. Values are pinned and grouped in classes of a hundred. */
typedef int32_t lvb_status;

enum {
    LVB_OK = 0,

    /* the call itself */
    LVB_E_NULL = -101,         /**< a pointer that must be given is null */
    LVB_E_STRUCT_SIZE = -102,  /**< a struct's size is smaller than its first version, or absurdly large */
    LVB_E_ELEMENT_SIZE = -103, /**< an array's element size is smaller than its first version, or absurdly large */
    LVB_E_UNKNOWN_TAIL = -104, /**< a struct is longer than this library knows, and the unknown tail is not zero */
    LVB_E_COUNT = -105,        /**< a count is more than is served, or fewer than are needed */
    LVB_E_RESERVED = -106,     /**< a reserved field is not zero */

    /* values */
    LVB_E_NAN = -201,           /**< a value is not a number */
    LVB_E_INFINITE = -202,      /**< a value is infinite */
    LVB_E_BELOW_RANGE = -203,   /**< a value is below the allowed range */
    LVB_E_ABOVE_RANGE = -204,   /**< a value is above the allowed range */
    LVB_E_MISSING = -205,       /**< a field that must be given is zero */
    LVB_E_NOT_STATED = -206,    /**< a field has a value, but its bit in `stated` is not set */
    LVB_E_UNUSED = -207,        /**< a field is filled that does not belong to this kind of stage */
    LVB_E_CONFLICT = -208,      /**< a field says again what another one already says, or an array overlaps another */
    LVB_E_ORDER = -209,         /**< two fields are the wrong way round (near beyond far, floor above ceiling): `minimum` or
                                     `maximum` is what the other one allows */
    LVB_E_UNKNOWN_VALUE = -210, /**< a basis, cable type or flag that this library does not know */

    /* the chain */
    LVB_E_NO_SOURCE = -301,            /**< the chain is empty or its first stage is not a source */
    LVB_E_SECOND_SOURCE = -302,        /**< a second source */
    LVB_E_UNKNOWN_KIND = -303,         /**< a kind of stage that this library does not know */
    LVB_E_NO_TRANSMIT_ANTENNA = -304,  /**< air, or a limit of what is radiated, with no antenna before it */
    LVB_E_NO_RECEIVE_ANTENNA = -305,   /**< air with no antenna after it */
    LVB_E_SECOND_AIR = -306,           /**< a second air */
    LVB_E_ANTENNA_OUT_OF_PLACE = -307, /**< a second antenna before the air, or a third one */
    LVB_E_STAGE_IN_AIR = -308,         /**< a conducted stage or a receiver between the two antennas */
    LVB_E_AFTER_RECEIVER = -309,       /**< a stage after the receiver */

    /* tables */
    LVB_E_TABLE_EMPTY = -401,     /**< a table without rows */
    LVB_E_TABLE_UNSORTED = -402,  /**< a table whose frequencies do not rise */
    LVB_E_TABLE_DUPLICATE = -403, /**< a table that holds a frequency twice */
    LVB_E_TABLE_TOO_STEEP = -404, /**< a table whose neighbouring rows differ more than the stated law allows */
    LVB_E_OUTSIDE_TABLE = -405,   /**< a frequency further outside a table than the stated range */

    /* look-ups */
    LVB_E_NOT_FOUND = -501 /**< nothing of this number or name */
};

/** Structs, as a fault names them (and lvb_struct_size takes them). */
enum {
    LVB_STRUCT_NONE = 0, /**< an argument of the call, not a struct's field */
    LVB_STRUCT_FAULT = 1,
    LVB_STRUCT_LINK = 2,
    LVB_STRUCT_STAGE = 3,
    LVB_STRUCT_LEVEL = 4,
    LVB_STRUCT_BUDGET = 5,
    LVB_STRUCT_GAIN_TABLE = 6,
    LVB_STRUCT_CABLE_TABLE = 7,
    LVB_STRUCT_CABLE_RUN = 8,
    LVB_STRUCT_CABLE_LOSS = 9,
    LVB_STRUCT_CABLE_INFO = 10,
    LVB_STRUCT_CABLE_ROW = 11,
    LVB_STRUCT_RANGE = 12,
    LVB_STRUCT_END = 13, /**< part of lvb_budget; has no size of its own */
    LVB_STRUCT_COLUMNS = 14,
    LVB_STRUCT_BAD = 15,
    LVB_STRUCT_GRID = 16,
    /* cable: from 17 */
    LVB_STRUCT_COAXIAL_LINE = 17,
    LVB_STRUCT_COAXIAL_PROPERTIES = 18,
    /* antennas and bodies: from 20 */
    LVB_STRUCT_PATTERN = 20,
    LVB_STRUCT_AZIMUTH_CUT = 21,
    LVB_STRUCT_ELEVATION_CUT = 22,
    LVB_STRUCT_PATTERN_GAIN = 23,
    LVB_STRUCT_ANTENNA = 24,
    LVB_STRUCT_POINTING = 25,
    LVB_STRUCT_BODY_TABLE = 26,
    LVB_STRUCT_ALLOWANCE_INFO = 27,
    /* other paths: from 30 */
    LVB_STRUCT_PATH = 30,
    LVB_STRUCT_PATH_LOSS = 31,
    LVB_STRUCT_EDGE = 32, /**< an element of an array; has no member `size` */
    /* fading: from 35 */
    /* noise and linearity: from 40 */
    LVB_STRUCT_NOISE_CONDITIONS = 40,
    LVB_STRUCT_NOISE = 41,
    LVB_STRUCT_NOISE_LINE = 42,
    /* two systems: from 45 */
    LVB_STRUCT_NEIGHBOURS = 45,
    LVB_STRUCT_COEXISTENCE = 46,
    /* limits: from 50 */
    LVB_STRUCT_LIMIT = 50,
    LVB_STRUCT_LIMIT_RESULT = 51,
    LVB_STRUCT_LIMIT_RULE = 52,
    /* sweeps, maps and walks: from 60 */
    LVB_STRUCT_SITE = 60,
    LVB_STRUCT_SITE_ANTENNA = 61, /**< an element of an array; has no member `size` */
    LVB_STRUCT_AREA = 62,         /**< an element of an array; has no member `size` */
    LVB_STRUCT_SCREEN = 63,       /**< an element of an array; has no member `size` */
    LVB_STRUCT_MAP = 64,
    LVB_STRUCT_MAP_SUMMARY = 65,
    LVB_STRUCT_WALK = 66,
    LVB_STRUCT_WALK_RESULT = 67,
    LVB_STRUCT_PLACE = 68,
    LVB_STRUCT_PLACEMENT = 69, /**< an element of an array; has no member `size` */
    LVB_STRUCT_SWEEP = 93,
    LVB_STRUCT_SWEEP_RESULT = 94,
    LVB_STRUCT_EXTREME = 95, /**< part of lvb_sweep_result; has no member `size` */
    /* choose: from 70 */
    LVB_STRUCT_ITEM = 70,
    LVB_STRUCT_SLOT = 71,
    LVB_STRUCT_NEED = 72,
    LVB_STRUCT_CHOICE = 73,
    LVB_STRUCT_CHOSEN = 74,
    LVB_STRUCT_MISS = 75,
    LVB_STRUCT_CHOICE_SCRATCH = 76,
    /* locate: from 77 */
    LVB_STRUCT_LOCATE = 77,
    LVB_STRUCT_READING = 78,
    LVB_STRUCT_SUSPECT = 79,
    LVB_STRUCT_LOCATE_RESULT = 80,
    /* how sure: from 82 */
    LVB_STRUCT_QUANTILE = 81, /**< an element of an array; has no member `size` */
    LVB_STRUCT_SPREAD = 82,   /**< an element of an array; has no member `size` */
    LVB_STRUCT_TRIALS = 83,
    LVB_STRUCT_TALLY = 84,
    LVB_STRUCT_SURENESS = 85,
    /* solve, rank, compare: from 86 */
    LVB_STRUCT_SOLVE = 86,
    LVB_STRUCT_SOLUTION = 87,
    LVB_STRUCT_RANKING = 88,
    LVB_STRUCT_CONTRIBUTION = 89, /**< an element of an array; has no member `size` */
    LVB_STRUCT_COMPARE = 90,
    LVB_STRUCT_COMPARISON = 91,
    LVB_STRUCT_PAIR = 92, /**< an element of an array; has no member `size` */
};

/** Fields and arguments, as a fault names them; lvb_field_name gives the name as it stands in this header. */
enum {
    LVB_FIELD_NONE = 0,
    LVB_FIELD_SIZE = 1,
    LVB_FIELD_STATED = 2,
    LVB_FIELD_RESERVED = 3,
    LVB_FIELD_KIND = 4,
    LVB_FIELD_BASIS = 5,
    LVB_FIELD_CABLE_TYPE = 6,
    LVB_FIELD_CONNECTOR_COUNT = 7,
    LVB_FIELD_STAGE_COUNT = 8,
    LVB_FIELD_STAGE_SIZE = 9,
    LVB_FIELD_ROW_COUNT = 10,
    LVB_FIELD_STAGES = 11,
    LVB_FIELD_GAIN_TABLE = 12,
    LVB_FIELD_CABLE_TABLE = 13,
    LVB_FIELD_FREQUENCY_MHZ = 14,
    LVB_FIELD_FAR_DISTANCE_M = 15,
    LVB_FIELD_NEAR_DISTANCE_M = 16,
    LVB_FIELD_TEMPERATURE_DEGC = 17,
    LVB_FIELD_LEVEL_DBM = 18,
    LVB_FIELD_GAIN_DB = 19,
    LVB_FIELD_TOLERANCE_DB = 20,
    LVB_FIELD_LENGTH_M = 21,
    LVB_FIELD_CONNECTOR_LOSS_DB = 22,
    LVB_FIELD_FLOOR_DBM = 23,
    LVB_FIELD_WANTED_LOW_DBM = 24,
    LVB_FIELD_WANTED_HIGH_DBM = 25,
    LVB_FIELD_CEILING_DBM = 26,
    LVB_FIELD_ATTENUATION_DB_PER_100M = 27,
    LVB_FIELD_LINK = 28,
    LVB_FIELD_BUDGET = 29,
    LVB_FIELD_LEVEL_SIZE = 30,
    LVB_FIELD_RUN = 31,
    LVB_FIELD_LOSS = 32,
    LVB_FIELD_INFO = 33,
    LVB_FIELD_ROW = 34,
    LVB_FIELD_ROW_INDEX = 35,
    LVB_FIELD_RANGE = 36,
    LVB_FIELD_STRUCTURE = 37,
    LVB_FIELD_FIELD = 38,
    LVB_FIELD_COLUMNS = 39,
    LVB_FIELD_BAD = 40,
    LVB_FIELD_FORMULA = 41,
    LVB_FIELD_INSTRUCTIONS = 42,
    LVB_FIELD_SINGLE = 43,
    LVB_FIELD_COUNT = 44,
    LVB_FIELD_ARGUMENT_1 = 45,
    LVB_FIELD_ARGUMENT_2 = 46,
    LVB_FIELD_ARGUMENT_3 = 47,
    LVB_FIELD_RESULT = 48,
    LVB_FIELD_GRID = 49,
    LVB_FIELD_END = 50,
    LVB_FIELD_FREQUENCY_COUNT = 51,
    LVB_FIELD_DISTANCE_COUNT = 52,
    LVB_FIELD_DISTANCE_M = 53,
    LVB_FIELD_SCRATCH = 54,
    LVB_FIELD_TABLE = 55,
    /* cable: from 60 */
    LVB_FIELD_LINE = 60,
    LVB_FIELD_PROPERTIES = 61,
    LVB_FIELD_INNER_DIAMETER_MM = 62,
    LVB_FIELD_OUTER_DIAMETER_MM = 63,
    LVB_FIELD_INNER_CONDUCTIVITY = 64,
    LVB_FIELD_OUTER_CONDUCTIVITY = 65,
    LVB_FIELD_INNER_FACTOR = 66,
    LVB_FIELD_OUTER_FACTOR = 67,
    LVB_FIELD_RELATIVE_PERMITTIVITY = 68,
    LVB_FIELD_LOSS_TANGENT = 69,
    /* antennas and bodies: from 80 */
    LVB_FIELD_X_M = 80,
    LVB_FIELD_Y_M = 81,
    LVB_FIELD_Z_M = 82,
    LVB_FIELD_AZIMUTH_DEG = 83,
    LVB_FIELD_ELEVATION_DEG = 84,
    LVB_FIELD_TILT_DEG = 85,
    LVB_FIELD_ROLL_DEG = 86,
    LVB_FIELD_POLARIZATION_DEG = 87,
    LVB_FIELD_ELLIPTICITY = 88,
    LVB_FIELD_LARGEST_DIMENSION_M = 89,
    LVB_FIELD_PATTERN = 90,
    LVB_FIELD_GAIN_DBI = 91,
    LVB_FIELD_BEAM_WIDTH_DEG = 92,
    LVB_FIELD_FRONT_TO_BACK_DB = 93,
    LVB_FIELD_AZIMUTH_CUT = 94,
    LVB_FIELD_ELEVATION_CUT = 95,
    LVB_FIELD_TURNS = 96,
    LVB_FIELD_SPACING_WAVELENGTHS = 97,
    LVB_FIELD_CIRCUMFERENCE_WAVELENGTHS = 98,
    LVB_FIELD_TRANSMIT = 99,
    LVB_FIELD_RECEIVE = 100,
    LVB_FIELD_POINTING = 101,
    LVB_FIELD_FAR_AZIMUTH_DEG = 102,
    LVB_FIELD_FAR_ELEVATION_DEG = 103,
    LVB_FIELD_NEAR_AZIMUTH_DEG = 104,
    LVB_FIELD_NEAR_ELEVATION_DEG = 105,
    LVB_FIELD_FACING_DEG = 106,
    LVB_FIELD_BODY_TABLE = 107,
    LVB_FIELD_LOSS_DB = 108,
    /* other paths: from 110 */
    LVB_FIELD_PATH = 110,
    LVB_FIELD_MODEL = 111,
    LVB_FIELD_ENVIRONMENT = 112,
    LVB_FIELD_POLARIZATION = 113,
    LVB_FIELD_FLOOR_COUNT = 114,
    LVB_FIELD_WALL_COUNT = 115,
    LVB_FIELD_EDGE_COUNT = 116,
    LVB_FIELD_EDGE_SIZE = 117,
    LVB_FIELD_EDGES = 118,
    LVB_FIELD_TRANSMIT_HEIGHT_M = 119,
    LVB_FIELD_RECEIVE_HEIGHT_M = 120,
    LVB_FIELD_HEIGHT_M = 121,
    LVB_FIELD_CONDUCTIVITY_S_PER_M = 122,
    LVB_FIELD_EXPONENT = 123,
    LVB_FIELD_REFERENCE_DISTANCE_M = 124,
    LVB_FIELD_REFERENCE_LOSS_DB = 125,
    LVB_FIELD_POWER_LOSS_COEFFICIENT = 126,
    LVB_FIELD_FLOOR_LOSS_DB = 127,
    LVB_FIELD_WALL_LOSS_DB = 128,
    LVB_FIELD_LONGITUDINAL_LOSS_DB_PER_100M = 129,
    LVB_FIELD_LATERAL_DISTANCE_M = 130,
    LVB_FIELD_STANDARD_DEVIATION_DB = 131,
    /* fading: from 140 */
    /* noise and linearity: from 150 */
    LVB_FIELD_NOISE_FIGURE_DB = 150,
    LVB_FIELD_INTERCEPT_DBM = 151,
    LVB_FIELD_COMPRESSION_DBM = 152,
    LVB_FIELD_CONDITIONS = 153,
    LVB_FIELD_NOISE = 154,
    LVB_FIELD_LINE_SIZE = 155,
    LVB_FIELD_NOISE_AT = 156,
    LVB_FIELD_INTERFERENCE_AT = 157,
    LVB_FIELD_CARRIERS = 158,
    LVB_FIELD_BANDWIDTH_MHZ = 159,
    LVB_FIELD_ANTENNA_TEMPERATURE_K = 160,
    LVB_FIELD_EXTERNAL_NOISE_FIGURE_DB = 161,
    LVB_FIELD_NOISE_DBM = 162,
    LVB_FIELD_INTERFERENCE_DBM = 163,
    LVB_FIELD_CARRIER_TO_NOISE_DB = 164,
    /* two systems: from 180 */
    LVB_FIELD_NEIGHBOURS = 180,
    LVB_FIELD_COEXISTENCE = 181,
    LVB_FIELD_TRANSMIT_DBM = 182,
    LVB_FIELD_TRANSMIT_GAIN_DBI = 183,
    LVB_FIELD_RECEIVE_GAIN_DBI = 184,
    LVB_FIELD_SEPARATION_M = 185,
    LVB_FIELD_COUPLING_LOSS_DB = 186,
    LVB_FIELD_TRANSMIT_MHZ = 187,
    LVB_FIELD_RECEIVE_MHZ = 188,
    LVB_FIELD_RECEIVE_LOSS_DB = 189,
    LVB_FIELD_RECEIVE_FILTER_DB = 190,
    LVB_FIELD_TRANSMIT_FILTER_DB = 191,
    LVB_FIELD_BLOCKING_DBM = 192,
    LVB_FIELD_TRANSMIT_NOISE_DBM = 193,
    LVB_FIELD_TRANSMIT_NOISE_DBC_PER_HZ = 194,
    LVB_FIELD_RECEIVER_BANDWIDTH_MHZ = 195,
    LVB_FIELD_RECEIVER_NOISE_DBM = 196,
    LVB_FIELD_WANTED_MARGIN_DB = 197,
    LVB_FIELD_WANTED_RISE_DB = 198,
    /* limits: from 200 */
    LVB_FIELD_LIMIT = 200,
    LVB_FIELD_QUANTITY = 201,
    LVB_FIELD_LIMIT_DBM = 202,
    LVB_FIELD_LOWEST_MHZ = 203,
    LVB_FIELD_HIGHEST_MHZ = 204,
    LVB_FIELD_RULE = 205,
    LVB_FIELD_RULE_INDEX = 206,
    /* sweeps, maps and walks: from 220 */
    LVB_FIELD_SITE = 220,
    LVB_FIELD_DIRECTION = 221,
    LVB_FIELD_COMBINE = 222,
    LVB_FIELD_FACING = 223,
    LVB_FIELD_ANTENNA_COUNT = 224,
    LVB_FIELD_ANTENNA_SIZE = 225,
    LVB_FIELD_AREA_COUNT = 226,
    LVB_FIELD_AREA_SIZE = 227,
    LVB_FIELD_SCREEN_COUNT = 228,
    LVB_FIELD_SCREEN_SIZE = 229,
    LVB_FIELD_FACING_ANTENNA = 230,
    LVB_FIELD_ANTENNAS = 231,
    LVB_FIELD_AREAS = 232,
    LVB_FIELD_SCREENS = 233,
    LVB_FIELD_PACK_HEIGHT_M = 234,
    LVB_FIELD_FACING_AZIMUTH_DEG = 235,
    LVB_FIELD_FACING_X_M = 236,
    LVB_FIELD_FACING_Y_M = 237,
    LVB_FIELD_ANTENNA = 238,
    LVB_FIELD_CORNER_COUNT = 239,
    LVB_FIELD_X1_M = 240,
    LVB_FIELD_Y1_M = 241,
    LVB_FIELD_X2_M = 242,
    LVB_FIELD_Y2_M = 243,
    LVB_FIELD_BOTTOM_M = 244,
    LVB_FIELD_TOP_M = 245,
    LVB_FIELD_MAP = 246,
    LVB_FIELD_SUMMARY = 247,
    LVB_FIELD_FADING = 248,
    LVB_FIELD_FADING_PARAMETER = 249,
    LVB_FIELD_STEP_X_M = 250,
    LVB_FIELD_STEP_Y_M = 251,
    LVB_FIELD_COLUMN_COUNT = 252,
    LVB_FIELD_FIRST_ROW = 253,
    LVB_FIELD_MARGIN_DB = 254,
    LVB_FIELD_HEADROOM_DB = 255,
    LVB_FIELD_OUTAGE = 256,
    LVB_FIELD_ZONE = 257,
    LVB_FIELD_SERVING = 258,
    LVB_FIELD_WALK = 259,
    LVB_FIELD_SWEEP = 380,
    LVB_FIELD_FIRST_MHZ = 381,
    LVB_FIELD_LAST_MHZ = 382,
    LVB_FIELD_LOWEST_MARGIN_DB = 383,
    LVB_FIELD_LOWEST_HEADROOM_DB = 384,
    /* choose: from 260 */
    LVB_FIELD_CHOICE = 260,
    LVB_FIELD_NEEDS = 263,
    LVB_FIELD_NEED_COUNT = 264,
    LVB_FIELD_NEED_SIZE = 265,
    LVB_FIELD_ITEMS = 266,
    LVB_FIELD_ITEM_COUNT = 267,
    LVB_FIELD_ITEM_SIZE = 268,
    LVB_FIELD_SLOTS = 269,
    LVB_FIELD_SLOT_COUNT = 270,
    LVB_FIELD_SLOT_SIZE = 271,
    LVB_FIELD_SET_COUNT = 272,
    LVB_FIELD_SETS = 273,
    LVB_FIELD_COSTS = 274,
    LVB_FIELD_MISS_SIZE = 275,
    LVB_FIELD_SCRATCH_BYTES = 276,
    LVB_FIELD_STAGE = 277,
    LVB_FIELD_COST = 278,
    LVB_FIELD_WORST_CASE = 279,
    LVB_FIELD_EIRP_LIMIT_DBM = 282,
    LVB_FIELD_NOISE_FIGURE_LIMIT_DB = 283,
    LVB_FIELD_NEED = 285,
    /* locate: from 286 */
    LVB_FIELD_LOCATE = 286,
    LVB_FIELD_READINGS = 287,
    LVB_FIELD_READING_COUNT = 288,
    LVB_FIELD_READING_SIZE = 289,
    LVB_FIELD_UNCERTAINTY_DB = 291,
    LVB_FIELD_FAULT_PROBABILITY = 292,
    LVB_FIELD_FAULT_SPREAD_DB = 293,
    LVB_FIELD_FALSE_ALARM = 294,
    LVB_FIELD_SUSPECT_SIZE = 295,
    /* how sure: from 300 */
    LVB_FIELD_SURENESS = 296,
    LVB_FIELD_FAR_LEVEL_DBM = 297,
    LVB_FIELD_NEAR_LEVEL_DBM = 298,
    LVB_FIELD_PROBABILITY = 299,
    LVB_FIELD_TRIALS = 300,
    LVB_FIELD_SPREADS = 301,
    LVB_FIELD_SPREAD_COUNT = 302,
    LVB_FIELD_SPREAD_SIZE = 303,
    LVB_FIELD_LAW = 304,
    LVB_FIELD_COVERAGE_FACTOR = 305,
    LVB_FIELD_RICE_FACTOR_DB = 307,
    LVB_FIELD_NAKAGAMI_SHAPE = 308,
    LVB_FIELD_SHADOWING_DB = 309,
    LVB_FIELD_FIRST_TRIAL = 310,
    LVB_FIELD_TRIAL_COUNT = 311,
    LVB_FIELD_TALLY = 312,
    LVB_FIELD_TALLIES = 313,
    LVB_FIELD_TALLY_COUNT = 314,
    LVB_FIELD_TALLY_SIZE = 315,
    LVB_FIELD_LEVELS_DBM = 316,
    LVB_FIELD_QUANTILES = 317,
    LVB_FIELD_QUANTILE_COUNT = 318,
    LVB_FIELD_QUANTILE_SIZE = 319,
    LVB_FIELD_FAR_SUM = 400,
    LVB_FIELD_FAR_SQUARES_HIGH = 401,
    LVB_FIELD_NEAR_SUM = 402,
    LVB_FIELD_NEAR_SQUARES_HIGH = 403,
    LVB_FIELD_FAR_DBM = 404,
    LVB_FIELD_NEAR_DBM = 405,
    LVB_FIELD_MISSES = 406,
    LVB_FIELD_POINTS = 407,
    LVB_FIELD_OUTSIDE = 408,
    LVB_FIELD_UNMODELLED = 409,
    LVB_FIELD_OVERLOADED = 410,
    LVB_FIELD_WORST_LEVEL_DBM = 411,
    LVB_FIELD_HOTTEST_LEVEL_DBM = 412,
    LVB_FIELD_WORST_SERVING = 413,
    LVB_FIELD_HOTTEST_SERVING = 414,
    LVB_FIELD_PACK_ANTENNA = 415,
    LVB_FIELD_MOST_POLARIZATION_LOSS_DB = 416,
    /* solve, rank, compare: from 320 */
    LVB_FIELD_SOLVE = 320,
    LVB_FIELD_SOLUTION = 321,
    LVB_FIELD_GOAL = 322,
    LVB_FIELD_TOLERANCES = 323,
    LVB_FIELD_WANTED = 324,
    LVB_FIELD_RANKING = 325,
    LVB_FIELD_CONTRIBUTION_SIZE = 326,
    LVB_FIELD_COMPARE = 327,
    LVB_FIELD_COMPARISON = 328,
    LVB_FIELD_FIRST = 329,
    LVB_FIELD_SECOND = 330,
    LVB_FIELD_PAIR_SIZE = 331,
    LVB_FIELD_PAIRS = 332,
    LVB_FIELD_STAGE_INDEX = 333,
    /* walks and placements: from 360 */
    LVB_FIELD_POINT_COUNT = 360,
    LVB_FIELD_SPEED_M_PER_S = 361,
    LVB_FIELD_STEP_M = 362,
    LVB_FIELD_PLACE = 363,
    LVB_FIELD_PLACE_COUNT = 364,
    LVB_FIELD_CANDIDATE_COUNT = 365,
    LVB_FIELD_CANDIDATE_SIZE = 366,
    LVB_FIELD_CANDIDATES = 367,
    LVB_FIELD_LEAST_HEADROOM_DB = 368,
    LVB_FIELD_SCRATCH_COUNT = 369,
    LVB_FIELD_PLACEMENTS = 370,
    LVB_FIELD_PLACEMENT_SIZE = 371,
    LVB_FIELD_PLACEMENT_COUNT = 372,
    LVB_FIELD_FOUND_COUNT = 373,
    LVB_FIELD_TO_X_M = 374,
    LVB_FIELD_TO_Y_M = 375,
    LVB_FIELD_TO_Z_M = 376,
};

/** What a fault's `stage` says where it is not the index of a stage. */
enum {
    LVB_STAGE_NONE = -1,
    LVB_STAGE_TRANSMIT = -2, /**< the transmitting antenna of lvb_compute_pointing */
    LVB_STAGE_RECEIVE = -3,  /**< the receiving antenna of lvb_compute_pointing */
    LVB_STAGE_PACK = -4,     /**< pack_antenna of a site */
    LVB_STAGE_LINK = -5      /**< a field of the link that an element of an array lends (LVB_STRUCT_NEED, LVB_STRUCT_PLACE) */
};

/** Why a call was refused, in numbers. Give one (with its size set) to any call that takes it, or a null pointer. A fault of
 *  a wrong size refuses the call with LVB_E_STRUCT_SIZE and is not written; a call that succeeds clears it. */
typedef struct lvb_fault {
    uint32_t size;     /**< sizeof(lvb_fault), set by the caller */
    lvb_status status; /**< what the call returned */
    int32_t structure; /**< LVB_STRUCT_: where the field stands */
    int32_t field;     /**< LVB_FIELD_: which field or argument */
    int32_t stage;     /**< index of the stage, from 0; -1 where none is concerned; or LVB_STAGE_ */
    int32_t row;       /**< index of the table's row, from 0; -1 where none is concerned */
    double value;      /**< what came (a count or a code as a number); NaN where there is none */
    double minimum;    /**< the least that is allowed; NaN where there is no such bound */
    double maximum;    /**< the most that is allowed; NaN where there is no such bound */
} lvb_fault;

/** Version of the library that runs: 1000000 major + 1000 minor + patch.
 *  Compare it with the LVB_VERSION_ macros of the header that you compiled against.
 *  Refused: nothing. Since: 0.1. */
LVB_API uint32_t lvb_version_number(void);

/** Version of the library that runs as text, for example "0.1.0". Refused: nothing. Since: 0.1. */
LVB_API const char *lvb_version_text(void);

/** Size in bytes of a struct as this library knows it, for bindings that check their layout.
 *  structure is an LVB_STRUCT_ value; an unknown one gives 0. Since: 0.1. */
LVB_API uint32_t lvb_struct_size(int32_t structure);

/** One plain English sentence that tells a fault, written into the caller's buffer; independent of the locale.
 *  Writes at most capacity bytes, always ends with a zero byte when capacity is not 0, and returns the length of the
 *  whole sentence without its zero byte (as snprintf does), so that a call with capacity 0 tells the room needed.
 *  No sentence is longer than 255 bytes. A null text is treated as capacity 0.
 *  Refused: a null fault or one with a wrong size gives 0 (and an empty text). Since: 0.1. */
LVB_API size_t lvb_fault_text(const lvb_fault *fault, char *text, size_t capacity);

/** Name of a status as this header writes it ("LVB_E_NULL"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_status_name(lvb_status status);

/** Name of a field or argument as this header writes it ("length_m"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_field_name(int32_t field);

/** Name of a struct as this header writes it ("lvb_link"); LVB_STRUCT_NONE and an unknown value give "unknown".
 *  Since: 0.1. */
LVB_API const char *lvb_struct_name(int32_t structure);

/* ------------------------------------------------------------------------------------------------------------
 * Conversions. Each takes and gives plain doubles, in the units its name and its arguments say.
 * Infinities pass where the range includes them: 0 mW is -infinity dBm, and -infinity dBm is 0 mW.
 * Accuracy lines count in units in the last place (ULP) of the exact result, the distance of neighbouring doubles
 * there; 0.5 is a correctly rounded result. They hold where every argument is 0 or from 1e-100 to 1e100 in size, decibels
 * at most 1000. Further out, up to the largest and down to the smallest double, the range still holds, but digits are lost;
 * no infinity, 0 or NaN stands for a result that a normal double holds. Tests measure every line (tests/accuracy).
 * Every NaN has the same bits, 0x7ff8000000000000.
 * ---------------------------------------------------------------------------------------------------------- */

/** Level in dBm of a power in milliwatts.
 *  Formula: 10 log10(power_mw).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: power_mw [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.7e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbm_from_mw(double power_mw);

/** Power in milliwatts of a level in dBm.
 *  Formula: 10^(level_dbm / 10).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: level_dbm [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_mw_from_dbm(double level_dbm);

/** Level in dBm of a power in watts.
 *  Formula: 10 log10(power_w) + 30.
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: power_w [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.5e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbm_from_w(double power_w);

/** Power in watts of a level in dBm.
 *  Formula: 10^((level_dbm - 30) / 10).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: level_dbm [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_w_from_dbm(double level_dbm);

/** Level in dBW of a power in watts.
 *  Formula: 10 log10(power_w).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: power_w [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.7e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbw_from_w(double power_w);

/** Power in watts of a level in dBW.
 *  Formula: 10^(level_dbw / 10).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: level_dbw [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_w_from_dbw(double level_dbw);

/** Level in dBW of a power in milliwatts.
 *  Formula: 10 log10(power_mw) - 30.
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: power_mw [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.7e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbw_from_mw(double power_mw);

/** Power in milliwatts of a level in dBW.
 *  Formula: 10^((level_dbw + 30) / 10).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: level_dbw [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_mw_from_dbw(double level_dbw);

/** Level in dBm of a level in dBW.
 *  Formula: level_dbw + 30.
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: level_dbw [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.5 ULP. Since: 0.1. */
LVB_API double lvb_dbm_from_dbw(double level_dbw);

/** Level in dBW of a level in dBm.
 *  Formula: level_dbm - 30.
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: level_dbm [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.5 ULP. Since: 0.1. */
LVB_API double lvb_dbw_from_dbm(double level_dbm);

/** Power in milliwatts of a power in watts.
 *  Formula: 1000 power_w.
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: power_w [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.5 ULP. Since: 0.1. */
LVB_API double lvb_mw_from_w(double power_w);

/** Power in watts of a power in milliwatts.
 *  Formula: power_mw / 1000.
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: power_mw [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.5 ULP. Since: 0.1. */
LVB_API double lvb_w_from_mw(double power_mw);

/** Level in dBm of an r.m.s. voltage across a resistance.
 *  Formula: 20 log10(voltage_v) - 10 log10(impedance_ohm) + 30.
 *  Source: definition of the level, P = V^2 / R; IEC 60027-3.
 *  Range: voltage_v [0, inf], impedance_ohm (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 3.3e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbm_from_volts(double voltage_v, double impedance_ohm);

/** R.m.s. voltage in volts across a resistance at a level in dBm.
 *  Formula: sqrt(impedance_ohm) 10^((level_dbm - 30) / 20).
 *  Source: definition of the level, P = V^2 / R; IEC 60027-3.
 *  Range: level_dbm [-inf, inf], impedance_ohm (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_volts_from_dbm(double level_dbm, double impedance_ohm);

/** Voltage level in dBuV (0 dBuV is 1 microvolt) of an r.m.s. voltage.
 *  Formula: 20 log10(voltage_v) + 120.
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: voltage_v [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 3.3e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbuv_from_volts(double voltage_v);

/** R.m.s. voltage in volts of a voltage level in dBuV.
 *  Formula: 10^((level_dbuv - 120) / 20).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: level_dbuv [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_volts_from_dbuv(double level_dbuv);

/** Voltage level in dBuV across a resistance at a level in dBm.
 *  Formula: level_dbm + 10 log10(impedance_ohm) + 90.
 *  Source: definition of the level, P = V^2 / R; IEC 60027-3.
 *  Range: level_dbm [-inf, inf], impedance_ohm (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.5e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbuv_from_dbm(double level_dbm, double impedance_ohm);

/** Level in dBm of a voltage level in dBuV across a resistance.
 *  Formula: level_dbuv - 10 log10(impedance_ohm) - 90.
 *  Source: definition of the level, P = V^2 / R; IEC 60027-3.
 *  Range: level_dbuv [-inf, inf], impedance_ohm (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.5e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbm_from_dbuv(double level_dbuv, double impedance_ohm);

/** Field strength in dBuV/m of an r.m.s. field strength in V/m.
 *  Formula: 20 log10(field_v_per_m) + 120.
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: field_v_per_m [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 3.3e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbuv_per_m_from_v_per_m(double field_v_per_m);

/** R.m.s. field strength in V/m of a field strength in dBuV/m.
 *  Formula: 10^((field_dbuv_per_m - 120) / 20).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: field_dbuv_per_m [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_v_per_m_from_dbuv_per_m(double field_dbuv_per_m);

/** Power that an isotropic antenna receives, in dBm, from a field strength in dBuV/m at a frequency.
 *  Formula: field_dbuv_per_m - 20 log10(frequency_mhz) - 77.2160 (P = E^2 lambda^2 / (4 pi Z0), Z0 = 4 pi 29.9792458 ohm).
 *  Source: ITU-R P.525 (conversion formulas).
 *  Range: field_dbuv_per_m [-inf, inf], frequency_mhz (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 3e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_isotropic_dbm_from_dbuv_per_m(double field_dbuv_per_m, double frequency_mhz);

/** Field strength in dBuV/m from which an isotropic antenna receives a power in dBm at a frequency.
 *  Formula: level_dbm + 20 log10(frequency_mhz) + 77.2160 (inverse of lvb_isotropic_dbm_from_dbuv_per_m).
 *  Source: ITU-R P.525 (conversion formulas).
 *  Range: level_dbm [-inf, inf], frequency_mhz (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.7 ULP, or 2.1e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbuv_per_m_from_isotropic_dbm(double level_dbm, double frequency_mhz);

/** Decibels of a ratio of powers.
 *  Formula: 10 log10(ratio).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: ratio [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.7e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_db_from_power_ratio(double ratio);

/** Ratio of powers of a number of decibels.
 *  Formula: 10^(gain_db / 10).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: gain_db [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_power_ratio_from_db(double gain_db);

/** Decibels of a ratio of amplitudes (voltages, field strengths) at one impedance.
 *  Formula: 20 log10(ratio).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: ratio [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 3.3e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_db_from_amplitude_ratio(double ratio);

/** Ratio of amplitudes at one impedance of a number of decibels.
 *  Formula: 10^(gain_db / 20).
 *  Source: IEC 60027-3 (level quantities); ITU-R V.574.
 *  Range: gain_db [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.8 ULP. Since: 0.1. */
LVB_API double lvb_amplitude_ratio_from_db(double gain_db);

/** Metres of a length in feet (international).
 *  Formula: 0.3048 length_feet.
 *  Source: 85 FR 62698 (5 October 2020): 1 ft is 0.3048 m exactly.
 *  Range: length_feet [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1 ULP. Since: 0.1. */
LVB_API double lvb_metres_from_feet(double length_feet);

/** Length in feet (international) of a length in metres.
 *  Formula: length_m / 0.3048.
 *  Source: 85 FR 62698 (5 October 2020): 1 ft is 0.3048 m exactly.
 *  Range: length_m [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1 ULP. Since: 0.1. */
LVB_API double lvb_feet_from_metres(double length_m);

/** Metres of a length in inches (international).
 *  Formula: 0.0254 length_inches.
 *  Source: 85 FR 62698 (5 October 2020): 1 ft is 0.3048 m exactly.
 *  Range: length_inches [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_metres_from_inches(double length_inches);

/** Length in inches (international) of a length in metres.
 *  Formula: length_m / 0.0254.
 *  Source: 85 FR 62698 (5 October 2020): 1 ft is 0.3048 m exactly.
 *  Range: length_m [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_inches_from_metres(double length_m);

/** Metres of a length in yards (international).
 *  Formula: 0.9144 length_yards.
 *  Source: 85 FR 62698 (5 October 2020): 1 ft is 0.3048 m exactly.
 *  Range: length_yards [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.7 ULP. Since: 0.1. */
LVB_API double lvb_metres_from_yards(double length_yards);

/** Length in yards (international) of a length in metres.
 *  Formula: length_m / 0.9144.
 *  Source: 85 FR 62698 (5 October 2020): 1 ft is 0.3048 m exactly.
 *  Range: length_m [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.7 ULP. Since: 0.1. */
LVB_API double lvb_yards_from_metres(double length_m);

/** Metres of a length in miles (international).
 *  Formula: 1609.344 length_miles.
 *  Source: 85 FR 62698 (5 October 2020): 1 ft is 0.3048 m exactly.
 *  Range: length_miles [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_metres_from_miles(double length_miles);

/** Length in miles (international) of a length in metres.
 *  Formula: length_m / 1609.344.
 *  Source: 85 FR 62698 (5 October 2020): 1 ft is 0.3048 m exactly.
 *  Range: length_m [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_miles_from_metres(double length_m);

/** Wavelength in vacuum, in metres, of a frequency in MHz.
 *  Formula: 299.792458 / frequency_mhz.
 *  Source: SI Brochure: c is 299 792 458 m/s exactly.
 *  Range: frequency_mhz (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_wavelength_m_from_mhz(double frequency_mhz);

/** Frequency in MHz of a wavelength in vacuum, in metres.
 *  Formula: 299.792458 / wavelength_m.
 *  Source: SI Brochure: c is 299 792 458 m/s exactly.
 *  Range: wavelength_m (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP. Since: 0.1. */
LVB_API double lvb_mhz_from_wavelength_m(double wavelength_m);

/** Magnitude of the reflection coefficient of a voltage standing wave ratio.
 *  Formula: (vswr - 1) / (vswr + 1).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: vswr [1, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2.3 ULP. Since: 0.1. */
LVB_API double lvb_reflection_from_vswr(double vswr);

/** Voltage standing wave ratio of a magnitude of the reflection coefficient.
 *  Formula: (1 + reflection) / (1 - reflection).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: reflection [0, 1].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.7 ULP. Since: 0.1. */
LVB_API double lvb_vswr_from_reflection(double reflection);

/** Return loss in dB of a magnitude of the reflection coefficient.
 *  Formula: -20 log10(reflection).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: reflection [0, 1].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 3.7e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_return_loss_db_from_reflection(double reflection);

/** Magnitude of the reflection coefficient of a return loss in dB.
 *  Formula: 10^(-return_loss_db / 20).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: return_loss_db [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.8 ULP. Since: 0.1. */
LVB_API double lvb_reflection_from_return_loss_db(double return_loss_db);

/** Mismatch loss in dB of a magnitude of the reflection coefficient.
 *  Formula: -10 log10(1 - reflection^2).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: reflection [0, 1].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP, or 1.2e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_mismatch_loss_db_from_reflection(double reflection);

/** Magnitude of the reflection coefficient of a mismatch loss in dB.
 *  Formula: sqrt(1 - 10^(-mismatch_loss_db / 10)).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: mismatch_loss_db [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP. Since: 0.1. */
LVB_API double lvb_reflection_from_mismatch_loss_db(double mismatch_loss_db);

/** Return loss in dB of a voltage standing wave ratio.
 *  Formula: 20 log10((vswr + 1) / (vswr - 1)).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: vswr [1, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP, or 9.4e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_return_loss_db_from_vswr(double vswr);

/** Voltage standing wave ratio of a return loss in dB.
 *  Formula: (1 + r) / (1 - r), r = 10^(-return_loss_db / 20).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: return_loss_db [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.9 ULP. Since: 0.1. */
LVB_API double lvb_vswr_from_return_loss_db(double return_loss_db);

/** Mismatch loss in dB of a voltage standing wave ratio.
 *  Formula: 10 log10((vswr + 1)^2 / (4 vswr)).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: vswr [1, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP, or 1e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_mismatch_loss_db_from_vswr(double vswr);

/** Voltage standing wave ratio of a mismatch loss in dB.
 *  Formula: (1 + r) / (1 - r), r = sqrt(1 - 10^(-mismatch_loss_db / 10)).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: mismatch_loss_db [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 3.3 ULP. Since: 0.1. */
LVB_API double lvb_vswr_from_mismatch_loss_db(double mismatch_loss_db);

/** Mismatch loss in dB of a return loss in dB.
 *  Formula: -10 log10(1 - 10^(-return_loss_db / 10)).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: return_loss_db [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1 ULP, or 1.3e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_mismatch_loss_db_from_return_loss_db(double return_loss_db);

/** Return loss in dB of a mismatch loss in dB.
 *  Formula: -10 log10(1 - 10^(-mismatch_loss_db / 10)).
 *  Source: Pozar, Microwave Engineering, 2.3 (terminated lossless line).
 *  Range: mismatch_loss_db [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1 ULP, or 1.3e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_return_loss_db_from_mismatch_loss_db(double mismatch_loss_db);

/** Magnitude of the reflection coefficient of a resistive load on a line.
 *  Formula: |load_ohm - reference_ohm| / (load_ohm + reference_ohm).
 *  Source: Pozar, Microwave Engineering, 2.3.
 *  Range: load_ohm [0, inf), reference_ohm (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2.6 ULP. Since: 0.1. */
LVB_API double lvb_reflection_from_resistances(double load_ohm, double reference_ohm);

/** Upper limit, in dB (0 or more), of the error that two mismatches facing each other can cause.
 *  Formula: 20 log10(1 + reflection_1 reflection_2).
 *  Source: interaction of two mismatches, common practice of power measurement, no source.
 *  Range: reflection_1 [0, 1], reflection_2 [0, 1].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1 ULP, or 8e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_mismatch_uncertainty_high_db(double reflection_1, double reflection_2);

/** Lower limit, in dB (0 or less), of the error that two mismatches facing each other can cause.
 *  Formula: 20 log10(1 - reflection_1 reflection_2); two total reflections give -infinity.
 *  Source: as lvb_mismatch_uncertainty_high_db.
 *  Range: reflection_1 [0, 1], reflection_2 [0, 1].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP, or 1.3e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_mismatch_uncertainty_low_db(double reflection_1, double reflection_2);

/** Gain over an isotropic antenna of a gain over a half-wave dipole.
 *  Formula: gain_dbd + 2.150880.
 *  Source: half-wave dipole, 2.150880 dBi (exact integral; regulations print 2.15, a difference of 0.0009 dB).
 *  Range: gain_dbd [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.5e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbi_from_dbd(double gain_dbd);

/** Gain over a half-wave dipole of a gain over an isotropic antenna.
 *  Formula: gain_dbi - 2.150880.
 *  Source: half-wave dipole, 2.150880 dBi (exact integral; regulations print 2.15, a difference of 0.0009 dB).
 *  Range: gain_dbi [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.5e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dbd_from_dbi(double gain_dbi);

/** Equivalent isotropically radiated power (e.i.r.p.) of an effective radiated power (e.r.p., over a dipole).
 *  Formula: erp_dbm + 2.150880.
 *  Source: ITU Radio Regulations 1.161, 1.162; half-wave dipole, 2.150880 dBi (exact integral; regulations print
 *    2.15, a difference of 0.0009 dB).
 *  Range: erp_dbm [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.5e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_eirp_dbm_from_erp_dbm(double erp_dbm);

/** Effective radiated power (e.r.p., over a dipole) of an e.i.r.p.
 *  Formula: eirp_dbm - 2.150880.
 *  Source: ITU Radio Regulations 1.161, 1.162; half-wave dipole, 2.150880 dBi (exact integral; regulations print
 *    2.15, a difference of 0.0009 dB).
 *  Range: eirp_dbm [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.5e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_erp_dbm_from_eirp_dbm(double eirp_dbm);

/** Equivalent noise temperature in kelvin of a noise figure, referred to T0 = 290 K.
 *  Formula: 290 (10^(noise_figure_db / 10) - 1).
 *  Source: IEEE Std 100 (noise figure, T0 = 290 K); ITU-R P.372.
 *  Range: noise_figure_db [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2 ULP. Since: 0.1. */
LVB_API double lvb_noise_temperature_k_from_noise_figure_db(double noise_figure_db);

/** Noise figure in dB, referred to T0 = 290 K, of an equivalent noise temperature.
 *  Formula: 10 log10(1 + noise_temperature_k / 290).
 *  Source: IEEE Std 100 (noise figure, T0 = 290 K); ITU-R P.372.
 *  Range: noise_temperature_k [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.8 ULP, or 8e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_noise_figure_db_from_noise_temperature_k(double noise_temperature_k);

/** Available thermal noise power in dBm in a bandwidth, of a source at a temperature.
 *  Formula: 10 log10(k temperature_k bandwidth_mhz 1e6) + 30, k = 1.380649e-23 J/K.
 *  Source: SI Brochure (k exact); ITU-R P.372.
 *  Range: bandwidth_mhz [0, inf], temperature_k [0, inf].
 *  Refused: outside the range, and NaN, and zero times infinity, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.8e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_thermal_noise_dbm(double bandwidth_mhz, double temperature_k);

/** Attenuation in dB per 100 m of an attenuation in dB per 100 ft.
 *  Formula: attenuation_db_per_100ft / 0.3048.
 *  Source: 85 FR 62698 (5 October 2020): 1 ft is 0.3048 m exactly.
 *  Range: attenuation_db_per_100ft [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1 ULP. Since: 0.1. */
LVB_API double lvb_db_per_100m_from_db_per_100ft(double attenuation_db_per_100ft);

/** Attenuation in dB per 100 ft of an attenuation in dB per 100 m.
 *  Formula: 0.3048 attenuation_db_per_100m.
 *  Source: 85 FR 62698 (5 October 2020): 1 ft is 0.3048 m exactly.
 *  Range: attenuation_db_per_100m [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1 ULP. Since: 0.1. */
LVB_API double lvb_db_per_100ft_from_db_per_100m(double attenuation_db_per_100m);

/** Degrees Celsius of a temperature in degrees Fahrenheit.
 *  Formula: (temperature_degf - 32) / 1.8.
 *  Source: NIST SP 811, B.8 (temperature scales).
 *  Range: temperature_degf [-459.67, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP, or 3.5e-14 degC where that is larger. Since: 0.1. */
LVB_API double lvb_degc_from_degf(double temperature_degf);

/** Degrees Fahrenheit of a temperature in degrees Celsius.
 *  Formula: 1.8 temperature_degc + 32.
 *  Source: NIST SP 811, B.8 (temperature scales).
 *  Range: temperature_degc [-273.15, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP, or 4.7e-15 degF where that is larger. Since: 0.1. */
LVB_API double lvb_degf_from_degc(double temperature_degc);

/** Kelvin of a temperature in degrees Celsius.
 *  Formula: temperature_degc + 273.15.
 *  Source: NIST SP 811, B.8 (temperature scales).
 *  Range: temperature_degc [-273.15, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.8 ULP, or 5.7e-14 K where that is larger. Since: 0.1. */
LVB_API double lvb_kelvin_from_degc(double temperature_degc);

/** Degrees Celsius of a temperature in kelvin.
 *  Formula: temperature_k - 273.15.
 *  Source: NIST SP 811, B.8 (temperature scales).
 *  Range: temperature_k [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.7 ULP, or 5.7e-14 degC where that is larger. Since: 0.1. */
LVB_API double lvb_degc_from_kelvin(double temperature_k);

/* ------------------------------------------------------------------------------------------------------------
 * Free space.
 * ---------------------------------------------------------------------------------------------------------- */

/** Basic transmission loss in free space between isotropic antennas.
 *  It holds in the far field; closer than about one wavelength the antennas couple and the formula does not apply.
 *  Formula: 20 log10(distance_m) + 20 log10(frequency_mhz) - 27.552217 (4 pi d / lambda with c exact).
 *  Source: ITU-R P.525 (free-space basic transmission loss).
 *  Range: frequency_mhz (0, inf), distance_m (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 3.1e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_free_space_loss_db(double frequency_mhz, double distance_m);

/** Distance in metres at which free space takes a loss: the inverse of lvb_free_space_loss_db.
 *  Formula: 10^((loss_db + 27.552217) / 20) / frequency_mhz.
 *  Source: ITU-R P.525.
 *  Range: frequency_mhz (0, inf), loss_db [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2.4 ULP. Since: 0.1. */
LVB_API double lvb_free_space_distance_m(double frequency_mhz, double loss_db);

/** Field strength in dBuV/m (r.m.s.) in free space at a distance from a radiated power.
 *  Formula: eirp_dbm - 20 log10(distance_m) + 104.7682 (sqrt(29.9792458 p) / d; the recommendation prints 30).
 *  Source: ITU-R P.525 (field strength, equation 1).
 *  Range: eirp_dbm [-inf, inf], distance_m (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 3.3e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_field_strength_dbuv_per_m(double eirp_dbm, double distance_m);

/** E.i.r.p. in dBm that gives a field strength in dBuV/m at a distance in free space.
 *  Formula: field_dbuv_per_m + 20 log10(distance_m) - 104.7682.
 *  Source: ITU-R P.525 (field strength, equation 1).
 *  Range: field_dbuv_per_m [-inf, inf], distance_m (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.7 ULP, or 2e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_eirp_dbm_from_field_strength(double field_dbuv_per_m, double distance_m);

/** Power density in W/m2 in free space at a distance from a radiated power.
 *  Exposure rules are set by the national authority and may ask for factors that this plain relation does not hold.
 *  Formula: p / (4 pi distance_m^2), p = 10^((eirp_dbm - 30) / 10) W.
 *  Source: ITU-R P.525. Exposure limits such as those of 47 CFR 1.1310 are stated in it (1 mW/cm2 is 10 W/m2).
 *  Range: eirp_dbm [-inf, inf], distance_m (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 3 ULP. Since: 0.1. */
LVB_API double lvb_power_density_w_per_m2(double eirp_dbm, double distance_m);

/** Distance beyond which an antenna of a largest dimension is in its far field.
 *  Formula: 2 aperture_m^2 / lambda.
 *  Source: IEEE Std 145 (far-field region).
 *  Range: frequency_mhz (0, inf), aperture_m [0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2.5 ULP. Since: 0.1. */
LVB_API double lvb_far_field_distance_m(double frequency_mhz, double aperture_m);

/* ------------------------------------------------------------------------------------------------------------
 * Polarization. Losses are positive; two antennas that receive nothing of each other give +infinity, never a
 * large number that depends on rounding.
 * ---------------------------------------------------------------------------------------------------------- */

/** Polarization loss between two linear antennas whose axes enclose an angle.
 *  Formula: -20 log10 |cos(angle_deg)|; exactly 90 degrees (and 270, ...) gives +infinity.
 *  Source: Balanis, Antenna Theory, 2.12 (polarization loss factor).
 *  Range: angle_deg [-1e12, 1e12].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.4 ULP, or 2.4e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_linear_polarization_loss_db(double angle_deg);

/** Polarization loss between a linear antenna and an elliptical one.
 *  axial_ratio_db 0 is circular (3.0103 dB at every angle), infinity is linear; angle_deg lies between the linear
 *  axis and the ellipse's major axis.
 *  Formula: -10 log10((R^2 cos^2 t + sin^2 t) / (R^2 + 1)), R = 10^(axial_ratio_db / 20), t = angle_deg.
 *  Source: Balanis, Antenna Theory, 2.12 (polarization loss factor).
 *  Range: axial_ratio_db [0, inf], angle_deg [-1e12, 1e12].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP, or 3.5e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_linear_to_elliptical_loss_db(double axial_ratio_db, double angle_deg);

/** Polarization loss between two elliptical antennas.
 *  The ellipticity is the minor over the major axis: 0 linear, +1 right-hand circular, -1 left-hand circular
 *  (IEEE sense, each antenna as it radiates); angle_deg lies between the major axes as seen from one side.
 *  Formula: -10 log10(1/2 + (4 e1 e2 + (1 - e1^2)(1 - e2^2) cos 2t) / (2 (1 + e1^2)(1 + e2^2))).
 *  Source: Balanis, Antenna Theory, 2.12 (polarization loss factor). Written out for two ellipses.
 *  Range: ellipticity_1 [-1, 1], ellipticity_2 [-1, 1], angle_deg [-1e12, 1e12].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.5 ULP, or 4.5e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_elliptical_polarization_loss_db(double ellipticity_1, double ellipticity_2, double angle_deg);

/** Ellipticity (minor over major axis, 0 to 1) of an axial ratio in dB; put a minus before it for left-hand sense.
 *  Formula: 10^(-axial_ratio_db / 20).
 *  Source: Balanis, Antenna Theory, 2.12 (polarization loss factor).
 *  Range: axial_ratio_db [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.8 ULP. Since: 0.1. */
LVB_API double lvb_ellipticity_from_axial_ratio_db(double axial_ratio_db);

/** Axial ratio in dB of an ellipticity of either sense; 0 (linear) gives +infinity.
 *  Formula: -20 log10 |ellipticity|.
 *  Source: Balanis, Antenna Theory, 2.12 (polarization loss factor).
 *  Range: ellipticity [-1, 1].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 3.2e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_axial_ratio_db_from_ellipticity(double ellipticity);

/** Cross-polar discrimination in dB of a circular antenna with an axial ratio.
 *  Formula: 20 log10((R + 1) / (R - 1)), R = 10^(axial_ratio_db / 20).
 *  Source: Balanis, Antenna Theory, 2.12 (polarization loss factor).
 *  Range: axial_ratio_db [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.6 ULP, or 8.6e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_cross_polar_discrimination_db(double axial_ratio_db);

/* ------------------------------------------------------------------------------------------------------------
 * Columns: any plain function of this header over many values at once.
 * ---------------------------------------------------------------------------------------------------------- */

/** Formulas, each named after its function: LVB_FORMULA_DBM_FROM_MW is lvb_dbm_from_mw. Numbers are pinned. */
enum {
    LVB_FORMULA_NONE = 0,
    LVB_FORMULA_DBM_FROM_MW = 1,
    LVB_FORMULA_MW_FROM_DBM = 2,
    LVB_FORMULA_DBM_FROM_W = 3,
    LVB_FORMULA_W_FROM_DBM = 4,
    LVB_FORMULA_DBW_FROM_W = 5,
    LVB_FORMULA_W_FROM_DBW = 6,
    LVB_FORMULA_DBW_FROM_MW = 7,
    LVB_FORMULA_MW_FROM_DBW = 8,
    LVB_FORMULA_DBM_FROM_DBW = 9,
    LVB_FORMULA_DBW_FROM_DBM = 10,
    LVB_FORMULA_MW_FROM_W = 11,
    LVB_FORMULA_W_FROM_MW = 12,
    LVB_FORMULA_DBM_FROM_VOLTS = 13,
    LVB_FORMULA_VOLTS_FROM_DBM = 14,
    LVB_FORMULA_DBUV_FROM_VOLTS = 15,
    LVB_FORMULA_VOLTS_FROM_DBUV = 16,
    LVB_FORMULA_DBUV_FROM_DBM = 17,
    LVB_FORMULA_DBM_FROM_DBUV = 18,
    LVB_FORMULA_DBUV_PER_M_FROM_V_PER_M = 19,
    LVB_FORMULA_V_PER_M_FROM_DBUV_PER_M = 20,
    LVB_FORMULA_ISOTROPIC_DBM_FROM_DBUV_PER_M = 21,
    LVB_FORMULA_DBUV_PER_M_FROM_ISOTROPIC_DBM = 22,
    LVB_FORMULA_DB_FROM_POWER_RATIO = 23,
    LVB_FORMULA_POWER_RATIO_FROM_DB = 24,
    LVB_FORMULA_DB_FROM_AMPLITUDE_RATIO = 25,
    LVB_FORMULA_AMPLITUDE_RATIO_FROM_DB = 26,
    LVB_FORMULA_METRES_FROM_FEET = 27,
    LVB_FORMULA_FEET_FROM_METRES = 28,
    LVB_FORMULA_METRES_FROM_INCHES = 29,
    LVB_FORMULA_INCHES_FROM_METRES = 30,
    LVB_FORMULA_METRES_FROM_YARDS = 31,
    LVB_FORMULA_YARDS_FROM_METRES = 32,
    LVB_FORMULA_METRES_FROM_MILES = 33,
    LVB_FORMULA_MILES_FROM_METRES = 34,
    LVB_FORMULA_WAVELENGTH_M_FROM_MHZ = 35,
    LVB_FORMULA_MHZ_FROM_WAVELENGTH_M = 36,
    LVB_FORMULA_REFLECTION_FROM_VSWR = 37,
    LVB_FORMULA_VSWR_FROM_REFLECTION = 38,
    LVB_FORMULA_RETURN_LOSS_DB_FROM_REFLECTION = 39,
    LVB_FORMULA_REFLECTION_FROM_RETURN_LOSS_DB = 40,
    LVB_FORMULA_MISMATCH_LOSS_DB_FROM_REFLECTION = 41,
    LVB_FORMULA_REFLECTION_FROM_MISMATCH_LOSS_DB = 42,
    LVB_FORMULA_RETURN_LOSS_DB_FROM_VSWR = 43,
    LVB_FORMULA_VSWR_FROM_RETURN_LOSS_DB = 44,
    LVB_FORMULA_MISMATCH_LOSS_DB_FROM_VSWR = 45,
    LVB_FORMULA_VSWR_FROM_MISMATCH_LOSS_DB = 46,
    LVB_FORMULA_MISMATCH_LOSS_DB_FROM_RETURN_LOSS_DB = 47,
    LVB_FORMULA_RETURN_LOSS_DB_FROM_MISMATCH_LOSS_DB = 48,
    LVB_FORMULA_REFLECTION_FROM_RESISTANCES = 49,
    LVB_FORMULA_MISMATCH_UNCERTAINTY_HIGH_DB = 50,
    LVB_FORMULA_MISMATCH_UNCERTAINTY_LOW_DB = 51,
    LVB_FORMULA_DBI_FROM_DBD = 52,
    LVB_FORMULA_DBD_FROM_DBI = 53,
    LVB_FORMULA_EIRP_DBM_FROM_ERP_DBM = 54,
    LVB_FORMULA_ERP_DBM_FROM_EIRP_DBM = 55,
    LVB_FORMULA_NOISE_TEMPERATURE_K_FROM_NOISE_FIGURE_DB = 56,
    LVB_FORMULA_NOISE_FIGURE_DB_FROM_NOISE_TEMPERATURE_K = 57,
    LVB_FORMULA_THERMAL_NOISE_DBM = 58,
    LVB_FORMULA_DB_PER_100M_FROM_DB_PER_100FT = 59,
    LVB_FORMULA_DB_PER_100FT_FROM_DB_PER_100M = 60,
    LVB_FORMULA_DEGC_FROM_DEGF = 61,
    LVB_FORMULA_DEGF_FROM_DEGC = 62,
    LVB_FORMULA_KELVIN_FROM_DEGC = 63,
    LVB_FORMULA_DEGC_FROM_KELVIN = 64,
    LVB_FORMULA_FREE_SPACE_LOSS_DB = 65,
    LVB_FORMULA_FREE_SPACE_DISTANCE_M = 66,
    LVB_FORMULA_FIELD_STRENGTH_DBUV_PER_M = 67,
    LVB_FORMULA_EIRP_DBM_FROM_FIELD_STRENGTH = 68,
    LVB_FORMULA_POWER_DENSITY_W_PER_M2 = 69,
    LVB_FORMULA_FAR_FIELD_DISTANCE_M = 70,
    LVB_FORMULA_LINEAR_POLARIZATION_LOSS_DB = 71,
    LVB_FORMULA_LINEAR_TO_ELLIPTICAL_LOSS_DB = 72,
    LVB_FORMULA_ELLIPTICAL_POLARIZATION_LOSS_DB = 73,
    LVB_FORMULA_ELLIPTICITY_FROM_AXIAL_RATIO_DB = 74,
    LVB_FORMULA_AXIAL_RATIO_DB_FROM_ELLIPTICITY = 75,
    LVB_FORMULA_CROSS_POLAR_DISCRIMINATION_DB = 76,
    /* antennas */
    LVB_FORMULA_DIPOLE_GAIN_DBI = 77,
    LVB_FORMULA_COSINE_EXPONENT_FROM_GAIN_DBI = 78,
    LVB_FORMULA_GAIN_DBI_FROM_COSINE_EXPONENT = 79,
    LVB_FORMULA_COSINE_EXPONENT_FROM_BEAM_WIDTH_DEG = 80,
    LVB_FORMULA_BEAM_WIDTH_DEG_FROM_COSINE_EXPONENT = 81,
    LVB_FORMULA_GAIN_DBI_FROM_BEAM_WIDTHS = 82,
    LVB_FORMULA_HELIX_GAIN_DBI = 83,
    LVB_FORMULA_HELIX_BEAM_WIDTH_DEG = 84,
    LVB_FORMULA_HELIX_AXIAL_RATIO_DB = 85,
    /* other paths */
    LVB_FORMULA_TWO_RAY_BREAK_POINT_M = 86,
    LVB_FORMULA_LOG_DISTANCE_LOSS_DB = 87,
    LVB_FORMULA_INDOOR_LOSS_DB = 88,
    LVB_FORMULA_FRESNEL_RADIUS_M = 89,
    LVB_FORMULA_KNIFE_EDGE_PARAMETER = 90,
    LVB_FORMULA_KNIFE_EDGE_LOSS_DB = 91,
    /* fading */
    LVB_FORMULA_RAYLEIGH_OUTAGE_BELOW_MEAN = 92,
    LVB_FORMULA_RAYLEIGH_MARGIN_BELOW_MEAN_DB = 93,
    LVB_FORMULA_RAYLEIGH_OUTAGE_BELOW_MEDIAN = 94,
    LVB_FORMULA_RAYLEIGH_MARGIN_BELOW_MEDIAN_DB = 95,
    LVB_FORMULA_RICE_OUTAGE_BELOW_MEAN = 96,
    LVB_FORMULA_RICE_MARGIN_BELOW_MEAN_DB = 97,
    LVB_FORMULA_NAKAGAMI_OUTAGE_BELOW_MEAN = 98,
    LVB_FORMULA_NAKAGAMI_MARGIN_BELOW_MEAN_DB = 99,
    LVB_FORMULA_LOGNORMAL_OUTAGE_BELOW_MEDIAN = 100,
    LVB_FORMULA_LOGNORMAL_MARGIN_BELOW_MEDIAN_DB = 101,
    LVB_FORMULA_SUZUKI_OUTAGE_BELOW_MEDIAN_OF_MEANS = 102,
    LVB_FORMULA_SUZUKI_MARGIN_BELOW_MEDIAN_OF_MEANS_DB = 103,
    LVB_FORMULA_SELECTION_OUTAGE = 104,
    LVB_FORMULA_MAXIMAL_RATIO_OUTAGE_BELOW_MEAN = 105,
    LVB_FORMULA_CORRELATED_SELECTION_OUTAGE_BELOW_MEAN = 106,
    LVB_FORMULA_CORRELATED_MAXIMAL_RATIO_OUTAGE_BELOW_MEAN = 107,
    LVB_FORMULA_AREA_COVERAGE = 108,
    /* noise and linearity */
    LVB_FORMULA_THIRD_ORDER_PRODUCT_DBM = 109,
    LVB_FORMULA_THIRD_ORDER_INTERCEPT_DBM = 110,
    LVB_FORMULA_SPURIOUS_FREE_RANGE_DB = 111,
    LVB_FORMULA_SENSITIVITY_DBM = 112,
    LVB_FORMULA_PASSIVE_NOISE_FIGURE_DB = 113,
    LVB_FORMULA_COMBINER_LOSS_DB = 114,
    LVB_FORMULA_POWER_SUM_DBM = 115,
    LVB_FORMULA_CITY_NOISE_FIGURE_DB = 116,
    LVB_FORMULA_RESIDENTIAL_NOISE_FIGURE_DB = 117,
    LVB_FORMULA_RURAL_NOISE_FIGURE_DB = 118,
    LVB_FORMULA_QUIET_RURAL_NOISE_FIGURE_DB = 119,
    LVB_FORMULA_BUSINESS_NOISE_FIGURE_DB = 120,
    LVB_FORMULA_GALACTIC_NOISE_FIGURE_DB = 121,
    LVB_FORMULA_TWO_TONE_PRODUCT_COUNT = 122,
    LVB_FORMULA_THREE_TONE_PRODUCT_COUNT = 123,
    LVB_FORMULA_MIDDLE_CHANNEL_PRODUCTS_DBM = 124,
    /* limits */
    LVB_FORMULA_EXPOSURE_POWER_DENSITY_W_PER_M2 = 125,
    LVB_FORMULA_EXPOSURE_DISTANCE_M = 126
};

/** Name of a formula's function without its prefix ("free_space_loss_db"); an unknown number gives "unknown".
 *  Formulas are numbered from 1 without gaps. Since: 0.1. */
LVB_API const char *lvb_formula_name(int32_t formula);

/** Number of a formula by its name as lvb_formula_name gives it, or LVB_FORMULA_NONE where there is none of that name.
 *  name is a zero-terminated text; a null one gives LVB_FORMULA_NONE. Since: 0.1. */
LVB_API int32_t lvb_formula_from_name(const char *name);

/** Instruction sets that the loops over columns were compiled for. All give the same bits. */
enum {
    LVB_INSTRUCTIONS_AUTOMATIC = 0, /**< from 65536 values on the processor is asked in each call; below: baseline */
    LVB_INSTRUCTIONS_BASELINE = 1,  /**< what the library was compiled for: SSE2 on x86-64, NEON on 64-bit Arm */
    LVB_INSTRUCTIONS_AVX2 = 2,      /**< without ASKED the processor is asked in each call */
    LVB_INSTRUCTIONS_AVX512 = 3,    /**< AVX-512 F, DQ and VL; asked as for AVX2 */
    LVB_INSTRUCTIONS_ASKED = 256 /**< added to a set: the processor was asked, and has it; then it is not asked again */
};

/** Best instruction set of this processor: an LVB_INSTRUCTIONS_ value with LVB_INSTRUCTIONS_ASKED added. Call it once and
 *  pass what it gives: the library keeps no state, and asking the processor may take some ten microseconds on a virtual
 *  machine, so that on short columns a set that is named without LVB_INSTRUCTIONS_ASKED is slower than the baseline.
 *  What it gives is for this processor and this run: with LVB_INSTRUCTIONS_ASKED a set is not checked, and one
 *  that the processor lacks ends the program. Refused: nothing. Since: 0.1. */
LVB_API int32_t lvb_best_instructions(void);

/** Plain name of an instruction set ("AVX2"), with LVB_INSTRUCTIONS_ASKED or without; an unknown value gives "unknown".
 *  Since: 0.1. */
LVB_API const char *lvb_instructions_name(int32_t instructions);

enum { LVB_MAX_VALUES = 1073741824 /**< the most values that a column may have */ };

/** A formula over columns. The result may be the very same column as an argument, at the same address, and must not
 *  overlap one otherwise. A single value may lie anywhere, also in the result: it is read once, before anything is
 *  written. */
typedef struct lvb_columns {
    uint32_t size;            /**< sizeof(lvb_columns) */
    int32_t formula;          /**< LVB_FORMULA_ */
    int32_t instructions;     /**< what lvb_best_instructions gave, or an LVB_INSTRUCTIONS_ value */
    uint32_t single;          /**< bit 0, 1, 2: the first, second, third argument is one value, not a column */
    uint64_t count;           /**< values in each column, 0 to LVB_MAX_VALUES */
    const double *argument_1; /**< count values, or one */
    const double *argument_2; /**< null where the function has one argument */
    const double *argument_3; /**< null where the function has fewer than three arguments */
    double *result;           /**< count values */
} lvb_columns;

/** What was bad in a column. */
typedef struct lvb_bad {
    uint32_t size;     /**< sizeof(lvb_bad) */
    uint32_t reserved; /**< comes back as 0 */
    uint64_t count;    /**< results that are NaN */
    uint64_t first;    /**< index of the first of them; the columns' count where there is none */
} lvb_bad;

/** Computes a plain function for every value of its columns. Every element is processed; a bad one gives NaN, as the
 *  function itself does, and is counted. The bits are those of the function, on every instruction set.
 *  bad and fault may be null.
 *  Refused: a null columns, argument or result (LVB_E_NULL; none is needed where count is 0); no formula
 *  (LVB_E_MISSING); an unknown formula, or instructions that this processor lacks (LVB_E_UNKNOWN_VALUE); an argument
 *  too many, or `single` for one (LVB_E_UNUSED); a count above LVB_MAX_VALUES (LVB_E_COUNT); a result that overlaps a
 *  column of arguments without being that column (LVB_E_CONFLICT). Nothing is written then.
 *  Accuracy: as the function. Cost: linear in count; about 1 to 4 ns a value for logarithms and powers. Since: 0.1. */
LVB_API lvb_status lvb_compute_columns(const lvb_columns *columns, lvb_bad *bad, lvb_fault *fault);

/* ------------------------------------------------------------------------------------------------------------
 * Cable.
 * ---------------------------------------------------------------------------------------------------------- */

enum { LVB_MAX_ROWS = 65536 /**< the most rows that a table may have */ };

/** Bits of a member `stated`: which of the fields whose zero is a real value are given. */
enum {
    LVB_STATED_TEMPERATURE = 1, /**< temperature_degc (otherwise 20 degC, the temperature of cable tables) */
    LVB_STATED_FLOOR = 2,       /**< floor_dbm */
    LVB_STATED_WANTED = 4,      /**< wanted_low_dbm and wanted_high_dbm */
    LVB_STATED_CEILING = 8,     /**< ceiling_dbm */
    /* noise and linearity: 2048 to 16384 */
    LVB_STATED_NOISE_FIGURE = 2048,     /**< a stage's noise_figure_db */
    LVB_STATED_INTERCEPT = 4096,        /**< a stage's intercept_dbm */
    LVB_STATED_COMPRESSION = 8192,      /**< a stage's compression_dbm */
    LVB_STATED_CARRIER_TO_NOISE = 16384, /**< carrier_to_noise_db of lvb_noise_conditions */
    /* two systems */
    LVB_STATED_BLOCKING = 32768,       /**< blocking_dbm */
    LVB_STATED_TRANSMIT_NOISE = 65536, /**< transmit_noise_dbm */
    LVB_STATED_RECEIVER_NOISE = 131072 /**< receiver_noise_dbm */
};

/** Bits of a member `notes`: what a reader of the result should know. */
enum {
    LVB_NOTE_EXTRAPOLATED = 1, /**< a cable's attenuation lies outside its table, or a helix's pitch outside 12 to 14 degrees */
    LVB_NOTE_NEAR_FIELD = 2,   /**< a distance is under one wavelength, where free space does not apply */
    LVB_NOTE_NEAR_NOT_GIVEN = 4, /**< no near distance was given: the near end is taken at the far distance */
    LVB_NOTE_INSIDE_FAR_FIELD_DISTANCE = 16, /**< nearer than 2 D^2 / lambda of an antenna, where its pattern has not formed */
    LVB_NOTE_NULL = 32, /**< an antenna's null lies in this direction: nothing is radiated or received there */
    /* noise and linearity: 2048 to 16384 */
    LVB_NOTE_NO_NOISE_FIGURE = 2048, /**< an amplifier or receiver states no noise figure: not known from here on */
    LVB_NOTE_NO_INTERCEPT = 4096,    /**< an amplifier or receiver states no intercept: not known from here on */
    LVB_NOTE_NO_COMPRESSION = 8192,  /**< an amplifier or receiver states no compression: it may come first */
    LVB_NOTE_RANGE_LOWERED = 16384,  /**< an amplifier lowers range or carrier to noise, whatever its gain */
    /* coaxial line */
    LVB_NOTE_ABOVE_CUTOFF = 32768, /**< the frequency lies above the first higher mode: the line is no plain line there */
    LVB_NOTE_DEEP_SKIN = 65536     /**< the skin is deeper than a tenth of the inner diameter: resistance is estimated low */
};

/** Cable types of the built-in catalogue. Numbers are pinned; types are only appended, without gaps. */
enum {
    LVB_CABLE_NONE = 0,
    LVB_CABLE_RG_58C_U = 1,
    LVB_CABLE_RG_174_U = 2,
    LVB_CABLE_RG_188A_U = 3,
    LVB_CABLE_RG_213_U = 4,
    LVB_CABLE_RG_214_U = 5,
    LVB_CABLE_RG_223_U = 6,
    LVB_CABLE_RG_303_U = 7,
    LVB_CABLE_RG_8_FOAM = 8,
    LVB_CABLE_RG_8X = 9,
    LVB_CABLE_FOAM_195_IN = 10,
    LVB_CABLE_FOAM_240_IN = 11,
    LVB_CABLE_FOAM_405_IN = 12,
    LVB_CABLE_FOAM_600_IN = 13,
    LVB_CABLE_CORRUGATED_1_2_IN = 14
};

/** A host's own cable: attenuation over frequency from a data sheet or a measurement, at 20 degC. Borrowed.
 *
 *  Between rows the attenuation follows a sqrt(f) + b f through both neighbours (a: conductor, b: dielectric), exact at
 *  every row; where that would need a negative a or b, a power law through the same neighbours. Outside the table the
 *  law of the end interval is continued and the result is marked LVB_NOTE_EXTRAPOLATED, down to one tenth of the first
 *  and up to twice the last frequency; beyond that the call is refused (LVB_E_OUTSIDE_TABLE). A table of one row
 *  follows sqrt(f) through it. Refused: no rows; more than LVB_MAX_ROWS; frequencies outside 0.001 to 1000000 MHz;
 *  attenuations outside 0.001 to 100000 dB/100 m; frequencies that do not rise; two neighbours between which the
 *  attenuation falls or grows faster than the square of the frequency (LVB_E_TABLE_TOO_STEEP). */
typedef struct lvb_cable_table {
    uint32_t size;                         /**< sizeof(lvb_cable_table) */
    uint32_t row_count;                    /**< rows, 1 to LVB_MAX_ROWS */
    const double *frequency_mhz;           /**< row_count rising frequencies */
    const double *attenuation_db_per_100m; /**< row_count attenuations at 20 degC, positive */
} lvb_cable_table;

/** One piece of cable with its connectors. */
typedef struct lvb_cable_run {
    uint32_t size;            /**< sizeof(lvb_cable_run) */
    int32_t cable_type;       /**< LVB_CABLE_ type of the catalogue; LVB_CABLE_NONE with a table of the host's own */
    uint32_t stated;          /**< LVB_STATED_TEMPERATURE when temperature_degc is given */
    uint32_t connector_count; /**< connectors in the run, 0 to 1000 */
    double frequency_mhz;     /**< 0.1 to 300000 MHz */
    double length_m;          /**< 0.001 to 10000 m */
    double temperature_degc;  /**< -100 to 200 degC; not stated: 20 */
    double connector_loss_db; /**< per connector, 0 to 10 dB; 0: the usual 0.05 sqrt(frequency in GHz) dB */
} lvb_cable_run;

/** What a piece of cable costs. */
typedef struct lvb_cable_loss {
    uint32_t size;                  /**< sizeof(lvb_cable_loss) */
    uint32_t notes;                 /**< LVB_NOTE_ bits */
    double attenuation_db_per_100m; /**< at the frequency and temperature */
    double cable_loss_db;           /**< of the length, without connectors */
    double connectors_loss_db;      /**< of all connectors */
    double loss_db;                 /**< of the whole run */
} lvb_cable_loss;

/** A type of the catalogue. */
typedef struct lvb_cable_info {
    uint32_t size;            /**< sizeof(lvb_cable_info) */
    int32_t cable_type;       /**< LVB_CABLE_ */
    uint32_t row_count;       /**< rows of its table */
    uint32_t reserved;        /**< 0 */
    double lowest_mhz;        /**< first tabulated frequency */
    double highest_mhz;       /**< last tabulated frequency */
    double usable_lowest_mhz; /**< where extrapolation ends downwards */
    double usable_highest_mhz; /**< where extrapolation ends upwards */
    const char *name;         /**< designation, for example "RG-213/U" */
    const char *description;  /**< what kind of cable it is */
} lvb_cable_info;

/** One published row of the catalogue, with its source. */
typedef struct lvb_cable_row {
    uint32_t size;                  /**< sizeof(lvb_cable_row) */
    uint32_t reserved;              /**< 0 */
    double frequency_mhz;           /**< as printed */
    double attenuation_db_per_100m; /**< as printed, or converted from the printed dB/100 ft */
    const char *source;             /**< where the row is printed and how it is known */
    const char *remark;             /**< what a reader should know of the row; "" where there is nothing */
} lvb_cable_row;

/** Attenuation of a piece of cable at a frequency, with length, temperature and connectors.
 *  Formula: the law of lvb_cable_table; the conductor part grows with the square root of copper's resistance,
 *  sqrt(1 + 0.00393 (temperature_degc - 20)), and so does the whole where the power law applies; connectors 0.05
 *  sqrt(frequency in GHz) dB each unless given.
 *  Source: skin effect and dielectric loss of a coaxial line (Pozar, Microwave Engineering, 2.7); IEC 60028 (copper);
 *  catalogue rows carry their own source. run gives a type of the catalogue, or table a host's own (then cable_type
 *  is LVB_CABLE_NONE and table is not null). fault may be null.
 *  Range: as the fields of lvb_cable_run and lvb_cable_table say.
 *  Refused: null run or loss (LVB_E_NULL); neither type nor table (LVB_E_MISSING), both (LVB_E_CONFLICT); a frequency
 *  beyond the usable range (LVB_E_OUTSIDE_TABLE); values outside their ranges; bad tables.
 *  Accuracy: relative 1e-12 of the stated law where neighbouring rows lie 1 % or more apart. A published row that is left
 *  out of its table is met within 1.3 % (median), 7 % (nine of ten) and 14 % (worst: RG-8X at 50 MHz, printed coarsely).
 *  Other publications on one type differ from the catalogue by up to 12 %. Since: 0.1. */
LVB_API lvb_status lvb_compute_cable_loss(const lvb_cable_run *run, const lvb_cable_table *table, lvb_cable_loss *loss,
                                          lvb_fault *fault);

/** Number of types in the catalogue; they are numbered from 1 to it. Refused: nothing. Since: 0.1. */
LVB_API uint32_t lvb_cable_type_count(void);

/** Type of the catalogue by its designation, or LVB_CABLE_NONE where there is none of that name.
 *  Letter case, spaces, hyphens and slashes do not count ("rg213u" finds "RG-213/U"), and the suffix /U may be missing.
 *  name is a zero-terminated text; a null one gives LVB_CABLE_NONE. Since: 0.1. */
LVB_API int32_t lvb_cable_type_from_name(const char *name);

/** Describes a type of the catalogue.
 *  Refused: a null info, or a wrong size (LVB_E_NULL, LVB_E_STRUCT_SIZE); an unknown type (LVB_E_NOT_FOUND).
 *  fault may be null. Since: 0.1. */
LVB_API lvb_status lvb_describe_cable(int32_t cable_type, lvb_cable_info *info, lvb_fault *fault);

/** Gives one published row of a type of the catalogue, row_index from 0 to row_count - 1.
 *  Refused: a null row, or a wrong size (LVB_E_NULL, LVB_E_STRUCT_SIZE); an unknown type or row (LVB_E_NOT_FOUND).
 *  fault may be null. Since: 0.1. */
LVB_API lvb_status lvb_describe_cable_row(int32_t cable_type, uint32_t row_index, lvb_cable_row *row,
                                          lvb_fault *fault);

/** A coaxial line by its dimensions and materials. Zero means: copper, smooth solid conductors, vacuum between them. */
typedef struct lvb_coaxial_line {
    uint32_t size;                /**< sizeof(lvb_coaxial_line) */
    uint32_t stated;              /**< LVB_STATED_TEMPERATURE when temperature_degc is given */
    double frequency_mhz;         /**< 0.1 to 300000 MHz */
    double inner_diameter_mm;     /**< of the inner conductor, 0.01 to 1000 mm; of strands over all */
    double outer_diameter_mm;     /**< inside the outer conductor, 0.01 to 1000 mm, at least 1.01 inner_diameter_mm */
    double inner_conductivity;    /**< relative to copper of 58 MS/m, 0.001 to 1.1; 0: copper */
    double outer_conductivity;    /**< the same of the outer conductor */
    double inner_factor;          /**< resistance of the inner conductor over that of a smooth round one, 1 to 10; 0: 1 */
    double outer_factor;          /**< the same of the outer conductor over a smooth tube; 0: 1 */
    double relative_permittivity; /**< of the dielectric, 1 to 100; 0: 1 */
    double loss_tangent;          /**< of the dielectric, 0 to 0.1 */
    double temperature_degc;      /**< of copper-like conductors, -100 to 200 degC; not stated: 20 */
} lvb_coaxial_line;

/** What follows for a coaxial line. */
typedef struct lvb_coaxial_properties {
    uint32_t size;                  /**< sizeof(lvb_coaxial_properties) */
    uint32_t notes;                 /**< LVB_NOTE_ABOVE_CUTOFF, LVB_NOTE_DEEP_SKIN */
    double impedance_ohm;           /**< characteristic impedance without losses */
    double velocity_factor;         /**< over the speed of light */
    double capacitance_pf_per_m;    /**< between the conductors */
    double conductor_db_per_100m;   /**< attenuation in the conductors; grows with sqrt(f) */
    double dielectric_db_per_100m;  /**< attenuation in the dielectric; grows with f */
    double attenuation_db_per_100m; /**< their sum */
    double cutoff_mhz;              /**< where the first higher mode (TE11) begins to travel */
} lvb_coaxial_properties;

/** Computes a coaxial line from its dimensions and materials: what a cable without a published table should lose, and what
 *  part of it is copper.
 *  Formula: impedance 59.9585 / sqrt(e) ln(D / d); conductors (Ri / d + Ro / D) / (2 pi Z) Np/m with the surface
 *  resistance R = 2 pi sqrt(f 1e-7 / s) times its factor, s the conductivity, warmed as in lvb_compute_cable_loss;
 *  dielectric pi f sqrt(e) tan(delta) / c Np/m; cut-off 2 c / (pi (d + D) sqrt(e)); e the relative permittivity.
 *  Strands and braids lose more than the smooth conductors of the formula: 1.25 for an inner conductor of strands and
 *  2 for an outer conductor of one braid (fitted to published tables, no other source) meet those of RG-213/U within
 *  11 %, RG-58C/U within 5 % and RG-174/U within 14 % with polyethylene of permittivity 2.26 and loss tangent 0.0003.
 *  Source: Pozar, Microwave Engineering, 2.2, 2.7 (coaxial line), 3.5 (higher modes); IEC 60028 (copper, 58 MS/m).
 *  fault may be null.
 *  Range: as the fields of lvb_coaxial_line say.
 *  Refused: null line or properties; wrong sizes; values outside their ranges; diameters that do not leave 1 % between
 *  them (LVB_E_ORDER); a temperature without its bit.
 *  Accuracy: relative 1e-14 of the stated formulas, 1e-13 where the diameters lie within 10 %. The approximation of the cut-off is
 *  at most 2.8 % low (diameters 1 to 3.4) and 8.7 % high (1 to 100 and more) against the exact mode. Since: 0.1. */
LVB_API lvb_status lvb_compute_coaxial_line(const lvb_coaxial_line *line, lvb_coaxial_properties *properties,
                                            lvb_fault *fault);

/* ------------------------------------------------------------------------------------------------------------
 * The chain: stages in physical order, their levels, and the verdict.
 * ---------------------------------------------------------------------------------------------------------- */

enum { LVB_MAX_STAGES = 1024 /**< the most stages that a chain may have */ };

/** Kinds of stage. */
enum {
    LVB_KIND_SOURCE = 1,    /**< transmitter or generator: starts the chain at level_dbm */
    LVB_KIND_PASSIVE = 2,   /**< combiner, splitter, filter, connector, pad: gain_db 0 or less */
    LVB_KIND_CABLE = 3,     /**< from the catalogue or the host's table with length_m; or gain_db as measured */
    LVB_KIND_AMPLIFIER = 4, /**< amplifier, active combiner or splitter: net gain_db, 0 for unity gain */
    LVB_KIND_ANTENNA = 5,   /**< the first radiates, the second receives: gain_db over an isotropic antenna (dBi) */
    LVB_KIND_AIR = 6,       /**< loss of free space, or of a path, over the link's distances; gain_db adds to it */
    LVB_KIND_ALLOWANCE = 7, /**< polarization, body, fading: gain_db 0 or less, taken at the far end only */
    LVB_KIND_RECEIVER = 8   /**< ends the chain: the window that the level is judged against */
};

/** On what a stage's number rests. Not looked up and estimate count as guesses. */
enum {
    LVB_BASIS_NOT_LOOKED_UP = 0, /**< for a cable of the catalogue this counts as handbook, for air as formula */
    LVB_BASIS_ESTIMATE = 1,
    LVB_BASIS_HANDBOOK = 2, /**< a published table: handbook, textbook, guide, a society's page */
    LVB_BASIS_DATA_SHEET = 3,
    LVB_BASIS_MEASURED = 4,
    LVB_BASIS_FORMULA = 5 /**< computed by a formula with a published source */
};

/** What a level in dBm refers to. */
enum {
    LVB_REFERENCE_CONDUCTED = 1, /**< power in a cable or at a terminal */
    LVB_REFERENCE_EIRP = 2,      /**< equivalent isotropically radiated power */
    LVB_REFERENCE_ISOTROPIC = 3  /**< power that an isotropic antenna would receive */
};

/** Where a level lies in the receiver's window. */
enum {
    LVB_ZONE_NOT_JUDGED = 0, /**< no receiver, or its window is not stated */
    LVB_ZONE_DROPOUT = 1,    /**< below the floor */
    LVB_ZONE_LOW = 2,        /**< above the floor, below the wanted band */
    LVB_ZONE_WANTED = 3,     /**< inside the wanted band (inside floor and ceiling where no band is stated) */
    LVB_ZONE_HIGH = 4,       /**< above the wanted band, below the ceiling */
    LVB_ZONE_OVERLOAD = 5    /**< above the ceiling */
};

/** The verdict over the whole walk. */
enum {
    LVB_VERDICT_NOT_JUDGED = 0, /**< neither floor nor ceiling is stated */
    LVB_VERDICT_HOLDS = 1,      /**< inside at each end whose limit is stated, with every tolerance against you too */
    LVB_VERDICT_DOUBTFUL = 2,   /**< inside as entered, but the tolerances together can push an end below the floor or above the ceiling */
    LVB_VERDICT_DROPS_OUT = 3,  /**< the far end lies below the floor */
    LVB_VERDICT_OVERLOADS = 4,  /**< the near end lies above the ceiling */
    LVB_VERDICT_DROPS_OUT_AND_OVERLOADS = 5 /**< both */
};

/** The end of the walk, and the limit there, that leave least room. */
enum {
    LVB_DECIDED_BY_NOTHING = 0,
    LVB_DECIDED_BY_FAR_FLOOR = 1,   /**< the far end against the floor */
    LVB_DECIDED_BY_NEAR_CEILING = 2 /**< the near end against the ceiling */
};

/** A measured gain over frequency that stands in place of a stage's gain_db. Borrowed.
 *  Between rows it is interpolated linearly in dB over MHz, exact at every row; outside the table the call is refused
 *  (LVB_E_OUTSIDE_TABLE), because a filter's or an antenna's edge cannot be guessed. A table of one row serves exactly
 *  that frequency. Values must lie in the range that gain_db has for the kind of stage. Refused: no rows; more than
 *  LVB_MAX_ROWS; frequencies outside 0.001 to 1000000 MHz; frequencies that do not rise; neighbours more than 100 dB
 *  apart (LVB_E_TABLE_TOO_STEEP). */
typedef struct lvb_gain_table {
    uint32_t size;               /**< sizeof(lvb_gain_table) */
    uint32_t row_count;          /**< rows, 1 to LVB_MAX_ROWS */
    const double *frequency_mhz; /**< row_count rising frequencies */
    const double *gain_db;       /**< row_count gains, signed */
} lvb_gain_table;

/** One stage. Every stage has a gain (gain_db or gain_table), a tolerance and a basis; the rest belongs to the kinds
 *  named, and must be zero in all others. A zeroed stage is refused: its kind is missing.
 *
 *  An antenna may have a pattern in place of its gain_db: its gain is then that of the directions in which it sees the other
 *  antenna, at the far and at the near end. An allowance may have a body_table in place of its gain_db.
 *
 *  gain_db by kind: source -60 to 60 (added to level_dbm), passive -200 to 0, cable -200 to 0, amplifier -60 to 120,
 *  antenna -60 to 60, air -200 to 30, allowance -200 to 0, receiver -60 to 60 (in front of the window).
 *  lvb_describe_field gives the ranges to a program. */
typedef struct lvb_stage {
    int32_t kind;                       /**< LVB_KIND_ */
    int32_t basis;                      /**< LVB_BASIS_ */
    uint32_t stated;                    /**< LVB_STATED_ bits: receiver's window; noise and linearity */
    int32_t cable_type;                 /**< cable: LVB_CABLE_ type of the catalogue */
    uint32_t connector_count;           /**< cable by type or table: connectors, 0 to 1000 */
    uint32_t reserved;                  /**< 0 */
    const char *label;                  /**< the host's; read by lvb_compute_comparison only, and may be null */
    const void *user;                   /**< the host's; never read */
    const lvb_gain_table *gain_table;   /**< measured gain in place of gain_db, or null */
    const lvb_cable_table *cable_table; /**< cable: the host's own, in place of cable_type, or null */
    double level_dbm;                   /**< source: conducted level, -200 to 150 dBm; 0 is 1 mW */
    double gain_db;                     /**< signed: negative where power is lost */
    double tolerance_db;                /**< plus and minus, 0 to 100 dB */
    double length_m;                    /**< cable by type or table: 0.001 to 10000 m */
    double connector_loss_db;           /**< cable by type or table: per connector, 0 to 10 dB; 0: 0.05 sqrt(GHz) */
    double floor_dbm;                   /**< receiver: dropout below it, -250 to 150 dBm */
    double wanted_low_dbm;              /**< receiver: the wanted band begins, -250 to 150 dBm */
    double wanted_high_dbm;             /**< receiver: the wanted band ends, -250 to 150 dBm */
    double ceiling_dbm;                 /**< receiver: overload above it, -250 to 150 dBm */
    /* antennas and bodies */
    const struct lvb_pattern *pattern;       /**< antenna: its gain over direction in place of gain_db, or null; a stage knows
                                                  no dimension: whether the far field begins nearer, ask lvb_compute_pointing */
    const struct lvb_body_table *body_table; /**< allowance: loss over facing in place of gain_db, or null */
    double far_azimuth_deg;    /**< antenna with pattern: where it sees the other one at the far end, -360 to 360 degrees */
    double far_elevation_deg;  /**< antenna with pattern: as far_azimuth_deg, -90 to 90 degrees */
    double near_azimuth_deg;   /**< antenna with pattern: as far_azimuth_deg, at the near end */
    double near_elevation_deg; /**< antenna with pattern: as far_elevation_deg, at the near end */
    double facing_deg;         /**< allowance with body_table: which way the wearer faces, -360 to 360 degrees */
    /* other paths */
    const struct lvb_path *path; /**< air: another way than free space, or null */
    /* noise and linearity; read by lvb_compute_noise */
    double noise_figure_db; /**< amplifier, receiver: 0 to 100 dB over 290 K; of passive stages it follows from the loss */
    double intercept_dbm;   /**< third-order; passive, amplifier: at the output, receiver: at the input; -100 to 150 dBm */
    double compression_dbm; /**< as intercept_dbm: level there at which the gain has fallen by 1 dB, -100 to 150 dBm */
} lvb_stage;

/** A link: its stages and what they have in common. */
typedef struct lvb_link {
    uint32_t size;           /**< sizeof(lvb_link) */
    uint32_t stated;         /**< LVB_STATED_TEMPERATURE when temperature_degc is given */
    uint32_t stage_count;    /**< 1 to LVB_MAX_STAGES */
    uint32_t stage_size;     /**< sizeof(lvb_stage) */
    const lvb_stage *stages; /**< stage_count stages, source first */
    const char *label;       /**< the host's; never read */
    double frequency_mhz;    /**< 0.1 to 300000 MHz */
    double far_distance_m;   /**< farthest point of the walk, 0.01 to 1e9 m; with air, and only then */
    double near_distance_m;  /**< nearest point of the walk, at most far_distance_m; 0: the same as far */
    double temperature_degc; /**< of the cables, -100 to 200 degC; not stated: 20 */
} lvb_link;

/** The book's line for one stage: what it changes and the levels after it, at both ends of the walk. */
typedef struct lvb_level {
    int32_t reference;     /**< LVB_REFERENCE_: what the levels refer to */
    int32_t basis;         /**< LVB_BASIS_ as counted */
    uint32_t notes;        /**< LVB_NOTE_ bits of this stage */
    uint32_t reserved;     /**< 0 */
    double far_change_db;  /**< change at the far end; for the source its level, so that the column adds up */
    double far_level_dbm;  /**< level after the stage at the far end */
    double far_worst_db;   /**< sum of the tolerances so far: worst case, plus and minus */
    double far_rss_db;     /**< root of the sum of their squares so far, plus and minus */
    double near_change_db; /**< as far_change_db, at the near end (no allowances) */
    double near_level_dbm; /**< as far_level_dbm, at the near end */
    double near_worst_db;  /**< as far_worst_db, at the near end */
    double near_rss_db;    /**< as far_rss_db, at the near end */
} lvb_level;

/** One end of the walk. This struct is closed: later figures are appended to lvb_budget. */
typedef struct lvb_end {
    double distance_m;     /**< 0 where the chain has no air */
    double level_dbm;      /**< level at the end of the chain */
    double worst_db;       /**< worst case of all tolerances, plus and minus */
    double rss_db;         /**< root of the sum of their squares, plus and minus */
    double margin_db;      /**< level above the floor; NaN where it is not stated */
    double headroom_db;    /**< level under the ceiling; NaN where it is not stated */
    double from_middle_db; /**< level above the middle of the wanted band, or of the window where none is stated */
    int32_t zone;          /**< LVB_ZONE_ of the level */
    int32_t zone_lowest;   /**< LVB_ZONE_ of level_dbm - worst_db */
    int32_t zone_highest;  /**< LVB_ZONE_ of level_dbm + worst_db */
    int32_t reserved;      /**< 0 */
} lvb_end;

/** The result for a link. */
typedef struct lvb_budget {
    uint32_t size;                      /**< sizeof(lvb_budget) */
    int32_t verdict;                    /**< LVB_VERDICT_ */
    int32_t decided_by;                 /**< LVB_DECIDED_BY_: the end and limit that leave least room */
    int32_t reference;                  /**< LVB_REFERENCE_ of the level at the end of the chain */
    uint32_t notes;                     /**< LVB_NOTE_ bits of all stages */
    uint32_t entries;                   /**< stages whose basis was counted: all of them */
    uint32_t guesses;                   /**< of these: not looked up, or estimated */
    uint32_t guesses_without_tolerance; /**< of these: with tolerance_db 0 */
    uint32_t not_looked_up;             /**< entries by basis, as counted */
    uint32_t estimated;                 /**< entries by basis */
    uint32_t handbook;                  /**< entries by basis */
    uint32_t data_sheet;                /**< entries by basis */
    uint32_t measured;                  /**< entries by basis */
    uint32_t formula;                   /**< entries by basis */
    double decided_by_db;               /**< the room there: margin_db or headroom_db; NaN where nothing decides */
    double eirp_dbm;                    /**< of the first antenna in its direction of maximum radiation, as a licence takes it,
                                             without allowances; NaN where there is none, as with a radiating cable */
    double eirp_worst_db;               /**< its worst case, plus and minus; NaN where there is none */
    double guess_worst_db;              /**< the part of far_end.worst_db that guesses carry */
    double guess_share;                 /**< that part, 0 to 1; 0 where nothing has a tolerance */
    lvb_end far_end;                    /**< farthest point, every allowance taken */
    lvb_end near_end;                   /**< nearest point, no allowance taken */
    /* other paths */
    double path_standard_deviation_db; /**< lvb_path_loss.standard_deviation_db at the far end; NaN where none is stated */
} lvb_budget;

/** Computes a link: the level after every stage, at the far end with every allowance and at the near end with none, the
 *  verdict, the tolerances and what they rest on.
 *  Formula: levels are sums of dB: up to the air the running sum of the changes, from the air on the level there plus
 *  the running sum of the changes since; air takes lvb_free_space_loss_db, or lvb_compute_path_loss where it has a
 *  path; a cable takes lvb_compute_cable_loss. After the first antenna levels are e.i.r.p., after the air isotropic, after the second
 *  antenna conducted again. The far end is judged against the floor, the near end against the ceiling.
 *  Source: link budget in decibels, ITU-R P.525 and P.341; far and near end, and allowances at the far end only: common
 *  practice, no source.
 *  Where an antenna has a pattern, eirp_dbm takes the pattern's largest gain and the levels take its gain towards the other
 *  antenna, at each end of the walk its own. A null there gives levels of -infinity from that stage on: the far end drops
 *  out, margins are -infinity and headrooms +infinity.
 *  levels is null or has stage_count elements of level_size bytes (sizeof(lvb_level)). fault may be null.
 *  Range: as the fields of lvb_link, lvb_stage and the tables say. A chain without air is a cable check and is valid; a
 *  chain may end with an antenna (e.i.r.p.) or without a receiver, and is then not judged.
 *  Refused: null link, budget or stages; wrong sizes; everything that the LVB_E_ values list, with stage and field.
 *  Accuracy: 1e-12 dB for each stage of the stated formulas. Cost: linear in stages and table rows. Since: 0.1. */
LVB_API lvb_status lvb_compute_budget(const lvb_link *link, lvb_budget *budget, lvb_level *levels, uint32_t level_size,
                                      lvb_fault *fault);

/** Ends of the walk, as a grid takes them. */
enum {
    LVB_END_FAR = 0, /**< with every allowance */
    LVB_END_NEAR = 1 /**< with none */
};

/** A chain over many frequencies and distances. level_dbm and scratch must overlap neither each other nor frequency_mhz
 *  and distance_m. (Nor the link with its stages and tables; that alone is not checked.) */
typedef struct lvb_grid {
    uint32_t size;               /**< sizeof(lvb_grid) */
    int32_t end;                 /**< LVB_END_ */
    int32_t instructions;        /**< what lvb_best_instructions gave, or an LVB_INSTRUCTIONS_ value */
    uint32_t reserved;           /**< 0 */
    uint64_t frequency_count;    /**< 0 or more; frequency_count times distance_count at most LVB_MAX_VALUES */
    uint64_t distance_count;     /**< 0 or more; where a count is 0, no array is used, and all may be null */
    const lvb_link *link;        /**< the chain and its temperature; its own frequency and distances are not used */
    const double *frequency_mhz; /**< frequency_count values */
    const double *distance_m;    /**< distance_count values; not used, and may be null, where the chain has no air */
    double *scratch;             /**< 2 distance_count values of working room, lost; without air as distance_m */
    double *level_dbm;           /**< frequency_count rows of distance_count levels */
    const void *user;            /**< the host's; never read */
} lvb_grid;

/** Computes the level at the end of a chain for every frequency and distance, row after row: what
 *  lvb_compute_budget gives at that end of the walk for each, bit for bit.
 *  Every element is processed; a frequency or distance outside its range, or a frequency outside a table of the chain,
 *  gives NaN for its row or column, and these are counted. A chain without air has the same level in its
 *  whole row, whatever the distances. Where a count is 0, the chain is checked and nothing is computed.
 *  bad and fault may be null.
 *  Range: frequency_mhz 0.1 to 300000, distance_m 0.01 to 1e9; not read where the chain has no air.
 *  Refused: as lvb_compute_budget for the chain; a null grid or link, and a null array that is used (LVB_E_NULL); counts
 *  that are too large (LVB_E_COUNT); arrays that overlap (LVB_E_CONFLICT); instructions that this processor lacks. All
 *  this is found before level_dbm or scratch is written.
 *  Accuracy: as lvb_compute_budget. Cost: once per frequency what depends on the frequency, once per distance what
 *  depends on the distance, and a few additions per element; over a path the path's loss per element. Since: 0.1. */
LVB_API lvb_status lvb_compute_grid(const lvb_grid *grid, lvb_bad *bad, lvb_fault *fault);

/** Range of a field. far_distance_m (needed with air) and a stage's length_m (needed by a computed cable) count as not
 *  required. */
typedef struct lvb_range {
    uint32_t size;    /**< sizeof(lvb_range) */
    int32_t required; /**< 1 where zero is always refused as missing; 0 also where only some uses need the field */
    double minimum;   /**< least value allowed (besides the neutral zero where it is not required) */
    double maximum;   /**< greatest value allowed */
} lvb_range;

/** Tells the range of a numeric field, so that a program can set up its controls from the same figures that the
 *  checks use. structure is LVB_STRUCT_LINK, LVB_STRUCT_STAGE, LVB_STRUCT_CABLE_RUN, LVB_STRUCT_COAXIAL_LINE,
 *  LVB_STRUCT_NEIGHBOURS, LVB_STRUCT_LIMIT, LVB_STRUCT_PATH, LVB_STRUCT_EDGE, LVB_STRUCT_ANTENNA, LVB_STRUCT_PATTERN,
 *  LVB_STRUCT_NOISE_CONDITIONS, LVB_STRUCT_SITE, LVB_STRUCT_AREA, LVB_STRUCT_SCREEN, LVB_STRUCT_MAP, LVB_STRUCT_WALK or
 *  LVB_STRUCT_PLACE; kind is the LVB_KIND_ for a stage, the LVB_PATTERN_ for a pattern, the LVB_FADING_ for a map or a
 *  walk and otherwise 0; of an array the range is that of each value.
 *  field is an LVB_FIELD_ value. fault may be null.
 *  Refused: a null range or a wrong size; a field that this structure or kind does not use (LVB_E_NOT_FOUND).
 *  Since: 0.1. */
LVB_API lvb_status lvb_describe_field(int32_t structure, int32_t kind, int32_t field, lvb_range *range,
                                      lvb_fault *fault);

/** Plain name of a kind of stage ("cable"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_kind_name(int32_t kind);

/** Plain name of a basis ("data sheet"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_basis_name(int32_t basis);

/** Plain name of a level's reference ("e.i.r.p."); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_reference_name(int32_t reference);

/** Plain name of a zone ("wanted band"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_zone_name(int32_t zone);

/** Plain name of a verdict ("drops out"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_verdict_name(int32_t verdict);

/** Plain name of what decides ("far floor"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_decided_by_name(int32_t decided_by);

/** Plain name of an end of the walk ("far"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_end_name(int32_t end);

/** Plain name of a note ("near field"), which is one LVB_NOTE_ bit; none, several and an unknown one give "unknown".
 *  Since: 0.1. */
LVB_API const char *lvb_note_name(uint32_t note);

/* ------------------------------------------------------------------------------------------------------------
 * Antennas: patterns, pointing, off-axis gain; bodies and allowances.
 * Angles of a pattern are relative to the antenna: azimuth from its boresight, positive clockwise seen from above (to
 * the right of one who looks along the boresight); elevation from the plane of boresight and right, positive upwards.
 * A pattern says what an antenna does alone in free space: a stage, a mast or a body near it changes it.
 * ---------------------------------------------------------------------------------------------------------- */

/** Gain of a thin half-wave dipole without losses in a direction, by the angle from its axis.
 *  Formula: 2.150880 + 20 log10 |cos(90 deg cos(angle_deg)) / sin(angle_deg)|; on the axis -infinity.
 *  Source: Balanis, Antenna Theory, 4.6 (half-wavelength dipole).
 *  Range: angle_deg [-1e12, 1e12].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2 ULP, or 8e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_dipole_gain_dbi(double angle_deg);

/** Exponent n of an antenna that radiates cos^n of power into the half space before it, from its gain.
 *  Formula: 10^(gain_dbi / 10) / 2 - 1.
 *  Source: Kraus, Antennas, example 2-4.2 (directivity 2 (n + 1)).
 *  Range: gain_dbi [3.010299956639812, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2 ULP. Since: 0.1. */
LVB_API double lvb_cosine_exponent_from_gain_dbi(double gain_dbi);

/** Gain of an antenna that radiates cos^n of power into the half space before it, without losses.
 *  Formula: 10 log10(2 (exponent + 1)).
 *  Source: Kraus, Antennas, example 2-4.2 (directivity 2 (n + 1)).
 *  Range: exponent [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.3 ULP. Since: 0.1. */
LVB_API double lvb_gain_dbi_from_cosine_exponent(double exponent);

/** Exponent n of an antenna that radiates cos^n of power, from its half-power beam width.
 *  Formula: log(1/2) / log(cos(beam_width_deg / 2)); 0 gives +infinity, 180 gives 0.
 *  Source: half power of cos^n, derived; Kraus, Antennas, example 2-4.2.
 *  Range: beam_width_deg [0, 180].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 6 ULP. Since: 0.1. */
LVB_API double lvb_cosine_exponent_from_beam_width_deg(double beam_width_deg);

/** Half-power beam width in degrees of an antenna that radiates cos^n of power into the half space before it.
 *  Formula: 2 acos(2^(-1 / exponent)); 0 gives 180, infinity gives 0.
 *  Source: Kraus, Antennas, example 2-4.2.
 *  Range: exponent [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 3.6 ULP. Since: 0.1. */
LVB_API double lvb_beam_width_deg_from_cosine_exponent(double exponent);

/** Gain estimated from the half-power beam widths of two planes that cross at right angles: the degrees of a sphere over
 *  those of the beam. An estimate from above: it leaves out side lobes and losses, and suits one narrow main lobe.
 *  Formula: 10 log10(41253 / (beam_width_1_deg beam_width_2_deg)).
 *  Source: Kraus, Antennas, 2-4.
 *  Range: beam_width_1_deg (0, 360], beam_width_2_deg (0, 360].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.7 ULP, or 2.5e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_gain_dbi_from_beam_widths(double beam_width_1_deg, double beam_width_2_deg);

/** Gain of an axial-mode helix, estimated from its turns, their spacing and their circumference, both in wavelengths.
 *  Other books print 15 in place of 12, 0.97 dB more; measured helices lie nearer to 12. It was measured for pitch
 *  angles of 12 to 14 degrees, atan(spacing / circumference); the range allows more, and there it is an extrapolation,
 *  which a pattern notes (to the whole degree: below 11.5, above 14.5).
 *  Formula: 10 log10(12 turns spacing_wavelengths circumference_wavelengths^2).
 *  Source: Kraus, Antennas, 8-5, example 8-5.2.
 *  Range: turns [3, 100], spacing_wavelengths [0.1, 0.5], circumference_wavelengths [0.75, 1.33].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.5 ULP, or 2e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_helix_gain_dbi(double turns, double spacing_wavelengths, double circumference_wavelengths);

/** Half-power beam width in degrees of an axial-mode helix, estimated as lvb_helix_gain_dbi.
 *  For the same pitch angles.
 *  Formula: 52 / (circumference_wavelengths sqrt(turns spacing_wavelengths)).
 *  Source: Kraus, Antennas, 8-5, example 8-5.2.
 *  Range: turns [3, 100], spacing_wavelengths [0.1, 0.5], circumference_wavelengths [0.75, 1.33].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2.5 ULP. Since: 0.1. */
LVB_API double lvb_helix_beam_width_deg(double turns, double spacing_wavelengths, double circumference_wavelengths);

/** Axial ratio in dB of an axial-mode helix on its axis (lvb_ellipticity_from_axial_ratio_db makes an ellipticity of it).
 *  Formula: 20 log10((2 turns + 1) / (2 turns)).
 *  Source: Kraus, Antennas, 8-5, example 8-5.2.
 *  Range: turns [3, 100].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP. Since: 0.1. */
LVB_API double lvb_helix_axial_ratio_db(double turns);

/** Kinds of pattern. */
enum {
    LVB_PATTERN_ISOTROPIC = 0,        /**< gain_dbi in every direction (0: 0 dBi) */
    LVB_PATTERN_HALF_WAVE_DIPOLE = 1, /**< lvb_dipole_gain_dbi; its axis points up, its boresight is broadside */
    LVB_PATTERN_COSINE = 2,           /**< cos^n of power in the front half space, by gain_dbi, beam_width_deg or both */
    LVB_PATTERN_CUTS = 3,             /**< the host's tables */
    LVB_PATTERN_HELIX = 4 /**< axial-mode helix, estimated; circular, in the sense that its antenna's ellipticity states */
};

/** A cut through a pattern at elevation 0: gain over azimuth, from a data sheet or a measurement. Borrowed.
 *  Gains are relative to the pattern's gain_dbi: 0 dB where the cut reaches it, negative below. (A single cut in dBi may be
 *  lent as it is, with gain_dbi 0.) Between rows it is linear in dB over degrees, exact at every row. It closes to a circle:
 *  after its last row comes its first, 360 degrees later.
 *  Refused: no rows, or more than LVB_MAX_ROWS; azimuths outside -360 to 360, or that do not rise; a circle of 360 degrees
 *  (LVB_E_TABLE_DUPLICATE: its end is its beginning) or more; gains outside -200 to 60 dB; neighbours more than 100 dB
 *  apart, also the first row and the last (LVB_E_TABLE_TOO_STEEP). */
typedef struct lvb_azimuth_cut {
    uint32_t size;             /**< sizeof(lvb_azimuth_cut) */
    uint32_t row_count;        /**< rows, 1 to LVB_MAX_ROWS */
    const double *azimuth_deg; /**< row_count rising azimuths */
    const double *gain_db;     /**< row_count gains relative to gain_dbi */
} lvb_azimuth_cut;

/** A cut through a pattern at azimuth 0: gain over elevation, as lvb_azimuth_cut but from -90 to 90 degrees.
 *  Refused: as lvb_azimuth_cut; a first row that is not at -90 or a last that is not at 90 degrees. */
typedef struct lvb_elevation_cut {
    uint32_t size;               /**< sizeof(lvb_elevation_cut) */
    uint32_t row_count;          /**< rows, 2 to LVB_MAX_ROWS */
    const double *elevation_deg; /**< row_count rising elevations, the first -90, the last 90 */
    const double *gain_db;       /**< row_count gains relative to gain_dbi */
} lvb_elevation_cut;

/** How an antenna's gain depends on the direction. Zeroed it is an isotropic antenna. A gain_dbi is the host's, and
 *  includes the antenna's losses; what is computed is lossless: dipole, helix, and a cosine by its beam width alone. A
 *  cosine with gain_dbi and beam_width_deg has the shape of the width and the level of the gain; with gain_dbi alone
 *  its shape is that of a lossless antenna of this gain.
 *  With front_to_back_db no direction lies further below gain_dbi than that; without it (0) a cosine and a helix have no
 *  gain at all (-infinity dBi) behind them and at right angles.
 *  Two cuts are added: gain_dbi + azimuth cut + elevation cut, which is exact in both planes and overestimates the
 *  losses between them; behind the antenna the elevation cut is taken as before it.
 *  Source: Balanis, Antenna Theory, 4.6 (dipole); Kraus, Antennas, 2-4 and 8-5 (cosine, helix); sum of two cuts, limited by
 *  the front-to-back ratio: 3GPP TR 38.901, table 7.3-1. A helix has lvb_helix_gain_dbi on its axis and, our own choice
 *  of shape, cos^n with lvb_helix_beam_width_deg around it.
 *  A field that a kind does not name must be zero. */
typedef struct lvb_pattern {
    uint32_t size;                    /**< sizeof(lvb_pattern) */
    int32_t kind;                     /**< LVB_PATTERN_ */
    double gain_dbi;                  /**< isotropic, cuts: -60 to 60 dBi; cosine: 3.0103 to 60 dBi; 0: by beam_width_deg */
    double beam_width_deg;            /**< cosine: half-power beam width, 0.1 to 180 degrees; 0: by gain_dbi */
    double front_to_back_db;          /**< cosine, cuts, helix: 0.1 to 200 dB; 0: no floor */
    double turns;                     /**< helix: 3 to 100 */
    double spacing_wavelengths;       /**< helix: of its turns, 0.1 to 0.5 */
    double circumference_wavelengths; /**< helix: of its turns, 0.75 to 1.33 */
    const lvb_azimuth_cut *azimuth_cut; /**< cuts: at elevation 0, or null */
    const lvb_elevation_cut *elevation_cut; /**< cuts: at azimuth 0, or null; one of the two must be there */
} lvb_pattern;

/** Gain of a pattern. */
typedef struct lvb_pattern_gain {
    uint32_t size;     /**< sizeof(lvb_pattern_gain) */
    uint32_t notes;    /**< LVB_NOTE_NULL where gain_dbi is -infinity, LVB_NOTE_EXTRAPOLATED for a helix of another pitch */
    double gain_dbi;   /**< in the direction asked for; -infinity in a null */
    double maximum_dbi; /**< in the direction of maximum radiation, which a licence's e.i.r.p. takes */
} lvb_pattern_gain;

/** Computes the gain of a pattern in a direction.
 *  Formula: as lvb_pattern says; cosine: gain + 10 n log10(cos(azimuth_deg) cos(elevation_deg)).
 *  Source: as lvb_pattern says.
 *  fault may be null.
 *  Range: azimuth_deg -360 to 360, elevation_deg -90 to 90.
 *  Refused: null pattern or result (LVB_E_NULL); an unknown kind (LVB_E_UNKNOWN_VALUE); fields outside their ranges, or filled
 *  though the kind has no use for them (LVB_E_UNUSED); a cosine with neither gain nor beam width
 *  (LVB_E_MISSING); cuts without any (LVB_E_MISSING); bad cuts.
 *  Accuracy: 1e-12 dB of the stated formulas where the gain is above -200 dBi. Cost: linear in the rows of the cuts. Since: 0.1. */
LVB_API lvb_status lvb_compute_pattern_gain(const lvb_pattern *pattern, double azimuth_deg, double elevation_deg,
                                            lvb_pattern_gain *result, lvb_fault *fault);

/** Plain name of a kind of pattern ("half-wave dipole"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_pattern_name(int32_t kind);

/** An antenna in its place. Zeroed it stands at the origin, isotropic, polarized vertically, and looks along y.
 *  x points to the right, y ahead and z up, of one who looks along y: azimuth_deg 0 is along y, 90 along x. tilt_deg
 *  raises the boresight, then roll_deg turns the whole antenna around it, clockwise seen from behind. Its polarization
 *  is that of two crossed elements: one along an axis that lies polarization_deg from the antenna's own up (as
 *  roll_deg turns), and one at right angles to it and to the boresight, ellipticity times as strong. A half-wave dipole
 *  radiates along its own axis alone: turn it by roll_deg. */
typedef struct lvb_antenna {
    uint32_t size;              /**< sizeof(lvb_antenna) */
    uint32_t reserved;          /**< 0 */
    double x_m;                 /**< -1000000 to 1000000 m */
    double y_m;                 /**< as x_m */
    double z_m;                 /**< as x_m */
    double azimuth_deg;         /**< of the boresight, clockwise seen from above, -360 to 360 degrees */
    double tilt_deg;            /**< of the boresight above the horizon, -90 to 90 degrees; negative: down */
    double roll_deg;            /**< of the antenna around its boresight, -360 to 360 degrees */
    double polarization_deg;    /**< of the axis from the antenna's up, -360 to 360 degrees; 90: horizontal; dipole: 0 */
    double ellipticity; /**< as lvb_elliptical_polarization_loss_db takes it: 0 linear, 1 and -1 circular; dipole: 0;
                                     helix: lvb_ellipticity_from_axial_ratio_db(lvb_helix_axial_ratio_db(turns)) with the
                                     sign of its sense, which the pattern does not know: not 0 */
    double largest_dimension_m; /**< for the far-field distance, 0 to 1000 m; 0: not considered */
    const lvb_pattern *pattern; /**< null: isotropic, 0 dBi */
    const char *label;          /**< the host's; never read */
} lvb_antenna;

/** How two antennas see each other. */
typedef struct lvb_pointing {
    uint32_t size;                 /**< sizeof(lvb_pointing) */
    uint32_t notes;                /**< LVB_NOTE_NEAR_FIELD, _INSIDE_FAR_FIELD_DISTANCE, _NULL, _EXTRAPOLATED */
    double distance_m;             /**< between the two */
    double transmit_azimuth_deg;   /**< of the receiving antenna as the transmitting one sees it, -180 to 180 degrees */
    double transmit_elevation_deg; /**< as transmit_azimuth_deg, -90 to 90 degrees */
    double receive_azimuth_deg;    /**< of the transmitting antenna as the receiving one sees it */
    double receive_elevation_deg;  /**< as receive_azimuth_deg */
    double transmit_gain_dbi;      /**< of the transmitting antenna towards the receiving one */
    double receive_gain_dbi;       /**< of the receiving antenna towards the transmitting one */
    double polarization_loss_db;   /**< between the two along the line of sight; +infinity where nothing is received */
    double far_field_distance_m;   /**< 2 D^2 / lambda of the larger antenna; 0 where neither has a dimension */
} lvb_pointing;

/** Computes how two antennas see each other: distance, direction and gain of each towards the other, polarization loss.
 *  The angles and gains are what an antenna stage takes; a map asks the same for many points.
 *  Formula: the line of sight in each antenna's own axes, by atan2; polarization: the fields that the crossed elements of
 *  each antenna radiate along the line of sight, projected on the plane across it and compared; facing each other this is
 *  lvb_elliptical_polarization_loss_db. A part below 1e-28 of the power is rounding and counts as nothing: +infinity. So does
 *  a linear antenna whose axis points along the line of sight.
 *  Source: Balanis, Antenna Theory, 2.12 (polarization loss factor); IEEE Std 145 (far-field region). That real antennas
 *  keep the polarization of crossed elements off their boresight: common practice, no source.
 *  fault may be null. In a fault in an antenna or its pattern, `stage` is LVB_STAGE_TRANSMIT or LVB_STAGE_RECEIVE.
 *  Range: frequency_mhz 0.1 to 300000; distance_m 0.01 m or more; as the fields of lvb_antenna and lvb_pattern say.
 *  Refused: null transmit, receive or pointing; a distance below 0.01 m; reserved not 0; polarization_deg or
 *  ellipticity of a half-wave dipole (LVB_E_UNUSED); a helix without ellipticity (LVB_E_MISSING); as
 *  lvb_compute_pattern_gain for the patterns.
 *  Accuracy: distance 2 ULP; elevations 1e-13 degrees, azimuths that over the cosine of the elevation; gains as
 *  lvb_compute_pattern_gain at these angles; polarization loss 3e-12 dB up to 60 dB. Since: 0.1. */
LVB_API lvb_status lvb_compute_pointing(const lvb_antenna *transmit, const lvb_antenna *receive, double frequency_mhz,
                                        lvb_pointing *pointing, lvb_fault *fault);

/** What the wearer's body costs, over the direction in which the wearer faces; measured by the host. Borrowed.
 *  facing_deg 0 is towards the other antenna, positive where the wearer turns clockwise seen from above. It closes to a
 *  circle and is interpolated as an azimuth cut. Refused: as an azimuth cut, with losses of 0 to 200 dB. */
typedef struct lvb_body_table {
    uint32_t size;            /**< sizeof(lvb_body_table) */
    uint32_t row_count;       /**< rows, 1 to LVB_MAX_ROWS */
    const double *facing_deg; /**< row_count rising angles */
    const double *loss_db;    /**< row_count losses, positive */
} lvb_body_table;

/** Computes the loss of a body for a direction in which its wearer faces.
 *  Formula: linear in dB between the rows of the table.
 *  Source: the host's measurement; linear interpolation is common practice, no source.
 *  fault may be null.
 *  Range: facing_deg -360 to 360.
 *  Refused: null table or loss_db (LVB_E_NULL); facing_deg outside its range; a bad table.
 *  Accuracy: 1e-12 dB of the stated formula. Cost: linear in rows. Since: 0.1. */
LVB_API lvb_status lvb_compute_body_loss(const lvb_body_table *table, double facing_deg, double *loss_db, lvb_fault *fault);

/** A published figure for an allowance, or a rule of the trade. The library never takes one by itself. */
typedef struct lvb_allowance_info {
    uint32_t size;      /**< sizeof(lvb_allowance_info) */
    uint32_t reserved;  /**< 0 */
    double low_db;      /**< least loss; NaN where the source gives none */
    double usual_db;    /**< usual loss; NaN where the source gives none */
    double high_db;     /**< largest loss; NaN where the source gives none */
    const char *subject; /**< what costs it: "polarization", "body" */
    const char *name;   /**< what it is for */
    const char *source; /**< where it is printed and how it is known, or "common practice, no source" */
    const char *remark; /**< what a reader should know of it */
} lvb_allowance_info;

/** Number of allowances that are described. Refused: nothing. Since: 0.1. */
LVB_API uint32_t lvb_allowance_count(void);

/** Describes an allowance, row_index from 0 to lvb_allowance_count() - 1. Losses are positive: a stage takes them negative.
 *  Refused: a null info, or a wrong size (LVB_E_NULL, LVB_E_STRUCT_SIZE); an unknown row (LVB_E_NOT_FOUND).
 *  fault may be null. Since: 0.1. */
LVB_API lvb_status lvb_describe_allowance(uint32_t row_index, lvb_allowance_info *info, lvb_fault *fault);

/* ------------------------------------------------------------------------------------------------------------
 * Other paths: two-ray, indoor, knife edges, walls, radiating cable. Which model is for what:
 *  - free space: a clear stage at short range, and the least loss to plan with;
 *  - two-ray: open air or a wide, empty hall with a flat floor; tells where the floor's reflection makes a dead spot.
 *    Walls, ceiling, people and scenery are not in it;
 *  - log-distance: any room whose exponent was measured or is known from its like;
 *  - indoor (ITU-R P.1238): means over offices, shops, corridors and halls, furniture and walls of one floor included;
 *  - knife edges: a person, a set piece, a balcony's rim or a roof between the antennas;
 *  - radiating cable: corridors, tunnels, stands and backstage runs that a cable serves along its length.
 * All give the mean or the undisturbed value: fading and shadowing come on top. Nothing replaces a walk test.
 * ---------------------------------------------------------------------------------------------------------- */

/** Break point of two rays: the floor distance beyond which direct and reflected ray weaken each other and the loss
 *  grows with 40 dB instead of 20 dB per decade.
 *  Far beyond it the loss nears 40 log10(d) - 20 log10(ht hr). A real floor shifts that constant by
 *  -20 log10 |1 - j q (lambda / (2 pi)) (1 / ht + 1 / hr)|, q = 1 / sqrt(e - 1) for horizontal and e / sqrt(e - 1) for
 *  vertical polarization (derived): -0.1 dB for vertical polarization over concrete at 600 MHz, antennas at 2 and 1.5 m;
 *  up to some dB over ground that conducts well or with antennas lower than a few wavelengths.
 *  Formula: 4 transmit_height_m receive_height_m / lambda.
 *  Source: ITU-R P.1411, 4.1 (street canyons, line of sight).
 *  Range: frequency_mhz (0, inf), transmit_height_m [0, inf), receive_height_m [0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2.5 ULP. Since: 0.1. */
LVB_API double lvb_two_ray_break_point_m(double frequency_mhz, double transmit_height_m, double receive_height_m);

/** Loss by the log-distance law. Exponents: 2 is free space; printed ones lie between 1.5 (a corridor that guides) and
 *  6.
 *  Formula: loss_at_1m_db + 10 exponent log10(distance_m).
 *  Source: Rappaport, Wireless Communications, 4.9 (log-distance path loss).
 *  Range: loss_at_1m_db [-1000, 1000], exponent [0.1, 10], distance_m (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2 ULP, or 3e-13 dB where that is larger. Since: 0.1. */
LVB_API double lvb_log_distance_loss_db(double loss_at_1m_db, double exponent, double distance_m);

/** Indoor loss between two antennas on one floor, in the form of ITU-R P.1238-0 to -9; the loss of floors is added by
 *  the host. Walls and furniture are in the coefficient. Printed coefficients: 900 MHz office 33, commercial 20; 1.8
 *  to 2 GHz residential 28, office 30, commercial 22; 5.2 GHz office 31. Printed floor losses for n floors: 900 MHz
 *  office 9, 19 and 24 dB for 1, 2 and 3; 1.8 to 2 GHz residential 4 n, office 15 + 4 (n - 1), commercial 6 + 3 (n -
 *  1) dB.
 *  Formula: 20 log10(frequency_mhz) + power_loss_coefficient log10(distance_m) - 28.
 *  Source: ITU-R P.1238-9, equation (1). Frequencies: from its title; distances: it states 1 m and more, the upper end
 *    is ours.
 *  Range: frequency_mhz [300, 100000], distance_m [1, 1000], power_loss_coefficient [0, 100].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2.2 ULP. Since: 0.1. */
LVB_API double lvb_indoor_loss_db(double frequency_mhz, double distance_m, double power_loss_coefficient);

/** Radius of the first Fresnel zone at a point between two antennas. As a rule a path is clear where 0.6 of it is free
 *  (ITU-R P.526).
 *  Formula: sqrt(lambda first_distance_m second_distance_m / (first_distance_m + second_distance_m)).
 *  Source: ITU-R P.526, 2 (Fresnel ellipsoids).
 *  Range: frequency_mhz (0, inf), first_distance_m (0, inf), second_distance_m (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 4.1 ULP. Since: 0.1. */
LVB_API double lvb_fresnel_radius_m(double frequency_mhz, double first_distance_m, double second_distance_m);

/** Diffraction parameter (v) of a knife edge: its height over the straight line between the antennas, negative below
 *  it, by the radius of the first Fresnel zone there.
 *  Formula: sqrt(2) height_m / fresnel_radius_m.
 *  Source: ITU-R P.526, 4.1 (single knife-edge obstacle).
 *  Range: height_m [-inf, inf], fresnel_radius_m (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2.2 ULP. Since: 0.1. */
LVB_API double lvb_knife_edge_parameter(double height_m, double fresnel_radius_m);

/** Loss behind a knife edge over the unobstructed path: 6 dB where the edge touches the line of sight. The formula is
 *  an approximation: from -0.78 on it lies within 0.13 dB of the exact Fresnel integral; below, the exact loss swings
 *  around 0 dB, by up to 1.4 dB to either side, and the recommendation counts nothing.
 *  Formula: 6.9 + 20 log10(sqrt((parameter - 0.1)^2 + 1) + parameter - 0.1); 0 at -0.78 and below.
 *  Source: ITU-R P.526, 4.1 (J(v)).
 *  Range: parameter [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.3 ULP, or 4.2e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_knife_edge_loss_db(double parameter);

/** Models of a path. */
enum {
    LVB_PATH_FREE_SPACE = 0,
    LVB_PATH_TWO_RAY = 1,        /**< with a real floor: heights, permittivity, conductivity, polarization */
    LVB_PATH_LOG_DISTANCE = 2,   /**< exponent, reference */
    LVB_PATH_INDOOR = 3,         /**< ITU-R P.1238-0 to -9: power_loss_coefficient; floors as floor_loss_db */
    LVB_PATH_SITE_GENERAL = 4,   /**< ITU-R P.1238-11: environment */
    LVB_PATH_RADIATING_CABLE = 5 /**< longitudinal loss, coupling loss, lateral distance; no heights, no edges */
};

/** Environments of the site-general model (ITU-R P.1238-11, table 2), each with the frequencies and distances it is
 *  stated for: loss 10 a log10(d) + b + 10 g log10(f in GHz), standard deviation s. */
enum {
    LVB_ENVIRONMENT_NONE = 0,
    LVB_ENVIRONMENT_OFFICE_IN_SIGHT = 1,        /**< a 1.46, b 34.62, g 2.03, s 3.76; 0.3-83.5 GHz, 2-27 m */
    LVB_ENVIRONMENT_OFFICE_OUT_OF_SIGHT = 2,    /**< a 2.46, b 29.53, g 2.38, s 5.04; 0.3-82 GHz, 4-30 m */
    LVB_ENVIRONMENT_CORRIDOR_IN_SIGHT = 3,      /**< a 1.63, b 28.12, g 2.25, s 4.07; 0.3-83.5 GHz, 2-160 m */
    LVB_ENVIRONMENT_CORRIDOR_OUT_OF_SIGHT = 4,  /**< a 2.77, b 29.27, g 2.48, s 7.63; 0.625-83.5 GHz, 4-94 m */
    LVB_ENVIRONMENT_INDUSTRIAL_IN_SIGHT = 5,    /**< a 2.31, b 24.52, g 2.06, s 2.69; 0.625-70.28 GHz, 2-101 m */
    LVB_ENVIRONMENT_INDUSTRIAL_OUT_OF_SIGHT = 6 /**< a 3.79, b 21.01, g 1.34, s 9.05; 0.625-70.28 GHz, 5-108 m */
};

/** Polarization over the floor of two rays. */
enum {
    LVB_POLARIZATION_VERTICAL = 0,
    LVB_POLARIZATION_HORIZONTAL = 1 /**< the electric field is parallel to the floor */
};

enum { LVB_MAX_EDGES = 1024 /**< the most edges that a path may have */ };

/** Top of an obstacle between the antennas, taken as a knife edge across the path. An element of an array. */
typedef struct lvb_edge {
    double distance_m; /**< along the floor from the transmitting antenna, 0.01 to 1e9 m; beyond the receiver no effect */
    double height_m;   /**< above the floor, -1000 to 1000 m */
} lvb_edge;

/** A way through the air: a model, and on top of it edges, walls and floors. A zeroed one is free space. Borrowed.
 *
 *  Where heights are given (two-ray and edges need them, but for a site: see lvb_site_antenna), the distance is along
 *  the floor and the models take the length of the straight line between the antennas, otherwise the distance itself is
 *  that length. For a radiating cable the distance is along the cable, from its feed.
 *
 *  The figures of the indoor and the site-general model were measured through walls and over obstacles of one floor
 *  (in sight: along a clear line): walls would count twice there, and edges with the indoor model and out of sight.
 *  A wall beyond what they describe goes into the air's gain_db. Edges in sight stand for what blocks the clear line.
 *
 *  An exponent belongs to log-distance, where it is needed, and to a radiating cable, where it is the fall-off across
 *  the cable and is needed at any other lateral distance than 2 m. A line source has 1, 3 dB per doubling; free space has 2,
 *  and planners of tunnels use it too (common practice, no source). Take the larger for the far end, the smaller for the near.
 *
 *  Exponents and coefficients are printed with the standard deviation of what was measured around them: ITU-R P.1238-9
 *  has 8 to 12 dB (from memory: residential 8, office and commercial 10 at 1.8 to 2 GHz; office 12 at 5.2 GHz). It does not
 *  change the loss: it is reported beside it, for a margin against shadowing.
 *
 *  A coupling loss is measured along the cable (IEC 61196-4) and printed for 50 % and for 95 % of the places, and for
 *  a dipole that lies along, radially or across. Take that of the receiving antenna's orientation, or the largest for one
 *  that is worn. With the 50 % value the level is the median along the cable, and a margin for the spread comes on
 *  top; with the 95 % value, usually several dB more, that spread is in the level already, and a margin for it would
 *  count it twice. */
typedef struct lvb_path {
    uint32_t size;                        /**< sizeof(lvb_path) */
    int32_t model;                        /**< LVB_PATH_ */
    int32_t environment;                  /**< site-general: LVB_ENVIRONMENT_ */
    int32_t polarization;                 /**< two-ray: LVB_POLARIZATION_ */
    uint32_t floor_count;                 /**< floors crossed, 0 to 100, each of floor_loss_db */
    uint32_t wall_count; /**< walls crossed, 0 to 100, each of wall_loss_db; indoor and site-general hold theirs: 0 */
    uint32_t edge_count; /**< edges, 0 to LVB_MAX_EDGES, in any order; indoor and out of sight: 0 */
    uint32_t edge_size;                   /**< sizeof(lvb_edge) */
    const lvb_edge *edges;                /**< edge_count edges, or null */
    const void *user;                     /**< the host's; never read */
    double transmit_height_m; /**< of the transmitting antenna above the floor, 0.01 to 1000 m; both heights or none; a site
                                   does not use them */
    double receive_height_m;              /**< of the receiving antenna, 0.01 to 1000 m */
    double relative_permittivity; /**< two-ray: of the floor, 1 to 1000; about 5 for concrete, 2 for wood (ITU-R P.2040) */
    double conductivity_s_per_m;          /**< two-ray: of the floor, 0 to 1e8 S/m; 0: a lossless one */
    double exponent;                      /**< log-distance and radiating cable: 0.1 to 10 */
    double reference_distance_m; /**< log-distance: 0.01 to 1e6 m, where the law begins; 0: 1 m */
    double reference_loss_db;             /**< log-distance: loss there, 0.001 to 300 dB; 0: that of free space */
    double power_loss_coefficient;        /**< indoor: N, 1 to 100 (see lvb_indoor_loss_db) */
    double floor_loss_db;                 /**< of each floor, up to 100 dB */
    double wall_loss_db;                  /**< of each wall, up to 100 dB; where wall_count may be filled */
    double longitudinal_loss_db_per_100m; /**< radiating cable: along it, 0.01 to 1000 dB/100 m */
    double coupling_loss_db; /**< radiating cable: to a half-wave dipole at 2 m, 10 to 200 dB; which: see below */
    double lateral_distance_m;            /**< radiating cable: from cable to antenna, 0.1 to 1000 m; 0: 2 m */
    double standard_deviation_db; /**< log-distance, indoor: of the loss around the law, 0.1 to 30 dB; 0: not stated */
} lvb_path;

/** What a path costs. */
typedef struct lvb_path_loss {
    uint32_t size;                /**< sizeof(lvb_path_loss) */
    uint32_t notes;               /**< LVB_NOTE_ bits */
    double loss_db;               /**< the whole loss between isotropic antennas: the three that follow */
    double base_loss_db;          /**< of the model */
    double diffraction_loss_db;   /**< of the edges, 0 or more */
    double obstacle_loss_db;      /**< of walls and floors */
    double free_space_loss_db;    /**< for comparison: of free space over the straight line (cable: lateral distance) */
    double standard_deviation_db; /**< from place to place: site-general its own, or the path's; NaN where none is stated */
    double break_point_m;         /**< two-ray: lvb_two_ray_break_point_m; otherwise NaN */
    double grazing_angle_deg;     /**< two-ray: of the reflected ray on the floor; otherwise NaN */
    double reflection_magnitude;  /**< two-ray: of the floor's reflection coefficient there; otherwise NaN */
    double reflection_phase_deg;  /**< two-ray: its phase, -180 to 180 degrees; otherwise NaN */
} lvb_path_loss;

/** Loss of a path between isotropic antennas at a frequency and a distance.
 *  Formula: base + diffraction + walls and floors.
 *  Two-ray: free space over the direct ray d1, less 20 log10 |1 + R (d1 / d2) e^(-j 2 pi (d2 - d1) / lambda)|, d2 the
 *  reflected ray, R = (q - w) / (q + w), w = sqrt(e - cos^2 t), q = sin t for horizontal and e sin t for vertical
 *  polarization, t the grazing angle, e = relative_permittivity - j conductivity / (2 pi f e0). Antennas count as
 *  isotropic: no pattern weakens the reflected ray. The floor is flat, and smooth against the wavelength.
 *  Log-distance: reference + 10 exponent log10(d / reference_distance_m). Indoor: lvb_indoor_loss_db. Site-general: as
 *  LVB_ENVIRONMENT_ says. Radiating cable: longitudinal loss + coupling loss + 2.150880 (the half-wave dipole
 *  over an isotropic antenna, exactly, as everywhere in this library; printed as 2.15) + 10 exponent
 *  log10(lateral_distance_m / 2 m). In a chain the antenna before such an air stands for the cable's feed: it takes no
 *  gain, table or pattern (LVB_E_UNUSED), its level is that at the feed, and the budget has no e.i.r.p. (NaN): a
 *  cable's is not known from these figures.
 *  One edge: lvb_knife_edge_loss_db. More: the edge with the largest parameter on the whole path, and on each side of
 *  it the edge with the largest parameter between its top and the antenna; each of these two less the correction for
 *  double isolated edges, (12 - 20 log10(2 / (1 - u / 180 deg))) (q / p)^(2 p), but never less than 0. p and q are the
 *  parameters of principal and second edge on the whole path, tan u = sqrt(b (a + b + c) / (a c)), a and c the distances
 *  of the two from the antenna next to them, b that between them. q / p counts as 0.001 or more, and the power as 1 where
 *  p is not above 0 (both ours, so that the loss is continuous). Further edges do not count.
 *  Edges count along the floor with heights against the straight line: for paths flatter than about 20 degrees, edges
 *  further from each antenna than a few wavelengths and wider than the Fresnel zone. With two-ray they weaken both
 *  rays.
 *  Source: two-ray: Rappaport, Wireless Communications, 4.6; R and its sign: ITU-R P.2040 (Fresnel coefficients; for
 *  vertical polarization Rappaport, 4.5, has the other sign); e: ITU-R P.527. Indoor: ITU-R P.1238-9 and -11.
 *  Edges: ITU-R P.526-15, 4.1 and 4.3; with edges on both sides of the principal one, its correction is applied on
 *  each side: ours.
 *  Cable: IEC 61196-4; exponents of the fall-off across it: common practice, no source.
 *  Range: frequency_mhz 0.1 to 300000, distance_m 0.01 to 1e9; log-distance from reference_distance_m on; indoor 300
 *  to 100000 MHz, 1 to 1000 m; site-general as LVB_ENVIRONMENT_ says; radiating cable up to 10000 m. Fields as lvb_path
 *  and lvb_edge say.
 *  Refused: null path or loss, or null edges where some are counted (LVB_E_NULL); wrong sizes; more than LVB_MAX_EDGES
 *  edges (LVB_E_COUNT); what the model needs and lacks, edges, walls or floors without a count, and a count without its
 *  loss (LVB_E_MISSING); what the model has no use for, or holds already (LVB_E_UNUSED); unknown models, environments
 *  and polarizations (LVB_E_UNKNOWN_VALUE); values, frequencies and distances (lengths of the straight line) outside
 *  their ranges, with log-distance also those nearer than its reference.
 *  fault may be null.
 *  Accuracy: 1e-11 dB of the stated formulas, with edges 1e-9 dB; two-ray 1e-13 (1 + 2 h / lambda) 10^(x / 20) dB, h
 *  the height of the lower antenna, x by how many dB it lies below free space.
 *  The models themselves: edges within 0.13 dB of the exact integral for one, within 1.5 dB for two that both stand
 *  above the line of sight at least a tenth of the path apart (closer ones are not tested), and within 0.45 dB for three
 *  evenly spaced ones that touch it; for three or more that stand above it no bound is known; two-ray exact for its
 *  floor; log-distance, indoor and site-general as their standard deviations, of several dB. Cost: linear in edges.
 *  Since: 0.1. */
LVB_API lvb_status lvb_compute_path_loss(const lvb_path *path, double frequency_mhz, double distance_m,
                                         lvb_path_loss *loss, lvb_fault *fault);

/** Plain name of a model of a path ("two-ray"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_path_name(int32_t model);

/** Plain name of an environment ("office in sight"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_environment_name(int32_t environment);

/** Plain name of a polarization ("vertical"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_polarization_name(int32_t polarization);

/* ------------------------------------------------------------------------------------------------------------
 * Fading and diversity.
 * On a stage the level moves from place to place and while people walk: the outage is the share of places, or of time,
 * in which it falls below what the receiver needs, from 0 to 1, never in percent (0.01 is one in a hundred). It is the share
 * that is lost, not the share that is covered: to cover 99.9 % of places and times is to accept an outage of 0.1 %, which is
 * written 0.001. lvb_rayleigh_margin_below_mean_db(0.001) is 30.0 dB; who writes 0.999 there gets -8.4 dB, and a margin
 * below 0 dB is a sign that the two were mixed up.
 * The margin tells by how many dB that need lies below a reference of the moving level, and the function's name tells
 * which one. The mean is that of the power, in watts and then written in dB, the median is the level that half of the
 * places exceed: under Rayleigh fading it lies 1.59 dB below the mean.
 * Outages keep their digits near 0, and near 1 as far as a double can; margins that have no closed form are found by a
 * search with a bounded number of steps, down to an outage of 1e-300. No model knows your stage: walk it with the real
 * packs.
 * ---------------------------------------------------------------------------------------------------------- */

/** Outage under Rayleigh fading (many paths, none stronger than the rest) at a margin below the mean power.
 *  Formula: 1 - exp(-10^(-margin_db / 10)).
 *  Source: Rappaport, Wireless Communications, 5.6.1 (Rayleigh distribution).
 *  Range: margin_db [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2.6 ULP. Since: 0.1. */
LVB_API double lvb_rayleigh_outage_below_mean(double margin_db);

/** Margin in dB below the mean power at which Rayleigh fading has an outage.
 *  Formula: -10 log10(-ln(1 - outage)).
 *  Source: Rappaport, Wireless Communications, 5.6.1 (Rayleigh distribution).
 *  Range: outage [0, 1].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP, or 2.2e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_rayleigh_margin_below_mean_db(double outage);

/** Outage under Rayleigh fading at a margin below the median.
 *  Formula: 1 - 2^-(10^(-margin_db / 10)).
 *  Source: Rappaport, Wireless Communications, 5.6.1 (Rayleigh distribution and its median).
 *  Range: margin_db [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2.8 ULP. Since: 0.1. */
LVB_API double lvb_rayleigh_outage_below_median(double margin_db);

/** Margin in dB below the median at which Rayleigh fading has an outage.
 *  Formula: -10 log10(-log2(1 - outage)).
 *  Source: Rappaport, Wireless Communications, 5.6.1 (Rayleigh distribution and its median).
 *  Range: outage [0, 1].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.5 ULP, or 4e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_rayleigh_margin_below_median_db(double outage);

/** Outage under Rice fading (one direct path and many weak ones) at a margin below the mean power of both together.
 *  k_db is the direct path's power over that of all others; -infinity is Rayleigh fading.
 *  Formula: 1 - Q1(sqrt(2 K), sqrt(2 (1 + K) 10^(-margin_db / 10))), K = 10^(k_db / 10), Q1 Marcum's function.
 *  Source: Proakis, Digital Communications, 2.1 (Rice distribution and Marcum's function).
 *  Range: margin_db [-inf, inf], k_db [-inf, 40].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2500 ULP. Since: 0.1. */
LVB_API double lvb_rice_outage_below_mean(double margin_db, double k_db);

/** Margin in dB below the mean power at which Rice fading has an outage: the inverse of lvb_rice_outage_below_mean.
 *  Formula: lvb_rice_outage_below_mean, solved for margin_db.
 *  Source: Proakis, Digital Communications, 2.1 (Rice distribution and Marcum's function).
 *  Range: outage [1e-300, 1], k_db [-inf, 40].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 17 ULP, or 1e-14 dB where that is larger. Since: 0.1. */
LVB_API double lvb_rice_margin_below_mean_db(double outage, double k_db);

/** Outage under Nakagami fading at a margin below the mean power.
 *  Shape (m) 1 is Rayleigh fading, less is deeper, more is milder.
 *  Formula: P(m, m 10^(-margin_db / 10)), m = shape, P the regularized lower incomplete gamma function.
 *  Source: Proakis, Digital Communications, 2.1 (Nakagami distribution).
 *  Range: margin_db [-inf, inf], shape [0.5, 100].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 170 ULP. Since: 0.1. */
LVB_API double lvb_nakagami_outage_below_mean(double margin_db, double shape);

/** Margin in dB below the mean power at which Nakagami fading has an outage: inverse of lvb_nakagami_outage_below_mean.
 *  Formula: lvb_nakagami_outage_below_mean, solved for margin_db.
 *  Source: Proakis, Digital Communications, 2.1 (Nakagami distribution).
 *  Range: outage [1e-300, 1], shape [0.5, 100].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.6 ULP, or 3e-14 dB where that is larger. Since: 0.1. */
LVB_API double lvb_nakagami_margin_below_mean_db(double outage, double shape);

/** Outage under log-normal shadowing (levels in dB are normally distributed) at a margin below the median, which is
 *  also the mean of the levels in dB. Independent deviations add as the root of the sum of their squares.
 *  Formula: Q(margin_db / standard_deviation_db), Q the upper tail of the normal distribution; 1/2 at margin 0.
 *  Source: Rappaport, Wireless Communications, 4.9.2 (log-normal shadowing).
 *  Range: margin_db [-inf, inf], standard_deviation_db [0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 12 ULP. Since: 0.1. */
LVB_API double lvb_lognormal_outage_below_median(double margin_db, double standard_deviation_db);

/** Margin in dB below the median at which log-normal shadowing has an outage.
 *  Formula: standard_deviation_db z, z such that Q(z) = outage; outage 0 gives +infinity and 1 -infinity.
 *  Source: Rappaport, Wireless Communications, 4.9.2 (log-normal shadowing).
 *  Range: outage [0, 1], standard_deviation_db [0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 6.8 ULP. Since: 0.1. */
LVB_API double lvb_lognormal_margin_below_median_db(double outage, double standard_deviation_db);

/** Outage under Rayleigh fading whose local mean power is itself log-normally shadowed (Suzuki), at a margin below the
 *  median of these local means (the mean of their levels in dB, which a budget without allowance for both gives).
 *  Formula: mean of lvb_rayleigh_outage_below_mean(margin_db + standard_deviation_db z) over a standard normal z.
 *  Source: Suzuki, A Statistical Model for Urban Radio Propagation, IEEE Trans. Communications, 1977.
 *  Range: margin_db [-inf, inf], standard_deviation_db [0, 30].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 110 ULP. Since: 0.1. */
LVB_API double lvb_suzuki_outage_below_median_of_means(double margin_db, double standard_deviation_db);

/** Margin in dB below the median of the local means at which shadowed Rayleigh fading has an outage: the inverse of
 *  lvb_suzuki_outage_below_median_of_means.
 *  Formula: lvb_suzuki_outage_below_median_of_means, solved for margin_db.
 *  Source: Suzuki, A Statistical Model for Urban Radio Propagation, IEEE Trans. Communications, 1977.
 *  Range: outage [1e-300, 1], standard_deviation_db [0, 30].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.9 ULP, or 2e-13 dB where that is larger. Since: 0.1. */
LVB_API double lvb_suzuki_margin_below_median_of_means_db(double outage, double standard_deviation_db);

/** Outage of a receiver that takes the best of several independent branches, each of which alone has an outage.
 *  branches need not be whole: an effective number of branches may be stated.
 *  Formula: outage^branches; one branch gives exactly its own outage.
 *  Source: Rappaport, Wireless Communications, 7.10.1 (selection diversity).
 *  Range: outage [0, 1], branches [1, 100].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 10 ULP. Since: 0.1. */
LVB_API double lvb_selection_outage(double outage, double branches);

/** Outage of a receiver that adds several independent branches with equal Rayleigh fading by maximal ratio, at a margin
 *  below the mean power of one branch. branches need not be whole. Back from an outage:
 *  lvb_nakagami_margin_below_mean_db(outage, branches) - lvb_db_from_power_ratio(branches).
 *  Formula: P(branches, 10^(-margin_db / 10)), P the regularized lower incomplete gamma function.
 *  Source: Rappaport, Wireless Communications, 7.10.3 (maximal ratio combining).
 *  Range: margin_db [-inf, inf], branches [1, 100].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 260 ULP. Since: 0.1. */
LVB_API double lvb_maximal_ratio_outage_below_mean(double margin_db, double branches);

/** Outage of a receiver that takes the better of two correlated branches with equal Rayleigh fading, at a margin below
 *  the mean power of one branch. correlation is the coefficient of correlation of the two powers: the squared magnitude
 *  of that of the complex amplitudes, and nearly that of the envelopes. More than 0.999 is no second branch.
 *  Formula: 1 - e^-y (1 + Q1(a, b) - Q1(b, a)), y = 10^(-margin_db / 10), a^2 = 2 y / (1 - c), b^2 = c a^2,
 *  c = correlation.
 *  Source: Schwartz, Bennett and Stein, Communication Systems and Techniques, chapter 10.
 *  Range: margin_db [-inf, inf], correlation [0, 0.999].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 8.8 ULP. Since: 0.1. */
LVB_API double lvb_correlated_selection_outage_below_mean(double margin_db, double correlation);

/** Outage of a receiver that adds two correlated branches with equal Rayleigh fading by maximal ratio, at a margin
 *  below the mean power of one branch. correlation as in lvb_correlated_selection_outage_below_mean.
 *  Formula: 1 - (p e^(-y/p) - q e^(-y/q)) / (p - q), y = 10^(-margin_db / 10), p and q = 1 + and - sqrt(correlation).
 *  Source: Schwartz, Bennett and Stein, Communication Systems and Techniques, chapter 10.
 *  Range: margin_db [-inf, inf], correlation [0, 0.999].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 6.2 ULP. Since: 0.1. */
LVB_API double lvb_correlated_maximal_ratio_outage_below_mean(double margin_db, double correlation);

/** Share of a round area in which the level suffices, from the share at its edge, with log-normal shadowing and a level
 *  that falls by 10 path_loss_exponent dB per decade of distance from the middle.
 *  Formula: p + exp(2 s (s + z)) Q(z + 2 s), p = edge_coverage = Q(-z), s = standard_deviation_db / (10 n log10(e)),
 *  n = path_loss_exponent.
 *  Source: Rappaport, Wireless Communications, 4.9.3 (percentage of coverage area).
 *  Range: edge_coverage [0, 1], standard_deviation_db [0, inf), path_loss_exponent (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 300 ULP. Since: 0.1. */
LVB_API double lvb_area_coverage(double edge_coverage, double standard_deviation_db, double path_loss_exponent);

/* ------------------------------------------------------------------------------------------------------------
 * Noise and linearity along the chain. Noise figures are referred to 290 K; third-order products and intercepts are of
 * equal carriers.
 * ---------------------------------------------------------------------------------------------------------- */

/** Level of each third-order product of two equal carriers (2 f1 - f2 and 2 f2 - f1).
 *  level_dbm is that of one carrier; it and the intercept stand on the same side, both at the output or both at the input.
 *  It holds well below compression.
 *  Formula: 3 level_dbm - 2 intercept_dbm.
 *  Source: Pozar, Microwave Engineering, 10.3 (intermodulation distortion, third-order intercept point).
 *  Range: level_dbm [-1e12, 1e12], intercept_dbm [-1e12, 1e12].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 5e-13 dB where that is larger. Since: 0.1. */
LVB_API double lvb_third_order_product_dbm(double level_dbm, double intercept_dbm);

/** Third-order intercept of a measured product of two equal carriers.
 *  Formula: (3 level_dbm - product_dbm) / 2 (inverse of lvb_third_order_product_dbm).
 *  Source: Pozar, Microwave Engineering, 10.3 (intermodulation distortion, third-order intercept point).
 *  Range: level_dbm [-1e12, 1e12], product_dbm [-1e12, 1e12].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.1 ULP, or 2e-13 dB where that is larger. Since: 0.1. */
LVB_API double lvb_third_order_intercept_dbm(double level_dbm, double product_dbm);

/** Spurious-free range: how far two equal carriers may rise above the noise before their third-order products do.
 *  Both arguments stand on the same side, usually the input.
 *  Formula: 2/3 (intercept_dbm - noise_dbm).
 *  Source: Pozar, Microwave Engineering, 10.3 (spurious-free dynamic range).
 *  Range: intercept_dbm [-1e12, 1e12], noise_dbm [-1e12, 1e12].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.8 ULP, or 1.5e-13 dB where that is larger. Since: 0.1. */
LVB_API double lvb_spurious_free_range_db(double intercept_dbm, double noise_dbm);

/** Sensitivity: the least level that gives a carrier to noise, with a source at 290 K. With carrier_to_noise_db 0 it is
 *  the minimum detectable signal.
 *  Formula: 10 log10(k 290 K bandwidth_mhz 1e6) + 30 + noise_figure_db + carrier_to_noise_db, k = 1.380649e-23 J/K.
 *  Source: SI Brochure (k exact); ITU-R P.372; Pozar, Microwave Engineering, 10.1.
 *  Range: bandwidth_mhz (0, inf), noise_figure_db [0, 1e12], carrier_to_noise_db [-1e12, 1e12].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 2.6e-13 dB where that is larger. Since: 0.1. */
LVB_API double lvb_sensitivity_dbm(double bandwidth_mhz, double noise_figure_db, double carrier_to_noise_db);

/** Noise figure in dB of a matched passive loss at a physical temperature; at 290 K it is the loss itself.
 *  Formula: 10 log10(1 + (10^(loss_db / 10) - 1) temperature_k / 290).
 *  Source: Pozar, Microwave Engineering, 10.1 (noise figure of a lossy line); IEEE Std 100 (T0 = 290 K).
 *  Range: loss_db [0, inf], temperature_k (0, inf).
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP, or 1e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_passive_noise_figure_db(double loss_db, double temperature_k);

/** Loss of a passive combiner or splitter from one of its ways to the sum: what the division takes, and an excess.
 *  Formula: 10 log10(ways) + excess_db.
 *  Source: conservation of power between equal ways (Pozar, Microwave Engineering, 7.1).
 *  Range: ways [1, inf], excess_db [0, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.6 ULP, or 1.5e-16 dB where that is larger. Since: 0.1. */
LVB_API double lvb_combiner_loss_db(double ways, double excess_db);

/** Sum of two powers that are not coherent (noise and interference, two transmitters), as a level.
 *  Formula: 10 log10(10^(level_1_dbm / 10) + 10^(level_2_dbm / 10)).
 *  Source: IEC 60027-3 (level quantities).
 *  Range: level_1_dbm [-inf, inf], level_2_dbm [-inf, inf].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.8 ULP, or 1e-15 dB where that is larger. Since: 0.1. */
LVB_API double lvb_power_sum_dbm(double level_1_dbm, double level_2_dbm);

/** Median external noise figure, in dB over k 290 K B, of man-made noise in a city. Outdoors, for a short vertical antenna; single
 *  places differ from the median by 10 dB and more, and what a venue's own screens and dimmers radiate is not in it.
 *  Formula: 76.8 - 27.7 log10(frequency_mhz).
 *  Source: ITU-R P.372 (man-made noise).
 *  Range: frequency_mhz [0.3, 250].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP. Since: 0.1. */
LVB_API double lvb_city_noise_figure_db(double frequency_mhz);

/** Median external noise figure, in dB over k 290 K B, of man-made noise in a residential area.
 *  Formula: 72.5 - 27.7 log10(frequency_mhz).
 *  Source: ITU-R P.372 (man-made noise).
 *  Range: frequency_mhz [0.3, 250].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP. Since: 0.1. */
LVB_API double lvb_residential_noise_figure_db(double frequency_mhz);

/** Median external noise figure, in dB over k 290 K B, of man-made noise in a rural area.
 *  Formula: 67.2 - 27.7 log10(frequency_mhz).
 *  Source: ITU-R P.372 (man-made noise).
 *  Range: frequency_mhz [0.3, 250].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP. Since: 0.1. */
LVB_API double lvb_rural_noise_figure_db(double frequency_mhz);

/** Median external noise figure, in dB over k 290 K B, of man-made noise in a quiet rural area. Above some MHz galactic noise outweighs it.
 *  Formula: 53.6 - 28.6 log10(frequency_mhz).
 *  Source: ITU-R P.372 (man-made noise).
 *  Range: frequency_mhz [0.3, 30].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP. Since: 0.1. */
LVB_API double lvb_quiet_rural_noise_figure_db(double frequency_mhz);

/** Median external noise figure, in dB over k 290 K B, of man-made noise in a business area in VHF and UHF.
 *  Formula: 44.3 - 12.3 log10(frequency_mhz).
 *  Source: ITU-R P.372 (man-made noise).
 *  Range: frequency_mhz [200, 900].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP. Since: 0.1. */
LVB_API double lvb_business_noise_figure_db(double frequency_mhz);

/** Median external noise figure, in dB over k 290 K B, of galactic noise (vertical antenna, without the ionosphere's shielding).
 *  Formula: 52 - 23 log10(frequency_mhz).
 *  Source: ITU-R P.372 (galactic noise).
 *  Range: frequency_mhz [10, 100].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 1.2 ULP. Since: 0.1. */
LVB_API double lvb_galactic_noise_figure_db(double frequency_mhz);

/** Number of two-tone third-order products (2 a - b) that fall on the middle one of equally spaced carriers; of an even
 *  number on either of the two in the middle. A fraction of a carrier is dropped.
 *  Formula: 2 floor(h / 2) of 2 h + 1 carriers, h - 1 of 2 h carriers.
 *  Source: counted; the tests count one by one.
 *  Range: carriers [1, 1e6].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0 ULP. Since: 0.1. */
LVB_API double lvb_two_tone_product_count(double carriers);

/** Number of three-tone third-order products (a + b - c, three different carriers) that fall on the middle one of equally
 *  spaced carriers; of an even number on either of the two in the middle. It nears 3/8 n^2. A fraction of a carrier is
 *  dropped.
 *  Formula: (3 h^2 - h) / 2 - floor(h / 2) of 2 h + 1 carriers, (3 h - 2) (h - 1) / 2 of 2 h carriers.
 *  Source: counted; the tests count one by one.
 *  Range: carriers [1, 1e6].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0 ULP. Since: 0.1. */
LVB_API double lvb_three_tone_product_count(double carriers);

/** Power sum of all third-order products that fall on the middle one of equal, equally spaced carriers; -infinity where
 *  there are none (of one or two). level_dbm is that of one carrier, on the same side as the intercept. A fraction of a
 *  carrier is dropped.
 *  Formula: 3 level_dbm - 2 intercept_dbm + 10 log10(two-tone count + 4 three-tone count).
 *  Source: a three-tone product lies 6.02 dB above a two-tone product (cubic term of the power series: 3/2 against 3/4).
 *  Range: level_dbm [-1e12, 1e12], intercept_dbm [-1e12, 1e12], carriers [1, 1e6].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 0.8 ULP, or 7e-13 dB where that is larger. Since: 0.1. */
LVB_API double lvb_middle_channel_products_dbm(double level_dbm, double intercept_dbm, double carriers);

/** Where a level was measured, and what it holds for. */
enum {
    LVB_PLACE_NONE = 0,    /**< not measured */
    LVB_PLACE_ANTENNA = 1, /**< at the receiving antenna's terminal; without air at the source's output */
    LVB_PLACE_RECEIVER = 2 /**< at the receiver's input; without a receiver at the end of the chain */
};

enum { LVB_MAX_CARRIERS = 1000000 /**< the most carriers of which products are counted */ };

/** What the noise of a link depends on beside its stages. */
typedef struct lvb_noise_conditions {
    uint32_t size;                   /**< sizeof(lvb_noise_conditions) */
    uint32_t stated;                 /**< LVB_STATED_CARRIER_TO_NOISE when carrier_to_noise_db is given */
    int32_t noise_at;                /**< LVB_PLACE_ where noise_dbm was measured; none: noise is computed */
    int32_t interference_at;         /**< LVB_PLACE_ where interference_dbm stands; none: there is none */
    uint32_t carriers;               /**< equal carriers, equally spaced, 2 to LVB_MAX_CARRIERS; 0: products of 2, else one */
    uint32_t reserved;               /**< 0 */
    double bandwidth_mhz;            /**< noise bandwidth of the receiver, 1e-6 to 100000 MHz */
    double antenna_temperature_k;    /**< noise temperature of the antenna (or source), 0.001 to 1e12 K; 0: 290 K */
    double external_noise_figure_db; /**< the same as a figure (P.372, Fa), -60 to 120 dB; 0: 290 K; only one of both */
    double noise_dbm;                /**< noise in the bandwidth as measured, the receiver's own with it, -250 to 150 dBm */
    double interference_dbm;         /**< interference in the bandwidth, -250 to 150 dBm */
    double carrier_to_noise_db;      /**< what the receiver needs, -100 to 100 dB */
} lvb_noise_conditions;

/** The noise book's line for one stage of the receive side: the cascade up to and with it. Lines before the receive side
 *  hold NaN, and so does that of lvb_noise's first_stage, the receiving antenna (or the source) itself: the book begins at its
 *  terminal, where nothing is added yet: gain 0 dB, noise figure 0 dB, and the noise of antenna_temperature_k in the bandwidth.
 *  The receiver's line is referred to its input, and its own gain_db is not counted; an allowance changes
 *  levels only. NaN where a stage so far does not state what is needed. */
typedef struct lvb_noise_line {
    uint32_t notes;                    /**< LVB_NOTE_ bits of this stage */
    uint32_t reserved;                 /**< 0 */
    double gain_db;                    /**< from the antenna's terminal to here */
    double stage_noise_figure_db;      /**< of the stage alone */
    double noise_figure_db;            /**< of the cascade */
    double noise_temperature_k;        /**< of the cascade, at the antenna's terminal, without the antenna's own */
    double noise_dbm;                  /**< computed noise here in the bandwidth, the antenna's with it */
    double far_carrier_to_noise_db;    /**< far end's level here over noise_dbm */
    double near_carrier_to_noise_db;   /**< near end's level here over noise_dbm */
    double input_intercept_dbm;        /**< third-order intercept of the cascade, at the antenna's terminal */
    double output_intercept_dbm;       /**< the same here; infinity where nothing so far bends */
    double compression_dbm;            /**< level at the antenna's terminal at which this stage compresses by 1 dB */
    double compression_headroom_db;    /**< near end's level, of all given carriers together, under it */
    double two_tone_dbm;               /**< each third-order product here of two carriers at the near end's level */
    double products_dbm;               /**< sum of the products on the middle one of the conditions' carriers */
    double range_change_db;            /**< amplifier: spurious-free range of the whole chain with it, less without it */
    double carrier_to_noise_change_db; /**< amplifier: carrier to noise of the whole chain with it, less without it */
} lvb_noise_line;

/** Noise and linearity of a link's receive side. NaN where a stage does not state what is needed. */
typedef struct lvb_noise {
    uint32_t size;                    /**< sizeof(lvb_noise) */
    int32_t verdict;                  /**< LVB_VERDICT_ */
    uint32_t notes;                   /**< LVB_NOTE_ bits of all lines */
    int32_t first_stage;              /**< index of the receiving antenna; of the source where there is no air */
    int32_t no_noise_figure_stage;    /**< first amplifier or receiver without a noise figure; -1: none */
    int32_t no_intercept_stage;       /**< first amplifier or receiver without an intercept; -1: none */
    int32_t compressing_stage;        /**< stage that compresses first, of those that state it; -1: none does */
    int32_t range_lowering_stage;     /**< of the amplifiers that are called out, the one that costs most dB of range or carrier to
                                           noise, the first of equal ones; -1: none is called out */
    double gain_db;                   /**< from the antenna's terminal to the receiver's input */
    double noise_figure_db;           /**< of the cascade, referred to 290 K */
    double noise_temperature_k;       /**< of the cascade, at the antenna's terminal, without the antenna's own */
    double antenna_temperature_k;     /**< of the antenna or source */
    double antenna_noise_dbm;         /**< noise floor at the antenna's terminal, computed or from the measured one */
    double receiver_noise_dbm;        /**< noise floor at the receiver's input */
    double receiver_interference_dbm; /**< interference at the receiver's input; -infinity where there is none */
    double far_level_dbm;             /**< far end's level at the receiver's input */
    double near_level_dbm;            /**< near end's level at the receiver's input */
    double far_carrier_to_noise_db;   /**< at the far end */
    double near_carrier_to_noise_db;  /**< at the near end */
    double far_carrier_to_noise_plus_interference_db;  /**< at the far end */
    double near_carrier_to_noise_plus_interference_db; /**< at the near end */
    double sensitivity_dbm;           /**< least level at the antenna's terminal for the needed carrier to noise */
    double margin_db;                 /**< far end's carrier to noise plus interference above the needed one */
    double input_intercept_dbm;       /**< third-order intercept of the cascade, at the antenna's terminal */
    double output_intercept_dbm;      /**< the same at the receiver's input */
    double compression_dbm;           /**< level at the antenna's terminal at which the first stage compresses by 1 dB */
    double compression_headroom_db;   /**< near end's level, of all given carriers together, under it */
    double two_tone_dbm;              /**< at the receiver's input: each product of two carriers at the near end's level */
    double products_dbm;              /**< and the sum on the middle one of the conditions' carriers */
    double spurious_free_range_db;    /**< of input_intercept_dbm over antenna_noise_dbm */
} lvb_noise;

/** Computes noise and linearity of a link's receive side: from the receiving antenna's terminal to the receiver, in a
 *  chain without air from the source. Levels are those of lvb_compute_budget.
 *  Formula: noise temperatures add as Te1 + Te2 / G1 + ..., a passive stage or cable of loss L at the link's temperature
 *  Tp has Te = (L - 1) Tp; noise k (Ta + Te) B; inverse intercepts add as 1 / I1 + G1 / I2 + ... (in phase, the worst
 *  case); products as lvb_third_order_product_dbm and lvb_middle_channel_products_dbm, spurious-free range as
 *  lvb_spurious_free_range_db. An output at which the gain has fallen by 1 dB belongs to an input of 1 dB more than the
 *  gain alone says; where carriers are given, their mean powers add there (their peaks are higher still). Passive stages
 *  and cables that state no intercept do not bend.
 *  The receiver's figures hold at its input connector, its gain_db with them.
 *  Of an amplifier that is left out and joined through, the change tells what it brings or costs the whole chain, with the
 *  computed noise. Where a receiver bends, nearly every amplifier before it costs some range; compare with the carrier to
 *  noise that it brings. It is called out (LVB_NOTE_RANGE_LOWERED) where it lowers either by more than 1e-9 dB, whatever its
 *  gain: one that lifts the level and yet costs range, and an active combiner or splitter of unity gain or less too.
 *  Verdict: as that of lvb_compute_budget, with margin_db at the far end for the floor and compression_headroom_db for the
 *  ceiling, tolerances of the levels with them: drops out means too noisy, overloads means that a stage compresses. Not
 *  judged where a noise figure is missing (and no noise was measured), or neither limit is known.
 *  Source: Friis's formula (IRE Proc. 32, 1944); ITU-R P.372; Pozar, Microwave Engineering, 10.1 to 10.3.
 *  lines is null or has stage_count elements of line_size bytes (sizeof(lvb_noise_line)). fault may be null.
 *  Range: as the fields of lvb_link, lvb_stage and lvb_noise_conditions say.
 *  Refused: as lvb_compute_budget; null conditions or noise; no bandwidth (LVB_E_MISSING); both temperature and figure of
 *  the antenna (LVB_E_CONFLICT); a level without its place (LVB_E_MISSING); an unknown place (LVB_E_UNKNOWN_VALUE); a
 *  chain that ends in the air, at a radiating antenna (LVB_E_NO_RECEIVE_ANTENNA).
 *  Accuracy: 1e-11 dB for each stage of the stated formulas. Cost: linear in stages, times one more than amplifiers; about
 *  26 KiB of stack. Since: 0.1. */
LVB_API lvb_status lvb_compute_noise(const lvb_link *link, const lvb_noise_conditions *conditions, lvb_noise *noise,
                                     lvb_noise_line *lines, uint32_t line_size, lvb_fault *fault);

/** Plain name of the place where a level was measured ("antenna"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_place_name(int32_t place);

/* ------------------------------------------------------------------------------------------------------------
 * Two systems side by side: a transmitter close to somebody's receiver.
 * ---------------------------------------------------------------------------------------------------------- */

/** A transmitter and a receiver of two systems at one place: the outbound transmit antenna beside the inbound receive
 *  antenna, say. What is not given is not judged. */
typedef struct lvb_neighbours {
    uint32_t size;                    /**< sizeof(lvb_neighbours) */
    uint32_t stated;                  /**< LVB_STATED_BLOCKING, LVB_STATED_TRANSMIT_NOISE, LVB_STATED_RECEIVER_NOISE */
    double transmit_dbm;              /**< at the transmit antenna's terminal, -200 to 150 dBm; 0 is 1 mW */
    double transmit_gain_dbi;         /**< of the transmit antenna toward the receive antenna, -100 to 60 dBi */
    double receive_gain_dbi;          /**< of the receive antenna toward the transmit antenna, -100 to 60 dBi */
    double separation_m;              /**< of the antennas, 0.01 to 1e9 m; or coupling_loss_db */
    double coupling_loss_db;          /**< measured from terminal to terminal, above 0 to 250 dB, in place of gains, separation
                                           and frequencies; 0: computed in free space */
    double transmit_mhz;              /**< 0.1 to 300000 MHz; with separation_m, and only then */
    double receive_mhz;               /**< where the receiver listens, 0.1 to 300000 MHz; 0: as transmit_mhz */
    double receive_loss_db;           /**< from the receive antenna to the receiver, at both frequencies, 0 to 200 dB */
    double receive_filter_db;         /**< rejection at transmit_mhz before the receiver, 0 to 200 dB */
    double transmit_filter_db;        /**< rejection at receive_mhz between the transmitter and its antenna, 0 to 200 dB; with
                                           its noise, which is told as it would be without this filter */
    double blocking_dbm;              /**< level at the receiver from which it is blocked, -200 to 150 dBm; stated */
    double transmit_noise_dbm;        /**< noise of the transmitter in the receiver's bandwidth, as it would be at the transmit
                                           antenna's terminal without transmit_filter_db, -300 to 150 dBm; stated, or: */
    double transmit_noise_dbc_per_hz; /**< noise at receive_mhz over transmit_dbm, without transmit_filter_db too, -250 to
                                           -1 dBc/Hz; 0: not given */
    double receiver_bandwidth_mhz;    /**< with transmit_noise_dbc_per_hz, 1e-6 to 1000 MHz */
    double receiver_noise_dbm;        /**< noise floor of the receiver in its bandwidth, -250 to 150 dBm; stated, with the
                                           transmitter's noise */
    double wanted_margin_db;          /**< room wanted under blocking_dbm, 0 to 100 dB; with it */
    double wanted_rise_db;            /**< noise rise that is tolerated, 0.01 to 100 dB, with receiver_noise_dbm; 0: 1 dB,
                                           common practice, no source */
} lvb_neighbours;

/** What a transmitter does to its neighbour. NaN where what it needs was not given. */
typedef struct lvb_coexistence {
    uint32_t size;                   /**< sizeof(lvb_coexistence) */
    uint32_t notes;                  /**< LVB_NOTE_NEAR_FIELD: separation_m, or a separation that is told below, is under a
                                          wavelength, the longer of both; measure the coupling there instead */
    double coupling_loss_db;         /**< from terminal to terminal at transmit_mhz, gains included */
    double noise_coupling_loss_db;   /**< the same at receive_mhz */
    double blocker_dbm;              /**< the transmitter at the receiver's input */
    double blocking_margin_db;       /**< blocker_dbm under blocking_dbm */
    double noise_dbm;                /**< the transmitter's noise at the receiver's input */
    double noise_rise_db;            /**< by which it lifts the receiver's noise floor */
    double more_receive_filter_db;   /**< further rejection at transmit_mhz that restores wanted_margin_db; 0: none needed */
    double more_transmit_filter_db;  /**< further rejection at receive_mhz that restores wanted_rise_db; 0: none needed */
    double blocking_separation_m;    /**< least separation that leaves wanted_margin_db; NaN with a measured coupling */
    double noise_separation_m;       /**< least separation that keeps wanted_rise_db; NaN with a measured coupling */
} lvb_coexistence;

/** Computes how a transmitter blocks a receiver beside it and how its noise covers what the receiver listens to, and what
 *  would help: distance, a filter before the receiver against blocking, a filter behind the transmitter against noise (no
 *  filter at the receiver takes out noise at its own frequency).
 *  Formula: coupling loss = free-space loss - both gains, or as measured; blocker = transmit level - coupling loss -
 *  receive loss - receive filter; noise = transmit noise (transmit level + dBc/Hz + 10 log10(bandwidth in Hz)) -
 *  transmit filter - coupling loss - receive loss; rise = 10 log10(1 + 10^((noise - receiver noise) / 10)); each dB that
 *  lacks is a dB of filter or a factor 10^(1/20) of separation.
 *  Source: ITU-R P.525 (free space); ITU-R P.372 (sum of noise powers). Free space holds where no body, wall or mast
 *  stands close; antennas above each other couple less, those nearer than a wavelength are to be measured.
 *  fault may be null.
 *  Range: as the fields of lvb_neighbours say.
 *  Refused: null neighbours or coexistence; wrong sizes; values outside their ranges; neither separation nor coupling, or
 *  no frequency (LVB_E_MISSING), both (LVB_E_CONFLICT); two forms of the transmitter's noise (LVB_E_CONFLICT); a value
 *  without its bit (LVB_E_NOT_STATED) or without what it belongs to (LVB_E_UNUSED).
 *  Accuracy: 1e-12 dB, relative 1e-12 for separations, of the stated formulas. Since: 0.1. */
LVB_API lvb_status lvb_compute_coexistence(const lvb_neighbours *neighbours, lvb_coexistence *coexistence,
                                           lvb_fault *fault);

/* ------------------------------------------------------------------------------------------------------------
 * Limits: radiated power, exposure. A host passes the limit in force; rules change, and where national rules and this
 * library differ, the rules win.
 * ---------------------------------------------------------------------------------------------------------- */

/** What a rule limits. What is conducted and what is radiated are never compared with each other. */
enum {
    LVB_QUANTITY_TRANSMITTER_OUTPUT = 1, /**< conducted, after the source or a later amplifier: the highest of these levels */
    LVB_QUANTITY_ANTENNA_INPUT = 2,      /**< conducted, at the transmit antenna's terminal */
    LVB_QUANTITY_ERP = 3,                /**< effective radiated power, over a half-wave dipole */
    LVB_QUANTITY_EIRP = 4                /**< equivalent isotropically radiated power */
};

/** How a link stands against a limit. */
enum {
    LVB_LIMIT_HOLDS = 1,      /**< at or under the limit, with every tolerance against you too */
    LVB_LIMIT_DOUBTFUL = 2,   /**< at or under the limit as entered, but the tolerances together can exceed it */
    LVB_LIMIT_EXCEEDED = 3,   /**< over the limit as entered */
    LVB_LIMIT_NOT_COVERED = 4 /**< the rule does not cover the link's frequency: nothing is said */
};

/** A limit of power, as a rule or a licence states it. */
typedef struct lvb_limit {
    uint32_t size;      /**< sizeof(lvb_limit) */
    int32_t quantity;   /**< LVB_QUANTITY_ */
    double limit_dbm;   /**< -200 to 150 dBm; 0 is 1 mW */
    double lowest_mhz;  /**< where the rule begins, 0.001 to 1000000 MHz; 0: no lower end */
    double highest_mhz; /**< where it ends, 0.001 to 1000000 MHz; 0: no upper end */
} lvb_limit;

/** A link against a limit. Powers that the chain does not have are NaN. */
typedef struct lvb_limit_result {
    uint32_t size;                 /**< sizeof(lvb_limit_result) */
    int32_t verdict;               /**< LVB_LIMIT_ */
    double level_dbm;              /**< in the limit's quantity */
    double worst_db;               /**< worst case of its tolerances, plus and minus */
    double room_db;                /**< level_dbm under the limit; NaN where the rule does not cover the frequency */
    double transmitter_output_dbm; /**< the four quantities, for a person who compares */
    double antenna_input_dbm;      /**< see LVB_QUANTITY_ */
    double erp_dbm;                /**< see LVB_QUANTITY_; NaN with a radiating cable */
    double eirp_dbm;               /**< see LVB_QUANTITY_; NaN with a radiating cable */
} lvb_limit_result;

/** Checks what a link puts out against a limit, with its tolerances.
 *  Formula: the levels of lvb_compute_budget up to the first antenna, without allowances. Transmitter output: after the
 *  source, or after a later amplifier where that is higher (it is then the transmitter's last stage); worst_db there is
 *  what the highest of these levels can reach. Antenna input: before the first antenna. E.i.r.p.: eirp_dbm of
 *  lvb_compute_budget, in the direction of maximum radiation wherever the antenna points. E.r.p. = e.i.r.p. - 2.150880 dB
 *  (exact half-wave dipole; a regulation's 2.15 gives 0.0009 dB more). A level within 1e-9 dB of the limit is at the limit.
 *  Source: ITU Radio Regulations 1.161, 1.162 (e.i.r.p., e.r.p.); 47 CFR 74.861(a): transmitter power is the power at the
 *  transmitter's output terminals, delivered to the antenna, its line or any other matched load.
 *  The receive side of the chain is checked, but not used. fault may be null.
 *  Range: as the fields of lvb_limit and lvb_link say.
 *  Refused: null link, limit or result; as lvb_compute_budget for the chain; no quantity (LVB_E_MISSING) or an unknown one
 *  (LVB_E_UNKNOWN_VALUE); highest_mhz under lowest_mhz (LVB_E_ORDER); a chain without an antenna, but for the
 *  transmitter's output, and e.r.p. or e.i.r.p. of a radiating cable (LVB_E_NO_TRANSMIT_ANTENNA).
 *  Accuracy: 1e-12 dB for each stage of the stated formulas. Cost: as lvb_compute_budget. Since: 0.1. */
LVB_API lvb_status lvb_check_limit(const lvb_link *link, const lvb_limit *limit, lvb_limit_result *result,
                                   lvb_fault *fault);

/** Plain name of a limited quantity ("antenna input"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_quantity_name(int32_t quantity);

/** Plain name of how a link stands against a limit ("exceeds the limit"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_limit_verdict_name(int32_t verdict);

/** A published limit, for a host's convenience: rules change, and the host passes the limit in force. */
typedef struct lvb_limit_rule {
    uint32_t size;        /**< sizeof(lvb_limit_rule) */
    int32_t quantity;     /**< LVB_QUANTITY_ */
    double lowest_mhz;    /**< where the rule begins */
    double highest_mhz;   /**< where it ends */
    double limit_dbm;     /**< as a level */
    double power_mw;      /**< as printed */
    const char *country;  /**< where it holds */
    const char *citation; /**< where it stands */
    const char *edition;  /**< which text was read: one for all rules of this version of the library */
    const char *remark;   /**< what a reader should know of it */
} lvb_limit_rule;

/** Number of published limits that the library knows; they are numbered from 0. Refused: nothing. Since: 0.1. */
LVB_API uint32_t lvb_limit_rule_count(void);

/** Gives one published limit, rule_index from 0 to lvb_limit_rule_count() - 1.
 *  Refused: a null rule, or a wrong size (LVB_E_NULL, LVB_E_STRUCT_SIZE); an unknown index (LVB_E_NOT_FOUND).
 *  fault may be null. Since: 0.1. */
LVB_API lvb_status lvb_describe_limit_rule(uint32_t rule_index, lvb_limit_rule *rule, lvb_fault *fault);

/** Power density in W/m2 at a distance from a radiated power, with a factor for reflections from the ground.
 *  reflection_factor multiplies the power: 1 is free space, 4 a total reflection that doubles the field, 2.56 a field of
 *  1.6, as guidance of the United States has it (OET Bulletin 65, 1997; from memory).
 *  For the far field: near an antenna the density is not this, and must be measured or taken from the maker.
 *  Formula: reflection_factor p / (4 pi distance_m^2), p = 10^((eirp_dbm - 30) / 10) W.
 *  Source: ITU-R P.525; 47 CFR 1.1310 states limits in this quantity (1 mW/cm2 is 10 W/m2).
 *  Range: eirp_dbm [-inf, inf], distance_m (0, inf), reflection_factor [1, 4].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 3.5 ULP. Since: 0.1. */
LVB_API double lvb_exposure_power_density_w_per_m2(double eirp_dbm, double distance_m, double reflection_factor);

/** Distance in metres at which a radiated power has fallen to a limit of power density: nearer than it, people must not
 *  stay. The inverse of lvb_exposure_power_density_w_per_m2, with the same far field and the same factor. Several
 *  transmitters add up: pass the sum of their powers. Devices that are worn are judged by absorbed power, not by this.
 *  Formula: sqrt(reflection_factor p / (4 pi limit_w_per_m2)), p = 10^((eirp_dbm - 30) / 10) W.
 *  Source: as lvb_exposure_power_density_w_per_m2.
 *  Range: eirp_dbm [-inf, inf], limit_w_per_m2 (0, inf), reflection_factor [1, 4].
 *  Refused: outside the range, and NaN, gives NaN.
 *  Accuracy: 2 ULP. Since: 0.1. */
LVB_API double lvb_exposure_distance_m(double eirp_dbm, double limit_w_per_m2, double reflection_factor);

/** Exposure rules that lvb_exposure_limit_w_per_m2 knows. */
enum {
    LVB_EXPOSURE_47_CFR_1_1310 = 1, /**< United States; read in the published text; 6 min (occupational), 30 min (general) */
    LVB_EXPOSURE_ICNIRP_2020 = 2    /**< ICNIRP 2020, whole body, 30 min; read where others quote it: check the guideline */
};

/** Whom an exposure limit protects. */
enum {
    LVB_AUDIENCE_GENERAL = 1,     /**< the general public, uncontrolled: the audience, and artists who were not instructed */
    LVB_AUDIENCE_OCCUPATIONAL = 2 /**< people at work who know of it and can act */
};

/** Limit of the power density in W/m2 that an exposure rule sets; the host decides which rule is in force.
 *  exposure is an LVB_EXPOSURE_ value, audience an LVB_AUDIENCE_ value.
 *  Formula: general public: 2 up to f1, f / (f1 / 2) from f1 to f2, 10 above; five times that for occupational exposure;
 *  f1 and f2 are 300 and 1500 MHz in 47 CFR 1.1310, 400 and 2000 MHz in ICNIRP 2020.
 *  Source: 47 CFR 1.1310, table 1 (limits for maximum permissible exposure, printed in mW/cm2; of 1996, the same in the
 *  edition of 1 October 2009); ICNIRP, Health Physics 118 (5), 483-524, 2020, table 5, reference levels for the whole body
 *  (read in quotations of the table and in the standard of a country that adopts it, not in the guideline itself).
 *  Range: frequency_mhz [30, 300000].
 *  Refused: outside the range, above 100000 MHz in 47 CFR 1.1310, an unknown rule or audience, and NaN, gives NaN.
 *  Accuracy: 0.5 ULP. Since: 0.1. */
LVB_API double lvb_exposure_limit_w_per_m2(int32_t exposure, int32_t audience, double frequency_mhz);

/** Plain name of an exposure rule ("47 CFR 1.1310"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_exposure_name(int32_t exposure);

/** Plain name of whom an exposure limit protects ("general public"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_audience_name(int32_t audience);

/** Number of cautions that a host must show to its users; they are numbered from 0. Refused: nothing. Since: 0.1. */
LVB_API uint32_t lvb_caution_count(void);

/** One caution, a whole sentence in English, for a host to show or to translate; caution_index from 0 to
 *  lvb_caution_count() - 1. Refused: an unknown index gives "". Since: 0.1. */
LVB_API const char *lvb_caution_text(uint32_t caution_index);

/* ------------------------------------------------------------------------------------------------------------
 * Maps and walks: what arrives everywhere on the stage, and where to put the antenna.
 *
 * x points to the right, y ahead and z up, as for lvb_antenna; the floor is at z = 0. Each antenna of a site has its chain,
 * which is a lvb_link: its stages give everything but the geometry. The site stands for the air's length, for the
 * direction in which its antenna radiates or receives, for screens, for the wearer's facing and for how the pack's antenna
 * is turned. A level is the far rule's (every allowance taken) and is held against the floor; a near level is the near
 * rule's (no allowance, no body, no polarization loss and the greatest gain of the pack's pattern: the wearer may turn) and
 * is held against the ceiling, as lvb_compute_budget does at the two ends of a walk. Levels are means over what moves:
 * bodies, hands, fading and the set will differ. Nothing replaces a walk test.
 * ---------------------------------------------------------------------------------------------------------- */

/** Which way the signal goes. */
enum {
    LVB_DIRECTION_OUTBOUND = 0, /**< the site's antennas transmit: in-ear monitors */
    LVB_DIRECTION_INBOUND = 1   /**< the site's antennas receive: microphones */
};

/** What several antennas do together. */
enum {
    LVB_COMBINE_BEST = 0, /**< the strongest counts: receiving diversity, or the antenna that serves */
    LVB_COMBINE_SUM = 1   /**< powers add: the mean of several transmitting antennas at one frequency, whose waves also cancel
                               in places; an upper bound of what selection gives, none against cancellation */
};

/** Which way a wearer faces: what turns the body, and the pack's antenna with it. At the very point that is faced,
 *  toward y, and away from it against y. */
enum {
    LVB_FACING_AZIMUTH = 0, /**< always facing_azimuth_deg, clockwise from y */
    LVB_FACING_POINT = 1,   /**< toward facing_x_m, facing_y_m */
    LVB_FACING_ANTENNA = 2, /**< toward antenna number facing_antenna */
    LVB_FACING_AWAY = 3     /**< away from it */
};

enum {
    LVB_MAX_SITE_ANTENNAS = 32, /**< the most antennas of a site */
    LVB_MAX_AREAS = 64,         /**< the most areas of a site */
    LVB_MAX_CORNERS = 1024,     /**< the most corners of an area */
    LVB_MAX_SCREENS = 64        /**< the most screens of a site */
};

/** An antenna of a site with its chain. An element of an array.
 *
 *  The chain has air and both antennas. Outbound the first antenna stage is the site's, inbound the second. Where
 *  antenna->pattern is given, it replaces the gain of that stage by the pattern's toward each point; without it the
 *  stage's own gain holds in all directions, and that stage must not have a pattern itself. All other stages count as
 *  lvb_compute_budget counts them, the pack's antenna too, unless the site gives its pattern. The link's distances are
 *  not looked at, nor is the antenna's largest_dimension_m (lvb_compute_pointing tells what it asks for).
 *  The air may have a path: every model but the radiating cable, without edges (screens take their place). Heights and
 *  distances are those of the places: two-ray runs from the antenna's z_m to the pack (pack_height_m, or the walk's
 *  z_m), and the heights of the lvb_path, of any model, are not used; two-ray may leave them 0 here, and keeps the
 *  polarization of its own, however antennas are turned.
 *  Polarization is computed where the site says how the pack's antenna is turned (pack_antenna); its loss does not
 *  belong into an allowance then. Otherwise it does (lvb_describe_allowance), roll_deg turns the pattern alone, and
 *  polarization_deg and ellipticity of the antenna are 0 (a helix may state its own). All chains of a site have one
 *  frequency and one receiver's window. */
typedef struct lvb_site_antenna {
    const lvb_antenna *antenna; /**< its place, aim and pattern */
    const lvb_link *link;       /**< its chain */
} lvb_site_antenna;

/** Where performers are: a polygon in plan. Inside is what an odd number of its edges surround, and every point on an
 *  edge: within about 1e-9 m of it, so that rounding of positions does not decide. It may have any shape, and areas may
 *  overlap. An element of an array. */
typedef struct lvb_area {
    uint32_t corner_count; /**< 3 to LVB_MAX_CORNERS, one of them more than 0.001 m off the line through the first corner and
                                the one farthest from it */
    uint32_t reserved;     /**< 0 */
    const double *x_m;     /**< corner_count corners in order, -1000000 to 1000000 m */
    const double *y_m;     /**< as x_m */
} lvb_area;

/** A vertical rectangle that shades: a set piece, a wall of screens, a riser. An element of an array.
 *  Without a loss it is opaque and waves bend around its edges: each edge leaves what lvb_knife_edge_loss_db says, with
 *  its distance from the line of sight: of a side in plan, from the edge at right angles to the way; of the top and bottom
 *  upright, where the way meets the screen's plane; all with the Fresnel radius of that place of the way. The powers add, to
 *  1 at most. For top and sides
 *  and a point in the shadow that is the average loss of ITU-R P.526-15, 5.1, -10 log10(sum of 10^(-J / 10)); that a
 *  lower edge counts alike, and what holds beside the shadow, is common practice, no source. A lower edge at the floor or
 *  under it is not free. With a loss whatever passes through it loses that, and nothing bends. Only ways that cross the
 *  screen's plane (widened without end) between antenna and point are affected; a point in that plane is before it. Losses
 *  of several screens add. */
typedef struct lvb_screen {
    double x1_m;     /**< one end in plan, -1000000 to 1000000 m */
    double y1_m;     /**< as x1_m */
    double x2_m;     /**< the other end, at least 0.001 m away */
    double y2_m;     /**< as x2_m */
    double bottom_m; /**< lower edge, -1000 to 1000 m; 0: it stands on the floor */
    double top_m;    /**< upper edge, above bottom_m, up to 1000 m */
    double loss_db;  /**< 0.001 to 200 dB; 0: opaque, with edges */
} lvb_screen;

/** A site: everything that a map, a walk and a placement have in common. Borrowed. */
typedef struct lvb_site {
    uint32_t size;                    /**< sizeof(lvb_site) */
    int32_t direction;                /**< LVB_DIRECTION_ */
    int32_t combine;                  /**< LVB_COMBINE_ */
    int32_t facing;                   /**< with body_table or pack_antenna: LVB_FACING_ */
    uint32_t antenna_count;           /**< 1 to LVB_MAX_SITE_ANTENNAS */
    uint32_t antenna_size;            /**< sizeof(lvb_site_antenna) */
    uint32_t area_count;              /**< 0 to LVB_MAX_AREAS; 0: every point counts */
    uint32_t area_size;               /**< sizeof(lvb_area) */
    uint32_t screen_count;            /**< 0 to LVB_MAX_SCREENS */
    uint32_t screen_size;             /**< sizeof(lvb_screen) */
    uint32_t facing_antenna;          /**< index for LVB_FACING_ANTENNA and LVB_FACING_AWAY */
    uint32_t reserved;                /**< 0 */
    const lvb_site_antenna *antennas; /**< antenna_count antennas, or null without any (lvb_compute_placements) */
    const lvb_area *areas;            /**< area_count areas, or null */
    const lvb_screen *screens;        /**< screen_count screens, or null */
    const lvb_body_table *body_table; /**< what the wearer's body costs, or null; it counts on top of every allowance of the
                                           chains: leave theirs for a body out */
    const void *user;                 /**< the host's; never read */
    double pack_height_m;             /**< z of the packs or microphones, -1000 to 1000 m */
    double facing_azimuth_deg;        /**< for LVB_FACING_AZIMUTH, -360 to 360 degrees */
    double facing_x_m;                /**< for LVB_FACING_POINT, -1000000 to 1000000 m */
    double facing_y_m;                /**< as facing_x_m */
    const lvb_antenna *pack_antenna;  /**< how the antenna of the pack or microphone is turned, its azimuth_deg clockwise from
                                           the direction in which the wearer faces. It has no place. Zeroed it is upright. Its
                                           pattern, where given, replaces the gain of its stage. Null: polarization is not
                                           computed */
    double most_polarization_loss_db; /**< with pack_antenna: what reflections leave of crossed antennas, 0.001 to 200 dB; 0: no
                                           limit, and nothing is received at right angles */
} lvb_site;

/** Laws of fading for an outage, with their parameter. The level is taken as the law's mean or median, so that an allowance
 *  for fading does not belong into the chain. */
enum {
    LVB_FADING_NONE = 0,
    LVB_FADING_RAYLEIGH = 1,  /**< lvb_rayleigh_outage_below_mean; no parameter */
    LVB_FADING_RICE = 2,      /**< lvb_rice_outage_below_mean; k_db, -100 to 40 */
    LVB_FADING_NAKAGAMI = 3,  /**< lvb_nakagami_outage_below_mean; shape, 0.5 to 100 */
    LVB_FADING_LOGNORMAL = 4, /**< lvb_lognormal_outage_below_median; standard_deviation_db, 0 to 100 */
    LVB_FADING_SUZUKI = 5     /**< lvb_suzuki_outage_below_median_of_means; standard_deviation_db, 0 to 30 */
};

/** A map, or some rows of it: threads may each compute rows of their own. Columns run along x, rows along y; the results
 *  of this call hold row_count rows from first_row on, each of column_count values. Each may be null. They must not overlap
 *  each other. */
typedef struct lvb_map {
    uint32_t size;           /**< sizeof(lvb_map) */
    int32_t instructions;    /**< what lvb_best_instructions gave, or an LVB_INSTRUCTIONS_ value */
    int32_t fading;          /**< LVB_FADING_; given with outage, and only then */
    uint32_t reserved;       /**< 0 */
    const lvb_site *site;    /**< the site */
    uint64_t column_count;   /**< 0 or more; column_count times row_count at most LVB_MAX_VALUES; 0: nothing is computed */
    uint64_t row_count;      /**< rows of this call, 0 or more */
    uint64_t first_row;      /**< of this call */
    double x_m;              /**< of column 0; every point lies within -1000000 to 1000000 m */
    double y_m;              /**< of row 0, the first of the whole map */
    double step_x_m;         /**< from column to column, 1e-6 to 1000000 m */
    double step_y_m;         /**< from row to row, as step_x_m */
    double fading_parameter; /**< what the law takes */
    double *level_dbm;       /**< far rule; -infinity where nothing arrives, NaN outside the areas */
    double *margin_db;       /**< level above the floor; NaN where it is not stated */
    double *headroom_db;     /**< near level under the ceiling; NaN where it is not stated */
    double *outage;          /**< probability, 0 to 1, that the level fades below the floor, which must be stated: 0.001 where
                                  99.9 % of places and times is covered */
    int32_t *zone;           /**< LVB_ZONE_: dropout by the far rule, otherwise overload by the near rule, otherwise where the level
                                  lies; not judged outside the areas */
    int32_t *serving;        /**< index of the strongest antenna by the far rule, the first of equal ones; -1: none */
    const void *user;        /**< the host's; never read */
} lvb_map;

/** What rows of a map come to. Shares of the area are counts over `points`. Where several points are equally bad, the one of
 *  the lowest row and then column is told. Without points the values are NaN and the serving antennas -1. */
typedef struct lvb_map_summary {
    uint32_t size;              /**< sizeof(lvb_map_summary) */
    uint32_t reserved;          /**< 0 */
    uint64_t points;            /**< that count: inside the areas, and where the paths hold */
    uint64_t outside;           /**< outside the areas */
    uint64_t unmodelled;        /**< inside, but nearer to an antenna or farther from it than its path's model holds: NaN */
    uint64_t not_judged;        /**< of `points`, by zone: the receivers state no window */
    uint64_t dropout;           /**< of `points`, by zone: see lvb_map */
    uint64_t low;               /**< of `points`, by zone */
    uint64_t wanted;            /**< of `points`, by zone */
    uint64_t high;              /**< of `points`, by zone */
    uint64_t overload;          /**< of `points`, by zone */
    uint64_t overloaded;        /**< of `points`: headroom below 0, those that also drop out included */
    uint64_t worst_row;         /**< where the level is least */
    uint64_t worst_column;      /**< as worst_row */
    uint64_t hottest_row;       /**< where the near level is greatest */
    uint64_t hottest_column;    /**< as hottest_row */
    int32_t worst_serving;      /**< index of the antenna that is strongest there, far rule; -1: none */
    int32_t hottest_serving;    /**< the same by the near rule */
    double worst_level_dbm;     /**< far rule */
    double worst_margin_db;     /**< NaN where the floor is not stated */
    double hottest_level_dbm;   /**< near rule */
    double hottest_headroom_db; /**< NaN where the ceiling is not stated */
} lvb_map_summary;

/** Computes what arrives at every point of a grid, and what that comes to.
 *  Formula: at each point and for each antenna a power: 10^(L / 10) g / d^2 with the level L of its chain at 1 m, the
 *  pattern's gain g over its maximum and the distance d; over a path of another model that model's loss in place of
 *  free space; times what screens and, for the far rule, the wearer's body, the pack's pattern and polarization leave. The
 *  greatest of the antennas' powers, or their sum, is the level: of one antenna this is what lvb_compute_budget gives for its
 *  distance and directions, with body and polarization as allowances.
 *  The pack's pattern and polarization leave what lvb_compute_pointing says of the two antennas, the pack's turning with its
 *  wearer; polarization never less than 10^(-most_polarization_loss_db / 10). Nearer than 0.01 m to an antenna the distance
 *  counts as that, gains as the patterns' greatest, and polarization costs nothing. Less than
 *  1e-150 of the strongest antenna's power at 1 m counts as nothing (-infinity dBm).
 *  Source: ITU-R P.525 (free space), P.526-15, 4.1 and 5.1 (screens); best of or sum of powers, and far and near rule at
 *  every point, and a most of polarization loss: common practice, no source.
 *  The split into rows, the instruction set and the processor do not change a bit of any result.
 *  summary and fault may be null. In a fault in an antenna, its pattern, its link or a stage `row` is the antenna's index,
 *  in an area or screen that of the element; of an area's corner, `stage` is the area's and `row` the corner's; in the
 *  pack's antenna `stage` is LVB_STAGE_PACK. lvb_fault_text names all of them in one manner: pack_antenna.tilt_deg,
 *  antennas[1].x_m, antennas[1].link.stages[2].gain_db, screens[0].top_m, areas[0].x_m[2]. In a fault in what a stage or
 *  pattern lends, a path, a table or a cut, `row` is that of the table: which antenna's it is, lvb_compute_budget of each
 *  link and lvb_compute_pattern_gain of each pattern tell.
 *  Range: as the fields of lvb_map, lvb_site and what it lends say.
 *  Refused: a null map, site, antenna or link, or an array that is counted; an array whose count is 0
 *  (LVB_E_MISSING); wrong sizes; values outside their ranges, NaN among them; chains as lvb_compute_budget refuses
 *  them, or without air (LVB_E_MISSING); chains that differ in frequency or window (LVB_E_CONFLICT); a path that a map
 *  cannot take, a polarization without pack_antenna, a place of pack_antenna (LVB_E_UNUSED); the polarization of a
 *  half-wave dipole or a helix as lvb_compute_pointing refuses it; fewer than 3 corners (LVB_E_COUNT) or all on one line
 *  (LVB_E_TABLE_DUPLICATE); a screen without width (LVB_E_BELOW_RANGE) or height (LVB_E_ORDER); an antenna nearer than
 *  0.01 m to a screen (LVB_E_CONFLICT); two-ray with heights outside 0.01 to 1000 m; facing fields that the rule or a
 *  missing table has no use for (LVB_E_UNUSED), or a most of polarization loss without pack_antenna; an outage without a
 *  law or without a floor (LVB_E_MISSING), or a law without an outage (LVB_E_UNUSED); results that overlap
 *  (LVB_E_CONFLICT); counts that are too large (LVB_E_COUNT); instructions that this processor lacks.
 *  Points: only the grid's points are looked at. Corners and edges of an area that lie between them may be worse: a walk
 *  along the edge tells (lvb_compute_walk). An area with no point of the grid in it is not told of: it counts for nothing, so
 *  choose steps smaller than every area. Levels nearer to an antenna than a wavelength are those of the far field, continued
 *  down to 0.01 m: not physical.
 *  Accuracy: 1e-11 dB of the stated formulas, where a cosine has a gain of up to 40 dBi and a point lies within 89 degrees
 *  of its boresight (next to the null the angle itself is rounded); 1e-9 dB up to 60 dBi, behind edges, and with up to 60 dB of
 *  polarization loss. Behind
 *  an opaque screen of 1.2 to 2.8 m a side, met at right angles and halfway along 10 m at 1200 MHz, the mean power over 400
 *  random screens is within 2 dB of that of the exact field (Fresnel integrals); single places differ more, and nothing is
 *  claimed of other shapes. Cost: linear in
 *  points, antennas, screens and corners; least with free space and isotropic antennas or cosines of an even exponent,
 *  where the level's logarithm is the only one (about 1 ns a point and antenna); a body or the pack's antenna take some 50 ns
 *  more, its pattern 100 ns more. Since: 0.1. */
LVB_API lvb_status lvb_compute_map(const lvb_map *map, lvb_map_summary *summary, lvb_fault *fault);

/** Joins the summary of other rows of a map to one: the result is that of one call over all of them, whatever the order.
 *  A summary with its size set and all else zero is that of no rows.
 *  Refused: a null summary or other, or a wrong size (LVB_E_NULL, LVB_E_STRUCT_SIZE); what no map gives: more than 2^61 points,
 *  or points that are not those of all zones together (LVB_E_COUNT), more overloaded ones than points (LVB_E_ABOVE_RANGE),
 *  with points levels that are NaN or infinite (-infinity may be: nothing arrives) or serving antennas beyond -1 to
 *  LVB_MAX_SITE_ANTENNAS - 1 (LVB_E_UNKNOWN_VALUE). In a fault `row` is 0 for summary and 1 for other. fault may be null.
 *  Since: 0.1. */
LVB_API lvb_status lvb_join_map_summaries(lvb_map_summary *summary, const lvb_map_summary *other, lvb_fault *fault);

/** Plain name of the way that the signal goes ("outbound"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_direction_name(int32_t direction);

/** Plain name of what several antennas do together ("best of"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_combine_name(int32_t combine);

/** Plain name of the way that a wearer faces ("away from antenna"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_facing_name(int32_t facing);

/** Plain name of a law of fading ("Rayleigh"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_fading_name(int32_t fading);

/** A walk: a polyline that a performer goes at one speed, looked at every step. The results hold one value for each point
 *  of lvb_walk_point_count; each may be null. They must not overlap each other. */
typedef struct lvb_walk {
    uint32_t size;             /**< sizeof(lvb_walk) */
    int32_t instructions;      /**< as in lvb_map */
    uint32_t corner_count;     /**< 2 to LVB_MAX_CORNERS */
    int32_t fading;            /**< LVB_FADING_; for an outage, or for what the result tells of it */
    const lvb_site *site;      /**< the site; its areas are not asked */
    const double *x_m;         /**< corner_count corners in order, -1000000 to 1000000 m */
    const double *y_m;         /**< as x_m */
    const double *z_m;         /**< heights of the pack, -1000 to 1000 m; null: the site's pack_height_m */
    double speed_m_per_s;      /**< 0.001 to 1000 m/s */
    double step_m;             /**< along the walk from point to point, 0.001 to 1000000 m; the last step may be shorter */
    double *distance_m;        /**< of each point along the walk */
    double *level_dbm;         /**< as in lvb_map */
    double *margin_db;         /**< as in lvb_map */
    double *headroom_db;       /**< as in lvb_map */
    int32_t *zone;             /**< as in lvb_map */
    int32_t *serving;          /**< as in lvb_map */
    const void *user;          /**< the host's; never read */
    double *outage;            /**< as in lvb_map */
    double fading_parameter;   /**< what the law takes */
} lvb_walk;

/** What a walk comes to. Between two points margin and headroom run straight; the time under the floor or over the ceiling
 *  is that for which they are below 0. */
typedef struct lvb_walk_result {
    uint32_t size;                  /**< sizeof(lvb_walk_result) */
    uint32_t reserved;              /**< 0 */
    uint64_t points;                /**< points of the walk */
    uint64_t unmodelled;            /**< of these: where a path does not hold; steps to and from them count for nothing */
    double length_m;                /**< of the walk */
    double duration_s;              /**< at its speed */
    double under_floor_s;           /**< for how long the level is under the floor; 0 where it is not stated */
    double longest_under_floor_s;   /**< the longest stretch of these, the first of equal ones */
    double longest_under_floor_m;   /**< where along the walk that begins; NaN where there is none */
    double over_ceiling_s;          /**< for how long the near level is over the ceiling; 0 where it is not stated */
    double longest_over_ceiling_s;  /**< the longest stretch of these, the first of equal ones */
    double longest_over_ceiling_m;  /**< where along the walk that begins; NaN where there is none */
    double worst_level_dbm;         /**< least level of a point; NaN where no point counts */
    double worst_margin_db;         /**< its margin; NaN where the floor is not stated */
    double worst_m;                 /**< where along the walk, the first of equal ones */
    double hottest_level_dbm;       /**< greatest near level of a point */
    double hottest_headroom_db;     /**< its headroom; NaN where the ceiling is not stated */
    double hottest_m;               /**< where along the walk, the first of equal ones */
    double mean_outage;             /**< over the time for which paths hold; NaN without such or without a law of fading */
    double expected_under_floor_s;  /**< for how long fading is expected to take the level under the floor, on average over
                                         many walks; NaN without a law */
    int32_t worst_serving;          /**< index of the antenna that is strongest at worst_m, far rule; -1: none */
    int32_t hottest_serving;        /**< of the one at hottest_m, near rule */
} lvb_walk_result;

/** Points of a walk: one at the beginning, one every step_m along it, and one at its end.
 *  point_count receives the number. fault may be null.
 *  Refused: a null walk or point_count; fewer than 2 corners or too many (LVB_E_COUNT); null corners; values outside
 *  their ranges; a walk without length (LVB_E_MISSING); more than LVB_MAX_VALUES points (LVB_E_COUNT). The site is not
 *  looked at. Since: 0.1. */
LVB_API lvb_status lvb_walk_point_count(const lvb_walk *walk, uint64_t *point_count, lvb_fault *fault);

/** Computes what arrives along a walk, and where and for how long the link is under the floor or over the ceiling.
 *  Formula: at each point as lvb_compute_map; a step of which a share u has a margin below 0 counts u step / speed, u by a
 *  straight line between the margins at its ends (a margin of -infinity holds for the whole step). With a law of fading a
 *  step counts the mean outage of its ends times step / speed as expected time under the floor; whatever the fading's own
 *  pace, the expected time is the integral of the outage.
 *  Source: as lvb_compute_map; straight lines between points: common practice, no source.
 *  result and fault may be null.
 *  Range: as the fields of lvb_walk and lvb_site say.
 *  Refused: as lvb_walk_point_count and lvb_compute_map, but that a law needs an outage or a result; two-ray with corners
 *  of the walk outside 0.01 to 1000 m, or without z_m with such a pack_height_m. An area is not asked, but checked.
 *  Accuracy: levels as lvb_compute_map, places 1e-9 m. Cost: linear in points, antennas, screens and corners. Since: 0.1. */
LVB_API lvb_status lvb_compute_walk(const lvb_walk *walk, lvb_walk_result *result, lvb_fault *fault);

enum { LVB_MAX_CANDIDATES = 4096 /**< the most candidates of a placement */ };

/** Where to put one or two antennas. The site's own antennas stand already, and there may be none. The points are those of
 *  a grid within the site's areas. */
typedef struct lvb_place {
    uint32_t size;                      /**< sizeof(lvb_place) */
    int32_t instructions;               /**< as in lvb_map */
    uint32_t place_count;               /**< antennas to place: 1 or 2 */
    uint32_t candidate_count;           /**< place_count to LVB_MAX_CANDIDATES */
    uint32_t candidate_size;            /**< sizeof(lvb_site_antenna) */
    uint32_t reserved;                  /**< 0 */
    const lvb_site *site;               /**< the site */
    const lvb_site_antenna *candidates; /**< candidate_count antennas, each a place and an aim, with its chain */
    uint64_t column_count;              /**< 1 or more; of the grid, as in lvb_map */
    uint64_t row_count;                 /**< 1 or more */
    double x_m;                         /**< as in lvb_map */
    double y_m;                         /**< as in lvb_map */
    double step_x_m;                    /**< as in lvb_map */
    double step_y_m;                    /**< as in lvb_map */
    double least_headroom_db;           /**< that every point must keep under the ceiling, 0 to 100 dB */
    uint64_t scratch_count;             /**< values of scratch, at least what lvb_place_scratch_count tells */
    double *scratch;                    /**< working room, lost */
    const void *user;                   /**< the host's; never read */
} lvb_place;

/** A placement. An element of an array. */
typedef struct lvb_placement {
    int32_t first;              /**< index of a candidate */
    int32_t second;             /**< index of the other, greater than first; -1 where one is placed */
    double worst_level_dbm;     /**< least level over the points */
    double worst_margin_db;     /**< its margin; NaN where the floor is not stated */
    double hottest_level_dbm;   /**< greatest near level over the points */
    double hottest_headroom_db; /**< its headroom; NaN where the ceiling is not stated */
} lvb_placement;

/** Working room for lvb_compute_placements: scratch_count receives the number of doubles.
 *  It depends on the counts of candidates, columns and rows; the site is not looked at. fault may be null.
 *  Refused: a null place or scratch_count; counts and positions as lvb_compute_placements. Since: 0.1. */
LVB_API lvb_status lvb_place_scratch_count(const lvb_place *place, uint64_t *scratch_count, lvb_fault *fault);

/** Finds where one or two antennas serve best: of all placements in which no point has less headroom than
 *  least_headroom_db, those with the greatest worst level, which is the greatest worst margin. All are looked at: the
 *  result is exact over the candidates. placements has room for placement_count of placement_size bytes
 *  (sizeof(lvb_placement)), best first; found_count receives how many there are, 0 where every placement overloads
 *  someone. Of placements with the same worst level the one with the lowest index of first and then second comes first; headroom
 *  beyond least_headroom_db does not decide between them, so list first what you would rather take.
 *  Formula: levels as lvb_compute_map, with the site's antennas and the placed ones together.
 *  Source: greatest worst case over all candidates, common practice, no source.
 *  Two candidates may be one antenna with two aims: the host lists what may stand where. fault may be null.
 *  Range: as the fields of lvb_place and lvb_site say; placement_count 1 to 1000.
 *  Refused: a null place, placements, found_count or scratch; counts out of range, and too little scratch (LVB_E_COUNT); no
 *  point of the grid in the areas (LVB_E_MISSING); a path that does not hold at some point (LVB_E_BELOW_RANGE,
 *  LVB_E_ABOVE_RANGE: distance_m, `row` is the antenna's or candidate's index); a site and candidates as lvb_compute_map
 *  refuses them; facing an antenna that the site does not have; scratch that overlaps a result (LVB_E_CONFLICT). A fault in a
 *  candidate, its antenna, that antenna's pattern, its link or a stage has the structure LVB_STRUCT_PLACE, `row` is the
 *  candidate's index and `stage` that of the stage, or LVB_STAGE_LINK for the link (candidates[1].z_m,
 *  candidates[1].link.stages[2].gain_db, candidates[1].link.frequency_mhz).
 *  Accuracy: levels as lvb_compute_map. Cost: candidates times points and, for two, half the square of the candidates
 *  times points (less where placements fall behind early). Since: 0.1. */
LVB_API lvb_status lvb_compute_placements(const lvb_place *place, lvb_placement *placements, uint32_t placement_size,
                                          uint32_t placement_count, uint32_t *found_count, lvb_fault *fault);

/** Spreads candidates along a rail: antenna_count copies of an antenna, the first at its own place, the last at the
 *  other end, the others in equal steps between.
 *  antennas has room for antenna_count of sizeof(lvb_antenna) bytes. fault may be null.
 *  Refused: a null antenna or antennas; a wrong size; places outside their range; antenna_count outside 2 to
 *  LVB_MAX_CANDIDATES (LVB_E_COUNT). Since: 0.1. */
LVB_API lvb_status lvb_spread_on_rail(const lvb_antenna *antenna, double to_x_m, double to_y_m, double to_z_m,
                                      uint32_t antenna_count, lvb_antenna *antennas, lvb_fault *fault);

/* ------------------------------------------------------------------------------------------------------------
 * Sweep: one chain over a tuning range or a list of channels, and over the points of a walk, judged at its worst.
 * ---------------------------------------------------------------------------------------------------------- */

/** A chain over frequencies and distances. The frequencies are a list, or as many from first_mhz to last_mhz in even steps. The
 *  distances are a list, or as many from the link's near to its far distance in even steps; without any (distance_count 0) the
 *  far end is judged at the link's far distance and the near end at its near distance, as lvb_compute_budget does.
 *  With distances both ends are judged at every one of them: with every allowance against the floor, and with none against
 *  the ceiling. A chain without air has no distances. */
typedef struct lvb_sweep {
    uint32_t size;               /**< sizeof(lvb_sweep) */
    uint32_t reserved;           /**< 0 */
    uint64_t frequency_count;    /**< 1 or more; times the distances at most LVB_MAX_VALUES */
    uint64_t distance_count;     /**< 0 or more */
    const lvb_link *link;        /**< the chain; its own frequency is not used, its distances only without a list of them */
    const double *frequency_mhz; /**< frequency_count values; null with first_mhz and last_mhz */
    const double *distance_m;    /**< distance_count values; null for even steps along the link's walk */
    double first_mhz;            /**< 0.1 to 300000 MHz; 0 with a list */
    double last_mhz;             /**< 0.1 to 300000 MHz, on either side of first_mhz; 0 with a list */
    double *lowest_margin_db;    /**< frequency_count results: the lowest margin at each frequency; or null */
    double *lowest_headroom_db;  /**< frequency_count results: the lowest headroom at each frequency; or null */
} lvb_sweep;

/** A value and where it is met first. This struct is closed. */
typedef struct lvb_extreme {
    double value;         /**< NaN where there is none */
    double frequency_mhz; /**< NaN where there is none */
    double distance_m;    /**< 0 where the chain has no air; NaN where there is no value */
} lvb_extreme;

/** How a chain stands over a sweep. Margins are those of the far end, headrooms those of the near end. */
typedef struct lvb_sweep_result {
    uint32_t size;      /**< sizeof(lvb_sweep_result) */
    int32_t verdict;    /**< LVB_VERDICT_: the worst of all */
    int32_t decided_by; /**< LVB_DECIDED_BY_: the lowest margin or the lowest headroom, where that is smaller */
    uint32_t notes;     /**< LVB_NOTE_ bits that lvb_compute_budget gives anywhere in the sweep */
    double decided_by_db;         /**< the room there; NaN where nothing decides */
    double far_worst_db;          /**< worst case of all tolerances at the far end, the same over the whole sweep */
    double near_worst_db;         /**< the same at the near end */
    lvb_extreme lowest_margin;    /**< margin_db of the far end */
    lvb_extreme highest_margin;   /**< margin_db of the far end */
    lvb_extreme lowest_headroom;  /**< headroom_db of the near end */
    lvb_extreme highest_headroom; /**< headroom_db of the near end */
    lvb_extreme lowest_level;     /**< level_dbm of the far end, also where nothing is judged */
    lvb_extreme highest_level;    /**< level_dbm of the near end */
    lvb_extreme lowest_eirp;      /**< e.i.r.p. in dBm, as lvb_compute_budget gives it; distance_m is 0 */
    lvb_extreme highest_eirp;     /**< what a limit of radiated power is held against */
} lvb_sweep_result;

/** Judges a link over frequencies and distances: the worst and the best of each figure with frequency and distance, and the
 *  verdict of the worst. A link that may be tuned, or that hops channels, holds only if it holds at its worst.
 *  Formula: lvb_compute_budget at every point, bit for bit. Value i of an even range of n is first + (last - first) (i / (n - 1)),
 *  and its ends are exact; a range of one value is its first. Of equal extremes the first is told, frequencies in order
 *  outside, distances inside. The verdict is that of lvb_compute_budget, from the lowest margin, the lowest headroom and the
 *  highest level of the far end. Between its points nothing is seen: two rays over a floor ask for steps of centimetres.
 *  Source: as lvb_compute_budget; judging a tuning range at its worst: common practice, no source.
 *  fault may be null. Arrays of results must overlap neither each other nor the lists.
 *  Range: as the fields of lvb_sweep and lvb_link say; frequencies 0.1 to 300000 MHz, distances 0.01 to 1e9 m.
 *  Refused: null sweep, link or result; as lvb_compute_budget for the chain at every point, where a value of a list that the
 *  link or its path cannot take is told as lvb_sweep's, with its index as row (a frequency outside a table: as the table's, with
 *  that row too); no frequencies (LVB_E_MISSING); too many points (LVB_E_COUNT); a list and a range (LVB_E_CONFLICT) or neither,
 *  or a list of distances whose count is 0 (LVB_E_MISSING); distances without air (LVB_E_UNUSED); overlapping arrays
 *  (LVB_E_CONFLICT).
 *  Accuracy: as lvb_compute_budget. Cost: for each frequency as lvb_compute_budget, for each distance there two losses of the way;
 *  twice that with arrays of results. Since: 0.1. */
LVB_API lvb_status lvb_compute_sweep(const lvb_sweep *sweep, lvb_sweep_result *result, lvb_fault *fault);

/* ------------------------------------------------------------------------------------------------------------
 * Solve: one unknown of a link for a wanted margin, headroom or level.
 * ---------------------------------------------------------------------------------------------------------- */

/** What is wanted of a link. Each falls or rises steadily with every field that can be solved for, but for what
 *  lvb_compute_solution says. */
enum {
    LVB_GOAL_MARGIN = 1,           /**< margin_db of the far end, less its tolerances where they are counted */
    LVB_GOAL_HEADROOM = 2,         /**< headroom_db of the near end, less its tolerances where they are counted */
    LVB_GOAL_BALANCE = 3,          /**< margin_db of the far end less headroom_db of the near end: 0 is the middle of the window
                                        for the whole walk */
    LVB_GOAL_FAR_FROM_MIDDLE = 4,  /**< from_middle_db of the far end */
    LVB_GOAL_NEAR_FROM_MIDDLE = 5, /**< from_middle_db of the near end */
    LVB_GOAL_FAR_LEVEL = 6,        /**< level_dbm of the far end */
    LVB_GOAL_NEAR_LEVEL = 7,       /**< level_dbm of the near end */
    LVB_GOAL_EIRP = 8              /**< eirp_dbm, plus its tolerances where they are counted */
};

/** How tolerances count in a goal. */
enum {
    LVB_TOLERANCES_NONE = 0,  /**< as entered */
    LVB_TOLERANCES_WORST = 1, /**< the worst case against you: margin, headroom, e.i.r.p. */
    LVB_TOLERANCES_RSS = 2    /**< the root of the sum of squares against you: margin, headroom */
};

/** What came of solving. */
enum {
    LVB_SOLUTION_FOUND = 1,       /**< `value` gives what is wanted */
    LVB_SOLUTION_AT_LOWEST = 2,   /**< out of reach; `value` is the lower bound, which comes nearest */
    LVB_SOLUTION_AT_HIGHEST = 3,  /**< out of reach; `value` is the upper bound, which comes nearest */
    LVB_SOLUTION_NO_EFFECT = 4,   /**< the field changes nothing of what is wanted; `value` is NaN */
    LVB_SOLUTION_NOT_STEADY = 5   /**< frequency: the gain table or path that the bound names may have many answers or none;
                                       sweep it instead; `value` is NaN */
};

/** One unknown of a link and what it is to give. */
typedef struct lvb_solve {
    uint32_t size;        /**< sizeof(lvb_solve) */
    int32_t structure;    /**< LVB_STRUCT_STAGE or LVB_STRUCT_LINK: where the unknown stands */
    uint32_t stage_index; /**< of the stage, from 0; 0 for a field of the link */
    int32_t field;        /**< link: LVB_FIELD_FREQUENCY_MHZ, _FAR_DISTANCE_M, _NEAR_DISTANCE_M, _TEMPERATURE_DEGC; stage:
                               _LEVEL_DBM, _GAIN_DB, _TOLERANCE_DB, _LENGTH_M, _CONNECTOR_LOSS_DB, _FLOOR_DBM,
                               _WANTED_LOW_DBM, _WANTED_HIGH_DBM, _CEILING_DBM */
    int32_t goal;         /**< LVB_GOAL_ */
    int32_t tolerances;   /**< LVB_TOLERANCES_ */
    const lvb_link *link; /**< valid as it is; what it says of the unknown is only where one starts */
    double wanted;        /**< -1000 to 1000 dB or dBm */
} lvb_solve;

/** The answer, or what stands in its way. */
typedef struct lvb_solution {
    uint32_t size;           /**< sizeof(lvb_solution) */
    int32_t outcome;         /**< LVB_SOLUTION_ */
    double value;            /**< of the unknown, in its unit */
    double reached;          /**< the goal there; where there is no value, as the link stands */
    double missing_db;       /**< wanted less reached: 0 but for rounding where it is found */
    double entered;          /**< the unknown as the link has it */
    double reached_entered;  /**< the goal as the link has it */
    double lowest;           /**< lower bound of the unknown, in this link */
    double highest;          /**< upper bound of the unknown, in this link */
    int32_t bound_structure; /**< what stops it where it is out of reach, or not steady: LVB_STRUCT_, otherwise LVB_STRUCT_NONE */
    int32_t bound_field;     /**< the field there that bounds it; the unknown itself where its own range does */
    int32_t bound_stage;     /**< index of the stage there; -1 where the link bounds it */
    uint32_t reserved;       /**< 0 */
} lvb_solution;

/** Solves one unknown of a link for a wanted margin, headroom, level or e.i.r.p.: how far one may walk, how long a cable may
 *  be, which power is needed, which allowance is left.
 *  Bounds: the range of the field, and what the rest of the link asks: the near distance under the far one, the order of the
 *  window's limits, the usable range of cable tables, the reach of a path. A bound where zero would mean something else
 *  (connector_loss_db, gain_db of a measured cable) is the smallest normal number instead.
 *  Distance over two rays or over edges goes up and down. Then the answer for a margin is the distance up to which it holds,
 *  walking out from the lower bound: the first place where it is no longer met, though it may be met again beyond; where it
 *  does not hold at the lower bound the answer is LVB_SOLUTION_AT_LOWEST. (Give the walk's near distance: without one it begins at
 *  0.01 m.) For a headroom one walks in from the upper bound. For
 *  another goal of the near end the answer is the first place walking in, for one of the far end walking out. Steps are at most
 *  1 % of the distance and a sixteenth of a wavelength of path difference (or a 16384th of the largest path difference,
 *  where that is more); minima between them are searched. At a step in the loss (an edge is passed) the answer is
 *  its safe side, and missing_db is not 0.
 *  Frequency is solved where no stage has a gain table and the air has no two rays or edges. With a computed cable that is
 *  not at 20 degC the loss has small steps at the rows of its table, and the answer is found as over two rays, in steps of 1 % that
 *  end at the rows.
 *  Formula: the inverse of lvb_compute_budget by bisection down to neighbouring numbers; of several numbers that give the wanted
 *  value exactly, a bound, or their middle; where there is none, the neighbour that gives at least the wanted value.
 *  Source: as lvb_compute_budget.
 *  fault may be null.
 *  Range: as the fields of lvb_solve and lvb_link say.
 *  Refused: null solve, link or solution; as lvb_compute_budget for the link; no structure, field or goal (LVB_E_MISSING); unknown
 *  ones (LVB_E_UNKNOWN_VALUE); a field that cannot be solved for, a stage that there is none of (LVB_E_NOT_FOUND); a field that
 *  the stage has no use for (LVB_E_UNUSED), or in place of which it has a table, a pattern or a computed cable (LVB_E_CONFLICT); a
 *  limit of the window that is not stated (LVB_E_NOT_STATED); a goal that the link does not have, for want of a window or an
 *  antenna (LVB_E_NOT_FOUND); tolerances in a goal without them (LVB_E_UNUSED).
 *  Accuracy: 1e-9 in the unknown (relative above 1), or what rounding leaves of it: 1e-13 dB for each stage over the dB that one
 *  unit makes.
 *  Cost: about 200 budgets; over two rays or edges up to 400000. Since: 0.1. */
LVB_API lvb_status lvb_compute_solution(const lvb_solve *solve, lvb_solution *solution, lvb_fault *fault);

/** Plain name of what is wanted of a link ("far level"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_goal_name(int32_t goal);

/** Plain name of how tolerances count ("worst case"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_tolerances_name(int32_t tolerances);

/** Plain name of what came of solving ("found"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_solution_name(int32_t solution);

/* ------------------------------------------------------------------------------------------------------------
 * Rank and compare: what each stage contributes, what helps most, how two chains differ.
 * ---------------------------------------------------------------------------------------------------------- */

/** What one stage contributes. Derivatives are of the level at the end of the chain, by the field alone. NaN where the stage has
 *  no such field in use, or where it is -infinity dB by itself. */
typedef struct lvb_contribution {
    uint32_t loss_rank;      /**< 1 for the stage that loses most at the far end, and so on: a rank of its own for each stage */
    uint32_t variance_rank;  /**< 1 for the largest share of the variance */
    uint32_t help_rank;      /**< 1 for the change that helps most */
    int32_t basis;           /**< LVB_BASIS_ as counted */
    double far_change_db;    /**< as in lvb_level; the source its level */
    double near_change_db;   /**< as in lvb_level */
    double loss_share;       /**< of all losses at the far end, 0 to 1; 0 where it loses nothing; NaN where a loss is infinite */
    double variance_share;   /**< of the sum of squared tolerances at the far end, 0 to 1 */
    double worst_share;      /**< of the sum of tolerances at the far end, 0 to 1 */
    double help_db;          /**< what the change of this stage that lvb_compute_ranking states adds to the room that decides */
    double db_per_db;        /**< by gain_db, and by level_dbm of a source: 1 at the far end (an allowance 0 at the near end) */
    double db_per_m;         /**< by length_m of a computed cable */
    double db_per_connector; /**< by connector_count of a computed cable */
    double db_per_connector_db; /**< by connector_loss_db of a computed cable, if every connector had one more dB */
    double db_per_degc;      /**< by temperature_degc of the link */
    double far_db_per_mhz;   /**< by frequency_mhz of the link, at the far end */
    double near_db_per_mhz;  /**< by frequency_mhz of the link, at the near end */
    double far_db_per_distance_m;  /**< by far_distance_m, of air */
    double near_db_per_distance_m; /**< by the near distance, of air */
    double far_db_per_azimuth_deg; /**< by far_azimuth_deg, of an antenna with a pattern */
    double far_db_per_elevation_deg;  /**< by far_elevation_deg */
    double near_db_per_azimuth_deg;   /**< by near_azimuth_deg */
    double near_db_per_elevation_deg; /**< by near_elevation_deg */
    double db_per_facing_deg; /**< by facing_deg, of an allowance with a body table; at the far end */
} lvb_contribution;

/** What ranking a link found. Indices are -1 where there is none. */
typedef struct lvb_ranking {
    uint32_t size;               /**< sizeof(lvb_ranking) */
    int32_t decided_by;          /**< LVB_DECIDED_BY_; without a window the far end counts, as if it had a floor */
    int32_t loss_stage;          /**< loses most at the far end; air counts */
    int32_t variance_stage;      /**< has the largest tolerance */
    int32_t help_stage;          /**< whose change helps most; -1 where none helps */
    int32_t measure_stage;       /**< the guess with the largest tolerance at the end that decides: measure it, or look it up, next */
    int32_t look_up_stage;       /**< the guess without a tolerance that changes the level most: look it up, or give it a tolerance */
    uint32_t reserved;           /**< 0 */
    double decided_by_db;        /**< the room there; NaN without a window */
    double help_db;              /**< of help_stage; 0 where none helps */
    double measure_worst_db;     /**< by which the worst case there shrinks once measure_stage is known; 0 where there is none */
    double measure_rss_db;       /**< by which the root of the sum of squares there shrinks */
    double look_up_change_db;    /**< what look_up_stage changes at the far end (its gain, not a source's level); 0 where there is none */
    double loss_db;              /**< sum of all losses at the far end, positive */
    double gain_db;              /**< sum of all gains at the far end, without the source's level */
    double db_per_mhz;           /**< of the level that decides, by the link's frequency; NaN where a stage is -infinity dB */
    double db_per_degc;          /**< of the level that decides, by the link's temperature */
} lvb_ranking;

/** Ranks what makes up a link: losses, tolerances, what one unit of every field does, which single change helps most, and which
 *  guess to look up or to measure next.
 *  Help compares the stages by one rule, a factor of two for each: the source gives twice the power (3.01 dB), passive stages,
 *  cables and allowances lose half their dB, amplifiers and antennas gain 3.01 dB more, the walk goes half as far (over a path
 *  that needs more, as near as its reach allows). Where the near end against the ceiling decides, it is the opposite: half the
 *  power, twice the loss, 3.01 dB less gain, and a walk that stays twice as far away (no further than its far distance). A receiver
 *  helps by nothing, and an allowance by nothing at the near end. Whether a change can be had is not asked.
 *  Guesses are stages that are not looked up or estimated, as lvb_budget counts them.
 *  lines is null or has stage_count elements of contribution_size bytes (sizeof(lvb_contribution)).
 *  Formula: shares and ranks of the figures of lvb_compute_budget; of equal ones the earlier stage first. By gain, level, length and
 *  connectors derivatives are exact. By frequency, distance, temperature and angle they are differences, (level at x + h - level at
 *  x - h) / 2h, with h = x / 8192 for frequency and distance, 1/64 for degrees of angle and of temperature; where a side leaves
 *  the range of a field, table or path, the other side alone; NaN where both do. On a table's row they mean both sides.
 *  Source: as lvb_compute_budget; factor of two: our own choice.
 *  fault may be null.
 *  Range: as the fields of lvb_link say.
 *  Refused: null link or ranking; as lvb_compute_budget for the link; a wrong contribution_size.
 *  Accuracy: 1e-12 dB for each stage of the stated formulas; the differences meet the derivative of free space within relative
 *  1e-8. Cost: linear in stages; with lines, ranks quadratic in stages. Since: 0.1. */
LVB_API lvb_status lvb_compute_ranking(const lvb_link *link, lvb_ranking *ranking, lvb_contribution *lines,
                                       uint32_t contribution_size, lvb_fault *fault);

/** By what two stages are a pair. */
enum {
    LVB_PAIR_FIRST_ONLY = 1,  /**< the stage stands in the first chain only */
    LVB_PAIR_SECOND_ONLY = 2, /**< the stage stands in the second chain only */
    LVB_PAIR_BY_KIND = 3,     /**< both are of one kind */
    LVB_PAIR_BY_LABEL = 4     /**< both are of one kind and bear one label */
};

/** Two links side by side. */
typedef struct lvb_compare {
    uint32_t size;          /**< sizeof(lvb_compare) */
    uint32_t pair_size;     /**< sizeof(lvb_pair) where there are pairs; otherwise 0 */
    const lvb_link *first;  /**< the chain that is compared with */
    const lvb_link *second; /**< the chain that is compared */
    uint64_t scratch_bytes; /**< bytes of scratch, at least what lvb_comparison_scratch_bytes tells */
    uint8_t *scratch;       /**< working room, lost; it must not overlap anything else */
    struct lvb_pair *pairs; /**< as many elements as both chains have stages, or null */
} lvb_compare;

/** A stage of one chain and the one of the other that answers to it. Differences are the second's figure less the first's; a
 *  stage that is missing changes 0 dB, with no tolerance. */
typedef struct lvb_pair {
    int32_t first_stage;                  /**< index in the first chain; -1 where it has none */
    int32_t second_stage;                 /**< index in the second chain; -1 where it has none */
    int32_t matched;                      /**< LVB_PAIR_ */
    uint32_t reserved;                    /**< 0 */
    double far_change_difference_db;      /**< of what the stage changes at the far end; these add up to the difference of levels */
    double near_change_difference_db;     /**< the same at the near end */
    double tolerance_difference_db;       /**< of the tolerances */
    double far_level_difference_db;       /**< of the levels after this pair */
    double near_level_difference_db;      /**< the same at the near end */
} lvb_pair;

/** How two links differ: the second's figure less the first's. */
typedef struct lvb_comparison {
    uint32_t size;             /**< sizeof(lvb_comparison) */
    uint32_t pair_count;       /**< pairs, in the order of both chains */
    uint32_t by_label;         /**< of these: matched by label */
    uint32_t by_kind;          /**< matched by kind */
    uint32_t first_only;       /**< in the first chain only */
    uint32_t second_only;      /**< in the second chain only */
    int32_t first_verdict;     /**< LVB_VERDICT_ of the first link */
    int32_t second_verdict;    /**< LVB_VERDICT_ of the second link */
    int32_t largest_pair;      /**< index of the pair with the largest difference at either end; -1 where all are alike */
    uint32_t reserved;         /**< 0 */
    double largest_db;         /**< that difference, signed, of the end where it is larger; 0 where all are alike */
    double far_level_db;       /**< difference of the far end's level_dbm; NaN where both are -infinity */
    double near_level_db;      /**< the same of the near end */
    double margin_db;          /**< of the far end's margin_db; NaN where one is not judged */
    double headroom_db;        /**< of the near end's headroom_db */
    double far_worst_db;       /**< of the far end's worst_db */
    double near_worst_db;      /**< of the near end's worst_db */
    double eirp_db;            /**< of eirp_dbm; NaN where one has no antenna */
} lvb_comparison;

/** Working room in bytes that comparing chains of so many stages needs: their product. Counts above LVB_MAX_STAGES are
 *  taken as LVB_MAX_STAGES. Refused: nothing. Since: 0.1. */
LVB_API uint64_t lvb_comparison_scratch_bytes(uint32_t first_count, uint32_t second_count);

/** Compares two links stage by stage. This function alone reads the stages' labels, as bytes up to the first zero: two
 *  labels are one where all bytes are the same; a null or empty label is none, and the links' own labels are not read.
 *  Formula: stages are paired in the order of both chains, only with their own kind, so that as many as possible have one label,
 *  and then as many as possible are pairs; of several such ways the one that pairs earlier stages, and tells what only the
 *  first chain has before what only the second has. Differences are of the figures of lvb_compute_budget.
 *  Source: as lvb_compute_budget; longest common subsequence of two sequences (Cormen, Leiserson, Rivest, Stein, Introduction to
 *  Algorithms, 15.4).
 *  fault may be null.
 *  Range: as the fields of lvb_link say.
 *  Refused: null compare, first, second, scratch or comparison; as lvb_compute_budget for each link, the first
 *  before the second (the fault does not tell which of them); wrong sizes; too little scratch (LVB_E_COUNT); scratch and
 *  results that overlap each other (LVB_E_CONFLICT).
 *  Accuracy: 1e-12 dB for each stage of the stated formulas. Cost: stages of the first times stages of the second, and reading
 *  labels as often; 1 MiB of scratch for two chains of LVB_MAX_STAGES. Since: 0.1. */
LVB_API lvb_status lvb_compute_comparison(const lvb_compare *compare, lvb_comparison *comparison, lvb_fault *fault);

/** Plain name of that by which two stages are a pair ("by label"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_pair_name(int32_t pair);

/* ------------------------------------------------------------------------------------------------------------
 * How sure: tolerances, shadowing and fading drawn many times over.
 * Worst case and root of squares bound what may be; trials tell how often. They are as good as the laws and tolerances
 * that you state, and take every quantity as independent of the others: a walk test sees what they do not.
 * No scratch is needed: a call works on pieces of 128 trials, with some 40 KiB of stack.
 * ---------------------------------------------------------------------------------------------------------- */

/** Laws by which a tolerance is spread around a stage's value, each of mean 0. */
enum {
    LVB_LAW_RECTANGULAR = 0, /**< every value up to tolerance_db as likely: a limit of error of which nothing more is known */
    LVB_LAW_TRIANGULAR = 1,  /**< up to tolerance_db, values near 0 more likely: the sum of two alike rectangular ones */
    LVB_LAW_NORMAL = 2,      /**< tolerance_db is so many standard deviations as coverage_factor says */
    LVB_LAW_ARC_SINE = 3     /**< up to tolerance_db, the ends most likely: mismatch of unknown phase, whose two limits in dB differ
                                  but little (lvb_mismatch_uncertainty_high_db, _low_db) */
};

/** The law of a stage's tolerance. A zeroed one is rectangular. */
typedef struct lvb_spread {
    int32_t law;            /**< LVB_LAW_ */
    uint32_t reserved;      /**< 0 */
    double coverage_factor; /**< normal: tolerance_db in standard deviations, 1 to 10; 0: 2 */
} lvb_spread;

/** Trials of a link. The draws of a trial depend on seed, its number and the stage alone: any split of the trials between
 *  calls, threads or machines gives the same levels, and tallies that add up to the same.
 *  Fading leaves the mean power where it is: the level without fading is that of the mean power (decibels of fading then have
 *  a mean below 0; Rayleigh's is -2.51 dB). Where the level that you budgeted is a median instead, as of most measurements,
 *  raise it by the margin below the mean at an outage of 0.5 (lvb_rayleigh_margin_below_mean_db and its sisters; Rayleigh:
 *  1.59 dB). */
typedef struct lvb_trials {
    uint32_t size;             /**< sizeof(lvb_trials) */
    int32_t instructions;      /**< what lvb_best_instructions gave, or an LVB_INSTRUCTIONS_ value */
    uint32_t spread_count;     /**< stage_count of the link, or 0: all laws rectangular */
    uint32_t spread_size;      /**< sizeof(lvb_spread); not used without spreads */
    int32_t fading;            /**< LVB_FADING_ at the far end, with air: none, Rayleigh, Rice or Nakagami */
    uint32_t reserved;         /**< 0 */
    const lvb_link *link;      /**< the chain, its tolerances, and the window of its receiver */
    const lvb_spread *spreads; /**< spread_count laws, in the order of the stages; null without any */
    const void *user;          /**< the host's; never read */
    double rice_factor_db;     /**< Rice: -100 to 100 dB; 0 is 0 dB */
    double nakagami_shape;     /**< Nakagami: 0.5 to 100; needed */
    double shadowing_db;       /**< standard deviation of normal decibels of mean (and median) 0, with air, at the far end, 0 to
                                    50 dB; for example the budget's path_standard_deviation_db */
    uint64_t seed;             /**< any number */
    uint64_t first_trial;      /**< number of the first trial, 0 to 4503599627370496; multiples of 128 are fastest */
    uint64_t trial_count;      /**< 1 to LVB_MAX_VALUES */
    double *far_dbm;           /**< trial_count levels at the far end, in the order of trials, or null */
    double *near_dbm;          /**< trial_count levels at the near end, or null */
} lvb_trials;

/** What was counted in trials. Sums are whole numbers of grains of 1/65536 dB, so that tallies add up to the same bits in any
 *  order; deviations beyond 16384 dB count as that. */
typedef struct lvb_tally {
    uint32_t size;              /**< sizeof(lvb_tally) */
    uint32_t reserved;          /**< 0 */
    uint64_t trials;            /**< trials that were counted */
    uint64_t inside;            /**< inside the window at both ends of the walk; what is not stated does not judge */
    uint64_t far_below;         /**< far level below the floor */
    uint64_t far_above;         /**< far level above the ceiling */
    uint64_t near_below;        /**< near level below the floor */
    uint64_t near_above;        /**< near level above the ceiling */
    int64_t far_sum;            /**< sum of the far deviations, in grains */
    uint64_t far_squares_high;  /**< sum of their squares: times 2^64, and */
    uint64_t far_squares_low;   /**< the rest */
    int64_t near_sum;           /**< as far_sum, at the near end */
    uint64_t near_squares_high; /**< as far_squares_high */
    uint64_t near_squares_low;  /**< as far_squares_low */
    double far_level_dbm;       /**< far level without deviations, as lvb_compute_budget gives it */
    double near_level_dbm;      /**< near level without deviations */
} lvb_tally;

/** Draws trials of a link and counts them: in each trial every stage's tolerance takes one value by its law, the same at
 *  both ends (an allowance's at the far end only), and shadowing and fading come at the far end.
 *  tally may be null where only levels are wanted; fault may be null.
 *  Formula: level = that of lvb_compute_budget + sum of tolerance_db g(v) (normal: tolerance_db / coverage_factor) + shadowing_db
 *  g(v) + fading. v = (2 n + 1) / 2^32 - 1, where n is word t % 128 / 32 of the four that Philox4x32-10 makes, for trial t, of
 *  the counter (c % 2^32, c / 2^32, quantity, attempt), c = t / 128 * 32 + t % 32, and the key (seed % 2^32, seed / 2^32);
 *  quantity is the stage's index, 65536 shadowing, from 65537 on fading; attempt is 0 but for Nakagami. g is the inverse of
 *  the law's distribution function: v; v / |v| (1 - sqrt(1 - |v|)); that of the standard normal law at (1 + v) / 2;
 *  sin(90 v degrees). Fading is 10 log10 of a power of mean 1; e = -ln((1 - v) / 2). Rayleigh: the power is e. Rice of factor
 *  k, not in dB: with a = sqrt(k / (1 + k)), b = sqrt(e / (1 + k)) and v' of quantity 65538, (a - b)^2 + 4 a b sin(90 v' degrees)^2:
 *  a steady amplitude less a Rayleigh one that is turned by 180 v' degrees. Nakagami: gamma deviates by
 *  Marsaglia's and Tsang's acceptance, over their mean; what is drawn again has a counter for each trial by itself.
 *  Source: propagation of distributions, and laws by what is known of a quantity: JCGM 101:2008, 5 and 6. Philox: Salmon, Moraes,
 *  Dror & Shaw, 2011. Gamma: Marsaglia & Tsang, 2000. Fading: Rappaport, Wireless Communications, 5.6; Proakis, Digital
 *  Communications, 2.1.
 *  Range: as the fields of lvb_trials and lvb_spread say, and lvb_compute_budget for the link.
 *  Refused: the link as lvb_compute_budget refuses it; null trials or link; a law or fading that is not known
 *  (LVB_E_UNKNOWN_VALUE); a number of spreads that is neither 0 nor that of the stages (LVB_E_COUNT), or 0 beside spreads
 *  (LVB_E_MISSING); a coverage factor for another law than the normal one, fading or shadowing without air, a factor or
 *  shape of another fading (LVB_E_UNUSED); a shape that is missing; results that overlap each other (LVB_E_CONFLICT).
 *  Nothing is written then.
 *  Accuracy: g within 2e-9 for the normal law and 1e-13 for the others; Rayleigh 1e-8 dB, where a step of v is 3e-9 dB or
 *  more; the same bits on every machine and instruction set. Results scatter with the root of the number of trials. Cost:
 *  linear in trials times stages with a tolerance, 0.5 to 2.5 ns each with AVX-512; Rice and Nakagami some 3 to 6 ns. Since: 0.1. */
LVB_API lvb_status lvb_compute_trials(const lvb_trials *trials, lvb_tally *tally, lvb_fault *fault);

/** Plain name of the law of a tolerance ("arc sine"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_law_name(int32_t law);

/** What trials tell. Each probability comes with its standard error. A limit that the window does not state is never missed. */
typedef struct lvb_sureness {
    uint32_t size;                     /**< sizeof(lvb_sureness) */
    uint32_t reserved;                 /**< 0 */
    uint64_t trials;                   /**< trials of all tallies */
    double inside_probability;         /**< share of trials inside the window at both ends */
    double inside_error;               /**< its standard error */
    double far_below_probability;      /**< share of trials with the far level below the floor */
    double far_below_error;            /**< its standard error */
    double far_above_probability;      /**< share with the far level above the ceiling */
    double far_above_error;            /**< its standard error */
    double near_below_probability;     /**< share with the near level below the floor */
    double near_below_error;           /**< its standard error */
    double near_above_probability;     /**< share with the near level above the ceiling */
    double near_above_error;           /**< its standard error */
    double far_mean_dbm;               /**< mean of the far levels */
    double far_mean_error_db;          /**< its standard error; NaN of one trial */
    double far_standard_deviation_db;  /**< standard deviation of the far levels; NaN of one trial */
    double near_mean_dbm;              /**< as far_mean_dbm, at the near end */
    double near_mean_error_db;         /**< as far_mean_error_db */
    double near_standard_deviation_db; /**< as far_standard_deviation_db */
} lvb_sureness;

/** Adds up tallies of one link's trials and tells what they come to. fault may be null.
 *  Formula: probability = hits / trials; its error is sqrt(p (1 - p) / (trials + 3)) with p = (hits + 1) / (trials + 2), the
 *  standard deviation of what is known of it when nothing was known before, so that no hit of n is an error of about 1 / n, not 0.
 *  The mean's error is the standard deviation over the root of the number of trials.
 *  Source: rule of succession (Laplace; beta law of a share). Mean and standard deviation: JCGM 101:2008, 7.6.
 *  Range: tally_count 1 to 65536; 4294967296 trials altogether.
 *  Refused: null tallies or sureness; wrong sizes; no tally or no trials (LVB_E_MISSING); too many (LVB_E_COUNT); tallies of
 *  different levels without deviations (LVB_E_CONFLICT), or of levels that are NaN or infinite (LVB_E_NAN, LVB_E_INFINITE;
 *  -infinity may be: a null); what trials cannot come to (LVB_E_BELOW_RANGE, LVB_E_ABOVE_RANGE): fewer trials than were
 *  counted of some kind, or inside and missed at one end together; more than were inside and missed at both; sums beyond
 *  16384 dB, and sums of squares beyond its square, for each trial.
 *  Accuracy: sums are exact; standard deviations to 0.00001 dB. Since: 0.1. */
LVB_API lvb_status lvb_compute_sureness(const lvb_tally *tallies, uint32_t tally_count, uint32_t tally_size,
                                        lvb_sureness *sureness, lvb_fault *fault);

/** A quantile that is asked for, and the answer. */
typedef struct lvb_quantile {
    double probability; /**< asked: share of levels up to the quantile, 0 to 1 */
    double level_dbm;   /**< answer: the quantile */
    double error_db;    /**< answer: its standard error */
} lvb_quantile;

/** Finds quantiles of levels (of any numbers, in fact) in place: levels_dbm is put into another order, and needs no room
 *  beside it. The levels' order makes no difference to the answer. fault may be null.
 *  Formula: the quantile is the level of rank ceil(probability count), at least 1; its error half the distance between the
 *  levels of that rank plus and minus sqrt(count probability (1 - probability)), at least 1: the standard deviation of the rank.
 *  Source: inverse of the distribution function, JCGM 101:2008, 7.5 and 7.7; order statistics (textbooks).
 *  Range: probability [0, 1], levels of any size, infinite ones too; count 1 to LVB_MAX_VALUES, quantile_count 1 to
 *  LVB_MAX_ROWS.
 *  Refused: null levels or quantiles; a count or quantile_count of 0 (LVB_E_MISSING) or above its most (LVB_E_COUNT); a
 *  wrong size; a probability outside its range; a level that is NaN. Nothing is written or moved then.
 *  Accuracy: exact. Cost: some 20 ns a level and quantile. Since: 0.1. */
LVB_API lvb_status lvb_compute_quantiles(double *levels_dbm, uint64_t count, lvb_quantile *quantiles, uint32_t quantile_count,
                                         uint32_t quantile_size, lvb_fault *fault);

/* ------------------------------------------------------------------------------------------------------------
 * Choose: gear from stock.
 * A slot is a stage's place in a link, with the items of the stock that may stand there. A set puts one item into every
 * slot. Sought are the cheapest sets with which every link holds what it needs, from a stock that all links share.
 * A set that holds on paper still wants the walk test; the limit of radiated power is what you state, and the licence rules.
 * ---------------------------------------------------------------------------------------------------------- */

enum {
    LVB_MAX_NEEDS = 256,  /**< the most links that share a stock */
    LVB_MAX_SLOTS = 1024, /**< the most slots of all links */
    LVB_MAX_ITEMS = 65536, /**< the most items in a stock, and in a slot's list */
    LVB_MAX_SETS = 4096   /**< the most sets that are asked for */
};

/** An item of the stock. */
typedef struct lvb_item {
    const lvb_stage *stage; /**< what it is as a stage: a source, passive, cable, amplifier or antenna */
    const char *label;      /**< the host's; never read */
    const void *user;       /**< the host's; never read */
    uint64_t cost;          /**< in the smallest unit that you count in, 0 to 1000000000000 */
    uint32_t count;         /**< how many are left; 0 is none */
    uint32_t reserved;      /**< 0 */
    double lowest_mhz;      /**< it serves frequencies from here, 0.1 to 300000 MHz; 0: no such end */
    double highest_mhz;     /**< it serves frequencies up to here; 0: no such end */
} lvb_item;

/** A place in a link for one of several items. The link's stage that stands there is not read. Items that do not serve the
 *  link's frequency (by their band, or by the tables of their stage) or of which none is left are passed over. Passive, cable and
 *  amplifier may stand in for each other, a source only for a source, an antenna only for an antenna. */
typedef struct lvb_slot {
    uint32_t need;         /**< index of the link's lvb_need */
    uint32_t stage;        /**< index of the stage in its link; slots rise by need and stage */
    uint32_t item_count;   /**< 1 to LVB_MAX_ITEMS */
    uint32_t reserved;     /**< 0 */
    const uint32_t *items; /**< item_count rising indices into the stock */
} lvb_slot;

/** Bits of worst_case: what must hold with every tolerance against you. */
enum {
    LVB_WORST_LEVELS = 1, /**< far level less far_end.worst_db, near level plus near_end.worst_db */
    LVB_WORST_EIRP = 2    /**< eirp_dbm plus eirp_worst_db */
};

enum { LVB_STATED_EIRP_LIMIT = 16777216 /**< bit of `stated`: eirp_limit_dbm of lvb_need */ };

/** A link and what it needs, beside the window of its receiver: the far level at or above the floor, the near level at or
 *  below the ceiling, as far as the receiver states them. */
typedef struct lvb_need {
    const lvb_link *link;            /**< with all its stages; what stands in slots is not read */
    uint32_t stated;                 /**< LVB_STATED_EIRP_LIMIT when eirp_limit_dbm is given */
    uint32_t worst_case;             /**< LVB_WORST_ bits */
    double margin_db;                /**< far level above the floor at least, 0 to 100 dB */
    double headroom_db;              /**< near level under the ceiling at least, 0 to 100 dB */
    double eirp_limit_dbm;           /**< most e.i.r.p., -200 to 150 dBm; not over a radiating cable, which has none */
    double noise_figure_limit_db;    /**< most noise figure of the receive side, 0.001 to 100 dB; 0: not limited */
} lvb_need;

/** By how many dB the best sets of a link miss what it needs; the link is taken by itself, with the whole stock. 0: it can be
 *  held, or is not asked for; infinity: no set holds the others; NaN: the search for it did not end. */
typedef struct lvb_miss {
    double far_alone_db;     /**< floor with margin, if nothing else were asked */
    double near_alone_db;    /**< ceiling with headroom, if nothing else were asked */
    double eirp_alone_db;    /**< radiated power, if nothing else were asked */
    double noise_alone_db;   /**< noise figure, if nothing else were asked; within 0.000001 dB */
    double far_besides_db;   /**< floor with margin, among the sets that hold all else */
    double near_besides_db;  /**< ceiling with headroom, among the sets that hold all else */
    double eirp_besides_db;  /**< radiated power, among the sets that hold all else */
    double noise_besides_db; /**< noise figure, among the sets that hold all else; within 0.000001 dB */
} lvb_miss;

/** How a search ended. */
enum {
    LVB_OUTCOME_PROVEN = 1,         /**< the sets are the cheapest, in order, and none was left out */
    LVB_OUTCOME_NOT_PROVEN = 2,     /**< the sets hold, but cheaper ones were not ruled out: see lower_bound */
    LVB_OUTCOME_INFEASIBLE = 3,     /**< there is no set: see the misses */
    LVB_OUTCOME_SHORT_OF_STOCK = 4, /**< the stock does not even fill the slots, whatever the levels */
    LVB_OUTCOME_UNDECIDED = 5       /**< no set was found before the search was stopped, and none was ruled out */
};

/** What is asked. Results and scratch must not overlap each other or anything that is read. */
typedef struct lvb_choice {
    uint32_t size;          /**< sizeof(lvb_choice) */
    uint32_t need_count;    /**< links, 1 to LVB_MAX_NEEDS; each has a slot */
    uint32_t need_size;     /**< sizeof(lvb_need) */
    uint32_t item_count;    /**< 1 to LVB_MAX_ITEMS */
    uint32_t item_size;     /**< sizeof(lvb_item) */
    uint32_t slot_count;    /**< 1 to LVB_MAX_SLOTS */
    uint32_t slot_size;     /**< sizeof(lvb_slot) */
    uint32_t stage_size;    /**< sizeof(lvb_stage), of the items' stages */
    uint32_t set_count;     /**< how many sets are wanted, 1 to LVB_MAX_SETS */
    uint32_t miss_size;     /**< sizeof(lvb_miss); 0 where misses is null */
    const lvb_need *needs;  /**< need_count links */
    const lvb_item *items;  /**< the stock: item_count items */
    const lvb_slot *slots;  /**< slot_count slots */
    void *scratch;          /**< working room anywhere in memory; its content is lost, also where the call is refused */
    uint64_t scratch_bytes; /**< see lvb_compute_choice_scratch */
    uint64_t step_limit;    /**< the search is stopped after so many steps; 0: 4000000 */
    uint32_t *sets;         /**< set_count rows of slot_count item indices; rows beyond those found are left as they were */
    uint64_t *costs;        /**< set_count costs, of each row */
    lvb_miss *misses;       /**< need_count misses, written where the outcome is LVB_OUTCOME_INFEASIBLE; or null */
    const void *user;       /**< the host's; never read */
} lvb_choice;

/** The answer. */
typedef struct lvb_chosen {
    uint32_t size;        /**< sizeof(lvb_chosen) */
    int32_t outcome;      /**< LVB_OUTCOME_ */
    uint32_t set_count;   /**< sets found: fewer than wanted where there are no more, or the search was stopped */
    uint32_t coarse;      /**< 1 where the search was stopped and more scratch would have made it sharper */
    uint64_t cost;        /**< of the best set; 0 where there is none */
    uint64_t lower_bound; /**< no set costs less; 0 where there is none to speak of */
    uint64_t gap;         /**< cost - lower_bound: 0 where the best set is proven */
    uint64_t steps;       /**< steps of the search */
} lvb_chosen;

/** Room for a choice. */
typedef struct lvb_choice_scratch {
    uint32_t size;        /**< sizeof(lvb_choice_scratch) */
    uint32_t reserved;    /**< 0 */
    uint64_t least_bytes; /**< with less the call is refused */
    uint64_t ample_bytes; /**< more makes no difference: up to 1 MiB for each slot */
} lvb_choice_scratch;

/** Tells how much scratch a choice needs. Read are the counts, sizes and lists of choice; scratch, sets and costs may still be
 *  null. fault may be null.
 *  Refused: null choice or scratch; null arrays; wrong sizes; counts outside their ranges; a slot's need or item of which there
 *  is none (LVB_E_NOT_FOUND); slots or items out of order (LVB_E_ORDER). Since: 0.1. */
LVB_API lvb_status lvb_compute_choice_scratch(const lvb_choice *choice, lvb_choice_scratch *scratch, lvb_fault *fault);

/** Finds the cheapest sets of items with which every link holds what it needs, in order of cost, then of the item
 *  indices slot by slot. A set is judged by what lvb_compute_budget gives for the links with its items in their slots, bit for
 *  bit: far_end.margin_db (less worst_db) at least margin_db, near_end.headroom_db (less worst_db) at least headroom_db,
 *  eirp_dbm (plus eirp_worst_db) at most eirp_limit_dbm; and its noise figure.
 *  Formula: noise figure of the receive side, behind the second antenna: F = F1 + (F2 - 1) / G1 + (F3 - 1) / (G1 G2) ...; a passive
 *  or cable's F is its loss at 290 K, allowances count nothing; without tolerances. Where noise is limited, amplifiers
 *  behind the air and the receiver state their noise_figure_db.
 *  Source: Friis, cascade of noise figures (Pozar, Microwave Engineering, 10.1); choice by branch and bound with
 *  bounds by dynamic programming over ranges of levels: textbook methods, no source needed.
 *  The answer is exact where the outcome says so, whatever the scratch; less scratch makes the search longer. How long it takes
 *  depends on the numbers: one link of 12 slots of 12 items takes some milliseconds, seldom more (DEVELOPERS.md). Links that
 *  want the same scarce items are solved to the end up to some 8 slots altogether, and may be stopped beyond. step_limit ends
 *  the search: the best sets so far come back with lower_bound and gap. The same input gives the same sets, steps and
 *  bounds on every machine. fault may be null. A fault in a need, its link or a stage has the structure LVB_STRUCT_NEED,
 *  `row` is the need's index and `stage` that of the stage, or LVB_STAGE_LINK for the link (needs[1].margin_db,
 *  needs[1].link.stages[2].gain_db, needs[1].link.frequency_mhz); one in the fields of an item's stage has the structure
 *  LVB_STRUCT_ITEM, and `row` is the item's index; in one in a table of it `stage` is the item's index.
 *  Range: as the fields say.
 *  Refused: as lvb_compute_choice_scratch; as lvb_compute_budget for every link with its first items in its slots, and for every
 *  item's stage; null sets, costs or scratch; too little scratch (LVB_E_COUNT); a slot or its items of a kind
 *  that may not stand there; a slot's need, stage or item of which there is none (LVB_E_NOT_FOUND), or out of order
 *  (LVB_E_ORDER); a link without a slot (LVB_E_MISSING); a margin without a stated floor, a headroom without a
 *  ceiling, a limit of e.i.r.p. without an antenna or over a radiating cable, a limit of noise without air (LVB_E_UNUSED); a
 *  noise figure that is missing; results or scratch that overlap (LVB_E_CONFLICT).
 *  Accuracy: exact in cost; levels as lvb_compute_budget. Cost: see above; a step is a slot's list. Since: 0.1. */
LVB_API lvb_status lvb_compute_choice(const lvb_choice *choice, lvb_chosen *result, lvb_fault *fault);

/** Plain name of an outcome ("proven"); an unknown value gives "unknown". Since: 0.1. */
LVB_API const char *lvb_outcome_name(int32_t outcome);

/* ------------------------------------------------------------------------------------------------------------
 * Locate: which stage has a fault.
 * ---------------------------------------------------------------------------------------------------------- */

enum { LVB_MAX_READINGS = 64 /**< the most readings that one search takes */ };

/** A level measured after a stage. There is a point to measure at where the level is conducted: up to the first antenna,
 *  and from the second one to the receiver, whose own meter may serve. Several readings at one point are combined. */
typedef struct lvb_reading {
    uint32_t stage;        /**< index of the stage after which it was measured, from 0 */
    uint32_t reserved;     /**< 0 */
    double level_dbm;      /**< what was measured, -300 to 200 dBm; 0 is 1 mW */
    double uncertainty_db; /**< standard uncertainty, 0.001 to 100 dB, or infinite: no reading; 0: that of lvb_locate */
    double distance_m;     /**< over the air, 0.01 to 1e9 m; only after the air; 0: the link's far_distance_m */
} lvb_reading;

/** A search for a fault: the link as it should be, and what was measured. Uncertainties of readings are standard
 *  uncertainties; of a limit of error that a meter's data sheet gives, plus and minus, divide by sqrt(3). */
typedef struct lvb_locate {
    uint32_t size;               /**< sizeof(lvb_locate) */
    uint32_t reading_count;      /**< 0 to LVB_MAX_READINGS */
    uint32_t reading_size;       /**< sizeof(lvb_reading); not used without readings */
    uint32_t reserved;           /**< 0 */
    const lvb_link *link;        /**< the chain as entered, with its tolerances */
    const lvb_reading *readings; /**< reading_count readings in any order; null without any */
    const void *user;            /**< the host's; never read */
    double uncertainty_db;       /**< standard uncertainty of a reading, the next one too, 0.001 to 100 dB; needed */
    double fault_probability;    /**< that some stage has a fault, as held before any reading, 1e-6 to 0.999999; 0: 0.5 */
    double fault_spread_db;      /**< standard deviation of a fault's size around 0, 0.1 to 100 dB; 0: 10 */
    double false_alarm;          /**< how often a healthy chain may be called inconsistent, 1e-6 to 0.5; 0: 0.01 */
} lvb_locate;

/** One stage as a suspect. */
typedef struct lvb_suspect {
    uint32_t span;                /**< stages of one number have no reading between them: these readings cannot tell them apart */
    uint32_t reserved;            /**< 0 */
    double probability;           /**< that this stage has the fault */
    double fault_db;              /**< if so, the size of the fault, negative where power is lost: the best estimate */
    double standard_deviation_db; /**< its standard deviation */
    double expected_bits;         /**< what a next reading after this stage should tell; NaN where there is no point to measure */
} lvb_suspect;

/** What a search found. */
typedef struct lvb_locate_result {
    uint32_t size;                /**< sizeof(lvb_locate_result) */
    int32_t consistent;           /**< 1: the readings fit the chain without a fault (p_value is at least false_alarm) */
    uint32_t reading_count;       /**< readings that were counted: those of finite uncertainty */
    uint32_t stage;               /**< most likely stage; of its span, which is as likely, the first */
    uint32_t span_first;          /**< first stage of its span */
    uint32_t span_last;           /**< last stage of its span */
    uint32_t next_stage;          /**< measure after this stage next: the first with the most expected_bits, of all 0 too */
    uint32_t reserved;            /**< 0 */
    double chi_square;            /**< of all readings against the chain without a fault; reading_count degrees of freedom */
    double p_value;               /**< probability that a healthy chain gives so large a chi_square, or a larger one */
    double none_probability;      /**< that no stage has a fault */
    double probability;           /**< of the most likely stage */
    double span_probability;      /**< of its whole span */
    double fault_db;              /**< as in lvb_suspect, of that stage */
    double standard_deviation_db; /**< as in lvb_suspect, of that stage */
    double expected_bits;         /**< as in lvb_suspect, of next_stage; 0: no gain is assured */
    double fault_p_value;         /**< probability that readings lie so far off or farther with a fault of the best size in that
                                       stage: low (below 0.01) means that no single fault explains them, a reading is wrong or
                                  there are two faults */
} lvb_locate_result;

/** Finds the stage that has a fault, by levels measured along the chain: how likely each stage is the culprit and by how
 *  many dB, whether the readings fit a healthy chain, and after which stage to measure next. Without readings it tells
 *  where to begin.
 *  Formula: the level after a stage departs from the predicted one (lvb_compute_budget at the far end, or at the reading's
 *  distance) by the sum of the deviations of the stages up to there. They are independent and normal, with the standard
 *  deviation tolerance_db / sqrt(3). Readings err by independent normal errors. At most one stage has a fault besides, each
 *  as likely, of a size normal around 0 with fault_spread_db: a gain (a pad left out) as likely as a loss. By Bayes' rule
 *  each stage of a span then has a probability in proportion to sqrt(d / (d + s)) exp(j^2 s / (2 d (d + s))), and no fault
 *  in proportion to 1, times what was held before; j is the jump of the departure in the span as all readings estimate
 *  it, d the variance of that estimate, s that of a fault; the fault is j s / (d + s), with the variance d s / (d + s).
 *  Behind the last reading nothing is seen: the ratio is 1, the fault 0 with fault_spread_db. chi_square is the squared
 *  departure of the readings in the metric of their covariance without a fault. fault_p_value is that of the chi_square
 *  which is left once a fault of the size j is taken out at the most likely stage, chi_square - j^2 / d, with one degree of
 *  freedom fewer than readings (1 of a single reading); where that stage lies behind the last reading it is p_value.
 *  The probabilities above are shares among healthy and single faults, and add up to 1 also where none of them fits: ask
 *  fault_p_value first. Sound readings of a single fault fall below a limit about as often as it says, and where tolerances
 *  are limits of error more seldom. expected_bits is a lower bound of the
 *  mutual information of culprit (a stage, or none) and reading, by the Bhattacharyya distances between what each culprit
 *  predicts; the next stage is the first that has the most, at a conducted point that no allowance follows directly (such
 *  an allowance belongs to the level there). Every chain has such a point, so that a stage is always named, also without a
 *  reading; expected_bits tells whether measuring there is worth the way.
 *  Source: chi-square of what a fit leaves, with the degrees of freedom that it takes: least squares (textbooks). Standard
 *  deviation of a stated limit: JCGM 100:2008, 4.3.7 (uniform distribution). Estimates before and behind a
 *  jump: Fraser & Potter, 1969; jumps of a linear system: Willsky & Jones, 1976. Expected information: Lindley, 1956; its
 *  bound: Kolchinsky & Tracey, Entropy 19, 361 (2017). Prior of the fault: common practice, no source.
 *  Caution: a meter that reads all levels too high looks like a fault of the source; and where the walk fades, take means.
 *  suspects is null or has stage_count elements of suspect_size bytes (sizeof(lvb_suspect)). fault may be null.
 *  Range: as the fields of lvb_locate and lvb_reading say, and lvb_compute_budget for the link.
 *  Refused: a null locate, result or array of readings; readings whose count is 0 (LVB_E_MISSING); wrong sizes; the
 *  link as lvb_compute_budget refuses it, and the distance of a reading as that of the link; more than LVB_MAX_READINGS readings
 *  (LVB_E_COUNT); uncertainty_db of 0 in lvb_locate (LVB_E_MISSING); values outside their ranges; a reading after a
 *  stage that there is not, where the level is radiated, or behind a pattern's null (LVB_E_NOT_FOUND); a distance of a
 *  reading before the air (LVB_E_UNUSED).
 *  Accuracy: probabilities 1e-9, decibels 1e-9 dB, against full covariance matrices. Cost: stages times the square of the
 *  number of readings. Since: 0.1. */
LVB_API lvb_status lvb_locate_fault(const lvb_locate *locate, lvb_locate_result *result, lvb_suspect *suspects,
                                    uint32_t suspect_size, lvb_fault *fault);

#ifdef __cplusplus
}
#endif

#endif /* LEVELBOOK_LEVELBOOK_H */
