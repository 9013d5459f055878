#pragma once

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"

namespace heatmatch {

/// Specialize for a kind of row that a field of kind `rows` or `record` contains: `static
/// std::vector<double> to_row(const T&)` and `static T from_row(const std::vector<double>&)`.
template <class T>
struct RowShape;

namespace detail {

inline Value to_value(const std::string& text) {
    return text.empty() ? Value{} : Value{text};
}
inline Value to_value(double number) {
    return number;
}
inline Value to_value(int number) {
    return static_cast<double>(number);
}
inline Value to_value(bool flag) {
    return flag;
}
inline Value to_value(const TextMap& map) {
    return map.empty() ? Value{} : Value{map};
}
inline Value to_value(const std::vector<double>& list) {
    return list.empty() ? Value{} : Value{list};
}
inline Value to_value(const std::vector<int>& list) {
    return list.empty() ? Value{} : Value{std::vector<double>(list.begin(), list.end())};
}
inline Value to_value(const std::vector<std::string>& list) {
    return list.empty() ? Value{} : Value{list};
}
/// A number without an enumerator is passed on as a number, so that the check rejects it.
template <Choice Kind>
Value to_value(Kind kind) {
    const std::string_view word = word_of(kind);
    if (word.empty()) return "choice " + std::to_string(static_cast<int>(kind));
    return std::string(word);
}
template <class T>
Value to_value(const std::optional<T>& maybe) {
    if constexpr (requires { RowShape<T>::to_row(*maybe); }) {
        return maybe ? Value{Rows{RowShape<T>::to_row(*maybe)}} : Value{};
    } else {
        return maybe ? to_value(*maybe) : Value{};
    }
}
template <class T>
requires requires(const T& row) {
    RowShape<T>::to_row(row);
}
Value to_value(const std::vector<T>& list) {
    if (list.empty()) return {};
    Rows rows;
    for (const T& row : list) rows.push_back(RowShape<T>::to_row(row));
    return rows;
}

inline void from_value(std::string& out, const Value& value) {
    out = std::holds_alternative<std::string>(value) ? std::get<std::string>(value) : "";
}
inline void from_value(double& out, const Value& value) {
    out = std::holds_alternative<double>(value) ? std::get<double>(value) : 0.0;
}
inline void from_value(int& out, const Value& value) {
    out = std::holds_alternative<double>(value) ? static_cast<int>(std::get<double>(value)) : 0;
}
inline void from_value(bool& out, const Value& value) {
    out = std::holds_alternative<bool>(value) && std::get<bool>(value);
}
inline void from_value(TextMap& out, const Value& value) {
    out = std::holds_alternative<TextMap>(value) ? std::get<TextMap>(value) : TextMap{};
}
inline void from_value(std::vector<double>& out, const Value& value) {
    out.clear();
    if (const auto* list = std::get_if<std::vector<double>>(&value)) out = *list;
}
inline void from_value(std::vector<int>& out, const Value& value) {
    out.clear();
    if (const auto* list = std::get_if<std::vector<double>>(&value)) {
        for (double number : *list) out.push_back(static_cast<int>(number));
    }
}
inline void from_value(std::vector<std::string>& out, const Value& value) {
    out.clear();
    if (const auto* list = std::get_if<std::vector<std::string>>(&value)) out = *list;
}
/// A word outside the choice becomes a number that the check rejects.
template <Choice Kind>
void from_value(Kind& out, const Value& value) {
    const auto* word = std::get_if<std::string>(&value);
    out = word == nullptr
              ? Kind{}
              : find_choice<Kind>(*word).value_or(static_cast<Kind>(words_of(Kind{}).size()));
}
template <class T>
void from_value(std::optional<T>& out, const Value& value) {
    if (std::holds_alternative<std::monostate>(value)) {
        out.reset();
        return;
    }
    if constexpr (requires { RowShape<T>::from_row({}); }) {
        out = RowShape<T>::from_row(std::get<Rows>(value).at(0));
    } else {
        T inner{};
        from_value(inner, value);
        out = inner;
    }
}
template <class T>
requires requires {
    RowShape<T>::from_row({});
}
void from_value(std::vector<T>& out, const Value& value) {
    out.clear();
    if (const auto* rows = std::get_if<Rows>(&value)) {
        for (const auto& row : *rows) out.push_back(RowShape<T>::from_row(row));
    }
}

template <class Class, class T>
Class class_of(T Class::*);

template <auto First, auto... Rest>
decltype(auto) follow(auto& record) {
    if constexpr (sizeof...(Rest) == 0) {
        return (record.*First);
    } else {
        return follow<Rest...>(record.*First);
    }
}

/// The words of a member that is a choice or an optional choice; empty for any other.
template <class Member>
std::span<const std::string_view> words_of_member(const Member&) {
    if constexpr (Choice<Member>) {
        return words_of(Member{});
    } else {
        return {};
    }
}
template <class T>
std::span<const std::string_view> words_of_member(const std::optional<T>&) {
    return words_of_member(T{});
}

}  // namespace detail

/// Completes a field with access to the member at the end of a path of member pointers.
template <auto First, auto... Rest>
[[nodiscard]] Field bind(Field field) {
    using Record = decltype(detail::class_of(First));
    const Record empty{};
    field.words = detail::words_of_member(detail::follow<First, Rest...>(empty));
    field.get = [](const void* record) {
        return detail::to_value(
            detail::follow<First, Rest...>(*static_cast<const Record*>(record)));
    };
    field.set = [](void* record, const Value& value) {
        detail::from_value(detail::follow<First, Rest...>(*static_cast<Record*>(record)), value);
    };
    return field;
}

}  // namespace heatmatch
