#include "adapters/out/readings/words.hpp"

#include <date/date.h>

namespace floatwright {
std::vector<std::string> mark_words(const Marks& marks, bool daily) {
  std::vector<std::string> out;
  for (const Mark mark : marks) out.emplace_back(word_for(mark));
  if (daily) out.emplace_back("daily");
  return out;
}

std::string time_word(Instant time) { return date::format("%FT%TZ", time); }

}  // namespace floatwright
