#include "operation_bench.hpp"
#include "refusal.hpp"
#include "within.hpp"

#include <doctest/doctest.h>

#include "heatmatch/operation/days/day_answer.hpp"

using namespace heatmatch;

namespace {

/// Hour by hour from midnight, two days: sun from 8 to 16, the store 100 W by day; released heat
/// falls through the night from 50 W by 3 W an hour; 10 W lift the space by 1 K.
DayRun two_days(double outside_c = -5.0) {
    DayRun run{.title = "bench", .days = 2.0, .heats_space = true};
    DaySeries& series = run.series;
    for (int hour = 0; hour < 48; ++hour) {
        const int of_day = hour % 24;
        const bool day = of_day >= 8 && of_day < 16;
        const double released = day ? 20.0 : 50.0 - 3.0 * ((of_day + 8) % 24);
        series.hours.push_back(hour + 1.0);
        series.irradiance_w_m2.push_back(day ? 500.0 : 0.0);
        series.available_w.push_back(day ? 150.0 : 0.0);
        series.power_w.push_back(day ? 100.0 : 0.0);
        series.bank_v.push_back(0.0);
        series.bank_a.push_back(0.0);
        series.sheath_c.push_back(day ? 400.0 + hour : 50.0);
        series.coil_c.push_back(day ? 420.0 + hour : 50.0);
        series.bed_mean_c.push_back(60.0);
        series.wall_c.push_back(30.0);
        series.lid_c.push_back(day ? 70.0 : outside_c + released / 10.0 + 10.0 - of_day % 16);
        series.released_w.push_back(released);
        series.to_space_w.push_back(released);
        series.space_c.push_back(outside_c + released / 10.0);
        series.space_unheated_c.push_back(outside_c);
        series.outside_c.push_back(outside_c);
        series.month.push_back(hour < 24 ? 1 : 2);
    }
    run.energy = {
        .available_kwh = 2.4, .delivered_kwh = 1.6, .stored_kwh = 0.3, .to_space_kwh = 1.3};
    return run;
}

Candidate with_target(std::optional<double> target_c) {
    static const Candidate candidate = standing();
    Candidate changed = candidate;
    changed.space->target_c = target_c;
    return changed;
}

}  // namespace

TEST_CASE("dark hours are summed for all days and month by month") {
    const DayAnswer answer = answer_of(with_target(-2.0), two_days());
    CHECK(answer.all.days == 2.0);
    CHECK(answer.all.dark_hours == 32.0);
    // Of a night of 16 h, 50 to 5 W: mean 27.5 W, so 2.75 K.
    CHECK(within(answer.all.lift_k, 2.75, 1e-12));
    CHECK(within(answer.all.required_lift_k, 3.0, 1e-12));
    CHECK(within(answer.all.delivered_kwh_day, 0.8, 1e-12));
    CHECK(within(answer.all.available_kwh_day, 1.2, 1e-12));
    // -2 °C needs 30 W: 50, 47 ... 32 W are seven hours of each night.
    CHECK(answer.all.above_target_hours == 14.0);
    CHECK(answer.all.above_target_unheated_hours == 0.0);
    CHECK(within(answer.all.lowest_c, -4.5, 1e-12));
    CHECK(answer.all.lowest_unheated_c == -5.0);
    REQUIRE(answer.months.size() == 2);
    CHECK(answer.months[0].month == 1);
    CHECK(answer.months[1].month == 2);
    CHECK(answer.months[0].days == 1.0);
    CHECK(within(answer.months[1].to_space_kwh_day, (8 * 20.0 + 16 * 27.5) / 1000.0, 1e-12));
}

TEST_CASE("nights have dusk, dawn, and duration of the heat") {
    // One night is whole: from 16 to 8.
    const DayAnswer answer = answer_of(with_target(-2.0), two_days());
    CHECK(within(answer.dusk_lift_k, 5.0, 1e-12));
    CHECK(within(answer.dawn_lift_k, 0.5, 1e-12));
    // 25 W and more: 50, 47 ... 26 W, nine hours.
    REQUIRE(answer.carry_over_h);
    CHECK(*answer.carry_over_h == doctest::Approx(9.0));
    // 0.5 K is 5 W: all sixteen hours from 16:00 on.
    REQUIRE(answer.warmer_until_hour);
    CHECK(within(*answer.warmer_until_hour, 8.0, 1e-9));
    REQUIRE(answer.lid_until_hour);
}

TEST_CASE("the first sentence is honest about size") {
    const auto first = [](std::optional<double> target_c, double outside_c = -5.0) {
        return answer_of(with_target(target_c), two_days(outside_c)).sentences.front();
    };
    CHECK(holds(first(15.0), "only a small part of the heating"));
    CHECK(holds(first(15.0), "The target of 15 °C needs 20 K"));
    CHECK(holds(first(-2.0), "part of the heating"));
    CHECK(holds(first(-4.5), "keeps the space at the target"));
    CHECK(holds(first(-5.0), "hardly below"));
    CHECK(holds(first(std::nullopt), "target_c"));
    DayRun alone = two_days();
    alone.heats_space = false;
    CHECK(holds(answer_of(with_target(5.0), alone).sentences.front(), "not known"));
    CHECK(holds(first(15.0).text(UnitSystem::us), "The target of 59 °F needs 36 °F"));
}

TEST_CASE("the highest temperature of every part is beside the limit of its margin") {
    const Candidate candidate = with_target(5.0);
    DayRun run = two_days();
    const auto peaks = part_peaks(candidate, run);
    const auto find = [&peaks](std::string_view name) {
        for (const PartPeak& peak : peaks) {
            if (peak.margin.name == name) return peak;
        }
        FAIL("no such peak");
        return PartPeak{};
    };
    const PartPeak sheath = find("sheath temperature");
    CHECK(*sheath.margin.value == 400.0 + 39.0);
    CHECK(sheath.hours == 40.0);
    CHECK(*sheath.margin.limit == candidate.circuit.bank.sheath->verdict_limit_c);
    CHECK(sheath.margin.severity == Severity::none);
    CHECK(find("touch temperature").margin.severity == Severity::warning);  // 70 over 65 °C
    CHECK(find("coil temperature").margin.severity == Severity::not_assessed);
    for (const PartPeak& peak : peaks) {
        CHECK(peak.margin.sentence().find('{') == std::string::npos);
    }
    CHECK(sheath.margin.sentence().find("at its worst") == std::string::npos);
    run.series.sheath_c[10] = 900.0;
    const DayAnswer hot = answer_of(candidate, run);
    CHECK(std::any_of(hot.sentences.begin(), hot.sentences.end(),
                      [](const heatmatch::Sentence& text) {
                          return text.text().starts_with("danger") &&
                                 text.text().find("900 °C") != std::string::npos;
                      }));
}

TEST_CASE("events are reported") {
    DayRun run = two_days();
    run.events = {{3.0, "disc", SwitchAction::opens},
                  {4.0, "disc", SwitchAction::closes},
                  {5.0, "limit", SwitchAction::cannot_open}};
    const DayAnswer answer = answer_of(with_target(5.0), run);
    const auto says = [&answer](const char* piece) {
        return std::any_of(answer.sentences.begin(), answer.sentences.end(),
                           [piece](const heatmatch::Sentence& text) {
                               return text.text().find(piece) != std::string::npos;
                           });
    };
    CHECK(says("opened 1 time."));
    CHECK(says("\"limit\" should have opened and could not"));
}

// Source: the definition: the highest of a list, at the end of its step, wherever it stands.
TEST_CASE("a peak is found in the first step, in the middle and in the last") {
    const Candidate candidate = with_target(5.0);
    for (const std::size_t step : {0U, 23U, 47U}) {
        CAPTURE(step);
        const auto peak_of = [&candidate, step](const char* name, auto member, double value) {
            DayRun run = two_days();
            (run.series.*member)[step] = value;
            for (const PartPeak& peak : part_peaks(candidate, run)) {
                if (peak.margin.name == name) return std::pair(*peak.margin.value, peak.hours);
            }
            FAIL("no such peak");
            return std::pair(0.0, 0.0);
        };
        const auto at = std::pair(700.0, static_cast<double>(step) + 1.0);
        CHECK(peak_of("sheath temperature", &DaySeries::sheath_c, 700.0) == at);
        CHECK(peak_of("coil temperature", &DaySeries::coil_c, 700.0) == at);
        // Whichever of wall and lid is hotter.
        CHECK(peak_of("wall and lid", &DaySeries::wall_c, 700.0) == at);
        CHECK(peak_of("touch temperature", &DaySeries::lid_c, 700.0) == at);
        DayRun run = two_days();
        run.series.space_c[step] = -40.0;
        run.series.space_unheated_c[step] = -50.0;
        CHECK(answer_of(candidate, run).all.lowest_c == -40.0);
        CHECK(answer_of(candidate, run).all.lowest_unheated_c == -50.0);
        CHECK(answer_of(candidate, run).months[step < 24 ? 0 : 1].lowest_c == -40.0);
    }
}

// Source: the definition: what boils is the liquid; grains are hottest at the sheath.
TEST_CASE("the ceiling of a fill is met by the sheath in sand and by the bulk in water") {
    Installation water = demo();
    water.store->medium = "water";
    for (const Candidate& candidate : {with_target(5.0), standing(water)}) {
        const bool liquid = candidate.circuit.heat->liquid;
        int ceilings = 0;
        for (const PartPeak& peak : part_peaks(candidate, two_days())) {
            if (peak.margin.name != "store ceiling") continue;
            CHECK(*peak.margin.value == (liquid ? 60.0 : 439.0));
            ++ceilings;
        }
        CHECK(ceilings == 1);
    }
}

// Source: by hand: 10 W all night but 100 W in one hour: half of that is kept until its end.
TEST_CASE("heat is carried over to the last hour of half the maximum, wherever the maximum is") {
    for (const std::size_t best : {16U, 24U, 31U}) {
        DayRun run = two_days();
        for (std::size_t step = 16; step < 32; ++step) run.series.released_w[step] = 10.0;
        run.series.released_w[best] = 100.0;
        const auto carried_h = answer_of(with_target(-2.0), run).carry_over_h;
        REQUIRE(carried_h);
        CHECK(*carried_h == doctest::Approx(static_cast<double>(best - 16 + 1)));
    }
}

// Source: by hand. The heat comes only after dusk: 0.2 K, then 0.2 K more each hour up to 1.4 K,
// then 0.2 K less each hour to 0.2 K at the fourteenth. 0.5 K or more: 0.6 to 1.4 to 0.6, hours 3
// to 11.
TEST_CASE("a rise that comes after dusk lasts until its last noticeable hour") {
    DayRun run = two_days();
    for (std::size_t step = 0; step < run.series.hours.size(); ++step) {
        const int after = (static_cast<int>(step) + 8) % 24;  // whole hours since dusk at 16:00
        const double rise_k = after < 7 ? 0.2 * (after + 1) : std::max(0.0, 0.2 * (13 - after));
        run.series.space_c[step] = run.series.space_unheated_c[step] + rise_k;
    }
    const DayAnswer answer = answer_of(with_target(15.0), run);
    CHECK(within(answer.dusk_lift_k, 0.2, 1e-9));
    CHECK(within(answer.most_lift_k, 1.4, 1e-9));
    CHECK(within(answer.most_lift_hour, 23.0, 1e-9));
    REQUIRE(answer.warmer_from_hour);
    REQUIRE(answer.warmer_until_hour);
    CHECK(within(*answer.warmer_from_hour, 19.0, 1e-9));
    CHECK(within(*answer.warmer_until_hour, 3.0, 1e-9));
    const std::string said = answer.sentences.front().text();
    CAPTURE(said);
    CHECK(said.find("0.5 K or more warmer from about 19:00 until about 3:00") != std::string::npos);
    CHECK(said.find("at most 1.4 K at 23:00") != std::string::npos);
    int durations = 0;
    for (const auto& each : answer.sentences) {
        durations += each.text().find("until about") != std::string::npos ? 1 : 0;
    }
    CHECK(durations <= 2);  // of the space, and of the lid
}

// Source: a mean is at most the largest value, so a mean rise of 0.5 K is noticed at some hour.
TEST_CASE("how long the rise lasts agrees with its mean, dusk and dawn") {
    for (const double scale : {0.05, 0.2, 0.5, 1.0}) {
        DayRun run = two_days();
        for (std::size_t step = 0; step < run.series.hours.size(); ++step) {
            const double rise_k = run.series.space_c[step] - run.series.space_unheated_c[step];
            run.series.space_c[step] = run.series.space_unheated_c[step] + scale * rise_k;
        }
        const DayAnswer answer = answer_of(with_target(15.0), run);
        CAPTURE(scale);
        CHECK(answer.most_lift_k >= answer.dusk_lift_k - 1e-9);
        CHECK(answer.most_lift_k >= answer.dawn_lift_k - 1e-9);
        CHECK(answer.warmer_until_hour.has_value() == (answer.most_lift_k >= 0.5));
        if (answer.dusk_lift_k >= 0.5) CHECK_FALSE(answer.warmer_from_hour);
    }
}
