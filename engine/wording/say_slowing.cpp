#include "engine/wording/say_slowing.hpp"

#include <fmt/format.h>

#include "engine/river/names.hpp"

namespace floatwright {
namespace {

std::string taken_from(Bed bed) {
  switch (bed) {
    case Bed::Sand:
    case Bed::Gravel:
    case Bed::Cobble:
      return "Water slows toward " + std::string(word_for(bed));
    case Bed::Boulder:
      return "Water slows toward boulders";
    case Bed::Wood:
      return "Over wood water is taken to slow as in most gauged rivers";
    case Bed::Unknown:
      break;
  }
  return "The bed is not named; water is taken to slow as in most gauged rivers";
}

}  // namespace

std::string say_slowing(Bed bed, double least, double most) {
  const std::string from = fmt::format("{:.2f}", least), to = fmt::format("{:.2f}", most);
  return fmt::format("{}: {} of its surface speed in the mean of the depth.", taken_from(bed),
                     from == to ? to : from + " to " + to);
}

}  // namespace floatwright
