#include "load_class.hpp"

#include <map>
#include <numeric>
#include <string>
#include <tuple>

namespace heatmatch {

std::vector<LoadClass> load_classes(const std::vector<Bank>& banks) {
    std::map<std::tuple<std::string, int, int>, std::size_t> numbers;
    std::vector<LoadClass> classes;
    std::vector<int> banks_of;
    for (const Bank& bank : banks) {
        const int common = std::gcd(bank.hookup.series, bank.hookup.parallel);
        const auto [known, fresh] = numbers.try_emplace(
            {bank.element.id, bank.hookup.series / common, bank.hookup.parallel / common},
            numbers.size());
        if (fresh) banks_of.push_back(0);
        ++banks_of[known->second];
        classes.push_back({.number = known->second});
    }
    for (LoadClass& load : classes) load.shared = banks_of[load.number] > 1;
    return classes;
}

}  // namespace heatmatch
