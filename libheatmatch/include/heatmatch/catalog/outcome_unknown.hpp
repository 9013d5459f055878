#pragma once

#include "heatmatch/base/error.hpp"

namespace heatmatch {

/// It is not known whether the file contains the change: the disk failed while it was being
/// synced, or the file was replaced meanwhile. No CatalogError, which says that nothing was
/// changed. The message names the entry of the history that is there if the change was kept.
class OutcomeUnknown : public Error {
  public:
    using Error::Error;
};

}  // namespace heatmatch
