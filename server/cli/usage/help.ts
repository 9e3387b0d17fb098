import type { CommandUsage, OptionUsage } from './command-usage';
import { usages } from './usages';

/** Narrower than any terminal that somebody reads help in. */
const width = 100;

/** All commands, a line each. */
export function overview(): string {
    const rows = usages.map(({ name, brief }): Row => [`kerfbook ${name}`, brief]);
    return [
        'kerfbook: recipes for engraved, filled and inlaid wood',
        '',
        ...columns(rows),
        '',
        'Without a file, every recipe below this folder is taken. kerfbook COMMAND --help tells more of a command,',
        'kerfbook --version which Kerfbook this is. A plan is arithmetic, not a licence: local codes and the manuals',
        'of your machine and materials come first.',
        '',
    ].join('\n');
}

/** One command: how it is called, its options, examples, exit codes. */
export function helpOf(usage: CommandUsage): string {
    const options = Object.entries(usage.options).map(([name, option]): Row => [written(name, option), whatOf(option)]);
    const examples = usage.examples.flatMap(({ line, what }) => [`  ${line}`, `      ${what}`]);
    return [
        ...formsOf(usage),
        '',
        ...usage.more.flatMap((paragraph) => wrapped(paragraph, '  ', width)),
        ...(options.length === 0 ? [] : ['', 'Options', ...columns(options)]),
        '',
        usage.examples.length === 1 ? 'Example' : 'Examples',
        ...examples,
        '',
        'Exit code',
        ...codesOf(usage).map((line) => `  ${line}`),
        '',
    ].join('\n');
}

export function formsOf({ name, forms, options }: CommandUsage): string[] {
    const more = Object.keys(options).length === 0 ? '' : ' [options]';
    return forms.map((form) => `kerfbook ${name}${form === '' ? '' : ` ${form}`}${more}`);
}

export function codesOf({ codes }: CommandUsage): readonly string[] {
    if (codes?.some((code) => code.startsWith('0'))) return codes;
    return ['0 well', ...(codes ?? []), '2 it was not asked rightly, or could not be read or written'];
}

export function written(name: string, option: OptionUsage): string {
    return option.type === 'boolean' ? `--${name}` : `--${name} ${option.value}`;
}

export function whatOf(option: OptionUsage): string {
    if (option.type === 'boolean') return option.what;
    const choices = option.choices === undefined ? '' : ` One of ${option.choices.join(', ')}.`;
    return `${option.what}${choices}${option.default === undefined ? '' : ` Left out: ${option.default}.`}`;
}

type Row = readonly [left: string, right: string];

/** Two columns, the right one wrapped below itself. */
function columns(rows: readonly Row[]): string[] {
    const left = Math.max(...rows.map(([text]) => text.length)) + 4;
    return rows.flatMap(([text, right]) => {
        const [first = '', ...rest] = wrapped(right, ' '.repeat(left), width);
        return [`  ${text}`.padEnd(left) + first.trimStart(), ...rest];
    });
}

function wrapped(text: string, indent: string, columnsWide: number): string[] {
    const lines: string[] = [];
    let line = indent;
    for (const word of text.split(' ')) {
        if (line.length > indent.length && line.length + word.length + 1 > columnsWide) {
            lines.push(line);
            line = indent;
        }
        line += line.length === indent.length ? word : ` ${word}`;
    }
    return [...lines, line];
}
