#include <algorithm>
#include <map>
#include <utility>

#include "heatmatch/match/circuit/bank_tree.hpp"

namespace heatmatch {

namespace {

/// A connection without brackets that change nothing: no series in a series, no parallel in a
/// parallel.
struct Joined {
    enum class Kind { element, series, parallel };
    Kind kind = Kind::element;
    std::string name{};
    std::vector<Joined> parts{};
};

void take(Joined& into, Joined part) {
    if (part.kind != into.kind) {
        into.parts.push_back(std::move(part));
        return;
    }
    for (Joined& inner : part.parts) into.parts.push_back(std::move(inner));
}

Joined alone_or_joined(Joined joined) {
    if (joined.parts.size() != 1) return joined;
    Joined only = std::move(joined.parts.front());
    return only;
}

/// Builds it with marks on the names: `mark(index)` is added to that of each element.
template <class Mark>
class Joining {
  public:
    explicit Joining(const Mark& mark) : mark_(mark) {}

    Joined whole(const Layout& layout) {
        Joined parallel{.kind = Joined::Kind::parallel};
        for (const Layout::Series& string : layout.strings) {
            Joined series{.kind = Joined::Kind::series};
            for (const Layout::Item& item : string) {
                for (int i = 0; i < item.count; ++i) take(series, item_of(item));
            }
            take(parallel, alone_or_joined(std::move(series)));
        }
        return alone_or_joined(std::move(parallel));
    }

  private:
    Joined item_of(const Layout::Item& item) {
        if (!item.bracketed.empty()) return whole(item.bracketed.front());
        return {.name = item.name + mark_(next_++)};
    }

    const Mark& mark_;
    std::size_t next_ = 0;
};

template <class Mark>
Joined joined(const Layout& layout, const Mark& mark) {
    return Joining<Mark>(mark).whole(layout);
}

/// The same text for the same connection, whatever the order of its parts.
std::string order_free_text(const Joined& joined) {
    if (joined.kind == Joined::Kind::element) {
        return std::to_string(joined.name.size()) + ':' + joined.name;
    }
    std::vector<std::string> texts;
    texts.reserve(joined.parts.size());
    for (const Joined& part : joined.parts) texts.push_back(order_free_text(part));
    std::sort(texts.begin(), texts.end());
    std::string text(1, joined.kind == Joined::Kind::series ? '+' : '|');
    for (const std::string& part : texts) text += '[' + part + ']';
    return text;
}

std::string unmarked(std::size_t /*index*/) {
    return {};
}

/// How many equal elements in series; 0 for anything else.
int in_series(const Joined& string, const std::string& name) {
    if (string.kind == Joined::Kind::element) return string.name == name ? 1 : 0;
    if (string.kind == Joined::Kind::parallel) return 0;
    const bool equal = std::all_of(string.parts.begin(), string.parts.end(), [&](const Joined& at) {
        return at.kind == Joined::Kind::element && at.name == name;
    });
    return equal ? static_cast<int>(string.parts.size()) : 0;
}

}  // namespace

std::vector<std::size_t> BankTree::equal_places() const {
    std::map<std::string, std::size_t> first;
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const auto mark = [i](std::size_t at) { return std::string(at == i ? "*" : ""); };
        places.push_back(first.try_emplace(order_free_text(joined(layout, mark)), i).first->second);
    }
    return places;
}

std::optional<Hookup> BankTree::hookup() const {
    const Joined whole = joined(layout, unmarked);
    const std::string& name = elements.front();
    const bool several = whole.kind == Joined::Kind::parallel;
    const int series = in_series(several ? whole.parts.front() : whole, name);
    if (series == 0) return std::nullopt;
    if (!several) return Hookup{.series = series, .parallel = 1};
    const bool equal = std::all_of(whole.parts.begin(), whole.parts.end(),
                                   [&](const Joined& at) { return in_series(at, name) == series; });
    if (!equal) return std::nullopt;
    return Hookup{.series = series, .parallel = static_cast<int>(whole.parts.size())};
}

}  // namespace heatmatch
