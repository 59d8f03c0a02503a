// Building the sandbox's tables and changing their rows. After that one transaction stays open for good: it is never
// needed to undo anything, and without it every change would begin and end one of its own.
#include "sqlite/sandbox.h"

#include <sqlite3.h>

#include <algorithm>
#include <limits>
#include <set>
#include <stdexcept>

#include "sqlite/sandbox_state.h"

namespace tapbook::sqlite {
namespace {

constexpr std::size_t most_relations = 60;
constexpr std::size_t most_columns = 200;
constexpr std::int64_t most_steps_between_looks = 1000;

// The values SQLite's own advice gives for SQL from strangers (https://www.sqlite.org/security.html), or tighter.
constexpr std::pair<int, int> high_security_limits[] = {
    {SQLITE_LIMIT_LENGTH, 1'000'000},
    {SQLITE_LIMIT_SQL_LENGTH, 100'000},
    {SQLITE_LIMIT_COLUMN, static_cast<int>(most_columns)},
    {SQLITE_LIMIT_EXPR_DEPTH, static_cast<int>(most_expression_depth)},
    {SQLITE_LIMIT_COMPOUND_SELECT, 3},
    {SQLITE_LIMIT_VDBE_OP, 25'000},
    {SQLITE_LIMIT_FUNCTION_ARG, 8},
    {SQLITE_LIMIT_ATTACHED, 0},
    {SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 50},
    {SQLITE_LIMIT_VARIABLE_NUMBER, static_cast<int>(most_columns)},
    {SQLITE_LIMIT_TRIGGER_DEPTH, 1},
};

bool is_plain_name(std::string_view name) {
    const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || c == '_'; };
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    if (name.empty() || !letter(name.front())) return false;
    return std::all_of(name.begin(), name.end(), [&](char c) { return letter(c) || digit(c); });
}

void require(bool condition, const std::string& what) {
    if (!condition) throw std::invalid_argument("sandbox: " + what);
}

void check_relation(const Relation& relation) {
    require(is_plain_name(relation.name), "\"" + relation.name + "\" is no name for a relation");
    require(!relation.columns.empty() && relation.columns.size() <= most_columns,
            relation.name + " has no columns or too many");
    std::set<std::string_view> seen = {"rowid", "oid", "_rowid_"};
    for (const auto& [name, type] : relation.columns) {
        const std::string full = relation.name + "." + name;
        require(is_plain_name(name) && seen.insert(name).second, full + " is no name for a column, or stands twice");
        require(type == "INTEGER" || type == "REAL" || type == "TEXT", full + " has the unknown type " + type);
    }
}

std::vector<Relation> checked(std::vector<Relation> relations) {
    require(relations.size() <= most_relations, "too many relations");
    std::set<std::string_view> seen;
    for (const Relation& relation : relations) {
        check_relation(relation);
        require(seen.insert(relation.name).second, "two relations named " + relation.name);
    }
    return relations;
}

std::string creating(const Relation& relation) {
    std::string sql;
    for (const auto& [name, type] : relation.columns) sql += (sql.empty() ? "\"" : ", \"") + name + "\" " + type;
    return "CREATE TABLE \"" + relation.name + "\" (" + sql + ") STRICT; INSERT INTO \"" + relation.name +
           "\" DEFAULT VALUES;";
}

std::string setting(const Relation& relation) {
    std::string sql;
    for (const auto& column : relation.columns) sql += (sql.empty() ? "\"" : ", \"") + column.name + "\" = ?";
    return "UPDATE \"" + relation.name + "\" SET " + sql + " WHERE rowid = 1";
}

int ask_judge(void* judge, int action, const char* first, const char* second, const char*, const char*) noexcept {
    return static_cast<Judge*>(judge)->answer(action, first, second);
}

std::int64_t steps_between_looks(std::int64_t budget) {
    return std::clamp<std::int64_t>(budget / 10, 1, most_steps_between_looks);
}

// Called by SQLite every so many steps; it ends the statement unless this is 0.
int look_at_budget(void* state) noexcept {
    auto& sandbox = *static_cast<Sandbox::State*>(state);
    sandbox.steps_left -= steps_between_looks(sandbox.step_budget);
    return sandbox.steps_left < 0 ? 1 : 0;
}

}  // namespace

Sandbox::State::State(std::vector<Relation> described, std::int64_t budget)
    : relations(checked(std::move(described))),
      step_budget(budget),
      steps_left(budget),
      judge(relations),
      database(Database::in_memory()) {
    for (std::size_t i = 0; i < relations.size(); ++i) {
        by_relation_name[relations[i].name] |= RelationSet{1} << i;
        for (const auto& column : relations[i].columns) by_column_name[column.name] |= RelationSet{1} << i;
    }
    limit_connection();
    create_tables();
}

void Sandbox::State::create_tables() {
    std::string script = "BEGIN;";
    for (const Relation& relation : relations) script += creating(relation);
    lift_budget();
    database.execute(script + "COMMIT; BEGIN");
    for (const Relation& relation : relations) {
        setters.push_back(database.prepare(setting(relation)));
        rows.emplace_back(relation.columns.size());
    }
}

void Sandbox::State::limit_connection() {
    for (const auto& [limit, most] : high_security_limits) sqlite3_limit(database.raw(), limit, most);
    sqlite3_set_authorizer(database.raw(), ask_judge, &judge);
    sqlite3_progress_handler(database.raw(), static_cast<int>(steps_between_looks(step_budget)), look_at_budget, this);
}

void Sandbox::State::lift_budget() {
    steps_left = std::numeric_limits<std::int64_t>::max();
}

std::size_t Sandbox::State::index_of(std::string_view relation) const {
    const auto is_it = [&](const Relation& one) { return one.name == relation; };
    const auto found = std::find_if(relations.begin(), relations.end(), is_it);
    require(found != relations.end(), "no relation " + std::string(relation));
    return static_cast<std::size_t>(found - relations.begin());
}

Sandbox::Sandbox(const std::vector<Relation>& relations, std::int64_t step_budget)
    : state_(std::make_shared<State>(relations, step_budget)) {}

Sandbox::~Sandbox() = default;
Sandbox::Sandbox(Sandbox&&) noexcept = default;
Sandbox& Sandbox::operator=(Sandbox&&) noexcept = default;

void Sandbox::set(std::string_view relation, const std::vector<Value>& values) {
    const std::size_t index = state_->index_of(relation);
    const std::size_t columns = state_->relations[index].columns.size();
    if (values.size() != columns)
        require(false, std::string(relation) + " has " + std::to_string(columns) + " columns");
    if (state_->rows[index] == values) return;
    Statement& setter = state_->setters[index];
    for (std::size_t i = 0; i < columns; ++i) setter.bind(static_cast<int>(i + 1), values[i]);
    state_->lift_budget();
    setter.run();
    state_->rows[index] = values;
}

void Sandbox::clear(std::string_view relation) {
    const std::size_t columns = state_->relations[state_->index_of(relation)].columns.size();
    set(relation, std::vector<Value>(columns));
}

}  // namespace tapbook::sqlite
