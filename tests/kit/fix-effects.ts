import { editsOf, type SpanEdit } from '../../language/editing/text-edits';
import type { Finding, Fix } from '../../shared/recipe/finding';
import type { MemoryWorkshop } from './memory-workshop';

/** What taking one fix did. */
export interface Effect {
    readonly finding: Finding;
    readonly fix: Fix;
    readonly after: string;
    /** The finding stands as before. */
    readonly stays: boolean;
    /** What nobody said before of the words that the fix wrote. */
    readonly wrote: readonly Finding[];
    /** What nobody said before of anything else. */
    readonly elsewhere: readonly Finding[];
}

interface Span {
    readonly from: number;
    readonly to: number;
}

/** A fix as replacements, from the end of the text to its start. */
export function spanEdits({ changes }: Fix, text: string): SpanEdit[] {
    return changes.flatMap((change) => editsOf(change, text)).sort((a, b) => b.offset - a.offset || b.length - a.length);
}

export function withEdits(text: string, edits: readonly SpanEdit[]): string {
    return edits.reduce((now, { offset, length, text: put }) => now.slice(0, offset) + put + now.slice(offset + length), text);
}

/** Takes every fix of every finding, each on the text as it is, and looks again. */
export async function effectsOf(kit: MemoryWorkshop, text: string): Promise<Effect[]> {
    const before = await kit.findings(text);
    const effects: Effect[] = [];
    for (const finding of before) {
        for (const fix of finding.fixes) {
            const edits = spanEdits(fix, text);
            const after = withEdits(text, edits);
            const fresh = [...(await kit.findings(after))];
            const take = (old: Finding): boolean => {
                const place = movedPlace(spanOf(old), edits);
                const same = (other: Finding): boolean => other.rule === old.rule && meets(place, spanOf(other));
                const at = [
                    fresh.findIndex((other) => same(other) && other.message === old.message),
                    fresh.findIndex(same),
                    fresh.findIndex((other) => other.rule === old.rule && other.message === old.message),
                ].find((index) => index >= 0);
                if (at !== undefined) fresh.splice(at, 1);
                return at !== undefined;
            };
            for (const old of before) if (old !== finding) take(old);
            const stays = take(finding);
            const written = edits.map((edit) => movedPlace({ from: edit.offset, to: edit.offset + edit.length }, edits));
            const isWritten = (other: Finding): boolean => written.some((span) => meets(span, spanOf(other)));
            effects.push({
                finding,
                fix,
                after,
                stays,
                wrote: fresh.filter(isWritten),
                elsewhere: fresh.filter((other) => !isWritten(other)),
            });
        }
    }
    return effects;
}

function spanOf({ where: { offset, length } }: Finding): Span {
    return { from: offset, to: offset + length };
}

function meets(one: Span, other: Span): boolean {
    return one.from <= other.to && other.from <= one.to;
}

/** Where words of the old text stand in the new one; those that were replaced are where their replacement stands. */
function movedPlace({ from, to }: Span, edits: readonly SpanEdit[]): Span {
    const whole = edits.find((edit) => edit.length > 0 && edit.offset === from && edit.offset + edit.length === to);
    if (whole === undefined) return { from: moved(from, edits, false), to: moved(to, edits, true) };
    const start = moved(
        from,
        edits.filter((edit) => edit !== whole),
        false,
    );
    return { from: start, to: start + whole.text.length };
}

function moved(offset: number, edits: readonly SpanEdit[], isEnd: boolean): number {
    let by = 0;
    for (const edit of edits) {
        const stop = edit.offset + edit.length;
        const isBefore = edit.length === 0 ? edit.offset < offset || (edit.offset === offset && !isEnd) : stop <= offset;
        if (isBefore) by += edit.text.length - edit.length;
        else if (edit.offset < offset) by += (isEnd ? edit.offset + edit.text.length : edit.offset) - offset;
    }
    return offset + by;
}
