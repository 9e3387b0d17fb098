import type { CommandUsage } from './command-usage';

/** Shells for which there is a script. */
export const shells = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof shells)[number];

/**
 * A script for a shell that completes commands, their options and the words that an option takes; files by the shell's own means.
 * All that goes into it are our own words: letters, digits and hyphens, and what each is for.
 */
export function completionScript(shell: Shell, usages: readonly CommandUsage[]): string {
    return { bash: bashScript, zsh: zshScript, fish: fishScript }[shell](usages);
}

function optionsOf(usage: CommandUsage): string[] {
    return [...Object.keys(usage.options).map((name) => `--${name}`), '--help'];
}

/** The words that each option takes, where it takes one of a few. */
function choicesOf({ options }: CommandUsage): [option: string, choices: readonly string[]][] {
    return Object.entries(options).flatMap(([name, option]) =>
        option.type === 'string' && option.choices !== undefined ? [[`--${name}`, option.choices]] : [],
    );
}

function bashScript(usages: readonly CommandUsage[]): string {
    const cases = usages.flatMap((usage) => [
        ...choicesOf(usage).map(([option, choices]) => `        "${usage.name} ${option}") words='${choices.join(' ')}' ;;`),
        `        "${usage.name} "*) [[ $word == -* ]] && words='${optionsOf(usage).join(' ')}' ;;`,
    ]);
    return `# Completion of kerfbook in bash. For every terminal: kerfbook completion bash > ~/.local/share/bash-completion/completions/kerfbook
_kerfbook() {
    local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]} words=''
    if ((COMP_CWORD == 1)); then
        words='${usages.map(({ name }) => name).join(' ')} --help --version'
    else
        case "\${COMP_WORDS[1]} $before" in
${cases.join('\n')}
        esac
    fi
    COMPREPLY=($(compgen -W "$words" -- "$word"))
}
complete -o default -F _kerfbook kerfbook
`;
}

function zshScript(usages: readonly CommandUsage[]): string {
    const cases = usages.map((usage) => {
        const options = Object.entries(usage.options).map(([name, option]) => {
            const takes =
                option.type === 'boolean'
                    ? ''
                    : `:${option.value}:${option.choices === undefined ? '_files' : `(${option.choices.join(' ')})`}`;
            return `'--${name}[${stripShellMarks(option.what)}]${takes}'`;
        });
        return `        ${usage.name}) _arguments ${[...options, "'--help[How it is used.]'", "'*:file:_files'"].join(' ')} ;;`;
    });
    return `#compdef kerfbook
# Completion of kerfbook in zsh. For every terminal: kerfbook completion zsh > a folder of your $fpath/_kerfbook
_kerfbook() {
    local -a commands=(${usages.map(({ name, brief }) => `'${name}:${stripShellMarks(brief)}'`).join(' ')})
    if ((CURRENT == 2)); then
        _describe command commands
        return
    fi
    shift words
    ((CURRENT--))
    case $words[1] in
${cases.join('\n')}
    esac
}
compdef _kerfbook kerfbook
`;
}

function fishScript(usages: readonly CommandUsage[]): string {
    const lines = usages.flatMap((usage) => [
        `complete -c kerfbook -n __fish_use_subcommand -f -a ${usage.name} -d '${stripShellMarks(usage.brief)}'`,
        ...Object.entries(usage.options).map(([name, option]) => {
            const takes =
                option.type === 'boolean' ? '' : option.choices === undefined ? ' -r' : ` -x -a '${option.choices.join(' ')}'`;
            return `complete -c kerfbook -n '__fish_seen_subcommand_from ${usage.name}' -l ${name}${takes} -d '${stripShellMarks(option.what)}'`;
        }),
    ]);
    return `# Completion of kerfbook in fish. For every terminal: kerfbook completion fish > ~/.config/fish/completions/kerfbook.fish
${lines.join('\n')}
`;
}

/** Without the marks that a shell reads inside such a text. */
function stripShellMarks(text: string): string {
    return text.replaceAll(/['[\]:\\$`"]/g, '');
}
