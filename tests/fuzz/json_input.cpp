// Any bytes as a stack, a job or a shop: they read, and read back, or are refused by one of our errors.
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "levigate/io/json.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace levigate;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try {
    stack_from_json(to_json(stack_from_json(text)));
  } catch (const Error&) {
  }
  try {
    job_from_json(to_json(job_from_json(text)));
  } catch (const Error&) {
  }
  try {
    shop_from_json(to_json(shop_from_json(text)));
  } catch (const Error&) {
  }
  return 0;
}
