#include "engine/river/problem_groups.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

#include "engine/units/with_commas.hpp"

namespace floatwright {
namespace {

Problem problem(std::string pointer, std::string found, std::string allowed, std::string mend, bool warning) {
  Problem p;
  p.pointer = std::move(pointer);
  p.found = std::move(found);
  p.allowed = std::move(allowed);
  p.mend = std::move(mend);
  p.warning = warning;
  return p;
}

}  // namespace

Problem river_error(std::string pointer, std::string found, std::string allowed, std::string mend) {
  return problem(std::move(pointer), std::move(found), std::move(allowed), std::move(mend), false);
}

Problem river_warning(std::string pointer, std::string found, std::string allowed, std::string mend) {
  return problem(std::move(pointer), std::move(found), std::move(allowed), std::move(mend), true);
}

std::string pointer_to(const std::string& list, std::size_t index, const std::string& below) {
  return "/" + list + "/" + std::to_string(index) + below;
}

std::string pointer_token(const std::string& key) {
  std::string token;
  for (const char c : key) token += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
  return token;
}

std::string called(const std::string& kind, const std::string& id, std::size_t index) {
  return id.empty() ? kind + " " + std::to_string(index + 1) : kind + " \"" + id + "\"";
}

std::string short_number(double value) {
  return std::abs(value) < 1000.0 ? fmt::format("{:.3g}", value) : with_commas(fmt::format("{:.0f}", value));
}

}  // namespace floatwright
