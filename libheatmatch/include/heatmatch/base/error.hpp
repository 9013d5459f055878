#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// What was wrong, as separate texts: a program can test them, and a person can read them.
struct ErrorDetail {
    std::string part{};     //!< the part, for example `panel "barn-pair"`
    std::string field{};    //!< the field, as it is spelled in JSON
    std::string value{};    //!< the value found, with its unit
    std::string allowed{};  //!< allowed values
    Sentence remedy{};      //!< how to correct it
};

/// Base of all exceptions of the library. The text names part, field, value, allowed range and
/// remedy, as far as they apply.
class Error : public std::runtime_error {
  public:
    explicit Error(const std::string& message, ErrorDetail detail = {});
    [[nodiscard]] const ErrorDetail& detail() const { return detail_; }

  private:
    ErrorDetail detail_;
};

/// A value, a record or a file's content that cannot be used.
class InvalidInput : public Error {
  public:
    using Error::Error;
    /// Builds the message from the pieces: `part: field = value must be allowed; remedy`.
    explicit InvalidInput(const ErrorDetail& detail);
};

/// A part whose id does not exist.
class NotFound : public Error {
  public:
    using Error::Error;
};

/// A file that cannot be read or written; the message holds the path tried.
class FileError : public Error {
  public:
    using Error::Error;
};

/// A change that the catalog rejects, or a catalog file that cannot be used. The catalog is
/// unchanged.
class CatalogError : public Error {
  public:
    using Error::Error;
};

/// The message that InvalidInput builds: `part: field = value must be allowed; remedy`.
[[nodiscard]] std::string compose_message(const ErrorDetail& detail);

/// A text in quotes for a message, cut after `longest` bytes at a whole UTF-8 character.
[[nodiscard]] std::string quote(std::string_view text, std::size_t longest = 60);
/// The same without quotes.
[[nodiscard]] std::string clip(std::string_view text, std::size_t longest = 60);

}  // namespace heatmatch
