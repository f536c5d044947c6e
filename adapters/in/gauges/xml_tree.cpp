#include "adapters/in/gauges/xml_tree.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "adapters/in/text/utf8.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/text_place.hpp"

namespace floatwright {
namespace {

std::string_view without_byte_order_mark(std::string_view bytes) {
  constexpr std::string_view kMark = "\xEF\xBB\xBF";
  return bytes.starts_with(kMark) ? bytes.substr(kMark.size()) : bytes;
}

std::optional<std::string> not_even_xml(std::string_view bytes) {
  const std::string_view text = trimmed(without_byte_order_mark(bytes));
  if (text.empty()) return "empty; ask the service again";
  const std::string start = lower_case(text.substr(0, 20));
  const bool is_page = start.starts_with("<!doctype html") || start.starts_with("<html");
  if (text.front() == '<' && !is_page) return std::nullopt;
  return fmt::format("{}, not XML (it begins \"{}\"); the service may have moved, or the request was sent elsewhere",
                     is_page ? "a web page" : "other text", printable(text.substr(0, 20)));
}

// As the declaration in the first line says; what it does not say is UTF-8 (XML 1.0, section 4.3.3, from memory).
bool says_latin1(std::string_view bytes) {
  const std::string_view start = bytes.substr(0, 200);
  const std::string declaration = lower_case(start.substr(0, start.find("?>")));
  return declaration.find("iso-8859-1") != std::string::npos || declaration.find("latin1") != std::string::npos;
}

std::optional<std::string> bad_bytes(std::string_view bytes, bool latin1) {
  const auto bad = latin1 ? std::nullopt : first_bad_utf8(bytes);
  if (bad) return line_and_column(bytes, *bad) + ": not UTF-8, so its text is not certain";
  const std::size_t zero = bytes.find('\0');
  if (zero != std::string_view::npos) return line_and_column(bytes, zero) + ": a zero byte, which no XML has";
  return std::nullopt;
}

std::optional<std::string> parse_trouble(const pugi::xml_parse_result& parsed, std::string_view bytes) {
  if (parsed) return std::nullopt;
  const auto offset = static_cast<std::size_t>(parsed.offset);
  // What was cut is open at its end, or breaks off in its last piece.
  const bool cut = bytes.find('>', offset + 1) == std::string_view::npos;
  return line_and_column(bytes, offset) +
         (cut ? ": the text ends too early, it was cut short" : fmt::format(": not XML ({})", parsed.description()));
}

std::string without_runs(std::string_view bytes, const std::vector<XmlRun>& runs) {
  std::string out;
  std::size_t kept_from = 0;
  for (const XmlRun& run : runs) {
    out += bytes.substr(kept_from, run.piece_ends.front() - kept_from);
    kept_from = run.piece_ends.back();
  }
  return out += bytes.substr(kept_from);
}

// More than one root, none, or text beside it.
std::optional<std::string> root_trouble(const XmlTree& tree) {
  pugi::xml_node root;
  for (const pugi::xml_node child : tree.document.children()) {
    const bool is_element = child.type() == pugi::node_element;
    if (root && is_element) return tree.place_of(child) + ": a second root element, so two answers in one";
    if (is_element) root = child;
    if (!is_element && !trimmed(child.value()).empty()) return tree.place_of(child) + ": text outside the root element";
  }
  return root ? std::nullopt : std::optional<std::string>{"no element in it; ask the service again"};
}

}  // namespace

std::string XmlTree::place_of(const pugi::xml_node& node) const {
  auto offset = static_cast<std::size_t>(std::max<std::ptrdiff_t>(node.offset_debug(), 0));
  for (const XmlRun& run : runs)
    if (offset >= run.piece_ends.front()) offset += run.piece_ends.back() - run.piece_ends.front();
  return line_and_column(bytes, offset);
}

bool begins_as_xml(std::string_view bytes) { return trimmed(without_byte_order_mark(bytes)).starts_with('<'); }

Result<XmlTree> xml_tree(std::string_view bytes, const std::string& where, std::vector<XmlRun> runs) {
  const auto failure = [&](const std::string& what) {
    return tl::unexpected(Failure{where + ": " + what, kExitBadData});
  };
  if (const auto wrong = not_even_xml(bytes)) return failure(*wrong);
  const bool latin1 = says_latin1(bytes);
  if (const auto wrong = bad_bytes(bytes, latin1)) return failure(*wrong);
  if (latin1) runs.clear();
  const std::string rest = runs.empty() ? std::string{} : without_runs(bytes, runs);
  const std::string_view in_tree = runs.empty() ? bytes : std::string_view{rest};
  XmlTree tree{.document = {}, .root = {}, .bytes = bytes, .runs = std::move(runs)};
  const auto parsed =
      tree.document.load_buffer(in_tree.data(), in_tree.size(), pugi::parse_default | pugi::parse_fragment,
                                latin1 ? pugi::encoding_latin1 : pugi::encoding_utf8);
  if (const auto wrong = parse_trouble(parsed, bytes)) return failure(*wrong);
  if (const auto wrong = root_trouble(tree)) return failure(*wrong);
  tree.root = tree.document.document_element();
  return tree;
}

std::string_view local_name(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  return name.substr(name.find(':') + 1);  // npos + 1 is 0
}

std::string_view name_space(const pugi::xml_node& root) {
  const std::string_view name = root.name();
  const auto colon = name.find(':');
  const std::string declaration =
      colon == std::string_view::npos ? "xmlns" : "xmlns:" + std::string{name.substr(0, colon)};
  return root.attribute(declaration.c_str()).value();
}

pugi::xml_node child_of(const pugi::xml_node& parent, std::string_view name) {
  pugi::xml_node child = parent.first_child();
  while (child && !is_named(child, name)) child = child.next_sibling();
  return child;
}

pugi::xml_node last_child_of(const pugi::xml_node& parent, std::string_view name) {
  pugi::xml_node child = parent.last_child();
  while (child && !is_named(child, name)) child = child.previous_sibling();
  return child;
}

std::string_view attribute_of(const pugi::xml_node& node, std::string_view name) {
  pugi::xml_attribute attribute = node.first_attribute();
  while (attribute && !is_named(attribute, name)) attribute = attribute.next_attribute();
  return attribute.value();
}

std::string_view text_of(const pugi::xml_node& node) { return trimmed(node.child_value()); }

}  // namespace floatwright
