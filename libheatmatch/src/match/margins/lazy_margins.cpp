#include "heatmatch/match/margins/lazy_margins.hpp"

#include <utility>

namespace heatmatch {

LazyMargins::LazyMargins(std::vector<Margin> made)
    : made_(std::make_shared<const std::vector<Margin>>(std::move(made))) {}

LazyMargins::LazyMargins(const LazyMargins& other) : made_(other.made()) {}

LazyMargins::LazyMargins(LazyMargins&& other) noexcept : made_(std::move(other.made_)) {}

LazyMargins& LazyMargins::operator=(const LazyMargins& other) {
    if (this == &other) return *this;
    Made made = other.made();
    const std::scoped_lock lock(guard_);
    made_ = std::move(made);
    return *this;
}

LazyMargins& LazyMargins::operator=(LazyMargins&& other) noexcept {
    made_ = std::move(other.made_);
    return *this;
}

LazyMargins::Made LazyMargins::made() const {
    const std::scoped_lock lock(guard_);
    return made_;
}

}  // namespace heatmatch
