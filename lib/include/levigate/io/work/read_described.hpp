// Reading a value from JSON by its description. What is wrong is collected, so that one sees all of it at once.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/names.hpp"
#include "levigate/detail/work/fault_walk.hpp"
#include "levigate/io/work/document.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/said.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0::detail {

/// Nobody reads more of them, and each takes a walk through the text for its line.
inline constexpr std::size_t most_faults = 100;

/// Walks a document by the description of what it should hold.
class DescribedReader {
 public:
  DescribedReader(Style style, std::vector<Fault>& faults) : style_(style), faults_(&faults) {}

  /// A value in its form, or as an object. `named` is the nearest name around it, as " ('top')".
  void value(const Description& description, const Node& node, void* at, const std::string& named) {
    const FileForm* form = style_ == Style::sparse ? form_of(description) : nullptr;
    if (form) {
      attempt([&] { form->read(*this, node, at, named); });
    } else {
      object(description, node, at, named);
    }
  }

  /// An object with the members of a description and, beside them, keys that somebody else reads. `wanted` says what
  /// may stand here.
  void object(const Description& description, const Node& node, void* at, const std::string& named,
              std::vector<std::string_view> keys = {}, std::string_view wanted = "an object") {
    if (!attempt([&] { node.require_object(wanted); })) return;
    const std::size_t broken = broken_;
    std::vector<std::string_view> meant;  // by keys that are not known
    add_keys(description, keys);
    for (const std::string& key : node.unknown_keys(keys)) {
      if (full()) return;
      meant.push_back(nearest_name(key, keys));
      attempt([&] { node.fail_unknown(key, keys); });
    }
    members(description, node, at, named, meant, broken);
  }

  /// Runs work that throws, and keeps what is wrong. False: something was.
  template <typename Work>
  bool attempt(Work work) {
    try {
      work();
      return true;
    } catch (const Error& error) {
      ++broken_;
      for (const Fault& fault : error.faults()) add(fault);
      return false;
    }
  }

 private:
  static void add_keys(const Description& description, std::vector<std::string_view>& keys) {
    for (const Member& member : description.members) {
      if (member.spread) {
        add_keys(member.kind->described(), keys);
      } else if (member.held) {
        keys.push_back(member.name);
      }
    }
    for (const SaidKey& one : said_keys()) {
      if (one.of == &description) keys.push_back(one.key);
    }
  }

  /// Reads the members, then looks at their ranges, then at the rule: this only where all of it could be read. Of a member that
  /// is out of its range, no rule has more to say.
  /// `broken` is what was before this value.
  void members(const Description& description, const Node& node, void* at, const std::string& named,
               const std::vector<std::string_view>& meant, std::size_t broken) {
    std::vector<const Member*> have;
    for (const Member& member : description.members) {
      if (!member.held) continue;
      void* inside = member.in_mutable(at);
      const std::size_t before = broken_;
      const std::string here = FaultWalk::named_in(description, at, named);
      if (member.spread) {
        members(member.kind->described(), node, inside, here, meant, broken_);
      } else if (const auto child = node.find(member.name)) {
        held(member, *member.kind, *child, inside, here);
        if (broken_ == before) have.push_back(&member);
        if (member.filled && member.lean && left_out(description, member, inside))
          attempt([&] { child->fail(std::string(member.name) + " is empty"); });
      } else if (member.may) {
        have.push_back(&member);  // as it is made
      } else {
        if (std::find(meant.begin(), meant.end(), member.name) == meant.end())
          attempt([&] { node.fail(std::string(member.name) + " is missing"); });
      }
    }
    const std::string here = FaultWalk::named_in(description, at, named);
    std::vector<Fault> wrong;
    FaultWalk walk(wrong, false);
    for (const Member* member : have) walk.one(*member, member->in(at), node.pointer(), here);
    for (Fault& fault : wrong) fault = node.placed(std::move(fault));
    if (broken_ == broken) {
      const std::string where = place(description, node) + here;
      for (Fault& fault : FaultWalk::by_rule(description, at, where, wrong, wrong.empty())) {
        if (!fault.pointer.empty()) fault.pointer.insert(0, node.pointer());
        fault = node.placed(std::move(fault));
        const auto same_place = [&](const Fault& other) { return other.pointer == fault.pointer; };
        if (std::none_of(wrong.begin(), wrong.end(), same_place)) wrong.push_back(fault);
      }
    }
    for (const Fault& fault : wrong) add(fault);
  }

  /// A place for messages; at the root, what a file of it is called.
  static std::string place(const Description& description, const Node& node) {
    if (!node.pointer().empty()) return node.pointer();
    std::string name = "the " + std::string(description.name);
    if (name[4] >= 'A' && name[4] <= 'Z') name[4] = static_cast<char>(name[4] - 'A' + 'a');
    return name;
  }

  void held(const Member& member, const Kind& kind, const Node& node, void* at,
            const std::string& named) {
    switch (kind.form) {
      case Form::number: attempt([&] { kind.set_number(at, number(member, node)); }); break;
      case Form::whole:
        attempt([&] { kind.set_whole(at, whole(member, kind, node, named)); });
        break;
      case Form::truth: attempt([&] { kind.set_whole(at, node.boolean() ? 1 : 0); }); break;
      case Form::text:
        attempt([&] {
          const bool none = style_ == Style::whole && member.may && node.is_null();
          kind.set_text(at, none ? std::string() : node.text());
        });
        break;
      case Form::choice:
        attempt([&] {
          std::vector<std::string_view> known;
          for (std::size_t i = 0; i < kind.size(at); ++i) known.push_back(kind.choice(i));
          kind.set_whole(at, static_cast<std::int64_t>(node.one_of(known, member.name)));
        });
        break;
      case Form::value: value(kind.described(), node, at, named); break;
      case Form::maybe:
        kind.clear(at);
        if (style_ == Style::whole && node.is_null()) break;
        held(member, *kind.of, node, kind.add(at), named);
        break;
      case Form::list:
        kind.clear(at);
        attempt([&] {
          for (const Node& item : node.items()) {
            if (full()) break;
            held(member, *kind.of, item, kind.add(at), named);
          }
        });
        break;
      case Form::either: break;  // a type that holds one has a form of its own
    }
  }

  static double number(const Member& member, const Node& node) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    if (member.infinite == null_text) return node.is_null() ? infinity : node.number();
    if (member.infinite.empty() || !node.is_text()) return node.number();
    if (node.text() == member.infinite) return infinity;
    node.fail(std::string(member.name) + " is wanted as a number or \"" +
              std::string(member.infinite) + "\"");
  }

  /// Its range is looked at here, as the type that takes the number may hold less.
  static std::int64_t whole(const Member& member, const Kind& kind, const Node& node,
                            const std::string& named) {
    const double read = node.number();
    node.placed([&] {
      require_range(read, kind.natural ? std::max(member.low, 0.0) : member.low, member.high,
                    member.name, member.unit, node.pointer() + named);
    });
    if (const auto exact = node.whole(kind.natural)) return *exact;
    node.fail(std::string(member.name) + " = " + number_text(read) + " is not a whole number");
  }

  void add(const Fault& fault) {
    if (!full()) faults_->push_back(fault);
  }
  bool full() const { return faults_->size() >= most_faults; }

  Style style_;
  std::vector<Fault>* faults_;
  std::size_t broken_ = 0;  ///< things that could not be read
};

inline void require_format(const Node& root, std::string_view wanted) {
  if (const auto format = root.find("format"); format && format->is_text()) {
    if (format->text() == wanted) return;
    format->fail("format is '" + shown(format->text()) + "', wanted '" + std::string(wanted) + "'");
  }
  root.require_object("an object of format '" + std::string(wanted) + "'");
  root.fail("format is missing or no string, wanted '" + std::string(wanted) + "'");
}

inline void read_file_text(std::string_view text, std::string_view file, std::string_view format,
                           const Description& description, void* value, Style style,
                           int first_line) {
  const Document document(text, file, first_line);
  const Node root(document);
  require_format(root, format);
  std::vector<Fault> faults;
  DescribedReader(style, faults).object(description, root, value, "", {"format"});
  throw_faults(std::move(faults));
}

}  // namespace levigate::inline v0::detail
