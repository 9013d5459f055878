#pragma once

namespace SQLite {
class Database;
}

namespace heatmatch {

/// A file may come from an unknown source: no code in it may run, and statements have a step limit.
void protect(SQLite::Database& database);

/// Permits SQLite to copy a file whose tables were checked: copying needs its own json_valid(),
/// which is otherwise untrusted.
class TrustForCopy {
  public:
    explicit TrustForCopy(SQLite::Database& database);
    TrustForCopy(const TrustForCopy&) = delete;
    TrustForCopy& operator=(const TrustForCopy&) = delete;
    ~TrustForCopy();

  private:
    SQLite::Database& database_;
};

}  // namespace heatmatch
