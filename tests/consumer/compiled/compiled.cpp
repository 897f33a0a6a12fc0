// A user of the compiled library: reads, plans and prints, and gets neither third-party headers nor work.
#include <levigate/io/json.hpp>
#include <levigate/levigate.hpp>
#include <levigate/plan/plan.hpp>
#include <levigate/text/card.hpp>

#ifndef LEVIGATE_COMPILED
#error "levigate::compiled is expected to say that it is compiled"
#endif
#ifdef LEVIGATE_WORK
#error "work came in beside the compiled library"
#endif
#ifdef INCLUDE_NLOHMANN_JSON_HPP_
#error "nlohmann/json came in beside the compiled library"
#endif
#if defined(FMT_VERSION) || defined(FMT_CORE_H_)
#error "fmt came in beside the compiled library"
#endif

#include <iostream>

std::string card_seen_from_another_file(const levigate::Job& job, const levigate::Stack& stack);

int main(int, char** arguments) {
  const std::string demo = arguments[1];
  const levigate::Job job = levigate::load_job(demo + "/job.json");
  const levigate::Stack stack = levigate::load_stack(demo + "/stack.json");
  const levigate::Plan plan = levigate::plan(job, stack);
  const std::string card = levigate::card(plan);
  std::cout << card;
  return plan.found && card == card_seen_from_another_file(job, stack) ? 0 : 1;
}
