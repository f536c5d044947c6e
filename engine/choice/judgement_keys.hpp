#pragma once
// The judgement as a flat table, so that a file can override any of its numbers without anyone knowing the struct.
#include <string>
#include <vector>

#include "engine/choice/judgement.hpp"
#include "engine/units/problem.hpp"

namespace floatwright {

struct JudgementKey {
  std::string pointer;   // JSON pointer into judgement.json, "/zone/hold_height_m"
  double* value;         // into the judgement that was given
  std::string sentence;  // what it is
  double least, most;    // what it may be
};

// Valid as long as `judgement` stays where it is. In the order of the file.
[[nodiscard]] std::vector<JudgementKey> judgement_keys(Judgement& judgement);

// What cannot be: a number outside its limits, a table whose points do not rise, a fish gone before it leaves.
// The file's name is the caller's to fill in.
[[nodiscard]] Problems judgement_problems(const Judgement& judgement);

}  // namespace floatwright
