#pragma once
// One page of an OGC API Features answer: features (GeoJSON, RFC 7946), and the link to the page on which it goes on.
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/in/gauges/json_rows.hpp"

namespace floatwright {

struct FeaturePage {
  std::size_t features = 0;
  std::optional<double> announced;  // how many features it says that it holds
  std::optional<std::string> next;  // address of the next page, as the service wrote it
};

inline constexpr int kFirstOwnSlot = 4;  // a reader's slots begin here

// `in_feature`: paths within a feature, "/properties/time".
[[nodiscard]] JsonShape feature_shape(const std::vector<JsonPath>& in_feature);

// The doubt where the page does not hold what it says that it holds.
[[nodiscard]] std::optional<std::string> doubt_of(const FeaturePage& page);

// Calls `took` with each feature. An answer without a list of features is a Failure, with the service's own error where
// there is one.
[[nodiscard]] Result<FeaturePage> read_feature_page(std::string_view bytes, const std::string& where,
                                                    const JsonShape& shape,
                                                    const std::function<void(const JsonRow&)>& took);

}  // namespace floatwright
