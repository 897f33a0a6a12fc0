// What is known of a value once it is described: its members, and how each is read and set where only its address is known.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <span>
#include <string_view>

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

/// What a number of a profile is to a plan that rests on it.
enum class Input {
  unsaid,    ///< of no table of profiles that a plan's inputs are drawn from
  chosen,    ///< decided by a person: it is not drawn
  believed,  ///< drawn over its band
  typed,     ///< given by a person, with an error of its own: it is drawn by the law of that
  pace,      ///< believed too, and acts on the rate of removal alone: a learned pace stands for it
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
  std::string_view example;  ///< JSON of a usual value; empty: its range or its choices tell one
  bool may = false;          ///< a file may leave it out: the value keeps its default
  bool filled = false;  ///< a text or list that must not be empty; if lean, where a file has it
  bool held = true;     ///< false: no file holds it
  bool spread = false;  ///< of a value: its members stand in a file beside those of its owner
  bool lean = false;    ///< a file of what one gives leaves it out where it is as in a new value
  bool rare = false;    ///< and so does a result
  Input input = Input::unsaid;
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
  constexpr Member only_where_told() const { return left_out_as_made().with(&Member::rare, true); }
  constexpr Member such_as(std::string_view json) const { return with(&Member::example, json); }
  constexpr Member in_unit(std::string_view other) const { return with(&Member::unit, other); }
  constexpr Member with_infinity(std::string_view text) const {
    return with(&Member::infinite, text);
  }
  constexpr Member with_none(std::string_view text) const { return with(&Member::none, text); }
  constexpr Member is(Input said) const { return with(&Member::input, said); }
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

}  // namespace levigate
