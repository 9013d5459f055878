#include "heatmatch/match/candidate/bill.hpp"

#include "needed_devices.hpp"
#include "sentences_of_bill.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>

namespace heatmatch {

namespace {

using candidate_sentences::of_bill::say;

/// Connectors of a run: one at each end of both conductors.
constexpr double ends_of_a_run = 4.0;
constexpr double both_ways = 2.0;

template <class P>
BillLine line_of(PartKind kind, const P& part, double quantity, double owned, const Sentence& why) {
    BillLine line{.kind = kind,
                  .part = part.id,
                  .label = part.label,
                  .quantity = quantity,
                  .owned = std::min(owned, quantity),
                  .price = part.price,
                  .why = why};
    line.to_buy = line.quantity - line.owned;
    return line;
}

BillLine missing_part(PartKind kind, double quantity, Sentence why) {
    return {.kind = kind,
            .quantity = quantity,
            .to_buy = quantity,
            .state = BillState::no_part,
            .why = std::move(why)};
}

/// Reasons of two lines; equal ones once.
Sentence both(const Sentence& a, const Sentence& b) {
    return a == b ? a : sentence_of(Sentences{a, b});
}

/// Equal parts as one line; one part listed twice needs twice as many.
void merge(std::vector<BillLine>& lines) {
    std::vector<BillLine> merged;
    for (BillLine& line : lines) {
        const auto same =
            std::find_if(merged.begin(), merged.end(), [&line](const BillLine& known) {
                return !line.part.empty() && known.kind == line.kind && known.part == line.part;
            });
        if (same == merged.end()) {
            merged.push_back(std::move(line));
            continue;
        }
        same->quantity += line.quantity;
        same->owned += line.owned;
        same->to_buy += line.to_buy;
        same->why = both(same->why, line.why);
        same->of_store = same->of_store && line.of_store;
    }
    lines = std::move(merged);
}

/// How many elements of a kind the installation owns.
int owned_elements(const Installation& installation, const std::string& id) {
    int owned = 0;
    for (const AllowedElements& entry : installation.elements) {
        if (!entry.any && entry.element == id) owned += entry.count;
    }
    return owned;
}

/// How much of a part the installation states as owned, in all places together.
double stated_owned(const Installation& installation, const BillLine& line) {
    double owned = 0.0;
    for (const Device& device : installation.devices) {
        if (line.kind == PartKind::control && device.part == line.part) owned += device.owned;
    }
    for (const WireRun& run : installation.runs) {
        if (line.kind == PartKind::wire && run.wire == line.part) owned += run.owned_m;
        if (line.kind == PartKind::connector && run.connector == line.part) {
            owned += run.owned_connectors;
        }
    }
    return owned;
}

/// What several circuits of one store need, each in turn: what is owned, and the devices of the
/// store, count once.
class InTurn {
  public:
    InTurn(const Installation& installation, const Parts& catalog)
        : installation_(installation), catalog_(catalog) {}

    [[nodiscard]] BillItems next(const Circuit& circuit) {
        BillItems items = other_items(circuit, installation_.site, catalog_, installation_.goals);
        const std::vector<BillLine> elements = element_lines(circuit.bank);
        items.lines.insert(items.lines.begin(), elements.begin(), elements.end());
        known_.assign(of_store_.size(), false);
        std::erase_if(items.lines, [this](BillLine& line) { return line.of_store && had(line); });
        for (BillLine& line : items.lines) {
            if (!line.of_store) use_owned(line);
        }
        return items;
    }

  private:
    [[nodiscard]] double stated(const BillLine& line) const {
        return line.kind == PartKind::element ? owned_elements(installation_, line.part)
                                              : stated_owned(installation_, line);
    }

    void use_owned(BillLine& line) {
        const std::string key = std::to_string(static_cast<int>(line.kind)) + line.part;
        owned_left_.try_emplace(key, std::max(line.owned, stated(line)));
        line.owned = std::min(line.owned, owned_left_.at(key));
        line.to_buy = line.quantity - line.owned;
        owned_left_.at(key) -= line.owned;
    }

    /// Whether a circuit before this one has it already.
    bool had(const BillLine& line) {
        for (std::size_t i = 0; i < known_.size(); ++i) {
            const BillLine& other = of_store_[i];
            if (known_[i] || other.part != line.part || !(other.why == line.why)) continue;
            if (other.quantity < line.quantity) continue;
            known_[i] = true;
            return true;
        }
        of_store_.push_back(line);
        return false;
    }

    const Installation& installation_;
    const Parts& catalog_;
    std::map<std::string, double> owned_left_{};
    std::vector<BillLine> of_store_{};
    std::vector<bool> known_{};
};

}  // namespace

BillLine element_line(const Bank& bank) {
    return line_of(PartKind::element, bank.element, bank.hookup.count(), bank.owned,
                   say<"bill.elements">());
}

std::vector<BillLine> element_lines(const Bank& bank) {
    std::vector<BillLine> lines;
    for (Bank kind : bank.kinds()) {
        kind.hookup.series = bank.count_of(kind.element.id);
        lines.push_back(element_line(kind));
    }
    return lines;
}

BillItems run_items(const Circuit& circuit) {
    BillItems items;
    for (const RunParts& parts : circuit.runs) {
        const WireRun& run = parts.run;
        const double runs = run.carries == Carried::branch   ? circuit.bank.branches()
                            : run.carries == Carried::string ? circuit.panels.parallel
                                                             : 1;
        const double wire_m = both_ways * run.length_m * runs;
        const double owned_m = run.chooses() ? 0.0 : run.owned_m;
        if (owned_m < run.owned_m) {
            items.remarks.push_back(say<"bill.wire_not_named">(with<"run">(run.name)));
        }
        if (parts.wire) {
            items.lines.push_back(line_of(PartKind::wire, *parts.wire, wire_m, owned_m,
                                          say<"bill.wire">(with<"run">(run.name))));
        } else {
            items.lines.push_back(
                missing_part(PartKind::wire, wire_m, say<"bill.no_wire">(with<"run">(run.name))));
        }
        if (!parts.connector) continue;
        items.lines.push_back(line_of(PartKind::connector, *parts.connector, ends_of_a_run * runs,
                                      run.owned_connectors,
                                      say<"bill.connectors">(with<"run">(run.name))));
    }
    return items;
}

BillItems other_items(const Circuit& circuit, const Site& site, const Parts& catalog,
                      const Goals& goals) {
    BillItems items = run_items(circuit);
    NeededDevices needed = needed_devices(circuit, site, catalog, goals.currency);
    for (NeededDevice& device : needed.devices) {
        BillLine line = device.control
                            ? line_of(PartKind::control, *device.control, device.count,
                                      device.owned, device.why)
                            : missing_part(PartKind::control, device.count, std::move(device.why));
        line.of_store = device.of_store;
        items.lines.push_back(std::move(line));
    }
    items.remarks.insert(items.remarks.end(), needed.remarks.begin(), needed.remarks.end());
    return items;
}

Bill make_bill(BillItems items, const Goals& goals) {
    merge(items.lines);
    Bill bill{.lines = std::move(items.lines),
              .currency = goals.currency,
              .budget = goals.budget,
              .remarks = std::move(items.remarks)};
    for (BillLine& line : bill.lines) {
        if (line.to_buy <= 0.0 || line.state == BillState::no_part) continue;
        const std::string& currency = line.price.currency;
        if (!line.price.typical()) {
            line.state = BillState::price_not_known;
        } else if (bill.currency.empty()) {
            bill.currency = currency;
        } else if (!currency.empty() && currency != bill.currency) {
            line.state = BillState::other_currency;
        }
    }
    if (goals.per_usd && !goals.currency.empty() && goals.currency != "USD") {
        bill.remarks.push_back(
            say<"bill.rate">(with<"rate">(Amount{.value = *goals.per_usd, .digits = 3}),
                             with<"currency">(Name{goals.currency})));
    }
    return bill;
}

Bill bill_of(const Circuit& circuit, const Installation& installation, const Parts& catalog) {
    BillItems items = other_items(circuit, installation.site, catalog, installation.goals);
    const std::vector<BillLine> elements = element_lines(circuit.bank);
    items.lines.insert(items.lines.begin(), elements.begin(), elements.end());
    return make_bill(std::move(items), installation.goals);
}

std::vector<Bill> bills_in_turn(std::span<const Circuit> circuits, const Installation& installation,
                                const Parts& catalog) {
    InTurn turn(installation, catalog);
    std::vector<Bill> bills;
    for (const Circuit& circuit : circuits) {
        bills.push_back(make_bill(turn.next(circuit), installation.goals));
    }
    return bills;
}

Bill joint_bill(std::span<const Circuit> circuits, const Installation& installation,
                const Parts& catalog) {
    InTurn turn(installation, catalog);
    BillItems all;
    for (const Circuit& circuit : circuits) {
        BillItems items = turn.next(circuit);
        for (BillLine& line : items.lines) all.lines.push_back(std::move(line));
        for (Sentence& remark : items.remarks) {
            const auto known = std::find(all.remarks.begin(), all.remarks.end(), remark);
            if (known == all.remarks.end()) all.remarks.push_back(std::move(remark));
        }
    }
    return make_bill(std::move(all), installation.goals);
}

}  // namespace heatmatch
