#pragma once
// What is wrong with something a person wrote or a service sent, told so that it can be mended.
#include <string>
#include <vector>

namespace floatwright {

struct Problem {
  std::string file;     // as the user would type it; empty where the engine speaks (the adapter fills it in)
  int line = 0;         // 1-based; 0 unknown
  std::string pointer;  // JSON pointer, RFC 6901, or "" for the whole file
  std::string found;    // what stands there
  std::string allowed;  // what may stand there
  std::string mend;     // what to do, an imperative sentence
  bool warning = false; // true: the run goes on, the plan says it
};

using Problems = std::vector<Problem>;

}  // namespace floatwright
