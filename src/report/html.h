// How is HTML written so that no text of others becomes an element? A small writer that also keeps to XML: every
// element is closed, attributes are quoted, texts are cleaned and escaped on the way in.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tapbook {

// Name and value. A name is one of ours; a value may be anything.
using HtmlAttribute = std::pair<std::string_view, std::string_view>;
using HtmlAttributes = std::initializer_list<HtmlAttribute>;

class Html {
  public:
    Html& begin(std::string_view element, HtmlAttributes attributes = {});
    // Closes the element that was begun last. REQUIRES one that is open.
    Html& end();
    // An element without content: input, br.
    Html& empty(std::string_view element, HtmlAttributes attributes = {});
    // An element with nothing but text in it.
    Html& element(std::string_view element, std::string_view text, HtmlAttributes attributes = {});
    // Whatever it is, as text: control and direction-changing characters are left out, runs of spaces are one space.
    Html& text(std::string_view text);
    // Markup that is ready. REQUIRES it to be ours and well-formed.
    Html& raw(std::string_view markup);
    Html& line();  // a line feed between blocks, for people who read the file

    // REQUIRES every element to be closed.
    std::string take();

    // Bytes written so far.
    std::size_t size() const { return out_.size(); }

  private:
    void tag(std::string_view element, HtmlAttributes attributes);
    std::string out_;
    std::vector<std::string> open_;
};

// `text` as a CSS string with its quotes, every character but letters, digits, space and "-.,:" as an escape.
std::string css_string(std::string_view text);

}  // namespace tapbook
