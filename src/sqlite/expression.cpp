// Compiling an expression: the text is looked at, SQLite resolves it over the relations it may mean, and when it reads
// fewer, once more over those alone; so an expression costs only the relations it reads.
#include <sqlite3.h>

#include "sqlite/error.h"
#include "sqlite/expression_text.h"
#include "sqlite/sandbox.h"
#include "sqlite/sandbox_state.h"

namespace tapbook::sqlite {
namespace {

constexpr std::string_view before = "SELECT (";

// SQLite's sentences around the name they are about, and what they mean here.
struct Complaint {
    std::string_view start;
    std::string_view end;
    Refusal reason;
};

constexpr Complaint complaints[] = {
    {"no such column: ", "", Refusal::unknown_column},
    {"ambiguous column name: ", "", Refusal::ambiguous_column},
    {"no such function: ", "", Refusal::unknown_function},
    {"wrong number of arguments to function ", "()", Refusal::wrong_arguments},
    {"too many arguments on function ", "", Refusal::wrong_arguments},
    {"Expression tree is too large", "", Refusal::too_deep},
    {"parser stack overflow", "", Refusal::too_deep},
    {"row value misused", "", Refusal::second_value},
    {"RAISE() may only be used within a trigger-program", "", Refusal::forbidden_function},
    {"sub-select returns ", "", Refusal::subquery},
};

[[noreturn]] void refuse_denied(const Judge::Denial& denial, const ExpressionText& text) {
    const bool rowid = denial.reason == Refusal::unknown_column;  // the one column no relation declares
    std::optional<std::size_t> place;
    for (const std::string_view name : {"rowid", "oid", "_rowid_"}) {
        if (rowid && !place) place = text.place_of_name(name);
    }
    if (!denial.name.empty() && !rowid) place = text.place_of_name(denial.name);
    throw RefusedExpression(denial.reason, denial.name, place);
}

// The refusal for what SQLite has just complained about.
[[noreturn]] void refuse_complaint(sqlite3* database, const ExpressionText& text) {
    const std::string_view message = sqlite3_errmsg(database);
    const int offset = sqlite3_error_offset(database);
    std::optional<std::size_t> place;
    if (offset >= static_cast<int>(before.size()))
        place = text.place_of(static_cast<std::size_t>(offset) - before.size());
    const bool behind_end = place && *place > text.size();
    for (const auto& [start, end, reason] : complaints) {
        if (!message.starts_with(start)) continue;
        const std::string name(message.substr(start.size(), message.size() - start.size() - end.size()));
        const bool about_name = start.ends_with(' ') && reason != Refusal::subquery;
        if (reason == Refusal::forbidden_function)
            throw RefusedExpression(reason, "raise", text.place_of_name("raise"));
        throw RefusedExpression(reason, about_name ? name : "", place);
    }
    const std::string detail = behind_end ? "the expression ends too early" : std::string(message);
    throw RefusedExpression(Refusal::syntax_error, "", place, detail);
}

RelationSet mentioned(const Sandbox::State& sandbox, const ExpressionText& text) {
    RelationSet set = 0;
    std::string_view last;
    for (const Token& token : text.tokens()) {
        if (token.kind == Token::Kind::word || token.kind == Token::Kind::quoted_name) {
            if (const auto found = sandbox.by_relation_name.find(token.name); found != sandbox.by_relation_name.end()) {
                set |= found->second;
            }
            const auto found = sandbox.by_column_name.find(token.name);
            if (found != sandbox.by_column_name.end() && last != ".") set |= found->second;
        }
        last = token.text;
    }
    return set;
}

Statement compile_over(Sandbox::State& sandbox, const ExpressionText& text, RelationSet from) {
    std::string sql = std::string(before) + text.sql() + ")";
    const char* joint = " FROM \"";
    for (std::size_t i = 0; i < sandbox.relations.size(); ++i) {
        if ((from >> i & 1) == 0) continue;
        sql += joint + sandbox.relations[i].name + "\"";
        joint = ", \"";
    }
    sandbox.judge.begin();
    sqlite3* database = sandbox.database.raw();
    sqlite3_stmt* compiled = nullptr;
    const char* tail = nullptr;
    const int result = sqlite3_prepare_v2(database, sql.data(), static_cast<int>(sql.size()), &compiled, &tail);
    sandbox.judge.end();
    if (sandbox.judge.denial()) refuse_denied(*sandbox.judge.denial(), text);
    if (result != SQLITE_OK) refuse_complaint(database, text);
    Statement statement(compiled);
    if (tail != sql.data() + sql.size()) throw RefusedExpression(Refusal::second_statement, "", std::nullopt);
    return statement;
}

}  // namespace

struct Expression::State {
    std::shared_ptr<Sandbox::State> sandbox;  // first: the statement is finalized before its database closes
    Statement statement;
    std::vector<ColumnRead> reads;

    void compute();  // leaves the statement on its one row
};

Expression::Expression(std::unique_ptr<State> state) : state_(std::move(state)) {}
Expression::~Expression() = default;
Expression::Expression(Expression&&) noexcept = default;
Expression& Expression::operator=(Expression&&) noexcept = default;

Expression Sandbox::compile(std::string_view expression) {
    const ExpressionText text(expression);
    const RelationSet candidates = mentioned(*state_, text);
    Statement statement = compile_over(*state_, text, candidates);
    if (state_->judge.relations_read() != candidates) {
        statement = compile_over(*state_, text, state_->judge.relations_read());
    }
    std::vector<ColumnRead> reads = state_->judge.reads();
    return Expression(
        std::make_unique<Expression::State>(Expression::State{state_, std::move(statement), std::move(reads)}));
}

const std::vector<ColumnRead>& Expression::reads() const {
    return state_->reads;
}

std::string Expression::sql() const {
    return sqlite3_sql(state_->statement.raw());
}

void Expression::State::compute() {
    sandbox->refill_budget();
    if (!statement.step()) throw misuse("a relation of the sandbox has lost its row");
}

Value Expression::value() {
    state_->compute();
    Value value = state_->statement.value(0);
    state_->statement.reset();
    return value;
}

std::optional<bool> Expression::truth() {
    state_->compute();
    std::optional<bool> truth;
    // As SQL's own conditions: every value is taken for a number.
    if (!state_->statement.is_null(0)) truth = sqlite3_column_double(state_->statement.raw(), 0) != 0.0;
    state_->statement.reset();
    return truth;
}

}  // namespace tapbook::sqlite
