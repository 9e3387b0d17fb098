import type { Grade as FigureGrade } from '../shared/quantity/where';

/** A line of the built-in stock with what its comment says of where it comes from. */
export interface StockLine {
    /** File and line. */
    readonly place: string;
    /** What it belongs to: `wood black-walnut`. */
    readonly of: string;
    readonly line: string;
    /** The comment above it: `Seen in …`, `From memory, unverified: …`. */
    readonly said: string;
    /** Absent where its comment says nothing of a source. */
    readonly known?: Known;
}

/** How a figure of the built-in stock is known, the best first: what its comment begins with. */
const kinds = [
    ['seen', /^(?:seen (?:in|on|as)\b|as [\w-]+: .*\bseen\b)/i],
    ['seen at second hand', /^seen only/i],
    ['computed', /^computed/i],
    ['from memory', /^from memory/i],
    ['common practice', /^common practice/i],
    ['own judgement', /^our own judgement/i],
] as const;
type Known = (typeof kinds)[number][0];

/** What a maker has to know of it: somebody has read the source; it has none; nobody has read it yet. */
export type Grade = 'checked' | 'rule of thumb' | 'not checked yet';

/** The grade of a line; what is computed is no better than what it is computed from. */
export function gradeOf({ known, said }: Pick<StockLine, 'known' | 'said'>): Grade {
    if (known === 'common practice' || known === 'own judgement') return 'rule of thumb';
    if (known === 'seen' || known === 'seen at second hand') return 'checked';
    if (known !== 'computed' || /from memory/i.test(said)) return 'not checked yet';
    return /common practice|own judgement/i.test(said) ? 'rule of thumb' : 'checked';
}

/** What findings have to say of a line that they rest on; undefined where a source was read and none disagrees. */
export function gradeInFindings(line: StockLine): FigureGrade | undefined {
    if (gradeOf(line) !== 'checked') return 'not checked';
    return /\bdisputed\b/i.test(line.said) ? 'disputed' : undefined;
}

/** Every line of the stock's blocks with the comment above it; lines right behind each other share one. `kind` says nothing of its own. */
export function stockLines(files: readonly { readonly path: string; readonly text: string }[]): StockLine[] {
    return files.flatMap(({ path, text }) => {
        const found: StockLine[] = [];
        let [comment, above, of] = ['', '', ''];
        for (const [index, raw] of text.split('\n').entries()) {
            const line = raw.trim();
            const said = /^\/\/\s?(.*)$/.exec(line)?.[1];
            if (said !== undefined) {
                comment = above.startsWith('//') ? `${comment} ${said}` : said;
            } else if (/^\s/.test(raw) && line !== '') {
                const known = kinds.find(([, begins]) => begins.test(comment))?.[0];
                const place = `${path}:${index + 1}`;
                if (!line.startsWith('kind '))
                    found.push({ place, of, line, said: comment, ...(known === undefined ? {} : { known }) });
            } else {
                comment = '';
                if (line.endsWith('{')) of = line.slice(0, -1).trim();
            }
            above = line;
        }
        return found;
    });
}

/** How many lines there are of each kind of knowing, the best first. */
export function countedKinds(lines: readonly StockLine[]): [Known, number][] {
    return kinds.map(([name]) => [name, lines.filter(({ known }) => known === name).length]);
}
