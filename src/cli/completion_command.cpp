// completion: the scripts for the shells. They are short on purpose: whatever is typed, they ask the program itself
// (`tapbook completion candidates .WORD... .CURRENT`, a point before each so that none is an option), hand the answers
// to the shell as data and run none of them.
#include <fmt/format.h>

#include "cli/completion.h"

namespace tapbook {
namespace {

constexpr std::string_view bash_script = R"(# Completion of tapbook for bash, made by `tapbook completion bash`.
_tapbook() {
    local current=${COMP_WORDS[COMP_CWORD]} line value quote=
    local -a before=()
    for value in "${COMP_WORDS[@]:1:COMP_CWORD-1}"; do
        [[ $value == = ]] || before+=("$value")
    done
    [[ $current == = ]] && current=
    case $current in \"*|\'*) quote=${current:0:1} current=${current:1} ;; esac
    COMPREPLY=()
    while IFS= read -r line; do
        value=${line%%$'\t'*}
        case $value in
            :files)
                compopt -o filenames 2>/dev/null
                while IFS= read -r value; do COMPREPLY+=("$value"); done < <(compgen -f -- "$current") ;;
            :folders)
                compopt -o filenames 2>/dev/null
                while IFS= read -r value; do COMPREPLY+=("$value"); done < <(compgen -d -- "$current") ;;
            *[!a-zA-Z0-9._/,+-]*)
                [[ -n $quote ]] && continue
                printf -v value %q "$value"
                COMPREPLY+=("$value") ;;
            *) COMPREPLY+=("$value") ;;
        esac
    done < <("$1" completion candidates "${before[@]/#/.}" ".$current" 2>/dev/null)
}
complete -F _tapbook tapbook
)";

constexpr std::string_view zsh_script = R"(#compdef tapbook
# Completion of tapbook for zsh, made by `tapbook completion zsh`.
_tapbook() {
    local line
    local -a values lines before
    before=("${(@Q)words[2,CURRENT-1]}")
    (( CURRENT > 2 )) || before=()
    while IFS= read -r line; do
        case $line in
            :files) _files; return ;;
            :folders) _files -/; return ;;
        esac
        values+=("${line%%$'\t'*}")
        lines+=("${line/$'\t'/  }")
    done < <("${(Q)words[1]}" completion candidates "${(@)before/#/.}" ".${(Q)PREFIX}" 2>/dev/null)
    (( ${#values} )) && compadd -l -d lines -a values
}
if [[ ${funcstack[1]} == _tapbook ]]; then
    _tapbook "$@"
elif (( ${+functions[compdef]} )); then
    compdef _tapbook tapbook
fi
)";

constexpr std::string_view fish_script = R"(# Completion of tapbook for fish, made by `tapbook completion fish`.
function __tapbook_candidates
    set -l before (commandline -opc)
    set -l current (commandline -ct)
    for line in (command $before[1] completion candidates .$before[2..-1] .$current 2>/dev/null)
        switch $line
            case ':files'
                __fish_complete_path $current
            case ':folders'
                __fish_complete_directories $current
            case '*'
                echo -E $line
        end
    end
end
complete -c tapbook -f -a '(__tapbook_candidates)'
)";

constexpr std::pair<std::string_view, std::string_view> scripts[] = {
    {"bash", bash_script}, {"zsh", zsh_script}, {"fish", fish_script}};

// One line for each candidate: the value, a tab, the description.
std::string candidate_lines(const Session& session, const std::vector<std::string>& words) {
    std::vector<std::string> before;
    for (std::size_t i = 1; i < words.size(); ++i) before.push_back(words[i].empty() ? "" : words[i].substr(1));
    const std::string current = std::move(before.back());
    before.pop_back();
    const Completions found = completions(session, before, current);
    std::string lines;
    for (const auto& candidate : found.list)
        lines += candidate.value + (candidate.description.empty() ? "" : "\t" + candidate.description) + "\n";
    if (found.files) lines += ":files\n";
    if (found.folders) lines += ":folders\n";
    return lines;
}

}  // namespace

Exit run_completion(Session& session, const Parsed& parsed) {
    const std::string& wanted = parsed.words.front();
    if (wanted == "candidates" && parsed.words.size() > 1) {
        session.out += candidate_lines(session, parsed.words);
        return Exit::done;
    }
    std::vector<std::string_view> shells;
    for (const auto& [shell, script] : scripts) shells.push_back(shell);
    if (parsed.words.size() > 1)
        throw UsageError(fmt::format("\"{}\" is one word too many for completion", shown(parsed.words[1])),
                         "usage: tapbook completion bash | zsh | fish");
    for (const auto& [shell, script] : scripts) {
        if (shell != wanted) continue;
        session.out += script;
        return Exit::done;
    }
    const auto near = nearest(wanted, shells);
    throw UsageError(fmt::format("there is no completion for \"{}\"", shown(wanted)),
                     near ? fmt::format("did you mean `tapbook completion {}`?", *near)
                          : "usage: tapbook completion bash | zsh | fish");
}

}  // namespace tapbook
