#pragma once

/// While it lives, SQLite writes through a file layer of ours whose write-ahead log cannot be made
/// lasting: what is written is there, the disk only never says so.
class FailingSync {
  public:
    FailingSync();
    FailingSync(const FailingSync&) = delete;
    FailingSync& operator=(const FailingSync&) = delete;
    ~FailingSync();

    /// From now on, or no longer.
    static void fail(bool failing);
};
