// Walks a value by its description and collects what speaks against it.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A place in a message: the pointer, or at the root that of the member.
inline std::string place_of(const std::string& pointer, std::string_view name) {
  return pointer.empty() ? std::string("/").append(name) : pointer;
}

/// The pointer of a member. A place that is no pointer has none.
inline std::string pointer_of(const std::string& pointer, std::string_view name) {
  const bool in_file = pointer.empty() || pointer.starts_with('/');
  return in_file ? pointer + "/" + std::string(name) : std::string();
}

/// Collects the faults of a value member by member.
class FaultWalk {
 public:
  /// Where it is not deep, values inside are left out.
  explicit FaultWalk(std::vector<Fault>& faults, bool deep = true) : faults_(faults), deep_(deep) {}

  /// `named` is the nearest name of a value around this one, as " ('top')".
  void value(const Description& description, const void* at, const std::string& pointer,
             const std::string& named) {
    const std::string here = named_in(description, at, named);
    const std::size_t first = faults_.size();
    bool sound = true;
    for (const Member& member : description.members) {
      const std::size_t before = faults_.size();
      one(member, member.in(at), pointer, here);
      sound = sound && (faults_.size() == before || member.kind->form == Form::value);
    }
    const std::span<const Fault> members = std::span(faults_).subspan(first);
    for (Fault& fault : by_rule(description, at, pointer + here, members, sound)) {
      if (pointer.starts_with('/')) fault.pointer.insert(0, pointer);
      faults_.push_back(std::move(fault));
    }
  }

  /// What the rule of a description has against a value, each pointer from the value on. Of a member that has a fault no
  /// rule has more to say; and a number made of members is out of range with one of them, as a pressure with its force.
  static std::vector<Fault> by_rule(const Description& description, const void* at,
                                    const std::string& place, std::span<const Fault> members,
                                    bool sound) {
    std::vector<Fault> faults;
    if (!description.rule) return faults;
    try {
      description.rule(at, place);
    } catch (const Error& error) {
      for (const Fault& fault : error.faults()) {
        const bool known = std::any_of(members.begin(), members.end(), [&](const Fault& member) {
          return member.value && speaks_of(fault, member.quantity);
        });
        if (!known && (sound || fault.code != ErrorCode::out_of_range)) faults.push_back(fault);
      }
    }
    return faults;
  }

  /// One member of a value at `pointer`.
  void one(const Member& member, const void* at, const std::string& pointer,
           const std::string& named) {
    held(member, *member.kind, at, std::string(member.name), pointer, named);
  }

  /// " ('top')": the name or id of a value, where it has one that is not empty, else that around it.
  static std::string named_in(const Description& description, const void* at,
                              const std::string& around) {
    for (const std::string_view key : {"name", "id"}) {
      const Member* member = description.find(key);
      if (!member || member->kind->form != Form::text) continue;
      const std::string_view name = member->kind->text(member->in(at));
      return name.empty() ? around : " ('" + std::string(name) + "')";
    }
    return around;
  }

 private:
  /// Whether a fault is about the number of that name.
  static bool speaks_of(const Fault& fault, const std::string& quantity) {
    const auto& others = fault.contradicts;
    return fault.quantity == quantity ||
           std::find(others.begin(), others.end(), quantity) != others.end();
  }

  void held(const Member& member, const Kind& kind, const void* at, const std::string& name,
            const std::string& pointer, const std::string& named) {
    switch (kind.form) {
      case Form::number: range(member, kind.number(at), name, pointer, named); break;
      case Form::whole:
        range(member, static_cast<double>(kind.whole(at)), name, pointer, named);
        break;
      case Form::text:
        if (member.filled && !member.lean &&
            kind.text(at).find_first_not_of(" \t\r\n") == std::string_view::npos)
          add(told(name + " is empty, in " + place_of(pointer, name) + named), name, pointer);
        break;
      case Form::value:
        if (deep_) {
          value(kind.described(), at, member.spread ? pointer : pointer + "/" + name, named);
        }
        break;
      case Form::maybe:
        if (kind.size(at) > 0) held(member, *kind.of, kind.item(at, 0), name, pointer, named);
        break;
      case Form::list:
        if (member.filled && !member.lean && kind.size(at) == 0)
          add(told(name + " is empty, in " + place_of(pointer, name) + named), name, pointer);
        for (std::size_t i = 0; i < kind.size(at); ++i) {
          const std::string at_i = std::to_string(i);
          const std::string item =
              kind.of->form == Form::value ? name + "/" + at_i : name + "[" + at_i + "]";
          held(member, *kind.of, kind.item(at, i), item, pointer, named);
        }
        break;
      case Form::either:
        held(member, *kind.held(at), kind.item(at, 0), name, pointer, named);
        break;
      case Form::truth:
      case Form::choice: break;
    }
  }

  void range(const Member& member, double number, const std::string& name,
             const std::string& pointer, const std::string& named) {
    try {
      require_range(number, member.low, member.high, name, member.unit,
                    place_of(pointer, name) + named);
    } catch (const OutOfRange& error) {
      Fault fault = error.fault();
      fault.pointer = pointer_of(pointer, member.name);
      faults_.push_back(std::move(fault));
    }
  }

  void add(Fault fault, const std::string& name, const std::string& pointer) {
    fault.quantity = name;
    fault.pointer = pointer_of(pointer, name);
    faults_.push_back(std::move(fault));
  }

  std::vector<Fault>& faults_;
  bool deep_;
};

}  // namespace detail

}  // namespace levigate
