import { editsOf, uriOf } from '../../language/editing/text-edits';
import type { Finding } from '../../shared/recipe/finding';
import type { Asker } from '../engine/asker';
import { openWorkshop, type Source } from '../workshop/open-workshop';
import { withNewFiles } from './with-new-files';

/** More than this many times nothing is mended: each takes one thing, and few things depend on the art. */
const mostTimes = 8;

/**
 * Works a recipe out that is not written yet, and mends what is found by the findings' own quick fixes, as long as less
 * is found each time: what a drawing needs (marks, clearance, a larger sheet) is known only then.
 * @param texts all new texts by their addresses
 * @returns the recipe's text and what is still said of it, errors and warnings
 */
export async function tryOut(
    uri: string,
    texts: ReadonlyMap<string, string>,
    bytes: ReadonlyMap<string, Uint8Array>,
    source: Source,
    asker: Asker,
): Promise<{ text: string; findings: readonly Finding[] }> {
    const examine = async (text: string): Promise<{ text: string; findings: readonly Finding[] }> => {
        const changed = withNewFiles(source, new Map(texts).set(uri, text), bytes);
        const { workshop, documents } = await openWorkshop(changed, [uri], undefined, asker);
        const [document] = documents;
        if (document === undefined) return { text, findings: [] };
        const all = [...workshop.textFindings(document), ...((await workshop.tradeFindings(document)) ?? [])];
        const serious = ({ severity, where }: Finding): boolean =>
            (severity === 'error' || severity === 'warning') && where.uri === uri;
        return { text, findings: all.filter(serious) };
    };
    let best = await examine(texts.get(uri) ?? '');
    for (let times = 0; times < mostTimes && best.findings.length > 0; times += 1) {
        const mended = mend(best.text, best.findings, uri);
        const next = mended === undefined ? undefined : await examine(mended);
        if (next === undefined || next.findings.length >= best.findings.length) return best;
        best = next;
    }
    return best;
}

/** The text with one finding's fix taken; undefined where none can be. */
function mend(text: string, findings: readonly Finding[], uri: string): string | undefined {
    for (const { fixes } of findings) {
        const fix = fixes.find(({ preferred }) => preferred) ?? fixes[0];
        if (fix === undefined || !fix.changes.every((change) => uriOf(change) === uri)) continue;
        return fix.changes
            .flatMap((change) => editsOf(change, text))
            .toSorted((a, b) => b.offset - a.offset)
            .reduce((now, { offset, length, text: put }) => now.slice(0, offset) + put + now.slice(offset + length), text);
    }
    return undefined;
}
