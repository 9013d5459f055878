#pragma once

#include <limits>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

/// Type of a field's value.
enum class FieldKind {
    text,       //!< free text
    choice,     //!< one of the field's words
    slug,       //!< the part's own id
    reference,  //!< id of a part of another kind
    number,     //!< a real number in the field's unit
    count,      //!< a whole number
    flag,       //!< true or false
    numbers,    //!< a list of real numbers
    texts,      //!< a list of texts
    rows,       //!< a list of records of numbers, named by the field's columns
    record,     //!< at most one record of numbers, named by the field's columns
    text_map    //!< field name -> text
};

using Rows = std::vector<std::vector<double>>;
using TextMap = std::map<std::string, std::string>;

/// Value of any field; monostate where the field is unknown.
using Value = std::variant<std::monostate, bool, double, std::string, std::vector<double>,
                           std::vector<std::string>, Rows, TextMap>;

/// Allowed values of a number; the ends belong to the range unless they are open.
struct Range {
    double low = -std::numeric_limits<double>::infinity();
    double high = std::numeric_limits<double>::infinity();
    bool low_open = false;

    [[nodiscard]] bool holds(double value) const;
    /// Text for error messages: `> 0 V and <= 2000 V`.
    [[nodiscard]] std::string text(const Unit& unit) const;
};

/// A number within that unit and range, as an example in error messages: `15 V`.
[[nodiscard]] std::string example_of(const Unit& unit, const Range& range);

/// One column of a field of kind `rows` or `record`.
struct Column {
    std::string_view name{};
    Unit unit{};
    Range range{};
    std::string_view meaning{};
};

/// One field of a record, defined once: JSON, SQL, the Python properties, error messages and the
/// glossary all use it. Records are accessed through get and set, generated from member pointers.
struct Field {
    std::string_view name{};
    FieldKind kind = FieldKind::text;
    Unit unit{};
    Range range{};
    bool required = false;
    std::string_view meaning{};                 //!< glossary line
    std::span<const std::string_view> words{};  //!< of a choice
    std::span<const Column> columns{};          //!< of rows and record
    std::string_view refers_to{};               //!< kind of part that a reference names
    std::string_view relative_to{};             //!< fields whose product is the base of a value in
                                                //!< V/K
    Unit relative_unit{};                       //!< unit of such a value: V/K, A/K or W/K
    Sentence remedy{};                          //!< how to correct a value out of range
    Value careful{};                            //!< worst-case value if not stated; if none is
                                                //!< given, a verdict is `not assessed`
    std::string_view careful_source{};          //!< cite key of that value
    Value (*get)(const void*) = nullptr;
    void (*set)(void*, const Value&) = nullptr;
};

/// The field of that name; null if there is none.
[[nodiscard]] const Field* find_field(std::span<const Field> fields, std::string_view name);

/// Throws InvalidInput for a name that no field has, with a suggestion.
[[noreturn]] void refuse_unknown_field(std::span<const Field> fields, std::string_view name,
                                       std::string_view part);

/// Checks one value against its field. `part` starts the message (`panel "barn"`). Throws
/// InvalidInput naming field, value, allowed range and remedy.
void check_value(const Field& field, const Value& value, std::string_view part);

/// Checks every field of a record: required fields are present, all values are in range.
void check_record(std::span<const Field> fields, const void* record, std::string_view part);

/// Reads a text (`15 ohm`) into the field's unit. Throws InvalidInput naming part and field. A text
/// such as `-120 mV/K` also needs `relative_base`: the value, in the field's unit, to which the
/// coefficient relates.
[[nodiscard]] double read_quantity(const Field& field, std::string_view text, std::string_view part,
                                   std::optional<double> relative_base = std::nullopt);

/// Product of the fields of a record to which a coefficient relates, such as `v_mp*i_mp`; empty if
/// one of them is unknown.
[[nodiscard]] std::optional<double> relative_base(std::span<const Field> fields, const void* record,
                                                  std::string_view expression);

/// A value as a person would write it, with its unit, for messages and listings.
[[nodiscard]] std::string format_value(const Field& field, const Value& value,
                                       UnitSystem system = UnitSystem::si);

/// Sets one field of a record after checking it.
void set_field(std::span<const Field> fields, void* record, std::string_view name,
               const Value& value, std::string_view part);

}  // namespace heatmatch
