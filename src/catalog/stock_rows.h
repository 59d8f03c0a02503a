// Movements of stock in and out of their table, with the terms kept in step. For the files of this folder only.
#pragma once

#include "catalog/adding.h"
#include "catalog/stock.h"

namespace tapbook {

// Older files that are only read have no movements.
bool has_stock_movements(sqlite::Database& database);

// By part, oldest first.
std::map<std::string, std::vector<StockMovement>, std::less<>> all_movements(sqlite::Database& database);

// The columns of terms in the order in which terms_in() reads them; in an older file that is only read NULL stands for
// those it has not.
std::string terms_columns(sqlite::Database& database);
Terms terms_in(const sqlite::Statement& rows, int first);

// What the part costs this shop; absent when it has no terms.
std::optional<Terms> terms_of_part(sqlite::Database& database, std::string_view part);

// Binds the columns of terms_columns() from parameter `first` on.
void bind_terms(sqlite::Statement& put, int first, const Terms& terms);

// Writes the terms where they stand. REQUIRES an open transaction.
void write_terms(sqlite::Database& database, std::string_view part, const Terms& terms);

// Books the difference of both numbers; none books nothing. REQUIRES an open transaction; the terms are the caller's.
void book_difference(sqlite::Database& database, const std::optional<Terms>& before, const std::optional<Terms>& after,
                     StockMovement movement);

// Changes both numbers of the part by the movement and books it; what the terms were goes into `added`. REQUIRES an
// open transaction, and that neither number falls below zero.
void move_stock(sqlite::Database& database, const StockMovement& movement, Added& added);

// Takes the planned converter of a job that is about to be closed, once, and gives back what an earlier closing took of
// another part; absent when none is planned. A job that was closed before and of which the shelf knows nothing (a past
// job of a file, or one from before the shelf was counted) takes nothing. REQUIRES an open transaction.
std::optional<JobStock> take_for_job(sqlite::Database& database, const ShopJob& job, const std::string& today,
                                     Added& added);

}  // namespace tapbook
