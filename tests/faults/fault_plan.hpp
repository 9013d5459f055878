#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace faults {

/// What a call does to a file.
enum class Kind : int { write, sync, truncate, open, lock, rename, unlink };
inline constexpr int kind_count = 7;

/// What becomes of the call that the plan is for.
enum class Fate : int {
    fail_once,      //!< it fails, the next ones do not
    fail_for_good,  //!< it fails, and all of its kind after it
    fall_short,     //!< half of a write is written and told; from then on all fail: a full disk
    die,            //!< the process is killed before it
    die_halfway     //!< the process is killed when half of a write is written
};

/// What the call is to do now.
enum class Verdict { pass, fail, half, half_and_die };

/// The path of a file that is open; empty if it has none.
std::string path_of(int file);
/// A path as the call means it, from the root.
std::string path_from(int folder, const char* path);
/// Whether faults are planned for the files at that path, or calls on them are recorded.
bool is_watched(const std::string& path);
/// Counts a call on a watched file and says what it is to do; on failure errno is set.
Verdict judge(Kind kind);

/// Whether some call is to fail.
bool is_planned();

/// Whether calls on watched files are recorded.
bool is_recorded();
/// Adds a call that was done to the record: a letter, the file, where in it, and what was written.
void record(char what, const std::string& path, long long offset, std::string_view data);

}  // namespace faults
