// The smallest user: one header of the core, and one of io where the build has it.
#include <levigate/grade/label.hpp>
#ifdef WITH_IO
#include <levigate/io/write.hpp>
#endif

#include <string>

int main() {
#ifdef WITH_IO
  if (levigate::to_json(levigate::Stack{}).find("levigate.stack/1") == std::string::npos) return 2;
#endif
  return levigate::grade("P600").median_um == 25.8 ? 0 : 1;  // ISO 6344
}
