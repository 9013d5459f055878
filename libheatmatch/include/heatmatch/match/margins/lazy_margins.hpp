#pragma once

#include <memory>
#include <mutex>
#include <vector>

#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins that are computed once, when first read, by any thread. A copy shares margins already
/// computed. Otherwise it computes its own, because it may be changed before it is read.
class LazyMargins {
  public:
    LazyMargins() = default;
    explicit LazyMargins(std::vector<Margin> made);
    LazyMargins(const LazyMargins& other);
    LazyMargins(LazyMargins&& other) noexcept;
    LazyMargins& operator=(const LazyMargins& other);
    LazyMargins& operator=(LazyMargins&& other) noexcept;
    ~LazyMargins() = default;

    template <class Make>
    [[nodiscard]] const std::vector<Margin>& read(const Make& make) const {
        const std::scoped_lock lock(guard_);
        if (!made_) made_ = std::make_shared<const std::vector<Margin>>(make());
        return *made_;
    }

  private:
    using Made = std::shared_ptr<const std::vector<Margin>>;
    [[nodiscard]] Made made() const;

    mutable std::mutex guard_{};
    mutable Made made_{};
};

}  // namespace heatmatch
