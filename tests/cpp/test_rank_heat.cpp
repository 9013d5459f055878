#include "long_run.hpp"
#include "store_bench.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/sheath_margins.hpp"

using heatmatch::Candidate;
using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::Ranking;
using heatmatch::Severity;

namespace {

/// The porch panels and up to four owned rods of that kind in a drum.
Installation rods_in_drum(std::string_view element, int count) {
    Installation installation = drum();
    installation.panels.erase(installation.panels.begin());
    installation.panels.resize(1);
    installation.elements = {{.element = std::string(element), .count = count}};
    installation.circuit.reset();
    return installation;
}

const Candidate* candidate_titled(const std::vector<Candidate>& list, std::string_view title) {
    for (const Candidate& candidate : list) {
        if (contains(candidate.circuit.title(), title)) return &candidate;
    }
    return nullptr;
}

}  // namespace

// Common practice, no source: several rods at a fifth of their rating beat one near its limit.
TEST_CASE("a bank whose elements each take a fifth of their rating wins over one that glows") {
    const Ranking ranking =
        heatmatch::rank(starter(), rods_in_drum("tubular-1000-120", 4), keep_all());
    REQUIRE_FALSE(ranking.candidates.empty());
    const Candidate& best = ranking.candidates.front();
    CHECK(best.circuit.bank.hookup.count() >= 3);
    CHECK(best.bright.element_power_w < 0.2 * 1000.0);
    // One of the same ohms gives as much heat, and its sheath is a danger.
    const Candidate* one = candidate_titled(ranking.rejected, "4S1P into tubular-1000-120 1S1P");
    REQUIRE(one != nullptr);
    CHECK(margin_of(one->margins(), "sheath temperature").severity == Severity::danger);
    CHECK(one->season->kwh > 0.9 * best.season->kwh);
    // Fourteen bright days with a welded thermostat ask more of it than three.
    CHECK(ranking.reasons.contains("stagnation"));
}

TEST_CASE("the poorer the sand conducts, the fewer pairings are kept") {
    Installation installation = rods_in_drum("tubular-1000-120", 4);
    std::size_t before = 100000;
    for (const double k20 : {0.35, 0.27, 0.20, 0.12}) {
        heatmatch::Medium sand = heatmatch::find_medium(starter(), "dry-sand");
        sand.k20_w_mk = k20;
        sand.k20_low_w_mk = k20;
        sand.k20_high_w_mk = k20;
        installation.parts.media = {sand};
        const Ranking ranking = heatmatch::rank(starter(), installation, keep_all());
        CHECK(ranking.candidates.size() <= before);
        before = ranking.candidates.size();
    }
}

TEST_CASE("moist ground given for dry sand is warned of by name, in ranking and assessment") {
    Installation installation = rods_in_drum("storage-rod-1000-240", 2);
    heatmatch::Medium ground = heatmatch::find_medium(starter(), "dry-sand");
    ground.k20_w_mk = 2.0;
    ground.k20_low_w_mk.reset();
    ground.k20_high_w_mk.reset();
    installation.parts.media = {ground};
    bool told = false;
    for (const heatmatch::Sentence& remark : heatmatch::rank(starter(), installation).remarks) {
        told = told || contains(remark, "moist ground");
    }
    CHECK(told);
}

TEST_CASE("odd stores are ranked without an exception, and nothing unknown looks good") {
    for (const char* odd : {"box", "no size", "water", "moist brick", "buried"}) {
        CAPTURE(std::string(odd));
        Installation installation = demo();
        heatmatch::Store& store = *installation.store;
        const std::string_view kind = odd;
        if (kind == "box") {
            store.shape = heatmatch::StoreShape::box;
            store.diameter_m.reset();
            store.width_m = 0.6;
            store.depth_m = 1.2;
        } else if (kind == "no size") {
            store.diameter_m.reset();
        } else if (kind == "water") {
            store.medium = "water";
        } else if (kind == "moist brick") {
            store.medium = "fire-brick";
            store.moist = true;
        } else {
            store.terminals = heatmatch::StoreTerminals::buried;
            installation.runs.clear();
            installation.devices.clear();
        }
        heatmatch::RankOptions options{.group = "porch four"};
        if (in_a_slow_build()) options.element = "storage-rod-1000-240";
        const Ranking ranking = heatmatch::rank(starter(), installation, options);
        CHECK(ranking.evaluated > 0);
        for (const Candidate& candidate : ranking.candidates) {
            const Margin sheath = margin_of(candidate.margins(), "sheath temperature");
            CHECK(sheath.severity != Severity::danger);
            const bool known = heatmatch::heat_of(candidate.circuit, candidate.bright).has_value();
            if (!known) CHECK(sheath.severity == Severity::not_assessed);
        }
    }
}
