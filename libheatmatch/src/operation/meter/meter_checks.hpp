#pragma once

#include "heatmatch/heat/element_resistance.hpp"
#include "heatmatch/operation/meter/meter_sheet.hpp"

namespace heatmatch {

inline constexpr const char* no_source = "common practice, no source";
inline constexpr double cold_element_c = 20.0;

/// Writes the checks of one sheet.
class CheckWriter {
  public:
    CheckWriter(MeterSheet& sheet, const Candidate& candidate, UnitSystem units)
        : sheet_(sheet),
          candidate_(candidate),
          circuit_(candidate.circuit),
          units_(units),
          alloy_(circuit_.bank.alloy ? &*circuit_.bank.alloy : nullptr) {}

    void ohms();
    void insulation();
    void array(double cell_c);
    void loads();
    void earth();
    void joints();
    void limits();
    void store();

  private:
    void add(MeterCheck check) {
        check.letter = std::string(1, static_cast<char>('A' + sheet_.checks.size()));
        sheet_.checks.push_back(std::move(check));
    }
    [[nodiscard]] std::string q(double value, const Unit& unit, int digits = 3) const {
        return format_quantity(value, unit, units_, digits);
    }
    [[nodiscard]] std::string span(const MeterCheck& check) const {
        return q(*check.low, check.unit) + " to " + q(*check.high, check.unit) + ", typically " +
               q(*check.typical, check.unit);
    }
    [[nodiscard]] bool has_bank() const { return circuit_.bank.each.typical_ohm > 0.0; }
    [[nodiscard]] bool has_panel() const { return circuit_.panel.panel.v_oc > 0.0; }
    [[nodiscard]] ElementResistance cold() const {
        return element_resistance(circuit_.bank.element, alloy_, cold_element_c);
    }

    MeterSheet& sheet_;
    const Candidate& candidate_;
    const Circuit& circuit_;
    UnitSystem units_;
    const Alloy* alloy_;
};

/// Fills the checks of a sheet whose rows are there, and what is not known for them.
void add_meter_checks(MeterSheet& sheet, const Candidate& candidate,
                      const MeterSheetOptions& options);

/// Sections of a panel that have a bypass diode of their own; nothing if it is not known.
[[nodiscard]] std::optional<int> bypass_sections(const Panel& panel);

}  // namespace heatmatch
