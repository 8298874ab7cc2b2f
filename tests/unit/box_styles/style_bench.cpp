#include "tests/unit/box_styles/style_bench.hpp"

#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/base/yaml/document.hpp"
#include "host/box_styles/styles_file.hpp"

namespace flutebook::fixture {

namespace {

std::vector<box_styles::Style> read_text(const std::string& text) {
    base::Diagnostics complaints;
    fields::Reading reading{complaints, "EUR"};
    std::vector<box_styles::Style> styles;
    const auto document = base::parse_document(text, "s", complaints);
    if (document) {
        fields::MapReader form(fields::Field(*document, "s", reading));
        styles = box_styles::read_styles(form.field("styles"), {box_styles::style_library().entries, {}});
        form.finish();
    }
    complaints.throw_if_any(InputError::Whose::plant);
    return styles;
}

}  // namespace

std::vector<box_styles::Style> read_styles_text(const std::string& text) {
    try {
        return read_text(text);
    } catch (const InputError& error) {
        for (const auto& line : error.lines()) UNSCOPED_INFO(line);
        FAIL("the styles are not fit");
    }
    return {};
}

std::vector<std::string> style_complaints(const std::string& text) {
    std::vector<std::string> lines;
    try {
        static_cast<void>(read_text(text));
    } catch (const InputError& error) {
        // "s:" goes: the file is always the same.
        for (const auto& line : error.lines()) lines.push_back(line.substr(2));
    }
    return lines;
}

std::string tray_text() {
    return R"(styles:
  T-1:
    title: A tray
    made_by: die-cutter
    ask: {lip: {default: 20, range: [0, H], says: how far the lip reaches}}
    let: {h: H + t}
    along: [h, L + 2*t, h]
    across: [lip, h, B + t, h]
    map:
      - .    lip   .
      - .    --    .
      - .    back  .
      - .    --    .
      - e1 | base | e2
      - .    --    .
      - .    front .
    cells:
      e1 e2: {inset: t, taper: [0, 5]}
      base: {holes: [{count: 2, at: [30*i, 40], size: [10, 20]}]}
    fold: [e1 e2, back front, lip -90]
    inside: {L: [e1, e2], B: [front, back], H: [base, rim]}
    cover: {top: 0}
)";
}

std::string tray_with(const std::string& old_text, const std::string& new_text) {
    std::string text = tray_text();
    const auto at = text.find(old_text);
    REQUIRE(at != std::string::npos);
    REQUIRE(text.find(old_text, at + 1) == std::string::npos);
    return text.replace(at, old_text.size(), new_text);
}

}  // namespace flutebook::fixture
