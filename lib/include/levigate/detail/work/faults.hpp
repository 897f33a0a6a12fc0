// Walks a value by its description.
#pragma once

#include <cmath>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/faults.hpp"

#include "levigate/detail/work.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A place in a message: the pointer, or at the root that of the member.
inline std::string place_of(const std::string& pointer, std::string_view name) {
  return pointer.empty() ? "/" + std::string(name) : pointer;
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
    for (const Member& member : description.members) one(member, member.in(at), pointer, here);
    if (!description.rule) return;
    try {
      description.rule(at, pointer + here);
    } catch (const Error& error) {
      for (Fault fault : error.faults()) {
        if (fault.pointer.empty() && pointer.starts_with('/')) fault.pointer = pointer;
        faults_.push_back(std::move(fault));
      }
    }
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
  void held(const Member& member, const Kind& kind, const void* at, const std::string& name,
            const std::string& pointer, const std::string& named) {
    switch (kind.form) {
      case Form::number: range(member, kind.number(at), name, pointer, named); break;
      case Form::whole:
        range(member, static_cast<double>(kind.whole(at)), name, pointer, named);
        break;
      case Form::text:
        if (member.filled && kind.text(at).find_first_not_of(" \t\r\n") == std::string_view::npos)
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
        if (member.filled && kind.size(at) == 0)
          add(told(name + " is empty, in " + place_of(pointer, name) + named), name, pointer);
        for (std::size_t i = 0; i < kind.size(at); ++i) {
          const std::string item =
              name + (kind.of->form == Form::value ? "/" + std::to_string(i)
                                                   : "[" + std::to_string(i) + "]");
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

LEVIGATE_WORK std::vector<Fault> faults_of(const Description& description, const void* value,
                                           std::string_view where) {
  std::vector<Fault> faults;
  detail::FaultWalk(faults).value(description, value, std::string(where), "");
  return faults;
}

LEVIGATE_WORK void throw_faults(std::vector<Fault> faults) {
  if (faults.empty()) return;
  if (faults.size() > 1) throw BadInput(std::move(faults));
  switch (faults.front().code) {
    case ErrorCode::unknown_grade: throw UnknownGrade(std::move(faults.front()));
    case ErrorCode::ambiguous_label: throw AmbiguousLabel(std::move(faults.front()));
    case ErrorCode::out_of_range: throw OutOfRange(std::move(faults.front()));
    case ErrorCode::no_plan: throw NoPlan(std::move(faults.front().message));
    case ErrorCode::bad_input: throw BadInput(std::move(faults.front()));
  }
}

LEVIGATE_WORK bool same(const Kind& kind, const void* a, const void* b) {
  switch (kind.form) {
    case Form::number: return kind.number(a) == kind.number(b);
    case Form::whole:
    case Form::truth:
    case Form::choice: return kind.whole(a) == kind.whole(b);
    case Form::text: return kind.text(a) == kind.text(b);
    case Form::value:
      for (const Member& member : kind.described().members) {
        if (!same(*member.kind, member.in(a), member.in(b))) return false;
      }
      return true;
    case Form::either:
      return kind.whole(a) == kind.whole(b) &&
             same(*kind.held(a), kind.item(a, 0), kind.item(b, 0));
    case Form::maybe:
    case Form::list: break;
  }
  if (kind.size(a) != kind.size(b)) return false;
  for (std::size_t i = 0; i < kind.size(a); ++i) {
    if (!same(*kind.of, kind.item(a, i), kind.item(b, i))) return false;
  }
  return true;
}

}  // namespace levigate
