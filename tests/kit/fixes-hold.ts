import { expect } from 'vitest';
import { type Effect, effectsOf } from './fix-effects';
import type { MemoryWorkshop } from './memory-workshop';

/**
 * Rules of the text and of the trade that keep others from judging: a number without its unit, a half that is not inverse, a
 * blank of which the grain is not known. What is said once they are mended could not be said before.
 */
const judgedOnlyThen = new Set([
    ...['missing-unit', 'wrong-unit', 'unknown-name', 'unlikely-magnitude', 'grain-unknown', 'art-missing', 'nothing-burns'],
    ...['not-inverse', 'not-mirrored', 'mirrored-twice', 'beyond-boundary', 'halves-differ', 'out-of-order'],
    // What was asked for was never burnt by the settings that were written.
    ...['settings-miss-depth', 'depth-unreachable', 'beyond-machine'],
]);

/** Takes every fix of a text: its finding goes, and nothing new is said of what it wrote. Returns what could be judged only then. */
export async function expectFixesToHold(kit: MemoryWorkshop, text: string): Promise<string[]> {
    const effects = await effectsOf(kit, text);
    const wrong = effects.flatMap((effect) => [
        ...(effect.stays ? [`${words(effect)} does not mend it.`] : []),
        ...(judgedOnlyThen.has(effect.finding.rule) ? [] : effect.wrote).map(
            ({ rule, message }) => `${words(effect)} brings ${rule}: ${message}`,
        ),
    ]);
    expect(wrong, text.slice(text.indexOf('\nrecipe'))).toEqual([]);
    return effects.flatMap(({ finding, wrote, elsewhere }) =>
        [...wrote, ...elsewhere].map(({ rule }) => `${finding.rule} > ${rule}`),
    );
}

function words({ finding, fix }: Effect): string {
    return `${finding.rule}: “${fix.title}”`;
}
