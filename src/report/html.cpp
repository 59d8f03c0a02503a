// Tags are kept on a stack; texts go through the drawing's cleaning and escaping, the one way for all markup.
#include "report/html.h"

#include <fmt/format.h>

#include "report/drawing_words.h"

namespace tapbook {
namespace {

constexpr std::string_view plain_in_css = " -.,:";

bool is_plain_in_css(char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9') ||
           plain_in_css.find(letter) != std::string_view::npos;
}

}  // namespace

void Html::tag(std::string_view element, HtmlAttributes attributes) {
    out_.append("<").append(element);
    for (const auto& [name, value] : attributes) {
        out_.append(" ").append(name).append("=\"");
        add_xml_words(out_, value);
        out_ += '"';
    }
}

Html& Html::begin(std::string_view element, HtmlAttributes attributes) {
    tag(element, attributes);
    out_ += '>';
    open_.emplace_back(element);
    return *this;
}

Html& Html::end() {
    out_.append("</").append(open_.back()).append(">");
    open_.pop_back();
    return *this;
}

Html& Html::empty(std::string_view element, HtmlAttributes attributes) {
    tag(element, attributes);
    out_ += "/>";
    return *this;
}

Html& Html::element(std::string_view element, std::string_view words, HtmlAttributes attributes) {
    return begin(element, attributes).text(words).end();
}

Html& Html::text(std::string_view words) {
    // The cleaning takes spaces off both ends; one of each belongs to the words around an element.
    const bool before = words.starts_with(' '), after = words.size() > 1 && words.ends_with(' ');
    if (before) out_ += ' ';
    const std::size_t start = out_.size();
    add_xml_words(out_, words.substr(before ? 1 : 0, words.size() - (before ? 1 : 0) - (after ? 1 : 0)));
    if (after && out_.size() > start) out_ += ' ';
    return *this;
}

Html& Html::raw(std::string_view markup) {
    out_ += markup;
    return *this;
}

Html& Html::line() {
    out_ += '\n';
    return *this;
}

std::string Html::take() {
    return std::move(out_);
}

std::string css_string(std::string_view text) {
    std::string out = "\"";
    for (const char letter : clean_words(text)) {
        if (static_cast<unsigned char>(letter) >= 0x80 || is_plain_in_css(letter))
            out += letter;
        else
            out += fmt::format("\\{:x} ", static_cast<int>(letter));
    }
    return out + '"';
}

}  // namespace tapbook
