// How are a note, its reasons, a withdrawal, an undone action and the list of shops said? Text and JSON of the same
// values.
#pragma once

#include <span>
#include <string>

#include "report/screen.h"
#include "rules/rules.h"

namespace tapbook {

std::string note_text(const NoteReport& report, const Screen& screen);
std::string note_json(const NoteReport& report);

std::string why_text(const WhyAnswer& answer, const Screen& screen);
std::string why_json(const WhyAnswer& answer);

std::string withdraw_text(const WithdrawReport& report, const Screen& screen);
std::string withdraw_json(const WithdrawReport& report);

std::string undo_text(const UndoReport& report, const Screen& screen);
std::string undo_json(const UndoReport& report);

std::string shops_text(std::span<const ShopRow> shops, const Screen& screen);
std::string shops_json(std::span<const ShopRow> shops);
std::string shop_text(const ShopReport& report, const Screen& screen);
std::string shop_json(const ShopReport& report);

// The first 8 digits of an id: enough to name a note or a shop on the screen.
std::string short_id(const RecordId& id);

}  // namespace tapbook
