// What a value is made of, said once: each member's name, range and meaning. Validation, JSON both ways, schemas,
// bands, Python's properties and their documentation all follow from it.
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
#include <utility>
#include <variant>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/version.hpp"

namespace levigate::inline v0 {

struct Description;

/// What a member holds.
enum class Form {
  number,  ///< double
  whole,   ///< an integer
  truth,   ///< bool
  text,    ///< std::string or std::string_view
  choice,  ///< one enumerator, by its name
  value,   ///< a described value
  maybe,   ///< one or none
  list,    ///< any number in order
  either,  ///< one of several kinds
};

/// How a type of member is read and set where only its address is known. Functions that do not apply are null.
struct Kind {
  Form form = Form::number;
  const Kind* of = nullptr;                     ///< maybe, list: what it holds
  const Description& (*described)() = nullptr;  ///< value: of its type
  bool natural = false;                         ///< whole: never below zero

  double (*number)(const void*) = nullptr;
  void (*set_number)(void*, double) = nullptr;
  std::int64_t (*whole)(const void*) = nullptr;  ///< whole, truth; of a choice its position
  void (*set_whole)(void*, std::int64_t) = nullptr;
  std::string_view (*text)(const void*) = nullptr;
  void (*set_text)(void*, std::string_view) = nullptr;  ///< null: fixed text
  std::size_t (*size)(const void*) = nullptr;         ///< maybe: 0 or 1; choice: how many there are
  std::string_view (*choice)(std::size_t) = nullptr;  ///< name of the choice at a position
  const void* (*item)(const void*, std::size_t) = nullptr;
  void* (*add)(void*) = nullptr;   ///< maybe, list: makes a new one, at the end, and returns it
  void (*clear)(void*) = nullptr;  ///< maybe, list: leaves none
  const Kind* (*held)(const void*) =
      nullptr;                         ///< either: the kind of what it holds, which is item(at, 0)
  std::span<const Kind* const> kinds;  ///< either: all that it may hold
  void* (*choose)(void*,
                  std::size_t) = nullptr;  ///< either: makes one of these kinds and returns it
};

/// One member of a value.
struct Member {
  std::string_view name;   ///< in C++, Python and JSON alike, with the unit as suffix
  std::string_view about;  ///< one sentence or less
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();  ///< of a number, or each number of a list
  std::string_view unit;      ///< in messages; by default what the suffix of the name stands for
  std::string_view infinite;  ///< what stands for an infinite number in a file, as "rigid"
  std::string_view none;  ///< of a maybe: what stands for none in a file that must say so, as "ask"
  bool may = false;       ///< a file may leave it out: the value keeps its default
  bool filled = false;    ///< a text or list that must not be empty; if lean, where a file has it
  bool held = true;       ///< false: no file holds it
  bool spread = false;    ///< of a value: its members stand in a file beside those of its owner
  bool lean = false;      ///< a file of what one gives leaves it out where it is as in a new value
  const Kind* kind = nullptr;
  const void* (*in)(const void* owner) = nullptr;

  void* in_mutable(void* owner) const { return const_cast<void*>(in(owner)); }

  /// The same with another value of one of these. Before its uses, as clang 14 wants it in constants.
  template <typename Field>
  constexpr Member with(Field Member::*field, Field value) const {
    Member changed = *this;
    changed.*field = value;
    return changed;
  }

  // What a description says of a member beside its name, range and meaning.
  constexpr Member optional() const { return with(&Member::may, true); }
  constexpr Member not_empty() const { return with(&Member::filled, true); }
  constexpr Member unwritten() const { return with(&Member::held, false); }
  constexpr Member flat() const { return with(&Member::spread, true); }
  constexpr Member left_out_as_made() const { return optional().with(&Member::lean, true); }
  constexpr Member in_unit(std::string_view other) const { return with(&Member::unit, other); }
  constexpr Member with_infinity(std::string_view text) const {
    return with(&Member::infinite, text);
  }
  constexpr Member with_none(std::string_view text) const { return with(&Member::none, text); }
  /// With a kind of its own, as where a file names the members of its type differently: see kind_with.
  constexpr Member as(const Kind& other) const { return with(&Member::kind, &other); }
};

/// What a type of value is made of.
struct Description {
  std::string_view name;   ///< of the type, in C++ and Python alike
  std::string_view about;  ///< a sentence
  std::span<const Member> members;
  /// What more must hold, which no member says alone; null: nothing. Throws where it does not.
  void (*rule)(const void* value, std::string_view where) = nullptr;
  const void* (*made)() = nullptr;  ///< a value as it is made; null where none can be

  /// The member of that name, or null.
  constexpr const Member* find(std::string_view member) const noexcept {
    for (const Member& one : members) {
      if (one.name == member) return &one;
    }
    return nullptr;
  }
};

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

/// The unit that a name's suffix stands for: "um" of "mean_um"; empty where it has none.
constexpr std::string_view unit_of(std::string_view name) {
  constexpr std::pair<std::string_view, std::string_view> units[] = {
      {"_um_per_m", "um/m"}, {"_m_s", "m/s"}, {"_cm2", "cm2"}, {"_mm3", "mm3"}, {"_per_um", "1/um"},
      {"_kpa", "kPa"},       {"_mpa", "MPa"}, {"_deg", "deg"}, {"_um", "um"},   {"_mm", "mm"},
      {"_gu", "GU"},         {"_pm", "pm"},   {"_m", "m"},     {"_n", "N"},     {"_h", "h"},
      {"_k", "K"},           {"_s", "s"},     {"_min", "min"},
  };
  for (const auto& [suffix, unit] : units) {
    if (name.ends_with(suffix)) return unit;
  }
  if (name.ends_with("minutes")) return "min";
  if (name.ends_with("rpm")) return "1/min";
  return {};
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
struct Alternatives;
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

/// The kind of a type: how its members are read and set.
template <typename Type>
constexpr Kind kind_of() {
  Kind k;
  if constexpr (std::is_same_v<Type, double>) {
    k.form = Form::number;
    k.number = [](const void* at) { return as<double>(at); };
    k.set_number = [](void* at, double value) { as<double>(at) = value; };
  } else if constexpr (std::is_same_v<Type, bool>) {
    k.form = Form::truth;
    k.whole = [](const void* at) { return std::int64_t{as<bool>(at)}; };
    k.set_whole = [](void* at, std::int64_t value) { as<bool>(at) = value != 0; };
  } else if constexpr (std::is_integral_v<Type>) {
    k.form = Form::whole;
    k.natural = std::is_unsigned_v<Type>;
    k.whole = [](const void* at) { return static_cast<std::int64_t>(as<Type>(at)); };
    k.set_whole = [](void* at, std::int64_t value) { as<Type>(at) = static_cast<Type>(value); };
  } else if constexpr (std::is_same_v<Type, std::string> ||
                       std::is_same_v<Type, std::string_view>) {
    k.form = Form::text;
    k.text = [](const void* at) { return std::string_view(as<Type>(at)); };
    if constexpr (std::is_same_v<Type, std::string>) {
      k.set_text = [](void* at, std::string_view value) { as<std::string>(at) = value; };
    }
  } else if constexpr (std::is_enum_v<Type>) {
    k.form = Form::choice;
    k.whole = [](const void* at) { return static_cast<std::int64_t>(position_of(as<Type>(at))); };
    k.set_whole = [](void* at, std::int64_t value) {
      as<Type>(at) = choices<Type>[static_cast<std::size_t>(value)];
    };
    k.size = [](const void*) { return choices<Type>.size(); };
    k.choice = [](std::size_t at) -> std::string_view { return to_string(choices<Type>[at]); };
  } else if constexpr (IsOptional<Type>::value) {
    using Held = typename Type::value_type;
    k.form = Form::maybe;
    k.of = &kind<Held>;
    k.size = [](const void* at) { return std::size_t{as<Type>(at).has_value()}; };
    k.item = [](const void* at, std::size_t) -> const void* { return &*as<Type>(at); };
    k.add = [](void* at) -> void* { return &as<Type>(at).emplace(); };
    k.clear = [](void* at) { as<Type>(at).reset(); };
  } else if constexpr (IsVector<Type>::value) {
    using Held = typename Type::value_type;
    k.form = Form::list;
    k.of = &kind<Held>;
    k.size = [](const void* at) { return as<Type>(at).size(); };
    k.item = [](const void* at, std::size_t i) -> const void* { return &as<Type>(at)[i]; };
    k.add = [](void* at) -> void* { return &as<Type>(at).emplace_back(); };
    k.clear = [](void* at) { as<Type>(at).clear(); };
  } else if constexpr (IsVariant<Type>::value) {
    k.form = Form::either;
    k.whole = [](const void* at) { return static_cast<std::int64_t>(as<Type>(at).index()); };
    k.item = [](const void* at, std::size_t) -> const void* {
      return std::visit([](const auto& held) -> const void* { return &held; }, as<Type>(at));
    };
    k.held = [](const void* at) { return Alternatives<Type>::kinds[as<Type>(at).index()]; };
    k.kinds = Alternatives<Type>::kinds;
    k.choose = [](void* at, std::size_t i) { return Alternatives<Type>::makers[i](at); };
  } else {
    k.form = Form::value;
    k.described = []() -> const Description& { return description_of<Type>(); };
  }
  return k;
}

template <typename Variant, typename Held>
void* made_in(void* at) {
  return &as<Variant>(at).template emplace<Held>();
}

/// What a variant may hold, and how each of it is made there.
template <typename... Held>
struct Alternatives<std::variant<Held...>> {
  static constexpr const Kind* kinds[] = {&kind<Held>...};
  static constexpr void* (*makers[])(void*) = {&made_in<std::variant<Held...>, Held>...};
};

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

template <typename Type, const auto& other>
constexpr Kind kind_as() {
  Kind k = kind_of<Type>();
  if constexpr (IsOptional<Type>::value || IsVector<Type>::value) {
    k.of = &kind_with<typename Type::value_type, other>;
  } else {
    k.described = []() -> const Description& {
      static constexpr Description all = other.whole();
      return all;
    };
  }
  return k;
}

/// A value as it is made, where it can be.
template <typename Value>
constexpr auto maker() -> const void* (*)() {
  if constexpr (std::is_default_constructible_v<Value>) {
    return []() -> const void* {
      static const Value value{};
      return &value;
    };
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
