#pragma once

/// During its lifetime SQLite writes through a file layer whose write-ahead log cannot be made
/// permanent: data are written, but the disk never confirms it.
class FailingSync {
  public:
    FailingSync();
    FailingSync(const FailingSync&) = delete;
    FailingSync& operator=(const FailingSync&) = delete;
    ~FailingSync();

    /// From now on, or no longer.
    static void fail(bool failing);
};
