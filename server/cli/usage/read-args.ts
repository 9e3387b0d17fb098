import { parseArgs } from 'node:util';
import { nearest } from '../../../shared/recipe/nearest';
import { UsageError } from '../usage-error';
import type { CommandUsage, ValuesOf } from './command-usage';

export interface Args<Usage extends CommandUsage> {
    readonly values: ValuesOf<Usage>;
    readonly positionals: readonly string[];
}

/**
 * What was written behind a command's name.
 * @throws UsageError an option that there is not, one without its value, a value that it does not take
 */
export function readArgs<const Usage extends CommandUsage>(usage: Usage, args: readonly string[]): Args<Usage> {
    const { tokens, positionals } = parsed(usage, args);
    const values: Record<string, string | boolean | undefined> = Object.fromEntries(
        Object.entries(usage.options).map(([name, option]) => [name, option.default]),
    );
    for (const token of tokens) if (token.kind === 'option') values[token.name] = readValue(usage, token);
    // What is left has gone through the types of the usage.
    return { values: values as ValuesOf<Usage>, positionals };
}

/** Whether help was asked for, rather than a value that reads like it. */
export function asksForHelp(usage: CommandUsage, args: readonly string[]): boolean {
    return parsed(usage, args).tokens.some(
        (token) => token.kind === 'option' && (token.rawName === '--help' || token.rawName === '-h'),
    );
}

/** Not strict: its own messages name neither what there is nor what was likely meant. */
function parsed({ options }: CommandUsage, args: readonly string[]) {
    return parseArgs({ args: [...args], allowPositionals: true, strict: false, tokens: true, options });
}

interface OptionToken {
    readonly name: string;
    readonly rawName: string;
    readonly value: string | undefined;
    readonly inlineValue: boolean | undefined;
}

function readValue(usage: CommandUsage, { name, rawName, value, inlineValue }: OptionToken): string | boolean {
    const option = Object.hasOwn(usage.options, name) && rawName.startsWith('--') ? usage.options[name]! : undefined;
    if (option === undefined) throw new UsageError(unknownOption(usage, name, rawName));
    if (option.type === 'boolean') {
        if (inlineValue === true) throw new UsageError(`--${name} takes no value.`);
        return true;
    }
    if (value === undefined) throw new UsageError(`--${name} needs a value: --${name} ${option.value}.`);
    if (option.choices !== undefined && !option.choices.includes(value)) {
        const near = nearest(value, option.choices);
        throw new UsageError(
            `--${name} is one of ${option.choices.join(', ')}.${near === undefined ? '' : ` Do you mean ${near}?`}`,
        );
    }
    return value;
}

function unknownOption(usage: CommandUsage, name: string, rawName: string): string {
    // A single letter is near to every short word.
    const near = name.length === 1 ? undefined : nearest(name, Object.keys(usage.options));
    const hint = near === undefined ? `kerfbook ${usage.name} --help lists its options.` : `Do you mean --${near}?`;
    return `${usage.name} has no option ${rawName}. ${hint}`;
}
