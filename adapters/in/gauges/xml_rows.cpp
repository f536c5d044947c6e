#include "adapters/in/gauges/xml_rows.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "adapters/in/gauges/text_place.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kPiece = 16 * 1024;  // its tree, two or three times as long, stays in the processor's own memory

// Whether the name of a start tag ends in front of `at`.
bool name_ends(std::string_view bytes, std::size_t at) {
  return at < bytes.size() && std::string_view{"> \t\r\n"}.find(bytes[at]) != std::string_view::npos;
}

// "ns1:" where the first start tag of that local name is <ns1:value>; none: there is no such tag.
std::optional<std::string> first_prefix(std::string_view bytes, std::string_view name) {
  constexpr std::size_t kLongestPrefix = 32;
  for (auto at = bytes.find(name); at != std::string_view::npos; at = bytes.find(name, at + 1)) {
    const std::size_t start = at - std::min(at, kLongestPrefix);
    const std::string_view before = bytes.substr(start, at - start);
    const auto open = before.rfind('<');
    if (open == std::string_view::npos || !name_ends(bytes, at + name.size())) continue;
    const std::string_view prefix = before.substr(open + 1);
    if (prefix.empty() || prefix.back() == ':') return std::string{prefix};
  }
  return std::nullopt;
}

// Of a run of rows, `text` from its first to the end of its last: where its pieces end, the first behind the first row.
std::vector<std::size_t> piece_ends(std::string_view text, const std::string& row_end) {
  std::vector<std::size_t> out{text.find(row_end) + row_end.size()};
  while (out.back() < text.size()) {
    const std::string_view rest = text.substr(out.back());
    auto last = rest.substr(0, kPiece).rfind(row_end);
    if (last == std::string_view::npos) last = rest.find(row_end);
    out.push_back(out.back() + last + row_end.size());
  }
  return out;
}

// Two rows or more each: from a row's start tag to the last row's end tag in front of the block's.
std::vector<XmlRun> runs_in(std::string_view bytes, XmlRowNames names) {
  const auto prefix = first_prefix(bytes, names.row);
  if (!prefix) return {};
  const std::string row_start = "<" + *prefix + std::string{names.row};
  const std::string row_end = "</" + *prefix + std::string{names.row} + ">";
  const std::string block_end = "</" + *prefix + std::string{names.block} + ">";
  const std::boyer_moore_horspool_searcher block_end_in(block_end.begin(), block_end.end());
  std::vector<XmlRun> out;
  std::size_t left_out = 0;
  for (auto at = bytes.find(row_start); at != std::string_view::npos; at = bytes.find(row_start, at)) {
    const std::size_t start = std::exchange(at, at + row_start.size());
    if (!name_ends(bytes, at)) continue;
    const auto* const end = std::search(bytes.begin() + static_cast<std::ptrdiff_t>(at), bytes.end(), block_end_in);
    if (end == bytes.end()) break;
    at = static_cast<std::size_t>(end - bytes.begin());
    const std::string_view block = bytes.substr(start, at - start);
    const auto last = block.rfind(row_end);
    if (last == block.find(row_end)) continue;
    std::vector<std::size_t> ends = piece_ends(block.substr(0, last + row_end.size()), row_end);
    const std::size_t behind_first = ends.front(), behind_last = ends.back();
    for (std::size_t& piece_end : ends) piece_end += start;
    out.push_back({.start = start, .piece_ends = std::move(ends), .left_out_before = left_out});
    left_out += behind_last - behind_first;
  }
  return out;
}

std::size_t start_in_tree(const pugi::xml_node& row) {
  return static_cast<std::size_t>(std::max<std::ptrdiff_t>(row.offset_debug() - 1, 0));  // of its "<"
}

XmlRun* run_at(XmlTree& tree, const pugi::xml_node& row) {
  const auto place_in_tree = [](const XmlRun& run) { return run.start - run.left_out_before; };
  const std::size_t start = start_in_tree(row);
  const auto found = std::ranges::lower_bound(tree.runs, start, {}, place_in_tree);
  return found != tree.runs.end() && place_in_tree(*found) == start ? &*found : nullptr;
}

// Whether it is a run.
bool take_run(const XmlTree& tree, const XmlRun& run, std::string_view name,
              const std::function<void(const XmlRow&)>& take) {
  // A document type must not be passed over here, where the whole tree would not have it.
  constexpr unsigned kHow = pugi::parse_default | pugi::parse_fragment | pugi::parse_doctype;
  pugi::xml_document piece;
  std::size_t start = run.start;
  for (const std::size_t end : run.piece_ends) {
    if (!piece.load_buffer(tree.bytes.data() + start, end - start, kHow, pugi::encoding_utf8)) return false;
    for (pugi::xml_node row = piece.first_child(); row; row = row.next_sibling()) {
      if (!is_named(row, name)) return false;
      take({.node = row, .tree = tree, .piece = start});
    }
    start = end;
  }
  return true;
}

}  // namespace

std::string XmlRow::place() const {
  if (!piece) return tree.place_of(node);
  return line_and_column(tree.bytes,
                         *piece + static_cast<std::size_t>(std::max<std::ptrdiff_t>(node.offset_debug(), 0)));
}

void for_each_row(XmlTree& tree, const pugi::xml_node& block, std::string_view name,
                  const std::function<void(const XmlRow&)>& take) {
  std::size_t taken_to = 0;  // the first piece is in the tree too: more than one row, where the first has no end tag
  for (pugi::xml_node row = block.first_child(); row; row = row.next_sibling()) {
    if (!is_named(row, name) || start_in_tree(row) < taken_to) continue;
    if (XmlRun* const run = run_at(tree, row)) {
      run->is_read = take_run(tree, *run, name, take);
      taken_to = run->piece_ends.front() - run->left_out_before;
    } else {
      take({.node = row, .tree = tree, .piece = {}});
    }
  }
}

std::size_t rows_in(XmlTree& tree, const pugi::xml_node& block, std::string_view name) {
  std::size_t out = 0;
  for_each_row(tree, block, name, [&](const XmlRow&) { ++out; });
  return out;
}

Result<GaugeAnswer> read_xml(std::string_view bytes, const std::string& where, XmlRowNames names,
                             const std::function<Result<GaugeAnswer>(XmlTree&)>& read) {
  if (auto tree = xml_tree(bytes, where, runs_in(bytes, names))) {
    auto answer = read(*tree);
    if (std::ranges::all_of(tree->runs, &XmlRun::is_read)) return answer;
  }
  auto tree = xml_tree(bytes, where);
  if (!tree) return tl::unexpected(tree.error());
  return read(*tree);
}

}  // namespace floatwright
