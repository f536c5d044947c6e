#include <fmt/format.h>

#include "adapters/in/files/configuration.hpp"

namespace floatwright {

std::string say(const Problem& problem) {
  std::string text = problem.file;
  if (problem.line > 0) text += fmt::format(":{}", problem.line);
  if (!text.empty()) text += ": ";
  if (problem.warning) text += "warning: ";
  if (!problem.pointer.empty()) text += problem.pointer + ": ";
  text += "found " + problem.found;
  if (!problem.allowed.empty()) text += "; allowed: " + problem.allowed;
  if (text.back() != '.') text += '.';
  if (!problem.mend.empty()) text += " " + problem.mend;
  return text;
}

}  // namespace floatwright
