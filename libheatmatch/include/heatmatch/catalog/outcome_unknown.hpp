#pragma once

#include "heatmatch/base/error.hpp"

namespace heatmatch {

/// It is not known whether the file contains the change: the disk failed during a sync, or the file
/// was replaced meanwhile. Not derived from CatalogError, after which nothing is changed. The
/// message names the history entry that exists if the change was kept.
class OutcomeUnknown : public Error {
  public:
    using Error::Error;
};

}  // namespace heatmatch
