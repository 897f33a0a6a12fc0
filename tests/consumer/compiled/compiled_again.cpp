// The second translation unit of compiled.cpp.
#include <levigate/levigate.hpp>
#include <levigate/plan/plan.hpp>
#include <levigate/text/card.hpp>

std::string card_seen_from_another_file(const levigate::Job& job, const levigate::Stack& stack) {
  return levigate::card(levigate::plan(job, stack));
}
