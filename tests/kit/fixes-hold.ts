import { expect } from 'vitest';
import { type Effect, effectsOf } from './fix-effects';
import type { MemoryWorkshop } from './memory-workshop';

/**
 * What may be said of words that a fix has just written: of what could not be judged before, for the reason beside it. A pair
 * that is not here is a fix that fights another rule, and fails.
 */
const judgedOnlyThen: ReadonlySet<string> = new Set(
    Object.entries({
        // A depth in another unit, or without one, is no depth as yet: what it digs, and what is filled or laid into it, is judged once it is one.
        'wrong-unit': ['deep-pour', 'deeper-than-blank', 'jams-before-floor', 'outside-coupon', 'shallow-fill'],
        'missing-unit': ['deep-pour', 'deeper-than-blank', 'outside-coupon', 'shallow-fill'],
        // Which way a grain runs only the maker knows; once told, it may cross that of the inlay.
        'grain-unknown': ['movement-across-inlay'],
        // A half that burnt its own shape away was compared with nothing: now both outlines lie on each other.
        'not-inverse': ['halves-differ', 'parts-vanish'],
        // A boundary that covered no more than a part of the shape is widened: now all of it is compared.
        'beyond-boundary': ['halves-differ'],
    }).flatMap(([mended, said]) => said.map((rule) => `${mended} > ${rule}`)),
);

/** Takes every fix of a text: its finding goes, and nothing new is said of what it wrote. Returns what could be judged only then. */
export async function expectFixesToHold(kit: MemoryWorkshop, text: string): Promise<string[]> {
    const effects = await effectsOf(kit, text);
    const wrong = effects.flatMap((effect) => [
        // What asks for a square stands until it is burnt and measured.
        ...(effect.stays && effect.fix.untilMeasured !== true ? [`${words(effect)} does not mend it.`] : []),
        ...effect.wrote.flatMap(({ rule, message }) =>
            judgedOnlyThen.has(`${effect.finding.rule} > ${rule}`) ? [] : [`${words(effect)} brings ${rule}: ${message}`],
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
