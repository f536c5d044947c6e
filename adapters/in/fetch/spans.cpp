#include "adapters/in/fetch/spans.hpp"

#include <algorithm>

namespace floatwright {

std::vector<AskedSpan> not_held(const AskedSpan& wanted, std::vector<AskedSpan> held) {
  std::ranges::sort(held, {}, &AskedSpan::from);
  std::vector<AskedSpan> out;
  Instant from = wanted.from;
  for (const AskedSpan& span : held) {
    if (span.from > from) out.push_back({from, std::min(span.from, wanted.to)});
    from = std::max(from, span.to);
  }
  if (from < wanted.to) out.push_back({from, wanted.to});
  std::erase_if(out, [](const AskedSpan& span) { return span.from >= span.to; });
  return out;
}

std::vector<AskedSpan> in_pieces(const std::vector<AskedSpan>& spans, Period longest) {
  std::vector<AskedSpan> out;
  for (const AskedSpan& span : spans) {
    Instant to = span.to;
    while (to > span.from) {
      const auto whole = (to - Instant{} - Period{1}) / longest * longest;
      const Instant from = std::max(span.from, Instant{} + whole);
      out.push_back({from, to});
      to = from;
    }
  }
  std::ranges::stable_sort(out, std::ranges::greater{}, &AskedSpan::to);
  return out;
}

}  // namespace floatwright
