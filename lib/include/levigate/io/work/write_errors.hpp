// The work behind io/write_errors.hpp: defines what it declares.
#pragma once

#include <string>
#include <vector>

#include "levigate/io/write_errors.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::string errors_json(const std::vector<FaultOf>& faults) {
  const auto or_null = [](const auto& number) {
    return number ? detail::OrderedJson(*number) : detail::OrderedJson(nullptr);
  };
  detail::OrderedJson errors = detail::OrderedJson::array();
  for (const auto& [fault, file] : faults) {
    errors.push_back({{"code", static_cast<int>(fault.code)},
                      {"message", fault.message},
                      {"quantity", fault.quantity},
                      {"value", or_null(fault.value)},
                      {"unit", fault.unit},
                      {"low", or_null(fault.low)},
                      {"high", or_null(fault.high)},
                      {"pointer", fault.pointer},
                      {"line", fault.line},
                      {"contradicts", fault.contradicts},
                      {"example", fault.example},
                      {"file", file}});
  }
  return detail::json_text({{"errors", errors}});
}

}  // namespace levigate
