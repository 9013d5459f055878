#pragma once

#include "heatmatch/heat/element_resistance.hpp"
#include "heatmatch/operation/meter/meter_sheet.hpp"

namespace heatmatch {

inline constexpr const char* no_source = "common practice, no source";
inline constexpr double cold_element_c = 20.0;

/// Composes the checks of one sheet.
class CheckWriter {
  public:
    CheckWriter(MeterSheet& sheet, const Candidate& candidate)
        : sheet_(sheet), circuit_(candidate.circuit) {}

    void ohms();
    void insulation();
    void array(double cell_c);
    void loads();
    void earth();
    void joints();
    void limits();
    void store();

  private:
    void drop();
    /// What the array of several groups is to show.
    void expect_of_unlike(MeterCheck& open, MeterCheck& shorted, double cell_c) const;
    void add(MeterCheck check) {
        check.letter = std::string(1, static_cast<char>('A' + sheet_.checks.size()));
        sheet_.checks.push_back(std::move(check));
    }
    /// `57 ohm to 66 ohm, typically 60 ohm`.
    [[nodiscard]] static Sentence span(const MeterCheck& check);
    [[nodiscard]] bool has_bank() const { return circuit_.bank.typical_ohm() > 0.0; }
    [[nodiscard]] bool has_panel() const {
        return circuit_.unlike || circuit_.panel.panel.v_oc > 0.0;
    }
    /// Of an element, and of the whole bank, cold.
    [[nodiscard]] static ElementResistance cold(const Bank& one);
    [[nodiscard]] ElementResistance cold_bank() const;
    void ohms_of(const Bank& one);
    [[nodiscard]] Sentence ohms_with_one_open(double cold_ohm) const;
    void element_volts();
    void store_of(MeterCheck check, const BankHeat& heat, double element_w);

    MeterSheet& sheet_;
    const Circuit& circuit_;
};

/// Adds the checks to a sheet with rows, and lists what is not known for them.
void add_meter_checks(MeterSheet& sheet, const Candidate& candidate,
                      const MeterSheetOptions& options);

/// Sections of a panel with their own bypass diode; empty if not known.
[[nodiscard]] std::optional<int> bypass_sections(const Panel& panel);

}  // namespace heatmatch
