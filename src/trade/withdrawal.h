// Why is a note taken back? A withdrawal is a record of its own: final, only by the shop that wrote the note.
#pragma once

#include <string>
#include <string_view>

#include "electrical/electrical.h"

namespace tapbook {

enum class WithdrawalReason { typo, wrong_car, metered_again, asked_to };
template <>
struct NamedValues<WithdrawalReason> {
    static constexpr Named<WithdrawalReason> all[] = {{WithdrawalReason::typo, "typo"},
                                                      {WithdrawalReason::wrong_car, "wrong-car"},
                                                      {WithdrawalReason::metered_again, "metered-again"},
                                                      {WithdrawalReason::asked_to, "asked-to"}};
};
static_assert(table_is_sound<WithdrawalReason>());

}  // namespace tapbook
