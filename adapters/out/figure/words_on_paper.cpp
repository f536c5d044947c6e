#include "adapters/out/figure/words_on_paper.hpp"

#include <algorithm>

namespace floatwright {
namespace {

constexpr double kWideEnough = 420.0, kLarge = 13.0, kSmall = 11.0;  // points
constexpr double kLine = 1.3;                                        // times the size
constexpr double kGlyph = 0.6;                                       // mean width of a letter, times the size

std::size_t letters(const std::string& words) {
  return static_cast<std::size_t>(
      std::count_if(words.begin(), words.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

}  // namespace

double words_size(double drawing_width) { return drawing_width < kWideEnough ? kSmall : kLarge; }

double line_of_words(double size) { return kLine * size; }

double about_width(const std::string& words, double size) { return kGlyph * size * static_cast<double>(letters(words)); }

std::vector<std::string> broken(const std::string& words, double width, double size) {
  std::vector<std::string> lines{""};
  for (std::size_t at = 0; at < words.size();) {
    const std::size_t end = std::min(words.find(' ', at), words.size());
    const std::string word = words.substr(at, end - at);
    const bool fits = lines.back().empty() || about_width(lines.back() + " " + word, size) <= width;
    if (!fits) lines.emplace_back();
    lines.back() += (lines.back().empty() ? "" : " ") + word;
    at = end + 1;
  }
  return lines;
}

}  // namespace floatwright
