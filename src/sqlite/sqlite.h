// The door of sqlite/: what does the rest of the program need to speak to a SQLite file, and to judge an expression
// that somebody else wrote? Nothing here knows of cars, and nothing outside includes <sqlite3.h>.
#pragma once

#include "sqlite/database.h"
#include "sqlite/error.h"
#include "sqlite/refused_expression.h"
#include "sqlite/sandbox.h"
#include "sqlite/statement.h"
#include "sqlite/transaction.h"
#include "sqlite/value.h"
