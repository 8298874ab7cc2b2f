// Markup is what the compiler checked; all else is escaped. That wrong markup does not compile is shown by the reader
// of literals, which throws here what it throws at the compiler.
#include "host/pages/markup.hpp"

#include <catch2/catch.hpp>

using namespace flutebook::pages;

namespace {

using Fits = MarkupReader::Fits;

// What is wrong with a literal whose places are filled so; empty where nothing is.
std::string fault_of(std::string_view literal, const std::vector<Fits>& parts) {
    try {
        MarkupReader reader(literal);
        for (const Fits part : parts)
            if (!reader.reads_to_place(part)) return "too few places";
        if (reader.reads_to_place(Fits::text)) return "too many places";
        reader.check_end();
    } catch (const char* fault) {
        return fault;
    }
    return "";
}

template <typename Type>
concept MakesHtml = requires(Type text) {
    html(text);
};

}  // namespace

TEST_CASE("what is put into markup is escaped, in text and in attributes") {
    CHECK(html("<p title=\"{}\">{}</p>", "\"onx=\"", "<script>&").text() ==
          "<p title=\"&quot;onx=&quot;\">&lt;script&gt;&amp;</p>");
}

TEST_CASE("markup within markup stays as it is") {
    CHECK(html("<b>{}</b>", html("<i>{}</i>", "a<b")).text() == "<b><i>a&lt;b</i></b>");
}

TEST_CASE("braces in a text are no places") {
    CHECK(html("<b>{}{}</b>", "{}", "x").text() == "<b>{}x</b>");
}

TEST_CASE("control characters and bytes that are no character never reach a page") {
    CHECK(words("a\x01"
                "b\xff")
              .text() == "a b\xEF\xBF\xBD");
}

TEST_CASE("lines of a text stay lines") {
    CHECK(words("a\nb").text() == "a\nb");
}

TEST_CASE("a text is no markup, whatever it holds") {
    CHECK_FALSE(MakesHtml<std::string>);
    CHECK_FALSE(MakesHtml<const std::string&>);
    CHECK_FALSE(std::is_convertible_v<std::string, Html>);
    CHECK_FALSE(std::is_convertible_v<const char*, Html>);
}

TEST_CASE("an attribute that is followed takes an address alone") {
    CHECK(fault_of("<a href=\"{}\">x</a>", {Fits::text}) == "an attribute that is followed takes an Address");
    CHECK(fault_of("<form action=\"{}\"></form>", {Fits::text}) == "an attribute that is followed takes an Address");
    CHECK(fault_of("<a href=\"{}\">x</a>", {Fits::address}).empty());
}

TEST_CASE("a place in a tag stands in quotes, or takes an attribute") {
    CHECK(fault_of("<p id={}></p>", {Fits::text}) == "attributes stand in double quotes");
    CHECK(fault_of("<p {}></p>", {Fits::text}) == "in a tag, a place outside quotes takes an Attribute alone");
    CHECK(fault_of("<p{}></p>", {Fits::attribute}).empty());
    CHECK(fault_of("<p>{}</p>", {Fits::attribute}) == "an Attribute stands in a tag");
}

TEST_CASE("markup does not stand in an attribute") {
    CHECK(fault_of("<p title=\"{}\"></p>", {Fits::markup}) == "Html does not stand in an attribute");
}

TEST_CASE("what the policy of the pages refuses is refused before") {
    CHECK(fault_of("<p style=\"color:red\"></p>", {}) == "the page's policy refuses this attribute");
    CHECK(fault_of("<p onclick=\"go()\"></p>", {}) == "the page's policy refuses this attribute");
    CHECK(fault_of("<style>p {</style>", {}) == "the page's policy refuses styles in the page");
    CHECK(fault_of("<script>go()</script>", {}) == "a script stands in a file of its own");
    CHECK(fault_of("<script src=\"{}\"></script>", {Fits::address}).empty());
}

TEST_CASE("elements are closed where they are opened") {
    CHECK(fault_of("<p><b>x</p></b>", {}) == "an end of an element that was not opened last");
    CHECK(fault_of("<p>x", {}) == "an element is not closed in the literal that opens it");
    CHECK(fault_of("</p>", {}) == "an end of an element that was not opened last");
    CHECK(fault_of("<p", {}) == "a tag is not closed");
    CHECK(fault_of("<p><br><input name=\"a\"><path d=\"M0 0\"/></p>", {}).empty());
}

TEST_CASE("places and parts are as many") {
    CHECK(fault_of("<p>{}</p>", {}) == "too many places");
    CHECK(fault_of("<p></p>", {Fits::text}) == "too few places");
    CHECK(fault_of("<p>{a}</p>", {Fits::text}) == "a brace stands for a place alone");
}

TEST_CASE("what a person wrote becomes no other path and no other site") {
    CHECK(Address("/quotes").at("../users").text() == "/quotes/..%2Fusers");
    CHECK(Address("/quotes").at("..").text() == "/quotes/_");
    CHECK(Address("/quotes").at("a?b#c").text() == "/quotes/a%3Fb%23c");
}

TEST_CASE("fields of an address are encoded as a form's are") {
    CHECK(Address("/quotes/new").with("line", "0201 400x300x250 18%").with("a", "&=+").text() ==
          "/quotes/new?line=0201+400x300x250+18%25&a=%26%3D%2B");
    CHECK(Address::here().with("step", "0").to("cost").text() == "?step=0#cost");
}
