#include "adapters/out/html/as_html.hpp"

#include <pugixml.hpp>
#include <sstream>

#include "adapters/out/html/html_table.hpp"
#include "adapters/out/html/html_text.hpp"
#include "adapters/out/html/tree.hpp"

namespace floatwright {
namespace {

// Sizes in rem: a reader's own size of letters counts. No child combinator: the tree would escape its sign.
constexpr const char* kStyle = R"(
:root{color-scheme:light dark}
body{margin:0;padding:1rem;background:#fff;color:#000;font:1rem/1.45 sans-serif;overflow-wrap:anywhere}
main{max-width:50rem;margin:0 auto}
h1{font-size:1.3rem;line-height:1.25;margin:1.5rem 0 .5rem}
h2{font-size:1rem;margin:1.5rem 0 .25rem}
p{margin:0 0 .6rem}
p,dd,h1{white-space:pre-wrap}
h1 span{display:block;font-size:1rem}
ul{margin:0;padding-left:1.25rem}
li{margin:0 0 .4rem}
dl{margin:0}
dt{font-weight:bold;margin-top:.5rem}
dd{margin:0 0 0 1.25rem}
figure{margin:1.5rem 0}
img{max-width:100%;height:auto;background:#fff;color:#000}
table{border-collapse:collapse;width:100%;margin:1.5rem 0}
th,td{text-align:left;vertical-align:top;padding:.3rem .7rem .3rem 0}
th{overflow-wrap:normal}
tr{border-top:1px solid}
.on{border-top:0}
.n{white-space:nowrap}
.k{display:none}
@media (max-width:44rem){
table,thead,tbody,tr{display:block}
th,td{display:inline;padding:0 .7rem 0 0}
tr{padding:.5rem 0}
.on{padding-top:0}
.w{display:none}
.k{display:inline}
.h{padding:0}
.h::after{content:"\A";white-space:pre}
tbody tr{padding-left:1.25rem;text-indent:-1.25rem}
tr td:first-child,.h{font-weight:bold}
}
@media (prefers-color-scheme:dark){body{background:#000;color:#fff}}
)";

void add_meta(pugi::xml_node head, const char* name, const char* content) {
  pugi::xml_node meta = head.append_child("meta");
  meta.append_attribute("name").set_value(name);
  meta.append_attribute("content").set_value(content);
}

void add_document_head(pugi::xml_node html, const std::string& title) {
  pugi::xml_node head = html.append_child("head");
  head.append_child("meta").append_attribute("charset").set_value("utf-8");
  add_meta(head, "viewport", "width=device-width, initial-scale=1");
  add_meta(head, "color-scheme", "light dark");
  const std::string words = title.empty() ? "floatwright" : characters_only(title);
  head.append_child("title").append_child(pugi::node_pcdata).set_value(words.c_str());
  head.append_child("style").append_child(pugi::node_pcdata).set_value(kStyle);
}

bool fetches_nothing(const std::string& address) { return address.starts_with("cid:") || address.starts_with("data:"); }

class Printer {
 public:
  Printer(pugi::xml_node parent, const HtmlOptions& options) : parent_(parent), options_(options) {}

  void operator()(const Heading& heading) {
    pugi::xml_node element = add_element(parent_, heading.level == 1 ? "h1" : "h2", heading.left);
    if (heading.right.empty()) return;
    add_words(element, " ");
    add_element(element, "span", heading.right);
  }
  void operator()(const Lines& block) {
    if (!block.label.empty()) add_element(parent_, "h2", block.label);
    if (block.label.empty() || block.lines.size() == 1) {
      for (const std::string& line : block.lines) add_element(parent_, "p", line);
    } else if (!block.lines.empty()) {
      pugi::xml_node list = parent_.append_child("ul");
      for (const std::string& line : block.lines) add_element(list, "li", line);
    }
  }
  void operator()(const PageTable& table) { add_table(parent_, table); }
  void operator()(const Rods& rods) {
    if (!rods.title.empty()) add_element(parent_, "h2", rods.title);
    if (rods.rods.empty() && rods.bag.empty()) return;
    pugi::xml_node list = parent_.append_child("dl");
    for (const RodLine& rod : rods.rods) {
      const std::string shape = shape_and_word(rod.mark);
      add_item(list, shape + (shape.empty() || rod.letter.empty() ? "" : " ") + rod.letter, rod.lines);
    }
    if (!rods.bag.empty()) add_item(list, "bag", rods.bag);
  }
  void operator()(const Figure& figure) {
    const auto picture = options_.pictures.find(figure.name);
    if (picture == options_.pictures.end() || !fetches_nothing(picture->second)) return;
    pugi::xml_node image = parent_.append_child("figure").append_child("img");
    image.append_attribute("src").set_value(characters_only(picture->second).c_str());
    image.append_attribute("alt").set_value(characters_only(figure.alt).c_str());
  }
  void operator()(const PencilBoxes&) {}

 private:
  static void add_item(pugi::xml_node list, const std::string& term, const std::vector<std::string>& lines) {
    add_element(list, "dt", term);
    for (const std::string& line : lines) add_element(list, "dd", line);
    if (lines.empty()) add_element(list, "dd", "");
  }

  pugi::xml_node parent_;
  const HtmlOptions& options_;
};

}  // namespace

std::string as_html(const Page& page, const HtmlOptions& options) {
  pugi::xml_document document;
  document.append_child(pugi::node_doctype).set_value("html");
  pugi::xml_node html = document.append_child("html");
  html.append_attribute("lang").set_value(characters_only(options.language).c_str());
  add_document_head(html, page.title);
  pugi::xml_node main = html.append_child("body").append_child("main");
  Printer printer(main, options);
  for (const Block& block : page.blocks) {
    main.append_child(pugi::node_pcdata).set_value("\n");
    std::visit(printer, block);
  }
  main.append_child(pugi::node_pcdata).set_value("\n");
  std::ostringstream out;
  document.save(out, "", pugi::format_raw | pugi::format_no_declaration, pugi::encoding_utf8);
  return out.str() + "\n";
}

}  // namespace floatwright
