#include "adapters/out/pdf/part.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace floatwright {
namespace {

const Style kMore{};
constexpr double kForever = 1000.0;  // one line

bool says_more(const Part& part) { return part.gone > 0 && !part.counted.empty(); }

std::vector<Piece>::iterator last_that_may_go(Part& part) {
  const auto found = std::find_if(part.pieces.rbegin(), part.pieces.rend(), [](const Piece& p) { return p.may_go; });
  return found == part.pieces.rend() ? part.pieces.end() : std::prev(found.base());
}

// A single line that may go stays where the words that tell of it would take as much.
bool can_give(Part& part, const Ink& ink) {
  const auto last = last_that_may_go(part);
  if (last == part.pieces.end()) return false;
  if (part.gone > 0 || part.counted.empty() || last->height > ink.line_height(kMore)) return true;
  return std::count_if(part.pieces.begin(), part.pieces.end(), [](const Piece& p) { return p.may_go; }) > 1;
}

// The least vital part that can give a piece; of equals the last on the page.
Part* gives_next(std::vector<Part>& parts, const Ink& ink) {
  Part* next = nullptr;
  for (Part& part : parts)
    if (can_give(part, ink) && (next == nullptr || part.worth <= next->worth)) next = &part;
  return next;
}

double total(const std::vector<Part>& parts, const Ink& ink) {
  double sum = 0.0;
  for (const Part& part : parts) sum += height_of(part, ink);
  return sum;
}

}  // namespace

double height_of(const Part& part, const Ink& ink) {
  if (part.pieces.empty() && !says_more(part)) return 0.0;
  double sum = part.air + (says_more(part) ? ink.line_height(kMore) : 0.0);
  for (const Piece& piece : part.pieces) sum += piece.height;
  return sum;
}

void draw(const Part& part, Ink& ink, double y) {
  y += part.air;
  for (const Piece& piece : part.pieces) {
    piece.draw(ink, y);
    y += piece.height;
  }
  if (!says_more(part)) return;
  ink.text(part.text_left, y, kForever,
           fmt::format("and {} more {}{}: see the plan", part.gone, part.counted, part.gone == 1 ? "" : "s"), kMore);
}

void fit(std::vector<Part>& parts, double height, const Ink& ink) {
  while (total(parts, ink) > height) {
    Part* part = gives_next(parts, ink);
    if (part == nullptr) return;
    part->pieces.erase(last_that_may_go(*part));
    ++part->gone;
  }
}

}  // namespace floatwright
