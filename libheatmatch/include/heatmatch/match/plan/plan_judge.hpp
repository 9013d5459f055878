#pragma once

#include <cstddef>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/match/candidate/bill.hpp"
#include "heatmatch/match/candidate/rank_options.hpp"
#include "heatmatch/match/margins/margin.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// What is known of several circuits in one store.
struct PlanVerdict {
    bool danger = false;              //!< a check finds a danger
    bool worst_danger = false;        //!< the same with unstated facts at their careful ends
    bool assessed = true;             //!< every deciding check could be made
    bool array_assessed = true;       //!< the same of those that depend on the array alone
    bool affordable = true;           //!< the whole bill is known and within the budget
    double headroom = 1.0;            //!< smallest of the checks whose exceedance is a danger
    double heat_headroom = 1.0;       //!< of those that rise with the power of each bank alone
    double array_headroom = 1.0;      //!< of those that depend on the array and its wire alone
    std::string reason{};             //!< margin of the smallest headroom, or that is not assessed
    std::string subject{};            //!< of that margin
    std::string missing{};            //!< field to state where it is not assessed
    double price = 0.0;               //!< typical total of the bill; infinite if not known
    int parts = 0;                    //!< pieces on the bill, without wire
    std::vector<double> element_w{};  //!< largest power of one element of each circuit [W]

    [[nodiscard]] bool good() const { return !danger && assessed && affordable; }
    /// Counts one margin of one of the circuits.
    void add(const Margin& margin);
};

/// The order in which the circuits of a plan lie in the store, whatever order they are found in.
[[nodiscard]] bool lies_before(const ExistingCircuit& a, const ExistingCircuit& b);

/// Judges circuits as assess_circuits() does, without the energy of their season, which takes most
/// of its time: an element counts as owned only as far as the installation owns it. `parts` are
/// those of the catalog and the installation; both must outlive the judge, which several threads
/// may use.
class PlanJudge {
  public:
    /// `weather` raises the irradiance at which margins are judged; null for the site's own.
    PlanJudge(std::shared_ptr<const Parts> parts, const Installation& installation,
              const RankOptions& options, const std::shared_ptr<const Weather>& weather);

    /// The circuits together, in one store and with one bill, in their order in the store. It ends
    /// at the first circuit with a danger, without a bill.
    [[nodiscard]] PlanVerdict judge(std::span<const ExistingCircuit> circuits) const;
    /// The bill alone: `affordable`, `price` and `parts`. Other values are those of no danger.
    [[nodiscard]] PlanVerdict price(std::span<const ExistingCircuit> circuits) const;
    /// One circuit with its array, bank and devices only.
    [[nodiscard]] Circuit unwired(const ExistingCircuit& circuit) const;
    /// One circuit with wire and, in a store, with its heat.
    [[nodiscard]] Circuit wired(const ExistingCircuit& circuit) const;
    /// The site of a circuit, with the brightest sun on the planes of its panels.
    [[nodiscard]] Site site_of(const ExistingCircuit& circuit) const;
    /// The bill of circuits that are wired.
    [[nodiscard]] Bill bill(std::span<const Circuit> circuits) const;
    /// The installation with these circuits instead of its own, in their order in the store.
    [[nodiscard]] Installation with(std::span<const ExistingCircuit> circuits) const;

  private:
    struct Group {
        OwnedPanels owned{};
        PanelInService panel{};
        double brightest_w_m2 = 0.0;
    };
    [[nodiscard]] const Group& group_of(const std::string& name) const;
    /// A circuit with its array alone.
    [[nodiscard]] Circuit panels_of(const ExistingCircuit& circuit) const;
    [[nodiscard]] Bank bank_of(const ExistingCircuit& circuit) const;
    [[nodiscard]] Installation alone(const ExistingCircuit& circuit) const;
    [[nodiscard]] Circuit laid(const ExistingCircuit& circuit, const Installation& judged) const;
    /// A circuit with its array, runs and devices; kept for other banks of the same hook-up.
    [[nodiscard]] Circuit framed(const ExistingCircuit& circuit, const Installation& judged) const;
    void add_bill(PlanVerdict& verdict, std::span<const Circuit> circuits) const;
    /// Whether the elements of all circuits fit in the store, as far as that is known.
    [[nodiscard]] bool fit(std::span<const ExistingCircuit> circuits) const;

    std::shared_ptr<const Parts> parts_;
    Installation pattern_{};  //!< without circuits; its runs and devices are in each
    std::vector<Group> groups_{};
    std::vector<PlacedDevice> devices_{};
    std::shared_ptr<const FilledStore> store_{};  //!< null without one
    double coil_temperature_c_ = 300.0;
    mutable std::mutex frames_lock_{};
    mutable std::map<std::string, Circuit> frames_{};  //!< by array and, if it counts, the bank
};

}  // namespace heatmatch
