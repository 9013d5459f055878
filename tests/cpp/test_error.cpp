#include <stdexcept>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"

using heatmatch::CatalogError;
using heatmatch::compose_message;
using heatmatch::Error;
using heatmatch::ErrorDetail;
using heatmatch::FileError;
using heatmatch::InvalidInput;
using heatmatch::NotFound;
using heatmatch::quote;
using heatmatch::verbatim;

TEST_CASE("a message is composed of the pieces that apply") {
    CHECK(compose_message({.part = "panel \"barn\"",
                           .field = "v_oc",
                           .value = "-3 V",
                           .allowed = "> 0 V",
                           .remedy = verbatim("read Voc from the label")}) ==
          "panel \"barn\": v_oc = -3 V must be > 0 V; read Voc from the label");
    CHECK(compose_message({.field = "v_oc", .allowed = "given"}) == "v_oc must be given");
    CHECK(compose_message({.value = "\"5,5\"", .allowed = "a number"}) ==
          "\"5,5\" must be a number");
    CHECK(compose_message({.part = "panel \"barn\"", .field = "id", .value = "x"}) ==
          "panel \"barn\": id = x");
}

TEST_CASE("an error keeps its pieces for programs") {
    const InvalidInput error(ErrorDetail{.part = "wire \"a\"", .field = "area_mm2", .value = "0"});
    CHECK(std::string(error.what()) == compose_message(error.detail()));
    CHECK(error.detail().part == "wire \"a\"");
    CHECK(error.detail().field == "area_mm2");
    CHECK(error.detail().value == "0");
    const FileError file("cannot read \"x\"", ErrorDetail{.part = "x"});
    CHECK(std::string(file.what()) == "cannot read \"x\"");
    CHECK(file.detail().part == "x");
}

TEST_CASE("all errors of the library are caught by one name") {
    CHECK_THROWS_AS(throw InvalidInput("a"), Error);
    CHECK_THROWS_AS(throw NotFound("a"), Error);
    CHECK_THROWS_AS(throw FileError("a"), Error);
    CHECK_THROWS_AS(throw CatalogError("a"), Error);
    CHECK_THROWS_AS(throw CatalogError("a"), std::runtime_error);
}

// Source: UTF-8 writes ü in two bytes and U+1F600 in four.
TEST_CASE("a quoted text is cut at a whole character") {
    CHECK(quote("barn") == "\"barn\"");
    CHECK(quote("") == "\"\"");
    CHECK(quote("barn", 4) == "\"barn\"");
    CHECK(quote("barns", 4) == "\"barn...\"");
    CHECK(quote("ab\u00fcc", 3) == "\"ab...\"");
    CHECK(quote("ab\u00fcc", 4) == "\"ab\u00fc...\"");
    CHECK(quote("\U0001F600\U0001F600", 7) == "\"\U0001F600...\"");
    CHECK(quote("\U0001F600", 3) == "\"...\"");
}

TEST_CASE("a quoted text repeats neither broken bytes nor what ends a text of C") {
    CHECK(quote("S\xFC\x64").find('\xFC') == std::string::npos);
    CHECK(quote(std::string("barn\0pair", 9)).find('\0') == std::string::npos);
    CHECK(quote(std::string(100, '\x80')).find('\x80') == std::string::npos);
    CHECK(quote("two\nlines").find('\n') == std::string::npos);
}
