// The library parses the text; the markup is written here.
#include "host/plant_pages/markdown.hpp"

#include <cmark.h>

#include <memory>
#include <string_view>

namespace flutebook::pages {

namespace {

struct FreeNode {
    void operator()(cmark_node* node) const { cmark_node_free(node); }
};

std::string literal_of(cmark_node* node) {
    const char* text = cmark_node_get_literal(node);
    return text == nullptr ? "" : text;
}

Html node_html(cmark_node* node);

Html inside(cmark_node* node) {
    Html result;
    for (cmark_node* child = cmark_node_first_child(node); child != nullptr; child = cmark_node_next(child))
        result += node_html(child);
    return result;
}

Html heading_html(cmark_node* node) {
    switch (cmark_node_get_heading_level(node)) {
        case 1:
            return html("<h1>{}</h1>\n", inside(node));
        case 2:
            return html("<h2>{}</h2>\n", inside(node));
        default:
            return html("<h3>{}</h3>\n", inside(node));
    }
}

// "yaml styles.yaml": the language, and the file that the text is to be kept as.
Html code_html(cmark_node* node) {
    const std::string info = cmark_node_get_fence_info(node);
    const std::size_t space = info.find(' ');
    const Html file = space == std::string::npos
                          ? Html()
                          : html("<p class=\"small quiet\">File <code>{}</code></p>\n", info.substr(space + 1));
    // What is wider than the page scrolls on its own, also by the keyboard.
    return file + html("<pre tabindex=\"0\">{}</pre>\n", literal_of(node));
}

Html list_html(cmark_node* node) {
    return cmark_node_get_list_type(node) == CMARK_ORDERED_LIST ? html("<ol>\n{}</ol>\n", inside(node))
                                                                : html("<ul>\n{}</ul>\n", inside(node));
}

Html paragraph_html(cmark_node* node) {
    cmark_node* list = cmark_node_parent(cmark_node_parent(node));
    const bool is_tight = list != nullptr && cmark_node_get_list_tight(list) != 0;
    return is_tight ? inside(node) : html("<p>{}</p>\n", inside(node));
}

Html link_html(cmark_node* node) {
    std::string_view target = cmark_node_get_url(node);
    while (target.substr(0, 3) == "../") target.remove_prefix(3);
    return html("{} (<code>{}</code>)", inside(node), target);
}

Html node_html(cmark_node* node) {
    switch (cmark_node_get_type(node)) {
        case CMARK_NODE_HEADING:
            return heading_html(node);
        case CMARK_NODE_PARAGRAPH:
            return paragraph_html(node);
        case CMARK_NODE_CODE_BLOCK:
            return code_html(node);
        case CMARK_NODE_LIST:
            return list_html(node);
        case CMARK_NODE_ITEM:
            return html("<li>{}</li>\n", inside(node));
        case CMARK_NODE_BLOCK_QUOTE:
            return html("<blockquote>{}</blockquote>\n", inside(node));
        case CMARK_NODE_THEMATIC_BREAK:
            return html("<hr>\n");
        case CMARK_NODE_CODE:
            return html("<code>{}</code>", literal_of(node));
        case CMARK_NODE_EMPH:
            return html("<em>{}</em>", inside(node));
        case CMARK_NODE_STRONG:
            return html("<strong>{}</strong>", inside(node));
        case CMARK_NODE_LINK:
        case CMARK_NODE_IMAGE:
            return link_html(node);
        case CMARK_NODE_SOFTBREAK:
            return words("\n");
        case CMARK_NODE_LINEBREAK:
            return html("<br>");
        default:
            return words(literal_of(node)) + inside(node);
    }
}

}  // namespace

Html markdown_html(const std::string& text) {
    const std::unique_ptr<cmark_node, FreeNode> whole(
        cmark_parse_document(text.data(), text.size(), CMARK_OPT_VALIDATE_UTF8));
    return inside(whole.get());
}

}  // namespace flutebook::pages
