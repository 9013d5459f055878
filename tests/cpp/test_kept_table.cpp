#include "demo.hpp"

#include "heatmatch/answer/kept_table.hpp"

using namespace heatmatch;

// Source: 2 m are 6.56 ft, -20 °C are -4 °F.
TEST_CASE("kept choices are side by side, a row for each number") {
    Candidate candidate{
        .circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "storage-rod-1000-240", {1, 2}),
        .price_to_buy = 12.0,
        .currency = "USD",
        .bright = {.element_power_w = 455.5}};
    candidate.made = LazyMargins(std::vector<Margin>{});
    const KeptChoice plain{.name = "choice 1", .place = "house of 2 m", .candidate = &candidate};
    Candidate other = candidate;
    other.season = Season{.days = 10.0, .kwh = 12.0, .mpp_kwh = 24.0};
    other.made =
        LazyMargins({{.name = "arc", .subject = "live parts", .severity = Severity::warning}});
    const KeptChoice chosen{.name = "choice 2",
                            .place = "house of 2 m",
                            .candidate = &other,
                            .tilt_deg = 60.0,
                            .sun_pct = 85.0,
                            .wire = "solar-10-awg",
                            .length_m = 2.0,
                            .k20_w_mk = 0.27,
                            .record_low_c = -20.0};
    const std::array kept{plain, chosen};
    const Table table = kept_table(kept);
    REQUIRE(table.columns.size() == 3);
    CHECK(table.columns[2].head.text() == "choice 2");
    const auto row = [&](std::string_view head, UnitSystem system = UnitSystem::si) {
        for (const Sentences& cells : table.rows) {
            if (cells[0].text() == head) return cells[1].text(system) + "|" + cells[2].text(system);
        }
        return std::string("no such row");
    };
    CHECK(row("installation", UnitSystem::us) == "house of 2 m|house of 2 m");
    CHECK(row("panels") == "bench 2S1P|bench 2S1P");
    CHECK(row("heat over the season, kWh") == "?|12");
    CHECK(row("heat per day, kWh") == "?|1.20");
    CHECK(row("utilization, %") == "?|50");
    CHECK(row("largest power of one element") == "456|456");
    CHECK(row("sheath, judged, °C") == "?|?");
    CHECK(row("worst margin") == "|warning: arc");
    CHECK(row("to buy") == "12 USD|12 USD");
    CHECK(row("tilt") == "-|60 deg");
    CHECK(row("sun, relative to the installation's") == "-|85%");
    CHECK(row("wire") == "-|solar-10-awg");
    CHECK(row("its length", UnitSystem::us) == "-|6.56 ft");
    CHECK(row("record low", UnitSystem::us) == "-|-4 °F");
    CHECK(contains(nothing_kept(), "No choice is kept yet"));
}
