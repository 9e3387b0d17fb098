import { builtInText, builtInUris } from '../../language/built-in';
import { type Grade, gradeOf, type StockLine, stockLines } from '../../language/stock-sources';
import { nearest } from '../../shared/recipe/nearest';
import { say } from './say';
import { readArgs } from './usage/read-args';
import { stockGrades, stockUsage } from './usage/reference-usages';
import { UsageError } from './usage-error';

/** `kerfbook stock`: what is built in, with `--sources` also how each of its lines is known. */
export async function stock(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(stockUsage, args);
    const all = stockLines(builtInUris.map((uri) => ({ path: uri, text: builtInText(uri) ?? '' })));
    const lines = all.filter(({ of }) => positionals.length === 0 || positionals.includes(nameOf(of)));
    for (const name of positionals) {
        if (all.some(({ of }) => nameOf(of) === name)) continue;
        const near = nearest(name, new Set(all.map(({ of }) => nameOf(of))));
        throw new UsageError(
            `No built-in stock is called ${name}. ${near === undefined ? 'kerfbook stock lists it.' : `Do you mean ${near}?`}`,
        );
    }
    say(values.sources ? sources(lines) : positionals.length > 0 ? asWritten(lines) : names(lines));
    return 0;
}

/** `wood black-walnut` is called `black-walnut`. */
function nameOf(of: string): string {
    return of.split(' ')[1] ?? '';
}

/** A line a keyword. */
function names(lines: readonly StockLine[]): string {
    const of = new Map<string, Set<string>>();
    for (const line of lines) {
        const word = line.of.split(' ')[0]!;
        of.set(word, (of.get(word) ?? new Set()).add(nameOf(line.of)));
    }
    return [...of].map(([word, all]) => `${word}: ${[...all].join(', ')}\n`).join('');
}

function asWritten(lines: readonly StockLine[]): string {
    return blocks(lines, ({ line }) => [`  ${line}`]);
}

function sources(lines: readonly StockLine[]): string {
    const counted = Object.keys(stockGrades).map((grade) => {
        const count = lines.filter((line) => gradeOf(line) === grade).length;
        return `${count} ${grade}`;
    });
    const explained = Object.entries(stockGrades).map(([grade, what]) => `${grade}: ${what}\n`);
    return `${explained.join('')}\n${blocks(lines, (line) => [`  ${line.line}`, `      ${describeGrade(line)}`])}\n${lines.length} lines: ${counted.join(', ')}.\n`;
}

function blocks(lines: readonly StockLine[], tell: (line: StockLine) => string[]): string {
    let before = '';
    return lines
        .flatMap((line) => {
            const head = line.of === before ? [] : [...(before === '' ? [] : ['']), line.of];
            before = line.of;
            return [...head, ...tell(line)];
        })
        .map((line) => `${line}\n`)
        .join('');
}

/** Its grade, and what is said beside it: `checked against …`. */
export function describeGrade(line: StockLine): string {
    const grade: Grade = gradeOf(line);
    const source = /^seen (only )?(?:in|on) (.*)$/i.exec(line.said);
    if (source !== null) return `${grade}${source[1] === undefined ? '' : ', at second hand,'} against ${source[2]}`;
    const rest = line.said.replace(
        /^(?:common practice|our own judgement|from memory)(?:, (?:no source|unverified))?[.:;]?\s*/i,
        '',
    );
    return rest === '' ? grade : `${grade}: ${rest}`;
}
