#include "long_run.hpp"
#include "random_yard.hpp"
#include "reference_csv.hpp"
#include "yard_verdict.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include <doctest/doctest.h>

using heatmatch::Field;
using heatmatch::Installation;
using heatmatch::Value;

namespace {

int number_of_yards() {
    return in_the_long_run() ? 100 : 12;
}

bool unknown(const Value& value) {
    return std::holds_alternative<std::monostate>(value);
}

std::vector<Value> other_numbers(const Field& field, double number) {
    std::vector<Value> others;
    for (const double other : {number * 1.5 + 1.0, number * 0.5}) {
        const double allowed =
            field.kind == heatmatch::FieldKind::count ? std::round(other) : other;
        if (field.range.holds(allowed) && allowed != number) others.emplace_back(allowed);
    }
    return others;
}

/// Other values that a field might have as well.
std::vector<Value> other_values(const Field& field, const Value& value) {
    if (const auto* flag = std::get_if<bool>(&value)) return {Value{!*flag}};
    if (const auto* number = std::get_if<double>(&value)) return other_numbers(field, *number);
    std::vector<Value> others;
    for (std::string_view word : field.words) {
        if (value != Value{std::string(word)}) others.emplace_back(std::string(word));
    }
    if (const auto* rows = std::get_if<heatmatch::Rows>(&value)) {
        heatmatch::Rows less = *rows;
        for (auto& row : less) row.front() *= 0.3;
        others.emplace_back(less);
    }
    return others;
}

/// What a file of a circuit cannot leave out, and what only people read.
bool is_always_told(const Field& field) {
    constexpr auto for_people = std::to_array<std::string_view>(
        {"label", "notes", "source_of", "price_low", "price_high", "price_currency", "count"});
    return field.required ||
           std::find(for_people.begin(), for_people.end(), field.name) != for_people.end();
}

/// Whether a margin whose passing is a danger is judged differently.
bool moves_a_danger(const YardVerdicts& before, const YardVerdicts& after) {
    return std::any_of(before.begin(), before.end(), [&after](const auto& each) {
        const YardVerdict& was = each.second;
        const auto now = after.find(each.first);
        if (now == after.end()) return was.danger;
        if (!was.danger && !now->second.danger) return false;
        return was.likely != now->second.likely || was.worst != now->second.worst ||
               was.value != now->second.value || was.limit != now->second.limit;
    });
}

/// A field of one record of a yard, tried.
struct Tried {
    Installation& yard;
    const YardVerdicts& told;
    const YardRecord& record;
    const Field& field;

    [[nodiscard]] std::optional<YardVerdicts> with(const Value& value) const {
        const Value stated = field.get(record.record);
        field.set(record.record, value);
        const bool left_out = !unknown(value) || unknown(field.get(record.record));
        const auto found = left_out ? judge_yard(yard) : std::nullopt;
        field.set(record.record, stated);
        return found;
    }

    [[nodiscard]] bool is_read() const {
        std::vector<Value> values = other_values(field, field.get(record.record));
        values.emplace_back();
        return std::any_of(values.begin(), values.end(), [this](const Value& value) {
            const auto found = with(value);
            return found && moves_a_danger(told, *found);
        });
    }
};

/// The fields that have a reason.
const std::set<std::string>& fields_listed() {
    static const std::set<std::string> fields = [] {
        std::set<std::string> found;
        for (const ReferenceRow& row : read_reference("careful_ends.csv")) {
            found.insert(row.at("field"));
        }
        return found;
    }();
    return fields;
}

/// Fields that are not told always, by `record.field`.
struct Found {
    std::set<std::string> stated{};   //!< at all in some yard
    std::set<std::string> read{};     //!< by a danger margin
    std::set<std::string> careful{};  //!< of those, the ones that name a careful end
    std::set<std::string> worse{};    //!< of those, whose careful end is worse than what is likely
};

void try_field(const Tried& tried, const std::string& name, Found& found) {
    found.stated.insert(name);
    // What is listed is looked at again in the long run: here a new field is to be seen.
    if (!in_the_long_run() && fields_listed().count(name) != 0) return;
    const bool has_end = !unknown(tried.field.careful);
    const bool known = found.read.count(name) != 0;
    if (!known && tried.is_read()) found.read.insert(name);
    if (!has_end || found.worse.count(name) != 0) return;
    found.careful.insert(name);
    const auto likely = tried.with({});
    const auto careful = tried.with(tried.field.careful);
    if (likely && careful && moves_a_danger(*likely, *careful)) found.worse.insert(name);
}

const Found& all_found() {
    static const Found found = [] {
        Found all;
        for (int i = 0; i < number_of_yards(); ++i) {
            Dice dice(5000 + static_cast<std::uint64_t>(i));
            Installation yard = random_yard(dice);
            const YardVerdicts told = judge_yard(yard).value();
            for (const YardRecord& record : records_of(yard)) {
                for (const Field& field : record.fields) {
                    if (is_always_told(field) || unknown(field.get(record.record))) continue;
                    const std::string name = record.name + '.' + std::string(field.name);
                    const bool done = all.read.count(name) != 0 &&
                                      (unknown(field.careful) || all.worse.count(name) != 0);
                    if (!done) try_field({yard, told, record, field}, name, all);
                }
            }
        }
        return all;
    }();
    return found;
}

}  // namespace

// Where sanitizers watch test_never_kinder.cpp goes the same ways, and a few yards would find less.
TEST_CASE("every field that a danger reads has a worse careful end, or a reason why not" *
          doctest::skip(in_a_slow_build())) {
    std::set<std::string> listed;
    for (const ReferenceRow& row : read_reference("careful_ends.csv")) {
        CAPTURE(row.at("field"));
        if (row.at("danger") == "yes") CHECK(listed.insert(row.at("field")).second);
        CHECK(row.at("reason").size() > 10);
        const std::string& unstated = row.at("unstated");
        CHECK((unstated == "usual" || unstated == "not assessed" || unstated == "careful"));
    }
    std::set<std::string> expected;
    for (const std::string& field : all_found().read) {
        if (all_found().worse.count(field) == 0) expected.insert(field);
    }
    for (const std::string& field : expected) {
        CHECK_MESSAGE(listed.count(field) == 1, field << ": no careful end and no reason");
    }
    for (const std::string& field : listed) {
        const bool used = !in_the_long_run() || expected.count(field) == 1;
        CHECK_MESSAGE(used, field << ": no danger reads it any more");
    }
}

// What is never told in a yard is not tried: the list above would be blind for it.
TEST_CASE("random yards state every field that margins may read" *
          doctest::skip(in_a_slow_build())) {
    // The sun of a season, which margins take at its brightest and unshaded; the diodes of owned
    // panels, which count in its heat alone; what is fitted, not told; damp fills and monitors that
    // the draws leave out.
    const std::set<std::string> told_by_nobody{"site.albedo",
                                               "site.albedo_by_month",
                                               "site.azimuth_deg",
                                               "site.elevation_m",
                                               "site.latitude_deg",
                                               "site.linke_turbidity",
                                               "site.longitude_deg",
                                               "site.snow_cover_pct",
                                               "site.soiling_pct",
                                               "site.panel_height_m",
                                               "site.row_pitch_m",
                                               "site.row_slant_m",
                                               "site.tilt_deg",
                                               "panel.listed_fit",
                                               "control.detects",
                                               "medium.moist_k_w_mk",
                                               "medium.moist_k_low_w_mk",
                                               "medium.moist_k_high_w_mk",
                                               "panels.tilt_deg",
                                               "panels.azimuth_deg",
                                               "panels.shade_pct",
                                               "panels.shaded_substrings",
                                               "panels.bypass_diodes",
                                               "panels.blocking"};
    std::set<std::string> untold;
    Dice dice(5000);
    Installation yard = random_yard(dice);
    add_random_device(yard, dice, "one");
    for (const YardRecord& record : records_of(yard)) {
        for (const Field& field : record.fields) {
            const std::string name = record.name + '.' + std::string(field.name);
            const bool told = is_always_told(field) || all_found().stated.count(name) != 0;
            if (!told) untold.insert(name);
        }
    }
    for (const std::string& field : untold) CHECK_MESSAGE(told_by_nobody.count(field) == 1, field);
}
