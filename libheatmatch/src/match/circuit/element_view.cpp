#include "heatmatch/match/circuit/element_view.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/heat/joint_layout.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"

namespace heatmatch {

namespace {

/// The elements of the bank before and behind one of them, in the store of the whole circuit.
std::shared_ptr<const FilledStore> store_beside(const FilledStore& store,
                                                const std::vector<OtherBank>& own,
                                                std::size_t element) {
    auto seen = std::make_shared<FilledStore>(store);
    const auto middle = static_cast<std::ptrdiff_t>(std::min(store.place, store.others.size()));
    const auto at = own.begin() + static_cast<std::ptrdiff_t>(element);
    std::vector<OtherBank> others(store.others.begin(), store.others.begin() + middle);
    others.insert(others.end(), own.begin(), at);
    seen->place = others.size();
    others.insert(others.end(), at + 1, own.end());
    others.insert(others.end(), store.others.begin() + middle, store.others.end());
    seen->others = std::move(others);
    return seen;
}

/// The store of a whole unlike bank, what is missing, and whether all legs fit.
std::shared_ptr<const BankHeat> unlike_heat(std::shared_ptr<const FilledStore> store,
                                            std::shared_ptr<const UnlikeBank> unlike) {
    const UnlikeBank& bank = *unlike;
    const Bank& first = bank.elements.front();
    std::vector<OtherBank> own;
    for (const Bank& element : bank.elements) own.push_back({.element = element.element});
    for (OtherBank& other : own) other.own = true;
    // Of the first element beside all others: what is missing or does not fit is the same for all.
    const auto of_first =
        bank_heat(store_beside(*store, own, 0), first.element, first.sheath, first.alloy, 1);
    auto whole = std::make_shared<BankHeat>();
    whole->missing = of_first->missing;
    whole->misfit = of_first->misfit;
    whole->liquid = of_first->liquid;
    whole->assumed = of_first->assumed;
    whole->elements = static_cast<int>(bank.elements.size());
    whole->unlike = std::move(unlike);
    if (whole->missing.empty()) {
        std::vector<BankInStore> legs;
        for (const Bank& element : bank.elements) legs.push_back({.element = element.element});
        for (const LegLayout& layout : joint_layout(legs, store->store)) {
            whole->heated_length_m += layout.heated_length_m();
        }
    }
    whole->store = std::move(store);
    return whole;
}

}  // namespace

std::shared_ptr<const BankHeat> bank_heat(std::shared_ptr<const FilledStore> store,
                                          const Bank& bank) {
    if (!store) return nullptr;
    if (bank.unlike) return unlike_heat(std::move(store), bank.unlike);
    return bank_heat(std::move(store), bank.element, bank.sheath, bank.alloy, bank.hookup.count());
}

std::vector<OtherBank> other_banks(const Bank& bank, const std::string& circuit,
                                   std::span<const double> element_w, bool limited) {
    std::vector<OtherBank> banks;
    if (!bank.unlike) {
        banks.push_back({.circuit = circuit,
                         .element = bank.element,
                         .elements = bank.hookup.count(),
                         .element_w = element_w.front(),
                         .limited = limited});
        return banks;
    }
    for (std::size_t i = 0; i < bank.unlike->elements.size(); ++i) {
        banks.push_back({.circuit = circuit,
                         .element = bank.unlike->elements[i].element,
                         .element_w = element_w[i],
                         .limited = limited,
                         .goes_on = i > 0});
    }
    return banks;
}

Circuit element_view(const Circuit& circuit, std::size_t element,
                     std::span<const double> element_w) {
    Circuit seen = circuit;
    seen.bank = circuit.bank.unlike->elements[element];
    if (!circuit.heat) return seen;
    std::vector<OtherBank> own = other_banks(circuit.bank, circuit.name, element_w, false);
    for (OtherBank& other : own) other.own = true;
    const Bank& bank = seen.bank;
    seen.heat = bank_heat(store_beside(*circuit.heat->store, own, element), bank.element,
                          bank.sheath, bank.alloy, 1);
    return seen;
}

}  // namespace heatmatch
