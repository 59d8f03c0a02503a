// Is a text well-formed XML? A small checker of its own reads elements, attributes and entities (XML 1.0, sections 2.2,
// 3.1 and 4.6, as far as the program's markup uses them).
#pragma once

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "trade/trade.h"

namespace tapbook::xml {

struct Read {
    std::string wrong;  // "" for a well-formed document
    std::map<std::string, int> elements;
    std::set<std::string> attributes;
};

inline bool is_entity(const std::string& text, std::size_t at) {
    for (const std::string entity : {"&amp;", "&lt;", "&gt;", "&quot;", "&#39;"})
        if (text.compare(at, entity.size(), entity) == 0) return true;
    return false;
}

inline bool is_clean(const std::string& text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto byte = static_cast<unsigned char>(text[at]);
        if (text[at] == '<' || text[at] == '>' || byte == 0x7f || (byte < 0x20 && byte != '\n')) return false;
        if (text[at] == '&' && !is_entity(text, at)) return false;
    }
    return is_utf8(text);
}

// The attributes of a tag's inside, " x="1" y="2"", noted in `read`.
inline void read_attributes(std::string inside, Read& read) {
    while (!inside.empty()) {
        const auto equals = inside.find("=\"");
        const auto end = equals == std::string::npos ? equals : inside.find('"', equals + 2);
        if (inside[0] != ' ' || end == std::string::npos) {
            read.wrong = "attributes: " + inside;
            return;
        }
        read.attributes.insert(inside.substr(1, equals - 1));
        if (!is_clean(inside.substr(equals + 2, end - equals - 2))) read.wrong = "value: " + inside;
        inside.erase(0, end + 1);
    }
}

inline void read_tag(std::string tag, std::vector<std::string>& open, Read& read) {
    if (tag.starts_with('/')) {
        if (open.empty() || open.back() != tag.substr(1)) read.wrong = "closes " + tag;
        if (!open.empty()) open.pop_back();
        return;
    }
    const bool is_empty = tag.ends_with('/');
    if (is_empty) tag.pop_back();
    const auto end = std::min(tag.find(' '), tag.size());
    const std::string name = tag.substr(0, end);
    ++read.elements[name];
    read_attributes(tag.substr(end), read);
    if (!is_empty) open.push_back(name);
}

inline Read read_xml(const std::string& text) {
    Read read;
    std::vector<std::string> open;
    for (std::size_t at = 0; at < text.size() && read.wrong.empty();) {
        const auto begin = std::min(text.find('<', at), text.size());
        if (!is_clean(text.substr(at, begin - at))) read.wrong = "text: " + text.substr(at, begin - at);
        if (begin == text.size()) break;
        const auto end = text.find('>', begin);
        if (end == std::string::npos) {
            read.wrong = "a tag without an end";
            break;
        }
        read_tag(text.substr(begin + 1, end - begin - 1), open, read);
        at = end + 1;
    }
    if (read.wrong.empty() && !open.empty()) read.wrong = "left open: " + open.back();
    return read;
}

}  // namespace tapbook::xml
