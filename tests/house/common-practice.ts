import type { SourceFile } from './source-files';

export interface Practice {
    /** File and line. */
    readonly place: string;
    readonly text: string;
}

const tag = '@commonPractice';
const inWords = /common practice, no source/i;

/**
 * All that rests on common practice: tagged comments of the sources, and what stock and the pages of rules say of themselves to
 * whoever reads them.
 */
export function practices(files: readonly SourceFile[]): Practice[] {
    return files.flatMap(({ path: file, text }) => {
        if (file === pages) return [];
        if (file.endsWith('.kerf')) return placesIn(file, text, (line) => inWords.test(line), followed);
        return placesIn(file, text, isOfSources);
    });
}

/** Where the words for pages are written. */
const pages = 'shared/rules/page.ts';

function isOfSources(line: string): boolean {
    return line.includes(tag) || inWords.test(line) || /^\s*source:.*\bcommonPractice\b/.test(line);
}

/** In stock what it is about stands on the next line. */
function followed(said: string, lines: readonly string[], index: number): string {
    const next = lines.slice(index + 1).find((line) => !/^\s*(?:\/\/|$)/.test(line)) ?? '';
    return `${next.trim()} (${said.replace(/^common practice, no source[.:;]?\s*/i, '') || 'no more is said'})`;
}

/** Comments that say so in words where the tag belongs, so that the list would have them without a reason. */
export function untagged(files: readonly SourceFile[]): string[] {
    const isComment = /^\s*(?:\/\/|\/?\*)|\/\/ /;
    return files
        .flatMap(({ path: file, text }) =>
            placesIn(
                file,
                text,
                (line) => isComment.test(line) && /common practice/i.test(line) && !line.includes('"common practice'),
            ),
        )
        .map(({ place }) => place);
}

function placesIn(
    file: string,
    text: string,
    isOne: (line: string) => boolean,
    show: (said: string, lines: readonly string[], index: number) => string = (said) => said,
): Practice[] {
    const lines = text.split('\n');
    return lines.flatMap((line, index) => {
        if (!isOne(line)) return [];
        const said = line.replaceAll(/^\s*(?:\/\*\*|\*\/|\/\/|\*)\s*|\s*\*\/\s*$/g, '').replace(tag, '');
        return [{ place: `${file}:${index + 1}`, text: show(said.trim(), lines, index) }];
    });
}
