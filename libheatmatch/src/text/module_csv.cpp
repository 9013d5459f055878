#include "heatmatch/text/module_csv.hpp"

#include "csv.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <map>
#include <set>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/parts/parts.hpp"

namespace heatmatch {

using text_sentences::say;

namespace {

constexpr auto needed = std::to_array<std::string_view>(
    {"Name", "Technology", "N_s", "I_sc_ref", "V_oc_ref", "I_mp_ref", "V_mp_ref", "alpha_sc",
     "beta_oc", "gamma_r", "T_NOCT", "A_c", "a_ref", "I_L_ref", "I_o_ref", "R_s", "R_sh_ref",
     "Adjust"});

std::string slug_of(const std::string& name) {
    constexpr std::size_t longest = 70;
    std::string slug;
    for (char c : name) {
        const bool digit = c >= '0' && c <= '9';
        if (c >= 'A' && c <= 'Z') {
            slug += static_cast<char>(c - 'A' + 'a');
        } else if ((c >= 'a' && c <= 'z') || digit) {
            slug += c;
        } else if (!slug.empty() && slug.back() != '-') {
            slug += '-';
        }
        if (slug.size() == longest) break;
    }
    while (!slug.empty() && slug.back() == '-') slug.pop_back();
    return slug.empty() ? "module" : slug;
}

std::optional<Technology> technology_of(const std::string& listed) {
    static const std::map<std::string, Technology> known{{"Mono-c-Si", Technology::mono_si},
                                                         {"Multi-c-Si", Technology::multi_si},
                                                         {"HIT-Si", Technology::heterojunction},
                                                         {"CdTe", Technology::cdte},
                                                         {"CIGS", Technology::cigs},
                                                         {"CIS", Technology::cis},
                                                         {"a-Si", Technology::a_si},
                                                         {"1-a-Si", Technology::a_si},
                                                         {"2-a-Si", Technology::a_si},
                                                         {"3-a-Si", Technology::a_si},
                                                         {"GaAs", Technology::gaas}};
    const auto found = known.find(listed);
    if (found == known.end()) return std::nullopt;
    return found->second;
}

/// Cells of one module by column name.
class ModuleRow {
  public:
    ModuleRow(const std::map<std::string, std::size_t>& columns, const CsvRecord& record)
        : columns_(columns), record_(record) {}

    [[nodiscard]] std::string text(const std::string& name) const {
        const std::size_t at = columns_.at(name);
        return at < record_.cells.size() ? record_.cells[at] : std::string();
    }
    [[nodiscard]] double number(const std::string& name) const {
        const std::string cell = text(name);
        double value = 0.0;
        const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
        const bool whole_cell = error == std::errc{} && end == cell.data() + cell.size();
        if (!whole_cell || !std::isfinite(value)) {
            throw InvalidInput(ErrorDetail{.part = "module " + quote(text("Name"), 80),
                                           .field = name,
                                           .value = quote(cell),
                                           .allowed = "a number",
                                           .remedy = say<"text.correct_cell">()});
        }
        return value;
    }

    [[nodiscard]] int count(const std::string& name) const {
        const double value = number(name);
        constexpr double most = 1000.0;
        if (value >= 1.0 && value <= most && value == std::floor(value))
            return static_cast<int>(value);
        throw InvalidInput(ErrorDetail{.part = "module " + quote(text("Name"), 80),
                                       .field = name,
                                       .value = format_number(value),
                                       .allowed = "a whole number from 1 to 1000",
                                       .remedy = say<"text.correct_cell">()});
    }

  private:
    const std::map<std::string, std::size_t>& columns_;
    const CsvRecord& record_;
};

Panel panel_of(const ModuleRow& row) {
    const auto rounded = [](double value) { return round_significant(value, 9); };
    Panel panel{.label = row.text("Name"),
                .technology = technology_of(row.text("Technology")),
                .v_oc = row.number("V_oc_ref"),
                .i_sc = row.number("I_sc_ref"),
                .v_mp = row.number("V_mp_ref"),
                .i_mp = row.number("I_mp_ref"),
                .gamma_pmp_pct_per_k = row.number("gamma_r"),
                .noct_c = row.number("T_NOCT"),
                .cells_in_series = row.count("N_s"),
                .area_m2 = row.number("A_c"),
                .provenance = {.source = "cec-module-list", .source_kind = SourceKind::datasheet}};
    panel.alpha_isc_pct_per_k = rounded(100.0 * row.number("alpha_sc") / panel.i_sc);
    panel.beta_voc_pct_per_k = rounded(100.0 * row.number("beta_oc") / panel.v_oc);
    panel.listed_fit = ListedFit{.light_current_a = row.number("I_L_ref"),
                                 .saturation_current_a = row.number("I_o_ref"),
                                 .series_resistance_ohm = row.number("R_s"),
                                 .shunt_resistance_ohm = row.number("R_sh_ref"),
                                 .modified_ideality_v = row.number("a_ref"),
                                 .adjust_pct = row.number("Adjust")};
    panel.id = slug_of(panel.label);
    return panel;
}

}  // namespace

std::vector<Panel> panels_from_module_csv(std::string_view text, std::string_view origin,
                                          std::vector<RefusedRow>& refused) {
    const std::vector<CsvRecord> records = read_csv(text, origin);
    std::map<std::string, std::size_t> columns;
    if (!records.empty()) {
        for (std::size_t c = 0; c < records.front().cells.size(); ++c) {
            columns[records.front().cells[c]] = c;
        }
    }
    for (std::string_view name : needed) {
        if (columns.contains(std::string(name))) continue;
        throw InvalidInput(ErrorDetail{.part = std::string(origin),
                                       .field = "column \"" + std::string(name) + '"',
                                       .value = "(missing)",
                                       .allowed = "in the first line",
                                       .remedy = say<"text.is_it_module_list">()});
    }
    constexpr std::size_t header_lines = 3;
    std::vector<Panel> panels;
    std::set<std::string> ids;
    std::map<std::string, int> last_of;
    for (std::size_t r = header_lines; r < records.size(); ++r) {
        const ModuleRow row(columns, records[r]);
        try {
            Panel panel = panel_of(row);
            const std::string stem = panel.id;
            // Continues from the last of that name, so that equal names are numbered in linear
            // time.
            int last = last_of[stem];
            while (ids.contains(panel.id)) {
                last = std::max(2, last + 1);
                panel.id = stem + '-' + std::to_string(last);
            }
            check_part(panel);
            ids.insert(panel.id);
            last_of[stem] = last;
            panels.push_back(std::move(panel));
        } catch (const InvalidInput& error) {
            refused.push_back(
                {.line = records[r].line, .id = slug_of(row.text("Name")), .reason = error.what()});
        }
    }
    return panels;
}

}  // namespace heatmatch
