#include "engine/tackle/line_code.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace floatwright {
namespace {

std::string without_separators(std::string_view code) {
  std::string letters;
  for (const char c : code) {
    if (c != '-' && c != ' ') letters += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  }
  return letters;
}

std::optional<Taper> taper_of(std::string_view text) {
  if (text == "L") return Taper::Level;
  if (text == "DT") return Taper::DoubleTaper;
  if (text == "WF") return Taper::WeightForward;
  if (text == "ST") return Taper::SingleTaper;
  if (text == "SH") return Taper::ShootingHead;
  return std::nullopt;
}

std::optional<LineFunction> function_of(std::string_view text) {
  if (text == "F") return LineFunction::Floating;
  if (text == "S") return LineFunction::Sinking;
  if (text == "I") return LineFunction::Intermediate;
  if (text == "F/S" || text == "F/T") return LineFunction::FloatingWithSinkingTip;
  return std::nullopt;
}

// American fly line standard: target mass of the first 30 ft without the level tip, grains, numbers 1 to 15.
constexpr std::array kStandardGrains{60, 80, 100, 120, 140, 160, 185, 210, 240, 280, 330, 380, 450, 500, 550};

}  // namespace

std::optional<LineCode> read_line_code(std::string_view code) {
  const std::string text = without_separators(code);
  const auto number_at = text.find_first_of("0123456789");
  if (number_at == std::string::npos) return std::nullopt;
  const auto after = std::min(text.find_first_not_of("0123456789", number_at), text.size());
  const auto taper = taper_of(std::string_view(text).substr(0, number_at));
  const auto function = function_of(std::string_view(text).substr(after));
  if (!taper || !function || after - number_at > 2) return std::nullopt;
  const int number = std::stoi(text.substr(number_at, after - number_at));
  if (!standard_mass(number)) return std::nullopt;
  return LineCode{*taper, number, *function};
}

std::optional<Mass> standard_mass(int line_number) {
  if (line_number < 1 || line_number > static_cast<int>(kStandardGrains.size())) return std::nullopt;
  return grains(kStandardGrains[static_cast<std::size_t>(line_number - 1)]);
}

}  // namespace floatwright
