#include "long_run.hpp"
#include "random_yard.hpp"
#include "reference_csv.hpp"
#include "screen_check.hpp"
#include "yard_directions.hpp"
#include "yard_verdict.hpp"

#include <set>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/parts/bifaciality.hpp"
#include "heatmatch/parts/control.hpp"

// The twin of python/test_never_kinder.py, with draws, directions and facts of its own.

using heatmatch::Field;
using heatmatch::Installation;
using heatmatch::Value;

namespace {

int yards_to_try() {
    if (in_the_long_run()) return 10000;
    return in_a_slow_build() ? 3 : 25;
}

/// In the short run each yard tries every third property, so that each is tried on eight, and on
/// one where sanitizers watch.
bool is_tried(std::size_t property, int yard) {
    constexpr std::size_t stride = 3;
    return in_the_long_run() || property % stride == static_cast<std::size_t>(yard) % stride;
}

bool is_unknown(const Value& value) {
    return std::holds_alternative<std::monostate>(value);
}

/// Margins that improve in `after`, one line each; only `names`, or all if that is empty.
std::string what_is_kinder(const YardVerdicts& before, const YardVerdicts& after, bool likely,
                           const std::vector<std::string_view>& names = {}, double slack = 0.0) {
    std::string told;
    for (const auto& [key, was] : before) {
        const bool asked =
            names.empty() || std::find(names.begin(), names.end(), key.first) != names.end();
        if (!asked) continue;
        const auto now = after.find(key);
        const std::string how =
            now == after.end() ? "is gone" : kinder(was, now->second, likely, slack);
        if (!how.empty()) told += key.first + " of " + key.second + ": " + how + "\n";
    }
    return told;
}

/// `record.field` of every field for which what is usual is taken where it is not told.
const std::set<std::string>& fields_with_a_default() {
    static const std::set<std::string> fields = [] {
        std::set<std::string> found;
        for (const ReferenceRow& row : read_reference("careful_ends.csv")) {
            if (row.at("unstated") == "usual") found.insert(row.at("field"));
        }
        return found;
    }();
    return fields;
}

/// The facts of one record of a yard, told, at their careful ends and left out.
void check_facts(Installation& yard, int number, const YardRecord& record,
                 const YardVerdicts& told) {
    for (std::size_t at = 0; at < record.fields.size(); ++at) {
        if (!is_tried(at, number)) continue;
        const Field& field = record.fields[at];
        const Value stated = field.get(record.record);
        const std::string name = record.name + '.' + std::string(field.name);
        if (field.required || is_unknown(stated)) continue;
        // Metal around wire is better for its place and worse for its current; hot air betters what
        // a wall may add to it; a limit in the room does nothing and stays cool.
        const bool two_ends = name == "surroundings.metal_raceway" || name == "store.air_c" ||
                              name == "device.senses";
        std::optional<YardVerdicts> at_careful_end;
        if (!is_unknown(field.careful) && !two_ends) {
            field.set(record.record, field.careful);
            at_careful_end = judge_yard(yard);
            REQUIRE(at_careful_end);
            const std::string wrong = what_is_kinder(told, *at_careful_end, true);
            CHECK_MESSAGE(wrong.empty(), name << " at its careful end:\n" << wrong);
        }
        // Where kind or age tell of an opaque back, no light is taken for untold.
        const bool is_opaque =
            name == "panel.bifaciality" &&
            heatmatch::has_opaque_back(yard.parts.panels.front(), yard.panels.front().age_years);
        field.set(record.record, {});
        const bool can_be_left_out = is_unknown(field.get(record.record));
        const auto left_out = can_be_left_out ? judge_yard(yard) : std::nullopt;
        field.set(record.record, stated);
        if (!left_out || is_opaque || fields_with_a_default().count(name) != 0) continue;
        const std::string wrong =
            what_is_kinder(at_careful_end ? *at_careful_end : told, *left_out, false);
        CHECK_MESSAGE(wrong.empty(), name << " left out:\n" << wrong);
    }
}

/// Which margins of a direction were moved by it, over all yards.
using Moved = std::set<std::pair<std::string_view, std::string_view>>;

void check_directions(const std::vector<YardDirection>& directions, Dice& dice, int number,
                      const Installation& yard, const YardVerdicts& told, Moved& moved) {
    for (std::size_t at = 0; at < directions.size(); ++at) {
        if (!is_tried(at, number)) continue;
        const YardDirection& direction = directions[at];
        Installation worse = yard;
        direction.move(worse, dice.between(0.05, 1.0));
        const auto found = judge_yard(worse);
        if (!found) continue;
        const std::string wrong =
            what_is_kinder(told, *found, true, direction.margins, direction.slack);
        CHECK_MESSAGE(wrong.empty(), direction.what << ":\n" << wrong);
        for (std::string_view margin : direction.margins) {
            for (const auto& [key, was] : told) {
                const auto now = found->find(key);
                if (key.first != margin || now == found->end()) continue;
                const bool seen = !kinder(turned_over(was), turned_over(now->second), true).empty();
                if (seen) moved.insert({direction.what, margin});
            }
        }
    }
}

void check_all_directions(const std::vector<YardDirection>& directions, std::uint64_t seed) {
    Moved moved;
    std::set<std::string_view> alive;
    for (int i = 0; i < yards_to_try(); ++i) {
        CAPTURE(i);
        Dice dice(seed + static_cast<std::uint64_t>(i));
        const Installation yard = random_yard(dice);
        const auto told = judge_yard(yard);
        REQUIRE(told);
        check_directions(directions, dice, i, yard, *told, moved);
    }
    for (const auto& [what, margin] : moved) alive.insert(what);
    // What moves nothing checks nothing: a sign error in it would stay unseen.
    for (const YardDirection& direction : directions) {
        CAPTURE(direction.what);
        if (!in_the_long_run()) continue;
        CHECK(alive.count(direction.what) == 1);
        for (std::string_view margin : direction.margins) {
            CAPTURE(margin);
            CHECK(moved.count({direction.what, margin}) == 1);
        }
    }
}

/// Whether the printed pairs of a device cover the cold volts and 1.25 times the bright amperes.
bool can_break(const Installation& yard, const heatmatch::Control& control,
               const heatmatch::Device& device, double cold_v) {
    const std::string& hookup = yard.circuit->panels;
    const int parallel = std::stoi(hookup.substr(hookup.find('S') + 1));
    const bool of_string =
        device.duty == heatmatch::Duty::protects_a_string || device.run == "string";
    const double amperes = 1.25 * yard.parts.panels.front().i_sc * (of_string ? 1 : parallel);
    if (control.ac_only.value_or(false)) return false;
    // A fuse holds its own string's current; it clears the volts.
    const double asked_a = device.duty == heatmatch::Duty::protects_a_string ? 0.0 : amperes;
    return std::any_of(control.dc_ratings.begin(), control.dc_ratings.end(), [&](const auto& pair) {
        return pair.v_dc >= cold_v && pair.a_dc >= asked_a && pair.poles <= device.poles_used;
    });
}

/// What a device in its place may improve.
std::set<std::string> may_improve(const Installation& yard, double cold_v) {
    const heatmatch::Device& device = yard.devices.back();
    const heatmatch::Control& control = yard.parts.controls.back();
    const std::set<std::string> by_limit{"independent limit", "limit acts in time", "limit supply",
                                         "stagnation"};
    if (device.duty == heatmatch::Duty::carries_dc) return {};
    if (device.duty == heatmatch::Duty::senses_only) {
        return stays_open(control) ? by_limit : std::set<std::string>{};
    }
    if (!can_break(yard, control, device, cold_v)) return {};
    if (device.duty == heatmatch::Duty::protects_a_string) {
        return {"reverse current", "string fuse wire"};
    }
    const bool by_hand = operated_of(control) == heatmatch::OperatedKind::by_hand;
    return by_hand ? std::set<std::string>{"disconnect"} : by_limit;
}

}  // namespace

TEST_CASE(
    "an omitted fact never gives a better result than a stated one, or than its careful "
    "end") {
    for (int i = 0; i < yards_to_try(); ++i) {
        CAPTURE(i);
        Dice dice(1000 + static_cast<std::uint64_t>(i));
        Installation yard = random_yard(dice);
        const auto told = judge_yard(yard);
        REQUIRE(told);
        for (const YardRecord& record : records_of(yard)) check_facts(yard, i, record, *told);
    }
}

TEST_CASE("a worse quantity of sun, panels, wires or devices never improves a result") {
    check_all_directions(electrical_directions(), 2000);
}

TEST_CASE("a worse quantity of elements or stores never improves a result") {
    check_all_directions(thermal_directions(), 3000);
}

TEST_CASE("a device improves only margins that name it, and only if it can act") {
    int improved = 0;
    // Few devices improve anything: so many that some do.
    for (int i = 0; i < std::max(60, 10 * yards_to_try()); ++i) {
        CAPTURE(i);
        Dice dice(4000 + static_cast<std::uint64_t>(i));
        Installation yard = random_yard(dice);
        const auto before = judge_yard(yard);
        add_random_device(yard, dice, "added");
        const auto after = judge_yard(yard);
        REQUIRE(before);
        REQUIRE(after);
        const auto cold = std::find_if(before->begin(), before->end(), [](const auto& one) {
            return one.first.first == "cold voltage" && one.second.value;
        });
        REQUIRE(cold != before->end());
        const double cold_v = *cold->second.value;
        const std::set<std::string> may = may_improve(yard, cold_v);
        for (const auto& [key, was] : *before) {
            const auto found = after->find(key);
            if (found == after->end()) continue;  // said of another device now
            const YardVerdict& now = found->second;
            const std::string how = kinder(was, now, true);
            if (how.empty()) continue;
            ++improved;
            CAPTURE(key.first);
            CAPTURE(now.sentence);
            CHECK_MESSAGE(may.count(key.first) == 1, how);
            const bool by_kind = now.sentence.find("string fuses") != std::string::npos;
            CHECK((by_kind || now.sentence.find("added") != std::string::npos));
        }
    }
    CHECK(improved > 0);
}

TEST_CASE("the screen gives the headroom and the dangers of the full margins, whatever is told") {
    for (int i = 0; i < std::max(1, yards_to_try() / 5); ++i) {
        CAPTURE(i);
        Dice dice(7000 + static_cast<std::uint64_t>(i));
        Installation yard = random_yard(dice);
        yard.panels.front().count = 4;
        yard.elements.front().count = 3;
        for (const YardRecord& record : records_of(yard)) {
            for (const Field& field : record.fields) {
                const bool forget = !field.required && !is_unknown(field.careful) && dice.coin();
                if (forget) field.set(record.record, {});
            }
        }
        check_screen(yard, heatmatch::merged_parts({}, yard));
    }
}

// A planted sign error: the same comparison on verdicts that are turned over has to find something.
TEST_CASE("a sign error in a verdict is found by the comparison") {
    const YardVerdict good{.likely = 0, .worst = 0, .headroom = 0.5};
    const YardVerdict bad{.likely = 3, .worst = 3, .headroom = -0.5};
    CHECK(kinder(good, bad, true).empty());
    CHECK_FALSE(kinder(bad, good, true).empty());
    CHECK_FALSE(kinder(turned_over(good), turned_over(bad), true).empty());
}
