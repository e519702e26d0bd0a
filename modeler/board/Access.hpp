#pragma once

/// Reaching a member of the Board without knowing its type: what the field table binds each key to.

#include <array>
#include <map>
#include <optional>
#include <string>
#include <type_traits>
#include <variant>
#include <vector>

#include "board/Board.hpp"

namespace sagitta {

/// A point of a board file: x, y in mm.
using Place2 = std::array<double, 2>;
/// Three lengths of a board file, such as x, y, z in mm.
using Place3 = std::array<double, 3>;

/// What a key holds, whatever its kind. `monostate` means "not given": an empty optional, text, list or map. A choice
/// is an int: the position in the field's list of choices.
using Value = std::variant<std::monostate, bool, int, double, std::string, std::vector<int>, std::vector<double>,
                           Place2, std::vector<Place2>, std::map<std::string, std::string>, Place3, std::vector<Place3>,
                           std::map<std::string, double>, std::vector<std::string>>;

/// The struct that a table's keys are members of: the board itself, or one entry of a list of tables.
using Row = std::variant<Board*, Inlay*, Setup*, Cutter*, Sheet*, Material*, Cut*, Note*>;
using ConstRow = std::variant<const Board*, const Inlay*, const Setup*, const Cutter*, const Sheet*, const Material*,
                              const Cut*, const Note*>;

/// The same row, for reading only.
inline ConstRow reading(const Row& row) {
  return std::visit([](const auto* pointer) { return ConstRow(pointer); }, row);
}

namespace access {

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
struct IsVector : std::false_type {};
template <class T>
struct IsVector<std::vector<T>> : std::true_type {};

template <class T>
Value to_value(const T& member) {
  if constexpr (IsOptional<T>::value) {
    return member ? to_value(*member) : Value();
  } else if constexpr (std::is_same_v<T, LengthPair>) {
    return member.equal() ? Value(member.first) : Value(Place2{member.first, member.second});
  } else if constexpr (std::is_enum_v<T>) {
    return static_cast<int>(member);
  } else if constexpr (IsVector<T>::value) {
    if (member.empty()) return {};
    if constexpr (std::is_enum_v<typename T::value_type>) {
      std::vector<int> choices;
      for (const auto choice : member) choices.push_back(static_cast<int>(choice));
      return choices;
    } else {
      return member;
    }
  } else if constexpr (requires { member.empty(); } && !std::is_same_v<T, Place2> && !std::is_same_v<T, Place3>) {
    return member.empty() ? Value() : Value(member);
  } else {
    return member;
  }
}

/// The value must be of the member's kind.
template <class T>
void from_value(T& member, const Value& value) {
  if constexpr (IsOptional<T>::value) {
    from_value(member.emplace(), value);
  } else if constexpr (std::is_same_v<T, LengthPair>) {
    const auto* both = std::get_if<double>(&value);
    member = both != nullptr ? LengthPair(*both) : LengthPair(std::get<Place2>(value)[0], std::get<Place2>(value)[1]);
  } else if constexpr (std::is_enum_v<T>) {
    member = static_cast<T>(std::get<int>(value));
  } else if constexpr (IsVector<T>::value) {
    if constexpr (std::is_enum_v<typename T::value_type>) {
      member.clear();
      for (const int choice : std::get<std::vector<int>>(value)) {
        member.push_back(static_cast<typename T::value_type>(choice));
      }
    } else {
      member = std::get<T>(value);
    }
  } else {
    member = std::get<T>(value);
  }
}

/// The member at the end of a path; an optional struct on the way that is not there reads as one with every default.
template <auto First, auto... Rest, class T>
auto peek(const T& object) {
  if constexpr (IsOptional<T>::value) {
    return object ? peek<First, Rest...>(*object) : peek<First, Rest...>(typename T::value_type());
  } else if constexpr (sizeof...(Rest) == 0) {
    return object.*First;
  } else {
    return peek<Rest...>(object.*First);
  }
}

/// The same for writing; an optional struct on the way is made.
template <auto First, auto... Rest, class T>
auto& reach(T& object) {
  if constexpr (IsOptional<T>::value) {
    if (!object) object.emplace();
    return reach<First, Rest...>(*object);
  } else if constexpr (sizeof...(Rest) == 0) {
    return object.*First;
  } else {
    return reach<Rest...>(object.*First);
  }
}

template <class T>
struct OwnerOf;
template <class Struct, class Member>
struct OwnerOf<Member Struct::*> {
  using type = Struct;
};

}  // namespace access

/// How the field table reads and writes one member of a row.
struct Access {
  Value (*get)(const ConstRow& row) = nullptr;
  /// `monostate` puts the default back.
  void (*set)(const Row& row, const Value& value) = nullptr;
};

/// The access to the member at the end of a path of members: `at<&Board::scale, &Scale::length>`.
template <auto First, auto... Rest>
constexpr Access access_to() {
  using Struct = typename access::OwnerOf<decltype(First)>::type;
  return {[](const ConstRow& row) -> Value {
            return access::to_value(access::peek<First, Rest...>(*std::get<const Struct*>(row)));
          },
          [](const Row& row, const Value& value) {
            auto& member = access::reach<First, Rest...>(*std::get<Struct*>(row));
            if (std::holds_alternative<std::monostate>(value)) {
              member = access::peek<First, Rest...>(Struct());
            } else {
              access::from_value(member, value);
            }
          }};
}

template <auto... Path>
inline constexpr Access at = access_to<Path...>();

}  // namespace sagitta
