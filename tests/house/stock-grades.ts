import type { SourceFile } from './source-files';

/** How a figure of the built-in stock is known, the best first: what its comment begins with. */
const grades = [
    ['seen', /^(?:seen (?:in|on|as)\b|as [\w-]+: .*\bseen\b)/i],
    ['seen at second hand', /^seen only/i],
    ['computed', /^computed/i],
    ['from memory', /^from memory/i],
    ['common practice', /^common practice/i],
    ['own judgement', /^our own judgement/i],
] as const;
type Grade = (typeof grades)[number][0];

interface Graded {
    /** File and line. */
    readonly place: string;
    readonly line: string;
    /** Absent where its comment says nothing of a source. */
    readonly grade?: Grade;
}

/** Every line of the stock's blocks with the grade of the comment above it; lines right behind each other share one. `kind` says nothing of its own. */
export function gradesOf(files: readonly SourceFile[]): Graded[] {
    return files
        .filter(({ path }) => !path.startsWith('samples/'))
        .flatMap(({ path, text }) => {
            const found: Graded[] = [];
            let comment: string | undefined;
            let above = '';
            for (const [index, raw] of text.split('\n').entries()) {
                const line = raw.trim();
                const said = /^\/\/\s?(.*)$/.exec(line)?.[1];
                if (said !== undefined) {
                    comment = above.startsWith('//') ? `${comment} ${said}` : said;
                } else if (/^\s/.test(raw) && line !== '') {
                    const grade = grades.find(([, begins]) => begins.test(comment ?? ''))?.[0];
                    if (!line.startsWith('kind '))
                        found.push({ place: `${path}:${index + 1}`, line, ...(grade === undefined ? {} : { grade }) });
                } else comment = undefined;
                above = line;
            }
            return found;
        });
}

/** How many lines there are of each grade, the best first. */
export function countedGrades(lines: readonly Graded[]): [Grade, number][] {
    return grades.map(([name]) => [name, lines.filter(({ grade }) => grade === name).length]);
}
