#include "refusal.hpp"

#include <string>
#include <tuple>
#include <variant>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/part_csv.hpp"

using heatmatch::Control;
using heatmatch::InvalidInput;
using heatmatch::Panel;
using heatmatch::Part;
using heatmatch::PartKind;
using heatmatch::parts_from_csv;
using heatmatch::RefusedRow;

namespace {

const std::string panel_header = "id,label,v_oc,i_sc,v_mp,beta_voc_pct_per_k,source,source_kind\n";

struct ReadParts {
    std::vector<Part> parts;
    std::vector<RefusedRow> refused;
};

ReadParts read_csv(PartKind kind, const std::string& text) {
    ReadParts result;
    result.parts = parts_from_csv(kind, text, "mine.csv", result.refused).rows;
    return result;
}

std::string csv_refusal(PartKind kind, const std::string& text) {
    return refusal_of<InvalidInput>([&] { std::ignore = read_csv(kind, text); });
}

}  // namespace

TEST_CASE("rows of a CSV file become parts, with or without units") {
    const ReadParts result = read_csv(
        PartKind::panel, panel_header + "a,Barn,37.5,8,30.1 V,-120 mV/K,label,nameplate\n" +
                             "b,\"Porch, \"\"old\"\"\",22,6,,,label,nameplate\n");
    CHECK(result.refused.empty());
    REQUIRE(result.parts.size() == 2);
    const auto& barn = std::get<Panel>(result.parts[0]);
    CHECK(barn.v_mp == 30.1);
    CHECK(barn.beta_voc_pct_per_k == -0.32);
    const auto& porch = std::get<Panel>(result.parts[1]);
    CHECK(porch.label == "Porch, \"old\"");
    CHECK_FALSE(porch.v_mp.has_value());
    CHECK_FALSE(porch.beta_voc_pct_per_k.has_value());
}

TEST_CASE("flags are words and tables are JSON") {
    const std::string header = "id,label,family,ac_only,polarised,dc_ratings,source,source_kind\n";
    const std::string ratings = R"("[{""v_dc"": 600, ""a_dc"": ""25 A"", ""poles"": 2}]")";
    const ReadParts result =
        read_csv(PartKind::control, header + "a,A,isolator,no,YES," + ratings +
                                        ",label,nameplate\n"
                                        "b,B,switch,true,0,,label,nameplate\n"
                                        "c,C,switch,maybe,0,,label,nameplate\n"
                                        "d,D,switch,no,0,600 V,label,nameplate\n");
    REQUIRE(result.parts.size() == 2);
    const auto& isolator = std::get<Control>(result.parts[0]);
    CHECK(isolator.ac_only == false);
    CHECK(isolator.polarised == true);
    REQUIRE(isolator.dc_ratings.size() == 1);
    CHECK(isolator.dc_ratings[0].a_dc == 25.0);
    CHECK(std::get<Control>(result.parts[1]).ac_only == true);
    REQUIRE(result.refused.size() == 2);
    CHECK(holds(result.refused[0].reason, "ac_only = \"maybe\" must be true or false"));
    CHECK(holds(result.refused[1].reason, "dc_ratings"));
}

TEST_CASE("an unusable row is reported with its line, the others are kept") {
    const ReadParts result =
        read_csv(PartKind::panel, panel_header +
                                      "a,\"two\nlines\",37.5,8,,,label,nameplate\n"
                                      "\n"
                                      "b,B,-1,8,,,label,nameplate\n"
                                      "c,C,\"37,5\",8,,,label,nameplate\n"
                                      "d,D,37.5,8,,,label,nameplate,one,too many\n"
                                      "e,E,37.5\n"
                                      "a,again,37.5,8,,,label,nameplate\n");
    CHECK(result.parts.size() == 1);
    REQUIRE(result.refused.size() == 5);
    CHECK(result.refused[0].line == 5);
    CHECK(result.refused[0].id == "b");
    CHECK(holds(result.refused[0].reason, "mine.csv, line 5: panel \"b\": v_oc = -1 V"));
    CHECK(result.refused[1].line == 6);
    CHECK(holds(result.refused[1].reason, "an unambiguous number"));
    CHECK(result.refused[2].line == 7);
    CHECK(holds(result.refused[2].reason, "quote cells that hold a comma"));
    CHECK(result.refused[3].line == 8);
    CHECK(holds(result.refused[3].reason, "i_sc = (missing)"));
    CHECK(result.refused[4].line == 9);
    CHECK(holds(result.refused[4].reason, "must be unique in the file"));
}

TEST_CASE("a byte-order mark and the line ends of other systems are understood") {
    std::string text = "\xEF\xBB\xBF" + panel_header + "a,Süd,37.5,8,,,label,nameplate";
    const ReadParts unix_ends = read_csv(PartKind::panel, text);
    REQUIRE(unix_ends.parts.size() == 1);
    std::string windows;
    for (const char c : text) windows += c == '\n' ? std::string("\r\n") : std::string(1, c);
    const ReadParts windows_ends = read_csv(PartKind::panel, windows + "\r\n");
    CHECK(windows_ends.refused.empty());
    REQUIRE(windows_ends.parts.size() == 1);
    CHECK(windows_ends.parts == unix_ends.parts);
}

TEST_CASE("a header that is wrong is refused before any row") {
    CHECK(holds(csv_refusal(PartKind::panel, ""), "begin with id,label"));
    CHECK(holds(csv_refusal(PartKind::panel, "\n\n"), "begin with id,label"));
    CHECK(holds(csv_refusal(PartKind::panel, "id,label,voc\n"), "did you mean \"v_oc\"?"));
    CHECK(holds(csv_refusal(PartKind::wire, panel_header), "column \"v_oc\""));
    // The later of two would win without a word.
    CHECK(holds(csv_refusal(PartKind::panel,
                            "id,v_oc,label,v_oc,i_sc,source,source_kind\n"
                            "a,37.5,A,22,8,label,nameplate\n"),
                "v_oc"));
}

TEST_CASE("a quote that is never closed is reported with its first line") {
    const std::string message =
        csv_refusal(PartKind::panel, panel_header + "a,\"Barn,37.5,8,,,label,nameplate\nb,B,1,1\n");
    CHECK(holds(message, "mine.csv: line 2"));
    CHECK(holds(message, "must be closed"));
}

TEST_CASE("a header alone gives no parts") {
    const ReadParts result = read_csv(PartKind::panel, panel_header);
    CHECK(result.parts.empty());
    CHECK(result.refused.empty());
}

TEST_CASE("a cell that is not UTF-8 is refused with its line") {
    const ReadParts result =
        read_csv(PartKind::panel, panel_header + "a,S\xFC\x64,37.5,8,,,label,nameplate\n");
    CHECK(result.parts.empty());
    REQUIRE(result.refused.size() == 1);
    CHECK(result.refused[0].line == 2);
    CHECK(holds(result.refused[0].reason, "label"));
}

// Messages are for people and other programs, which accept no broken text.
TEST_CASE("a message about a broken cell does not repeat its bytes") {
    const ReadParts result = read_csv(PartKind::panel, panel_header +
                                                           "S\xFC\x64,A,37.5,8,,,label,nameplate\n"
                                                           "b,B,3\xFC,8,,,label,nameplate\n"
                                                           "c,C,37.5,8,,,label,name\xFCplate\n");
    CHECK(result.parts.empty());
    REQUIRE(result.refused.size() == 3);
    for (const RefusedRow& row : result.refused) {
        CAPTURE(row.line);
        CHECK(row.reason.find('\xFC') == std::string::npos);
        CHECK(row.id.find('\xFC') == std::string::npos);
    }
    const std::string column = csv_refusal(PartKind::panel, "id,l\xFC\x62\x65l\n");
    CHECK(column.find('\xFC') == std::string::npos);
}
