#include "refusal.hpp"

#include <string>
#include <tuple>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/module_csv.hpp"

using heatmatch::InvalidInput;
using heatmatch::Panel;
using heatmatch::panels_from_module_csv;
using heatmatch::RefusedRow;

namespace {

const std::string header =
    "Name,Technology,N_s,I_sc_ref,V_oc_ref,I_mp_ref,V_mp_ref,alpha_sc,beta_oc,gamma_r,T_NOCT,A_c,"
    "a_ref,I_L_ref,I_o_ref,R_s,R_sh_ref,Adjust\n"
    "Units,,,A,V,A,V,A/K,V/K,%/K,C,m2,V,A,A,Ohm,Ohm,%\n"
    "[0],,,cec_i_sc_ref,,,,,,,,,,,,,,\n";

/// An invented module of 60 cells, with its name and some cells of its own.
std::string module_row(const std::string& name, const std::string& technology,
                       const std::string& i_mp = "8.14", const std::string& cells = "60") {
    return name + "," + technology + "," + cells + ",8.66,37.5," + i_mp +
           ",30.1,0.0058888,-0.130125,-0.461,46.4,1.65,1.58,8.67,3e-10,0.3,250,5.5\n";
}

struct ReadModules {
    std::vector<Panel> panels;
    std::vector<RefusedRow> refused;
};

ReadModules read_modules(const std::string& text) {
    ReadModules result;
    result.panels = panels_from_module_csv(text, "list.csv", result.refused);
    return result;
}

}  // namespace

// Source: arithmetic, 0.0058888 of 8.66 A is 0.068 %/K and -0.130125 of 37.5 V is -0.347 %/K.
TEST_CASE("label values become fields and published parameters are kept beside them") {
    const ReadModules result =
        read_modules(header + module_row("Barn & Sons BS-245 (2011)", "Multi-c-Si"));
    CHECK(result.refused.empty());
    REQUIRE(result.panels.size() == 1);
    const Panel& panel = result.panels[0];
    CHECK(panel.id == "barn-sons-bs-245-2011");
    CHECK(panel.label == "Barn & Sons BS-245 (2011)");
    CHECK(panel.technology == heatmatch::Technology::multi_si);
    CHECK(panel.v_oc == 37.5);
    CHECK(panel.i_sc == 8.66);
    CHECK(panel.v_mp == 30.1);
    CHECK(panel.i_mp == 8.14);
    CHECK(panel.alpha_isc_pct_per_k == 0.068);
    CHECK(panel.beta_voc_pct_per_k == -0.347);
    CHECK(panel.gamma_pmp_pct_per_k == -0.461);
    CHECK(panel.noct_c == 46.4);
    CHECK(panel.cells_in_series == 60);
    CHECK(panel.area_m2 == 1.65);
    CHECK(panel.provenance.source == "cec-module-list");
    CHECK(panel.provenance.source_kind == heatmatch::SourceKind::datasheet);
    REQUIRE(panel.listed_fit.has_value());
    CHECK(panel.listed_fit->light_current_a == 8.67);
    CHECK(panel.listed_fit->saturation_current_a == 3e-10);
    CHECK(panel.listed_fit->series_resistance_ohm == 0.3);
    CHECK(panel.listed_fit->shunt_resistance_ohm == 250.0);
    CHECK(panel.listed_fit->modified_ideality_v == 1.58);
    CHECK(panel.listed_fit->adjust_pct == 5.5);
    CHECK(panel.listed_fit->band_gap_ev == 1.121);
}

TEST_CASE("a module that cannot be is refused with its line, the others are kept") {
    const ReadModules result =
        read_modules(header + module_row("One", "Mono-c-Si") +
                     module_row("Two", "Mono-c-Si", "8.70") + module_row("Three", "CdTe", "none") +
                     module_row("Four", "CIGS") + module_row("Five", "Perovskite"));
    REQUIRE(result.panels.size() == 3);
    CHECK(result.panels[0].id == "one");
    CHECK(result.panels[1].technology == heatmatch::Technology::cigs);
    // A technology that is not known is left open, not guessed.
    CHECK(result.panels[2].id == "five");
    CHECK_FALSE(result.panels[2].technology);
    REQUIRE(result.refused.size() == 2);
    CHECK(result.refused[0].line == 5);
    CHECK(result.refused[0].id == "two");
    CHECK(holds(result.refused[0].reason, "i_mp = 8.7 A must be below i_sc = 8.66 A"));
    CHECK(result.refused[1].line == 6);
    CHECK(holds(result.refused[1].reason, "I_mp_ref = \"none\" must be a number"));
}

TEST_CASE("technologies of the list are those of a panel") {
    const auto technology_of = [](const std::string& listed) {
        const ReadModules result = read_modules(header + module_row("M", listed));
        REQUIRE(result.panels.size() == 1);
        return word_of(result.panels[0].technology);
    };
    CHECK(technology_of("Mono-c-Si") == "mono-Si");
    CHECK(technology_of("Multi-c-Si") == "multi-Si");
    CHECK(technology_of("HIT-Si") == "heterojunction");
    CHECK(technology_of("CdTe") == "CdTe");
    CHECK(technology_of("CIS") == "CIS");
    CHECK(technology_of("CIGS") == "CIGS");
    CHECK(technology_of("1-a-Si") == "a-Si");
    CHECK(technology_of("3-a-Si") == "a-Si");
    CHECK(technology_of("a-Si / nc").empty());
}

TEST_CASE("modules whose names make one id get different ids") {
    const ReadModules result =
        read_modules(header + module_row("BS 245", "CdTe") + module_row("BS-245", "CdTe") +
                     module_row("bs_245!", "CdTe") + module_row("\u4e2d", "CdTe"));
    REQUIRE(result.panels.size() == 4);
    CHECK(result.panels[0].id == "bs-245");
    CHECK(result.panels[1].id == "bs-245-2");
    CHECK(result.panels[2].id == "bs-245-3");
    CHECK(result.panels[3].id == "module");
}

TEST_CASE("columns may be in any order, with others among them") {
    std::string text = "Extra," + header;
    text.replace(text.find("\nUnits"), 1, "\nx,");
    text.replace(text.find("\n[0]"), 1, "\nx,");
    const ReadModules result = read_modules(text + "y," + module_row("One", "CdTe"));
    REQUIRE(result.panels.size() == 1);
    CHECK(result.panels[0].label == "One");
}

TEST_CASE("a file that is not the list is refused by its missing column") {
    std::vector<RefusedRow> refused;
    for (const std::string text : {"", "a,b\n1,2\n", "{\"panels\": []}"}) {
        CAPTURE(text);
        CHECK_THROWS_WITH_AS(
            std::ignore = panels_from_module_csv(text, "list.csv", refused),
            "list.csv: column \"Name\" = (missing) must be in the first line; is this the public "
            "module-rating list, with its three header lines?",
            InvalidInput);
    }
    CHECK(read_modules(header).panels.empty());
}

// The cells of a list made elsewhere may hold anything; a whole number that no int holds must not
// become one.
TEST_CASE("cells that are not plain numbers are refused by name") {
    for (const std::string cells : {"1e300", "nan", "inf", "-5", "60.5", "", "0x3c"}) {
        CAPTURE(cells);
        const ReadModules result = read_modules(header + module_row("M", "CdTe", "8.14", cells));
        CHECK(result.panels.empty());
        CHECK(result.refused.size() == 1);
    }
    CHECK(read_modules(header + module_row("M", "CdTe", "nan")).panels.empty());
}

TEST_CASE("a name that is not UTF-8 is refused with its line") {
    const ReadModules result = read_modules(header + module_row("S\xFC\x64 245", "CdTe"));
    CHECK(result.panels.empty());
    REQUIRE(result.refused.size() == 1);
    CHECK(result.refused[0].line == 4);
}
