// See finished_pages.h.
#include "page/finished_pages.h"

#include <fmt/format.h>

#include "page/form.h"

namespace tapbook {
namespace {

constexpr std::size_t bytes_beside = 512;  // of an entry: list, table, empty texts

}  // namespace

std::string question_of(const PageRequest& request) {
    // No part holds a line feed: a path and a phone's name have no control characters, the others are encoded.
    return fmt::format("{}\n{}\n{}\n{}\n{}", request.path, form_text(request.query), request.today,
                       request.phone ? "+" + *request.phone : std::string("-"), form_text(FormFields(request.kept)));
}

bool may_be_sent_again(const PageRequest& request, const PageAnswer& answer) {
    return request.method == PageMethod::get && answer.status == 200 && answer.location.empty() &&
           answer.keep.empty() && !answer.begins_visit && !answer.pairs_phone && !request.form_token.empty() &&
           answer.body.find(request.form_token) == std::string::npos;
}

void FinishedPages::begin(const std::string& state) {
    if (state == state_) return;
    by_question_.clear();
    pages_.clear();
    bytes_ = 0;
    state_ = state;
}

const PageAnswer* FinishedPages::find(const std::string& question) {
    const auto found = by_question_.find(question);
    if (found == by_question_.end()) return nullptr;
    pages_.splice(pages_.begin(), pages_, found->second);
    return &found->second->answer;
}

void FinishedPages::keep(const std::string& question, const PageAnswer& answer) {
    const Kept kept{question, answer};
    const std::size_t size = size_of(kept);
    if (size > most_bytes_ / 4 || by_question_.contains(question)) return;
    for (bytes_ += size; bytes_ > most_bytes_; pages_.pop_back()) {
        bytes_ -= size_of(pages_.back());
        by_question_.erase(pages_.back().question);
    }
    pages_.push_front(kept);
    by_question_.emplace(question, pages_.begin());
}

std::size_t FinishedPages::size_of(const Kept& kept) {
    std::size_t size = bytes_beside + 2 * kept.question.size() + kept.answer.body.size() + kept.answer.type.size();
    for (const auto& text : kept.answer.inline_texts) size += text.size();
    return size;
}

}  // namespace tapbook
