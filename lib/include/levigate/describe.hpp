// What a value is made of, said once: each member's name, range and meaning.
// Validation, JSON both ways, schemas, bands, Python's properties and their documentation all follow from it.
#pragma once

#include <array>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/description.hpp"
#include "levigate/unit_of.hpp"
#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// The description of a type: specialise as
/// `template <std::same_as<Block> Value> inline constexpr auto described<Value> = describe<Value>(...)`, its lines with &Value::.
/// It then depends on Value and is worked out where it is used, not in each file that includes it.
template <typename Value>
inline constexpr auto described = nullptr;

/// Whether a type has a description.
template <typename Value>
concept Described = !std::is_null_pointer_v<std::remove_cvref_t<decltype(described<Value>)>>;

/// The description of a described type.
template <typename Value>
const Description& description_of() {
  static constexpr Description all = described<Value>.whole();
  return all;
}

namespace detail {

template <typename>
struct IsOptional : std::false_type {};
template <typename Held>
struct IsOptional<std::optional<Held>> : std::true_type {};
template <typename>
struct IsVariant : std::false_type {};
template <typename... Held>
struct IsVariant<std::variant<Held...>> : std::true_type {};
template <typename>
struct IsVector : std::false_type {};
template <typename Held>
struct IsVector<std::vector<Held>> : std::true_type {};

template <typename Type>
const Type& as(const void* at) {
  return *static_cast<const Type*>(at);
}
template <typename Type>
Type& as(void* at) {
  return *static_cast<Type*>(at);
}

template <typename Type>
constexpr Kind kind_of();

template <typename Type>
inline constexpr Kind kind = kind_of<Type>();

template <typename Enum>
std::size_t position_of(Enum value) {
  std::size_t at = 0;
  while (at < choices<Enum>.size() && choices<Enum>[at] != value) ++at;
  return at;
}

/// How the members of a type are read and set. Functions and no lambdas: each of those is three functions to a compiler.
template <typename Type>
struct Access {
  static double number(const void* at) { return as<Type>(at); }
  static void set_number(void* at, double value) { as<Type>(at) = value; }

  static std::int64_t whole(const void* at) { return static_cast<std::int64_t>(as<Type>(at)); }
  static void set_whole(void* at, std::int64_t value) { as<Type>(at) = static_cast<Type>(value); }

  static std::string_view text(const void* at) { return as<Type>(at); }
  static void set_text(void* at, std::string_view value) { as<Type>(at) = value; }

  static const Description& described() { return description_of<Type>(); }
};

template <typename Type>
requires std::is_enum_v<Type>
struct Access<Type> {
  static std::int64_t whole(const void* at) {
    return static_cast<std::int64_t>(position_of(as<Type>(at)));
  }
  static void set_whole(void* at, std::int64_t value) {
    as<Type>(at) = choices<Type>[static_cast<std::size_t>(value)];
  }
  static std::size_t size(const void*) { return choices<Type>.size(); }
  static std::string_view choice(std::size_t at) { return to_string(choices<Type>[at]); }
};

template <typename Held>
struct Access<std::optional<Held>> {
  using Type = std::optional<Held>;
  static std::size_t size(const void* at) { return as<Type>(at).has_value() ? 1 : 0; }
  static const void* item(const void* at, std::size_t) { return &*as<Type>(at); }
  static void* add(void* at) { return &as<Type>(at).emplace(); }
  static void clear(void* at) { as<Type>(at).reset(); }
};

template <typename Held>
struct Access<std::vector<Held>> {
  using Type = std::vector<Held>;
  static std::size_t size(const void* at) { return as<Type>(at).size(); }
  static const void* item(const void* at, std::size_t i) { return &as<Type>(at)[i]; }
  static void* add(void* at) { return &as<Type>(at).emplace_back(); }
  static void clear(void* at) { as<Type>(at).clear(); }
};

template <typename... Held>
struct Access<std::variant<Held...>> {
  using Type = std::variant<Held...>;
  static std::int64_t whole(const void* at) {
    return static_cast<std::int64_t>(as<Type>(at).index());
  }
  static const void* item(const void* at, std::size_t) {
    const void* found = nullptr;
    ((found = found ? found : std::get_if<Held>(&as<Type>(at))), ...);
    return found;
  }
  static constexpr const Kind* kinds[] = {&kind<Held>...};
  static const Kind* held(const void* at) { return kinds[as<Type>(at).index()]; }
  template <typename Chosen>
  static void* made(void* at) {
    return &as<Type>(at).template emplace<Chosen>();
  }
  static void* choose(void* at, std::size_t i) {
    constexpr void* (*makers[])(void*) = {&made<Held>...};
    return makers[i](at);
  }
};

/// The kind of a type: how its members are read and set.
template <typename Type>
constexpr Kind kind_of() {
  using A = Access<Type>;
  Kind k;
  if constexpr (std::is_same_v<Type, double>) {
    k.form = Form::number;
    k.number = A::number;
    k.set_number = A::set_number;
  } else if constexpr (std::is_integral_v<Type>) {
    k.form = std::is_same_v<Type, bool> ? Form::truth : Form::whole;
    k.natural = std::is_unsigned_v<Type> && k.form == Form::whole;
    k.whole = A::whole;
    k.set_whole = A::set_whole;
  } else if constexpr (std::is_same_v<Type, std::string>) {
    k.form = Form::text;
    k.text = A::text;
    k.set_text = A::set_text;
  } else if constexpr (std::is_same_v<Type, std::string_view>) {
    k.form = Form::text;
    k.text = A::text;
  } else if constexpr (std::is_enum_v<Type>) {
    k.form = Form::choice;
    k.whole = A::whole;
    k.set_whole = A::set_whole;
    k.size = A::size;
    k.choice = A::choice;
  } else if constexpr (IsOptional<Type>::value || IsVector<Type>::value) {
    k.form = IsVector<Type>::value ? Form::list : Form::maybe;
    k.of = &kind<typename Type::value_type>;
    k.size = A::size;
    k.item = A::item;
    k.add = A::add;
    k.clear = A::clear;
  } else if constexpr (IsVariant<Type>::value) {
    k.form = Form::either;
    k.whole = A::whole;
    k.item = A::item;
    k.held = A::held;
    k.kinds = A::kinds;
    k.choose = A::choose;
  } else {
    k.form = Form::value;
    k.described = A::described;
  }
  return k;
}

template <typename>
struct Pointed;
template <typename Class, typename Type>
struct Pointed<Type Class::*> {
  using Owner = Class;
  using Held = Type;
};

template <typename>
struct Checked;
template <typename Type>
struct Checked<void (*)(const Type&, std::string_view)> {
  using Value = Type;
};

template <typename Owner, auto pointer>
const void* held_in(const void* owner) {
  return &(as<Owner>(owner).*pointer);
}

template <typename Type, const auto& other>
constexpr Kind kind_as();

}  // namespace detail

/// The kind of a type whose values, or whose one or listed values, have another description than described<>.
template <typename Type, const auto& other>
inline constexpr Kind kind_with = detail::kind_as<Type, other>();

namespace detail {

template <const auto& other>
const Description& described_by() {
  static constexpr Description all = other.whole();
  return all;
}

template <typename Type, const auto& other>
constexpr Kind kind_as() {
  Kind k = kind_of<Type>();
  if constexpr (IsOptional<Type>::value || IsVector<Type>::value) {
    k.of = &kind_with<typename Type::value_type, other>;
  } else {
    k.described = described_by<other>;
  }
  return k;
}

template <typename Value>
const void* made() {
  static const Value value{};
  return &value;
}

/// A value as it is made, where it can be.
template <typename Value>
constexpr auto maker() -> const void* (*)() {
  if constexpr (std::is_default_constructible_v<Value>) {
    return made<Value>;
  } else {
    return nullptr;
  }
}

template <typename Value, std::size_t count>
struct Members {
  std::string_view name, about;
  std::array<Member, count> members;
  void (*checked)(const void*, std::string_view) = nullptr;

  constexpr Description whole() const { return {name, about, members, checked, maker<Value>()}; }

  /// What more must hold: see rule_by.
  constexpr Members rule(void (*check)(const void*, std::string_view)) const {
    Members changed = *this;
    changed.checked = check;
    return changed;
  }
};

}  // namespace detail

/// A rule of a description from a function of value and place that throws where the value breaks it.
template <auto check>
void rule_by(const void* value, std::string_view where) {
  check(detail::as<typename detail::Checked<decltype(check)>::Value>(value), where);
}

/// The range of a number, ends included.
struct Within {
  double low, high;
};

/// From `low` on.
constexpr Within at_least(double low) { return {low, std::numeric_limits<double>::infinity()}; }

/// One line of a description: pointer to the member, its name, and what it is. Owner: the type described, where it inherits the member.
template <auto pointer, typename Owner = typename detail::Pointed<decltype(pointer)>::Owner>
constexpr Member member(std::string_view name, std::string_view about) {
  using Type = typename detail::Pointed<decltype(pointer)>::Held;
  Member said;
  said.name = name;
  said.about = about;
  said.unit = unit_of(name);
  said.may = detail::IsOptional<Type>::value;
  said.kind = &detail::kind<Type>;
  said.in = &detail::held_in<Owner, pointer>;
  return said;
}

/// The same of a number with a range.
template <auto pointer, typename Owner = typename detail::Pointed<decltype(pointer)>::Owner>
constexpr Member member(std::string_view name, Within range, std::string_view about) {
  Member said = member<pointer, Owner>(name, about);
  said.low = range.low;
  said.high = range.high;
  return said;
}

/// A description: name of the type, a sentence, and its members in order.
template <typename Value, std::same_as<Member>... Lines>
constexpr detail::Members<Value, sizeof...(Lines)> describe(std::string_view name,
                                                            std::string_view about,
                                                            const Lines&... members) {
  return {name, about, {members...}};
}

}  // namespace levigate
