import { isFile } from '../generated/ast';
import type { KerfLexingReport } from '../parsing/lexer';
import type { KerfServices } from '../services';
import { currentEdition } from '../vocabulary/editions';
import { type Markers, type Merged, mergeBlocks } from './merge';
import { type Block, blockOfFile } from './pieces';

/** The common ancestor of a file, and what two branches made of it. */
export interface Versions {
    readonly base: string;
    readonly ours: string;
    readonly theirs: string;
}

/**
 * Merges two versions of a recipe file by what stands in it: declarations, steps and lines are known again by name, runs by recipe,
 * day and figures. Comments, layout and order are kept. What both sides changed, each otherwise, comes between git's markers, the
 * smallest whole statement that stands on lines of its own. Undefined where one of the texts cannot be read, or a conflict cannot be
 * marked: then lines have to be merged as lines. O(length), but for statements of one key, which are compared each with each.
 */
export function mergeTexts(texts: Versions, markers: Markers, services: KerfServices): Merged | undefined {
    const lineBreak = lineBreakOf(texts);
    const read = (text: string): Block | undefined => blockIn(text.replaceAll('\r\n', '\n'), services);
    const [base, ours, theirs] = [read(texts.base), read(texts.ours), read(texts.theirs)];
    if (base === undefined || ours === undefined || theirs === undefined) return undefined;
    const merged = mergeBlocks({ base, ours, theirs }, markers);
    // What was sound on both sides has to be sound together, or a person looks at its lines.
    if (merged === undefined || (merged.conflicts === 0 && blockIn(merged.text, services) === undefined)) return undefined;
    return { ...merged, text: merged.text.replaceAll('\n', lineBreak) };
}

function blockIn(text: string, services: KerfServices): Block | undefined {
    const { value, lexerErrors, parserErrors, lexerReport } = services.parser.LangiumParser.parse(text);
    const { structure = [], conflicts = [], open = [] } = (lexerReport ?? {}) as Partial<KerfLexingReport>;
    const faults = [lexerErrors, parserErrors, structure, conflicts, open];
    if (faults.some(({ length }) => length > 0) || !isFile(value) || (value.edition ?? currentEdition) > currentEdition)
        return undefined;
    return blockOfFile(value, text);
}

/** The line break of the side that changed it. */
function lineBreakOf({ base, ours, theirs }: Versions): string {
    const usual = (text: string): string => {
        const wide = text.split('\r\n').length - 1;
        return wide * 2 > text.split('\n').length - 1 ? '\r\n' : '\n';
    };
    return base !== '' && usual(ours) === usual(base) ? usual(theirs) : usual(ours);
}
