#include "long_run.hpp"
#include "refusal.hpp"
#include "store_log_bench.hpp"
#include "within.hpp"

#include <algorithm>

#include <doctest/doctest.h>

#include "heatmatch/operation/calibration/calibration.hpp"
#include "heatmatch/text/installation_json.hpp"

using namespace heatmatch;

namespace {

bool holds_truth(const Fitted& fitted, double truth) {
    return fitted.low <= truth && truth <= fitted.high;
}

}  // namespace

TEST_CASE("two numbers come back out of a log that was made with them" *
          doctest::test_suite("numerical")) {
    const Candidate candidate = standing();
    const Calibration found = calibrate(candidate, made_log(candidate, 0.22, 1.3, 0.3, 7));
    CHECK(within(found.k20_w_mk.value, 0.22, 0.03));
    CHECK(within(found.loss_factor.value, 1.3, 0.06));
    CHECK(holds_truth(found.k20_w_mk, 0.22));
    CHECK(holds_truth(found.loss_factor, 1.3));
    CHECK(found.k20_w_mk.low < found.k20_w_mk.value);
    CHECK(within(found.residual_k, 0.3, 0.15));
    CHECK(found.residual_before_k > 3.0 * found.residual_k);
    CHECK(holds(found.sentences.front(), "the catalog has 0.27."));
    // Source: 0.27 W/mK is 0.156 Btu/h·ft·°F.
    CHECK(holds(found.sentences.front().text(UnitSystem::us),
                "Btu/h·ft·°F at 68 °F; the catalog has 0.156"));
}

TEST_CASE("a calibrated store is ranked with the fitted values" *
          doctest::test_suite("numerical")) {
    const Installation installation = demo();
    const Candidate before = standing(installation);
    const Calibration found = calibrate(before, made_log(before, 0.22, 1.3, 0.3, 7));
    const Installation measured = found.applied_to(installation, starter());
    const Candidate after = standing(measured);
    const Medium& fill = after.circuit.heat->store->medium;
    CHECK(fill.k20_w_mk == found.k20_w_mk.value);
    CHECK(*fill.k20_low_w_mk == found.k20_w_mk.low);
    CHECK(fill.provenance.source_of.at("k20_w_mk") == "measured");
    CHECK(*measured.store->loss_factor == found.loss_factor.value);
    // Its low end is what a sheath is judged at. A log of bed and wall leaves it below that of the
    // catalog: it was above while bands had noise alone.
    const auto sheath_of = [](const Candidate& candidate) {
        return *std::find_if(candidate.margins().begin(), candidate.margins().end(),
                             [](const Margin& each) { return each.name == "sheath temperature"; })
                    ->value;
    };
    const bool conducts_more =
        *fill.k20_low_w_mk > *before.circuit.heat->store->medium.k20_low_w_mk;
    CHECK((sheath_of(after) < sheath_of(before)) == conducts_more);
    // It survives its file, and a second calibration of the same log finds nothing new: what is
    // described counts a little, and is now what was found.
    const Installation read = installation_from_json(installation_to_json(measured));
    const Calibration again = calibrate(standing(read), made_log(before, 0.22, 1.3, 0.3, 7));
    for (const auto of : {&Calibration::k20_w_mk, &Calibration::loss_factor}) {
        CHECK(std::fabs((again.*of).value - (found.*of).value) < 0.1 * (found.*of).standard_error);
    }
}

TEST_CASE("insufficient logs are refused") {
    const Candidate candidate = standing();
    const StoreLog log = made_log(candidate, 0.27, 1.0, 0.1, 1);
    const auto refused = [&candidate](const StoreLog& given) {
        return refusal_of([&] { (void)calibrate(candidate, given); });
    };
    StoreLog dark = log;
    std::fill(dark.power_w.begin(), dark.power_w.end(), 0.0);
    CHECK(holds(refused(dark), "0 W in every row"));
    StoreLog few = log;
    for (auto& list : few.temperature_c) {
        std::fill(list.begin() + 3, list.end(), std::numeric_limits<double>::quiet_NaN());
    }
    CHECK(holds(refused(few), "at least 12"));
    StoreLog far = log;
    far.probes[0].radius_m = 3.0;
    CHECK(holds(refused(far), "radius"));
    Installation water = demo();
    water.store->medium = "water";
    CHECK(holds(refusal_of([&] { (void)calibrate(standing(water), log); }), "a liquid"));
    CHECK(holds(refusal_of([&] { (void)calibrate(candidate, log).applied_to(water, starter()); }),
                "the installation whose store was logged"));
}

TEST_CASE("one heated row is heat, wherever it is in the log") {
    const Candidate candidate = standing();
    StoreLog log = made_log(candidate, 0.27, 1.0, 0.1, 1);
    for (auto& list : log.temperature_c) {
        std::fill(list.begin() + 3, list.end(), std::numeric_limits<double>::quiet_NaN());
    }
    for (const std::size_t heated : {std::size_t{0}, log.size() / 2, log.size() - 1}) {
        std::fill(log.power_w.begin(), log.power_w.end(), 0.0);
        log.power_w[heated] = 150.0;
        CHECK(holds(refusal_of([&] { (void)calibrate(candidate, log); }), "at least 12"));
    }
}

// Source: Abramowitz and Stegun, table 26.8: chi-square of two degrees of freedom passes 9.210 in
// one of a hundred: each of two numbers lies within 3.035 standard errors, here of its logarithm.
TEST_CASE("a fitted number has its band to both sides") {
    const Candidate candidate = standing();
    const Calibration found = calibrate(candidate, made_log(candidate, 0.22, 1.3, 0.3, 7, 1));
    for (const Fitted& number : {found.k20_w_mk, found.loss_factor}) {
        const double error = number.standard_error / number.value;
        CHECK(error > 0.0);
        CHECK(within(std::log(number.value / number.low), std::sqrt(9.2103) * error, 1e-3));
        CHECK(within(std::log(number.high / number.value), std::sqrt(9.2103) * error, 1e-3));
    }
}

TEST_CASE("a damp bed is called so" * doctest::test_suite("numerical")) {
    const Candidate candidate = standing();
    const Calibration damp = calibrate(candidate, made_log(candidate, 1.4, 1.0, 0.2, 3));
    CHECK(within(damp.k20_w_mk.value, 1.4, 0.1));
    CHECK(std::any_of(damp.remarks.begin(), damp.remarks.end(),
                      [](const heatmatch::Sentence& remark) {
                          return remark.text().find("damp") != std::string::npos;
                      }));
}

TEST_SUITE_BEGIN("numerical");

TEST_CASE("the cells of the field add no more error than stated") {
    const Candidate candidate = standing();
    double k_worst = 0.0;
    double loss_worst = 0.0;
    for (const double k20 : {0.2, 0.4}) {
        for (const double loss : {0.7, 1.5}) {
            const Calibration found = calibrate(candidate, made_log(candidate, k20, loss, 0.0, 1));
            k_worst = std::max(k_worst, std::fabs(found.k20_w_mk.value / k20 - 1.0));
            loss_worst = std::max(loss_worst, std::fabs(found.loss_factor.value / loss - 1.0));
        }
    }
    CHECK(k_worst < 2.0 * 0.003);
    CHECK(loss_worst < 2.0 * 0.02);
}

TEST_CASE("noisy logs return both numbers within the stated uncertainty") {
    const Candidate candidate = standing();
    std::mt19937 random(20);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    int both = 0;
    const unsigned trials = in_the_long_run() ? 100 : 20;
    for (unsigned trial = 0; trial < trials; ++trial) {
        const double k20 = 0.18 + 0.22 * share(random);
        const double loss = 0.6 + 1.2 * share(random);
        const double noise = 0.2 + 0.8 * share(random);
        const Calibration found =
            calibrate(candidate, made_log(candidate, k20, loss, noise, 100 + trial));
        both += holds_truth(found.k20_w_mk, k20) && holds_truth(found.loss_factor, loss) ? 1 : 0;
    }
    CHECK(both >= 0.95 * trials);
}

TEST_SUITE_END();
