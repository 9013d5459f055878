#pragma once

#include "sentences.hpp"

#include <array>
#include <initializer_list>
#include <vector>

#include "heatmatch/base/field_access.hpp"
#include "heatmatch/base/interpolation.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

template <>
struct RowShape<TablePoint> {
    static std::vector<double> to_row(const TablePoint& point) { return {point.t_c, point.value}; }
    static TablePoint from_row(const std::vector<double>& row) { return {row.at(0), row.at(1)}; }
};

/// The fields common to all kinds of part, around those of the kind.
template <class P>
std::vector<Field> with_common_fields(std::initializer_list<Field> own) {
    constexpr Range free{.low = 0.0, .high = 1e6};
    std::vector<Field> fields;
    fields.push_back(bind<&P::id>({.name = "id",
                                   .kind = FieldKind::slug,
                                   .required = true,
                                   .meaning = "short name, unique within the kind"}));
    fields.push_back(bind<&P::label>({.name = "label",
                                      .kind = FieldKind::text,
                                      .required = true,
                                      .meaning = "descriptive name"}));
    fields.insert(fields.end(), own.begin(), own.end());
    fields.push_back(bind<&P::provenance, &Provenance::source>(
        {.name = "source",
         .kind = FieldKind::text,
         .required = true,
         .meaning = "source of the numbers: a key of sources.json, or free text",
         .remedy = parts_sentences::say<"parts.say_where_from">()}));
    fields.push_back(bind<&P::provenance, &Provenance::source_kind>({.name = "source_kind",
                                                                     .kind = FieldKind::choice,
                                                                     .required = true,
                                                                     .meaning = "kind of source"}));
    fields.push_back(bind<&P::provenance, &Provenance::source_of>(
        {.name = "source_of",
         .kind = FieldKind::text_map,
         .meaning = "source by field name, for fields whose source differs"}));
    fields.push_back(
        bind<&P::price, &Price::low>({.name = "price_low",
                                      .kind = FieldKind::number,
                                      .unit = unit::money,
                                      .range = free,
                                      .meaning = "lowest likely price, in the price currency"}));
    fields.push_back(
        bind<&P::price, &Price::high>({.name = "price_high",
                                       .kind = FieldKind::number,
                                       .unit = unit::money,
                                       .range = free,
                                       .meaning = "highest likely price, in the price currency"}));
    fields.push_back(bind<&P::price, &Price::currency>(
        {.name = "price_currency",
         .kind = FieldKind::text,
         .meaning = "currency of the prices: three-letter code of ISO 4217"}));
    fields.push_back(bind<&P::notes>(
        {.name = "notes", .kind = FieldKind::text, .meaning = "remarks in free text"}));
    return fields;
}

/// Rejects a record for a reason that involves several fields.
[[noreturn]] void refuse_part(std::string part, std::string field, std::string value,
                              std::string allowed, Sentence remedy);

/// Rejects unless low <= typical <= high, for the given ones.
void check_order(const std::string& part, const std::string& field, std::optional<double> low,
                 double typical, std::optional<double> high);

}  // namespace heatmatch
