#include "refusal.hpp"
#include "unlike_circuits.hpp"
#include "within.hpp"

#include <algorithm>
#include <map>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/explain.hpp"
#include "heatmatch/operation/days/day.hpp"
#include "heatmatch/operation/days/day_answer.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"
#include "heatmatch/operation/meter/meter_sheet.hpp"
#include "heatmatch/solar/own_weather.hpp"

using heatmatch::Candidate;
using heatmatch::Installation;

TEST_CASE("bill, explanation and meter sheet list every kind of element") {
    const Candidate candidate = unlike_candidate("rod-a | rod-a + rod-b | rod-c");
    std::map<std::string, double> counts;
    for (const auto& line : candidate.bill.lines) {
        if (line.kind == heatmatch::PartKind::element) counts[line.part] = line.quantity;
    }
    CHECK(counts == std::map<std::string, double>{{"rod-a", 2.0}, {"rod-b", 1.0}, {"rod-c", 1.0}});
    std::string trace;
    for (const auto& step : heatmatch::explain(candidate)) trace += said(step).text() + '\n';
    for (const char* rod : {"rod-a", "rod-b", "rod-c"}) CHECK(contains(trace, rod));
    const heatmatch::MeterSheet sheet = heatmatch::meter_sheet(candidate);
    std::string checks;
    for (const auto& check : sheet.checks)
        checks += check.reading.text() + ": " + check.expect.text() + '\n';
    CHECK(contains(checks, "resistance of rod-b, cold"));
    CHECK(contains(checks, "voltage across element \"rod-b\""));
    CHECK(contains(checks, "sheath of element \"rod-c\""));
    CHECK(contains(checks, "With element \"rod-c\" open"));
}

TEST_CASE("days follow every element of an unlike bank with one balance of energy") {
    const Installation house = unlike_house("[rod-a + rod-b] | rod-c");
    const Candidate candidate = unlike_candidate(house);
    heatmatch::Sentences remarks;
    const auto weather = heatmatch::own_weather(house, remarks, nullptr);
    REQUIRE(weather);
    const heatmatch::DayRun run = heatmatch::simulate_day(
        candidate, *weather, {.span = {.month = 3, .days = 1}, .warm_up_days = 0});
    const auto& series = run.series;
    REQUIRE(series.elements.size() == 3);
    CHECK(run.energy.unbalanced_share < 1e-6);
    for (std::size_t step = 0; step < series.hours.size(); ++step) {
        double sum_w = 0.0;
        double most_c = -300.0;
        for (const auto& one : series.elements) {
            sum_w += one.power_w[step];
            most_c = std::max(most_c, one.sheath_c[step]);
        }
        CHECK(within_abs(sum_w, series.power_w[step], 1e-6));
        CHECK(most_c == series.sheath_c[step]);
    }
    const auto peaks = heatmatch::part_peaks(candidate, run);
    int sheaths = 0;
    for (const auto& peak : peaks) sheaths += peak.margin.name == "sheath temperature" ? 1 : 0;
    CHECK(sheaths == 3);
}

TEST_CASE("what cannot be told apart for unlike elements is refused in one sentence") {
    const Candidate candidate = unlike_candidate("rod-a | rod-c");
    CHECK(contains(refusal_of<heatmatch::InvalidInput>([&] {
                       static_cast<void>(
                           heatmatch::diagnose(candidate, {.rows = {{.bank_v = 30.0}}}));
                   }),
                   "rod-a | rod-c"));
}
