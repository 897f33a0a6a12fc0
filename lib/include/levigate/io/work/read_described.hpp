// Reading a value from JSON by its description. What is wrong is collected, so that one sees all of it at once.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/names.hpp"
#include "levigate/detail/work/fault_walk.hpp"
#include "levigate/io/work/example.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/format_tag.hpp"
#include "levigate/io/work/node.hpp"
#include "levigate/io/work/said.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0::detail {

/// Nobody reads more of them, and each takes a walk through the text for its line.
inline constexpr std::size_t most_faults = 100;

/// Walks a document by the description of what it should hold.
class DescribedReader {
 public:
  DescribedReader(const Style& style, std::vector<Fault>& faults)
      : style_(style), forms_(style.forms()), faults_(&faults) {}

  /// A value in its form, or as an object. `named` is the nearest name around it, as " ('top')".
  void value(const Description& description, const Node& node, void* at, const std::string& named) {
    const FileForm* form = forms_.of(description);
    if (form && form->read) {
      attempt([&] { form->read(*this, node, at, named); });
    } else if (form && !form->pair.empty()) {
      attempt([&] { pair(description, node, at, named); });
    } else if (form && form->take && node.is_text()) {
      attempt([&] { node.placed([&] { form->take(node.text(), at); }); });
    } else {
      object(description, node, at, named);
    }
  }

  /// The keys of which an object has just one.
  static std::vector<std::string_view> alone(const FileForm& form,
                                             std::span<const std::string_view> keys) {
    std::vector<std::string_view> result(keys.begin(), keys.end());
    for (const std::string_view key : form.beside_it) std::erase(result, key);
    return result;
  }

  /// An object with the members of a description and, beside them, keys that somebody else reads.
  /// False: something is wrong with it.
  bool object(const Description& description, const Node& node, void* at, const std::string& named,
              std::vector<std::string_view> keys = {}) {
    const FileForm* form = forms_.of(description);
    const auto wanted = form && form->take ? "the name of a profile, or an object" : "an object";
    if (!attempt([&] { node.require_object(wanted); })) return false;
    const std::size_t broken = broken_, before = faults_->size();
    const std::size_t others = keys.size();
    add_keys(description, keys);
    std::vector<std::string_view> meant;
    for (const std::string& key : node.unknown_keys(keys)) {
      if (full()) return false;
      meant.push_back(Node::meant_by(key, keys));
      const std::size_t first = faults_->size();
      attempt([&] { node.fail_unknown(key, keys); });
      if (const Member* member = description.find(meant.back()); member && faults_->size() > first)
        show_example(faults_->back(), example_of(*member, forms_));
    }
    for (const auto& twice : node.given_twice(keys)) {
      attempt([&] {
        node.fail_at(twice.first,
                     twice.first + " does not go with " + twice.second + ": give one of them");
      });
    }
    meant_.swap(meant);
    if (form && form->one_key && meant_.empty())
      attempt([&] { node.require_one_of(alone(*form, std::span(keys).subspan(others))); });
    if (form && form->begin) attempt([&] { form->begin(node, at); });
    members(description, node, at, named, broken);
    meant_.swap(meant);
    return broken_ == broken && faults_->size() == before;
  }

  /// Members of a value that is not the whole object. False: something is wrong with them.
  bool beside(const Description& description, const Node& node, void* at,
              const std::string& named) {
    const std::size_t broken = broken_, before = faults_->size();
    members(description, node, at, named, broken);
    return broken_ == broken && faults_->size() == before;
  }

  /// To be called where what is wrong with a part leaves nothing to make the value of: no rule is asked of it then.
  void unmade() { ++broken_; }

  /// Whether the object here has a key that may have meant another.
  bool misspelt() const { return !meant_.empty(); }

  /// That an object has this key. One that is misspelt is not missing too.
  void require(const Description& description, const Node& node, std::string_view key) {
    if (node.has(key)) return;
    std::vector<std::string_view> keys;
    add_keys(description, keys);
    for (const std::string& other : node.unknown_keys(keys)) {
      if (Node::meant_by(other, keys) == key) return;
    }
    attempt([&] { node.at(key); });
    if (const Member* member = description.find(key))
      illustrate(faults_->size() - 1, *member, node.pointer());
  }

  /// Whether an object has a key that no description knows.
  bool misspelt_in(const Description& description, const Node& node) const {
    std::vector<std::string_view> keys;
    add_keys(description, keys);
    return !node.unknown_keys(keys).empty();
  }

  /// Keys of an object of this description.
  void add_keys(const Description& description, std::vector<std::string_view>& keys) const {
    const auto add_after = [&](std::string_view member) {
      for (const FileKeys* more : forms_.after(description, member)) add_keys(*more->keys, keys);
    };
    add_after("");
    for (const Member& member : description.members) {
      if (!forms_.holds(description, member)) continue;
      if (!member.spread) {
        keys.push_back(member.name);
      } else if (member.kind->form == Form::value) {
        add_keys(member.kind->described(), keys);
      } else {
        for (const Kind* kind : member.kind->kinds) add_keys(kind->described(), keys);
      }
      add_after(member.name);
    }
    for (const SaidKey& one : said_keys()) {
      if (one.of == &description) keys.push_back(one.key);
    }
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
  /// Reads the members, then looks at their ranges, then at the rule: this only where all of it could be read. Of a member that
  /// is out of its range, no rule has more to say.
  /// `broken` is what was before this value.
  void members(const Description& description, const Node& node, void* at, const std::string& named,
               std::size_t broken) {
    const FileForm* form = forms_.of(description);
    const std::size_t first = faults_->size();
    std::vector<const Member*> have, by_form;
    const auto read_after = [&](std::string_view member) {
      for (const FileKeys* keys : forms_.after(description, member))
        attempt([&] { keys->read(*this, node, at, FaultWalk::named_in(description, at, named)); });
    };
    read_after("");
    for (const Member& member : description.members) {
      if (!forms_.holds(description, member)) continue;
      const std::size_t before = broken_;
      const bool there = one(description, member, node, at, named);
      if (there && broken_ == before) have.push_back(&member);
      if (there || member.spread) {
        // read, or a fault of its own
      } else if (member.may) {
        have.push_back(&member);  // as it is made
      } else if (form && form->may && form->may(&node, member.name)) {
        by_form.push_back(&member);
      } else if (std::find(meant_.begin(), meant_.end(), member.name) == meant_.end()) {
        const std::size_t first_fault = faults_->size();
        attempt([&] { node.fail(std::string(member.name) + " is missing"); });
        illustrate(first_fault, member, node.pointer());
      } else {
        unmade();
      }
      read_after(member.name);
    }
    if (form && form->settle) attempt([&] { form->settle(*this, node, at); });
    const std::string here = FaultWalk::named_in(description, at, named);
    std::vector<Fault> wrong;
    FaultWalk walk(wrong, false);
    const auto look_at = [&](const std::vector<const Member*>& members) {
      for (const Member* member : members) walk.one(*member, member->in(at), node.pointer(), here);
    };
    look_at(have);
    if (wrong.empty() && broken_ == broken) look_at(by_form);
    for (Fault& fault : wrong) {
      const Member* member = description.find(fault.quantity.substr(0, fault.quantity.find('[')));
      fault = node.placed(std::move(fault));
      if (member) fault.message += other_unit_text(description, *member, node, member->in(at));
      if (member) show_example(fault, example_of(*member, forms_));
      add(fault);
    }
    if (broken_ != broken) return;
    const std::string where = place_of(description, node.pointer()) + here;
    std::vector<Fault> known(faults_->begin() + static_cast<std::ptrdiff_t>(first), faults_->end());
    for (Fault& fault : known) {
      for (const Member& member : description.members) {  // rules know members by their own names
        if (unit_told_for(fault.quantity, member.name)) fault.quantity = member.name;
      }
    }
    for (Fault& fault : FaultWalk::by_rule(description, at, where, known, known.empty())) {
      if (!fault.pointer.empty()) fault.pointer.insert(0, node.pointer());
      fault = node.placed(std::move(fault));
      const auto same_place = [&](const Fault& other) { return other.pointer == fault.pointer; };
      if (std::none_of(known.begin(), known.end(), same_place)) add(fault);
    }
  }

  /// One member, where the object has it. False: it has not.
  bool one(const Description& description, const Member& member, const Node& node, void* at,
           const std::string& named) {
    void* inside = member.in_mutable(at);
    const std::string here = FaultWalk::named_in(description, at, named);
    if (member.spread) {
      spread(member, node, inside, here);
      return false;
    }
    const auto child = node.find(member.name);
    if (!child) return false;
    const std::size_t first = faults_->size(), before = broken_;
    held(member, *member.kind, *child, inside, here);
    illustrate(first, member, child->pointer());
    if (forms_.asks && broken_ == before && faults_->size() == first && !child->in_other_unit()) {
      if (const auto question = forms_.asks(description, member, inside)) {
        Fault fault = node.placed(question->fault);
        fault.message += question->if_not + question->if_so;
        if (question->possible) attempt([&] { throw BadInput(fault); });
      }
    }
    if (member.filled && member.lean && left_out(description, member, inside))
      attempt([&] { child->fail(std::string(member.name) + " is empty"); });
    return true;
  }

  void illustrate(std::size_t first, const Member& member, const std::string& pointer) {
    show_examples(std::span(*faults_).subspan(std::min(first, faults_->size())), member, pointer,
                  forms_);
  }

  /// Of a number out of its range: the units in which it would be likely.
  std::string other_unit_text(const Description& description, const Member& member,
                              const Node& node, const void* at) const {
    const auto child = node.find(member.name);
    if (!forms_.asks || !child || child->in_other_unit()) return {};
    const auto question = forms_.asks(description, member, at);
    return question ? question->if_not : std::string();
  }

  /// A value whose members stand beside those of its owner: of several kinds, that of which a key is there.
  void spread(const Member& member, const Node& node, void* at, const std::string& named) {
    if (member.kind->form == Form::value)
      return members(member.kind->described(), node, at, named, broken_);
    std::vector<std::string_view> all;
    std::vector<std::size_t> found;
    bool misspelt = false;
    for (std::size_t i = 0; i < member.kind->kinds.size(); ++i) {
      std::vector<std::string_view> keys;
      add_keys(member.kind->kinds[i]->described(), keys);
      const auto is_there = [&](std::string_view key) { return node.has(key); };
      if (std::any_of(keys.begin(), keys.end(), is_there)) found.push_back(i);
      misspelt = misspelt || std::find_first_of(keys.begin(), keys.end(), meant_.begin(),
                                                meant_.end()) != keys.end();
      all.insert(all.end(), keys.begin(), keys.end());
    }
    if (found.size() == 1) {
      members(member.kind->kinds[found[0]]->described(), node, member.kind->choose(at, found[0]),
              named, broken_);
    } else if (!misspelt || !found.empty()) {
      attempt([&] { node.fail("one is wanted of " + names_text(all)); });
    }
  }

  /// An array of the values of all members.
  void pair(const Description& description, const Node& node, void* at, const std::string& named) {
    const std::vector<Node> items = node.items();
    if (items.size() != description.members.size())
      node.fail(std::string(forms_.of(description)->pair));
    std::vector<Fault> wrong;
    FaultWalk walk(wrong, false);
    for (std::size_t i = 0; i < items.size(); ++i) {
      const Member& member = description.members[i];
      const std::size_t before = broken_;
      held(member, *member.kind, items[i], member.in_mutable(at), named);
      if (broken_ == before) walk.one(member, member.in(at), node.pointer(), named);
    }
    for (const Fault& fault : wrong) add(node.placed(fault));
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
          const bool none = style_.full && member.may && node.is_null();
          kind.set_text(at, none ? std::string() : node.text());
        });
        break;
      case Form::choice:
        attempt([&] {
          std::vector<std::string_view> known;
          if (said_as_text(member.none)) known.push_back(member.none);
          const std::size_t before = known.size();
          for (std::size_t i = 0; i < kind.size(at); ++i) known.push_back(kind.choice(i));
          kind.set_whole(at, static_cast<std::int64_t>(node.one_of(known, member.name) - before));
        });
        break;
      case Form::value: value(kind.described(), node, at, named); break;
      case Form::maybe:
        kind.clear(at);
        if (says_none(member, node)) break;
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

  bool says_none(const Member& member, const Node& node) const {
    if (said_as_text(member.none)) return node.is_text() && same_name(node.text(), member.none);
    return node.is_null() && (style_.full || member.none == null_text);
  }

  static double number(const Member& member, const Node& node) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    if (member.infinite == null_text) return node.is_null() ? infinity : node.number();
    if (member.infinite.empty() || !node.is_text()) return node.number();
    if (same_name(node.text(), member.infinite)) return infinity;
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
  const FileForms& forms_;
  std::vector<Fault>* faults_;
  std::vector<std::string_view> meant_;  ///< by keys of the object here that are not known
  std::size_t broken_ = 0;               ///< things that could not be read
};

inline void read_file_text(std::string_view text, std::string_view file, std::string_view format,
                           const Description& description, void* value, const Style& style,
                           int first_line) {
  const Document document(text, file, first_line, !style.full);
  const Node root(document);
  std::vector<Fault> faults;
  require_format(root, format, faults);
  DescribedReader(style, faults).object(description, root, value, "", {"format"});
  throw_faults(std::move(faults));
}

}  // namespace levigate::inline v0::detail
