// What forms are made of: boxes, choices, actions.
#include <fmt/format.h>

#include "page/page_html.h"

namespace tapbook {
namespace {

// What is wrong with a box, and where it is described.
void write_complaint(Html& html, std::string_view name, std::string_view complaint) {
    if (!complaint.empty())
        html.element("span", complaint, {{"class", "complaint"}, {"id", fmt::format("said-{}", name)}});
}

void write_pairing(Html& html) {
    html.begin("p", {{"class", "unpaired"}})
        .text("Reading is open to everybody here. To write, pair this phone once: ");
    write_link(html, "/pair", "Pair", "more");
    html.end();
}

}  // namespace

void begin_form(Html& html, const PageRequest& request, const std::string& action, std::string_view name) {
    if (name.empty())
        html.begin("form", {{"method", "post"}, {"action", action}, {"novalidate", "novalidate"}});
    else
        html.begin("form", {{"method", "post"}, {"action", action}, {"novalidate", "novalidate"}, {"data-keep", name}});
    write_hidden(html, form_token_field, request.form_token);
}

void write_hidden(Html& html, std::string_view name, std::string_view value) {
    html.empty("input", {{"type", "hidden"}, {"name", name}, {"value", value}});
}

void write_action(Html& html, const PageRequest& request, std::string_view words, std::string_view value) {
    if (!request.phone) return write_pairing(html);
    if (value.empty())
        html.element("button", words, {{"type", "submit"}, {"class", "main"}});
    else
        html.element("button", words, {{"type", "submit"}, {"class", "main"}, {"name", "then"}, {"value", value}});
}

void write_second_action(Html& html, const PageRequest& request, std::string_view words, std::string_view value) {
    if (!request.phone) return;
    if (value.empty())
        html.element("button", words, {{"type", "submit"}});
    else
        html.element("button", words, {{"type", "submit"}, {"name", "then"}, {"value", value}});
}

void write_form_box(Html& html, const FormBox& box) {
    html.begin("label", {{"class", box.is_wide ? "box wide" : "box"}});
    html.element("span", box.label, {{"class", "label"}});
    html.begin("span", {{"class", "entry"}});
    const std::string described = fmt::format("said-{}", box.name);
    const std::string_view mode = box.is_number ? "decimal" : "text";
    if (box.complaint.empty())
        html.empty(
            "input",
            {{"type", "text"}, {"name", box.name}, {"inputmode", mode}, {"autocomplete", "off"}, {"value", box.value}});
    else
        html.empty("input", {{"type", "text"},
                             {"name", box.name},
                             {"inputmode", mode},
                             {"autocomplete", "off"},
                             {"aria-invalid", "true"},
                             {"aria-describedby", described},
                             {"value", box.value}});
    if (!box.unit.empty()) html.element("span", box.unit, {{"class", "unit"}});
    html.end();
    if (!box.remark.empty()) html.element("span", box.remark, {{"class", "remark"}});
    write_complaint(html, box.name, box.complaint);
    html.end().line();
}

void write_select(Html& html, std::string_view name, std::string_view label, const FormChoices& choices,
                  std::string_view chosen, std::string_view complaint) {
    html.begin("label", {{"class", "box wide"}}).element("span", label, {{"class", "label"}});
    html.begin("select", {{"name", name}});
    for (const auto& [value, words] : choices) {
        if (value == chosen)
            html.element("option", words, {{"value", value}, {"selected", "selected"}});
        else
            html.element("option", words, {{"value", value}});
    }
    html.end();
    write_complaint(html, name, complaint);
    html.end().line();
}

void write_radios(Html& html, std::string_view name, std::string_view label, const FormChoices& choices,
                  std::string_view chosen, std::string_view complaint) {
    html.begin("fieldset", {{"class", "presses"}}).element("legend", label);
    html.begin("div", {{"class", "row"}});
    for (const auto& [value, words] : choices) {
        html.begin("label", {{"class", "press"}});
        if (value == chosen)
            html.empty("input", {{"type", "radio"}, {"name", name}, {"value", value}, {"checked", "checked"}});
        else
            html.empty("input", {{"type", "radio"}, {"name", name}, {"value", value}});
        html.element("span", words).end();
    }
    html.end();
    write_complaint(html, name, complaint);
    html.end().line();
}

void write_tick(Html& html, std::string_view name, std::string_view label, bool ticked) {
    html.begin("label", {{"class", "tick"}});
    if (ticked)
        html.empty("input", {{"type", "checkbox"}, {"name", name}, {"value", "yes"}, {"checked", "checked"}});
    else
        html.empty("input", {{"type", "checkbox"}, {"name", name}, {"value", "yes"}});
    html.element("span", label).end().line();
}

}  // namespace tapbook
