#include "adapters/in/gauges/feature_page.hpp"

#include <fmt/format.h>

#include "adapters/in/gauges/service_error.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int { kFeatures, kReturned, kRel, kHref, kEndOfOurs };
static_assert(kEndOfOurs == kFirstOwnSlot);
enum Row : int { kFeature, kLink, kWhole };

}  // namespace

JsonShape feature_shape(const std::vector<JsonPath>& in_feature) {
  std::vector<JsonPath> values{
      {"/features", kFeatures}, {"/numberReturned", kReturned}, {"/links/*/rel", kRel}, {"/links/*/href", kHref}};
  for (const JsonPath& path : in_feature) values.push_back({"/features/*" + path.path, path.number});
  return {values, {{"/features/*", kFeature}, {"/links/*", kLink}, {"", kWhole}}};
}

std::optional<std::string> doubt_of(const FeaturePage& page) {
  if (!page.announced || *page.announced == static_cast<double>(page.features)) return std::nullopt;
  return fmt::format("the answer says it holds {} rows and holds {}", *page.announced, page.features);
}

Result<FeaturePage> read_feature_page(std::string_view bytes, const std::string& where, const JsonShape& shape,
                                      const std::function<void(const JsonRow&)>& took) {
  FeaturePage page;
  Kind list = Kind::Absent;
  const auto read = read_json_rows(bytes, where, shape, [&](const JsonRow& row) {
    if (row.row == kFeature) {
      ++page.features;
      took(row);
    } else if (row.row == kLink) {
      if (row[kRel].text == "next" && row[kHref].is(Kind::Text)) page.next = row[kHref].text;
    } else {
      list = row[kFeatures].kind;
      if (row[kReturned].is(Kind::Number)) page.announced = row[kReturned].number;
    }
  });
  if (!read) return tl::unexpected(read.error());
  if (list == Kind::List) return page;
  const auto error = service_error(bytes);
  return tl::unexpected(Failure{where + ": " +
                                    (list != Kind::Absent ? "/features is no list"
                                     : error              ? "the service answered with an error, " + *error
                                                          : "no list of features at /features"),
                                kExitBadData});
}

}  // namespace floatwright
