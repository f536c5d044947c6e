#include "adapters/in/files/fishing_words.hpp"

namespace floatwright {

const std::vector<std::pair<std::string, Platform>>& platform_words() {
  static const std::vector<std::pair<std::string, Platform>> kWords{{"drifting", Platform::Drifting},
                                                                    {"held", Platform::Held},
                                                                    {"anchored", Platform::Anchored},
                                                                    {"wading", Platform::Wading}};
  return kWords;
}

const std::vector<std::pair<std::string, Method>>& method_words() {
  static const std::vector<std::pair<std::string, Method>> kWords{{"swing", Method::Swing},
                                                                  {"strip", Method::Strip},
                                                                  {"indicator", Method::Indicator},
                                                                  {"tight_line", Method::TightLine},
                                                                  {"dry", Method::Dry}};
  return kWords;
}

}  // namespace floatwright
