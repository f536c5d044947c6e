// libFuzzer's entry: reads the bytes with the reader named as --reader=NAME and stops at the first fault.
// --list prints the names.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "tests/fuzz/readers.hpp"

namespace {

const floatwright::FuzzedReader* chosen = nullptr;

void choose(const std::string& name) {
  for (const auto& reader : floatwright::fuzzed_readers())
    if (reader.name == name) chosen = &reader;
}

}  // namespace

extern "C" int LLVMFuzzerInitialize(int* argc, char*** argv) {
  constexpr std::string_view kReader = "--reader=";
  char** const end = std::remove_if(*argv + 1, *argv + *argc, [&](const char* argument) {
    const std::string text = argument;
    if (text == "--list") {
      for (const auto& reader : floatwright::fuzzed_readers()) std::puts(reader.name.c_str());
      std::exit(0);
    }
    if (text.starts_with(kReader)) choose(text.substr(kReader.size()));
    return text.starts_with(kReader);
  });
  *argc = static_cast<int>(end - *argv);
  *end = nullptr;
  if (chosen != nullptr) return 0;
  std::fputs("name a reader: --reader=NAME; --list prints the names\n", stderr);
  std::exit(64);
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string fault = chosen->fault(chosen->name, {reinterpret_cast<const char*>(data), size});
  if (fault.empty()) return 0;
  std::fprintf(stderr, "%s: %s\n", chosen->name.c_str(), fault.c_str());
  std::abort();
}
