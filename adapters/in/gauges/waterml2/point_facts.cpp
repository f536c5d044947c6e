#include "adapters/in/gauges/waterml2/point_facts.hpp"

#include <algorithm>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

constexpr std::array<std::string_view, 4> kKinds{"qualifier", "quality", "status", "censoredReason"};

void add_mark(std::string_view word, Marks& marks, std::set<std::string>& unknown) {
  // The quality words of the standard's own vocabulary (from memory) that the services' codes have not.
  const std::string text = lower_case(word);
  if (text.empty() || text == "good") return;
  if (text == "estimate") return marks.insert(Mark::Estimated);
  if (text == "unchecked") return marks.insert(Mark::Provisional);
  if (text == "missing") return marks.insert(Mark::Unavailable);
  const auto known = mark_of(text);
  marks.insert(known.value_or(Mark::Unknown));
  if (!known) unknown.emplace(word);
}

}  // namespace

std::string_view word_of(const pugi::xml_node& element) {
  const std::string_view written = text_of(element), link = attribute_of(element, "href");
  if (!written.empty()) return written;
  if (!link.empty()) return link.substr(link.find_last_of("/#=") + 1);  // npos + 1 is 0
  return trimmed(attribute_of(element, "title"));
}

Marks PointFacts::all_marks() const {
  Marks out;
  for (const auto& of_kind : marks) out.insert(of_kind.value_or(Marks{}));
  return out;
}

PointFacts point_facts(const pugi::xml_node& metadata, std::set<std::string>& unknown) {
  PointFacts out;
  for (const pugi::xml_node fact : metadata.children()) {
    const std::string_view name = local_name(fact);
    if (name == "uom") {
      const std::string_view code = trimmed(attribute_of(fact, "code"));
      out.unit = !code.empty()                          ? code
                 : !attribute_of(fact, "title").empty() ? trimmed(attribute_of(fact, "title"))
                                                        : word_of(fact);
    }
    if (name == "aggregationDuration") out.over = text_of(fact);
    if (name == "nilReason") out.missing = true;
    const auto kind = static_cast<std::size_t>(std::find(kKinds.begin(), kKinds.end(), name) - kKinds.begin());
    if (kind == kKinds.size()) continue;
    if (!out.marks[kind]) out.marks[kind] = Marks{};
    const std::string_view category = text_of(child_of(child_of(fact, "Category"), "value"));
    add_mark(category.empty() ? word_of(fact) : category, *out.marks[kind], unknown);
  }
  return out;
}

PointFacts with_default(PointFacts own, const PointFacts& standard) {
  for (std::size_t i = 0; i < own.marks.size(); ++i)
    if (!own.marks[i]) own.marks[i] = standard.marks[i];
  if (own.unit.empty()) own.unit = standard.unit;
  if (own.over.empty()) own.over = standard.over;
  return own;
}

}  // namespace floatwright
