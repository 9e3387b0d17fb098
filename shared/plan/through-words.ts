import type { Interval } from '../quantity/interval';
import { showLength, showNumber } from '../quantity/show';
import type { Backing } from '../recipe/recipe';
import type { Cut, Engrave } from '../recipe/step';
import type { Breakthrough, LaserPlan } from './laser-plan';

/** What lies behind a sheet, as what is burnt into where the beam comes out. */
export function behindWords(backing: Backing): string {
    return backing === 'foil' ? 'the foil' : backing === 'tape' ? 'the tape and what lies under it' : 'what lies under it';
}

/** What is missing where settings are a guess. */
export function missingBasis({ kind }: Pick<Engrave | Cut, 'kind'>): string {
    return kind === 'cut' ? 'no cut test' : 'no coupon';
}

/** A probability in per cent, without making 99.9 into 100. */
export function showSure(probability: number): string {
    return `${showNumber(100 * probability, 1)} %`;
}

/** How surely a burn comes out at the back, and what it has to spare, in a few words. */
export function sureWords({ asked, certain, surely, thickest, spare }: Breakthrough): string {
    if (!certain) return `not ${showSure(asked)} sure: ${showLength(surely)} of ${showLength(thickest)}`;
    return `${showSure(asked)} sure, ${showLength(Math.max(0, spare))} to spare`;
}

/** The same as a sentence for the sheet, with what the spare goes into. */
export function throughWords({ breakthrough }: Pick<LaserPlan, 'breakthrough'>): string {
    if (breakthrough === undefined) return 'through';
    const into = breakthrough.certain && breakthrough.spare > 0.005 ? `, into ${behindWords(breakthrough.behind)}` : '';
    return `through, ${sureWords(breakthrough)}${into}`;
}

/** A thickness with a wide range about it, which a plus-minus would hide. */
export function throughWide({ low, value, high }: Interval): string {
    return `about ${showLength(value)} (${showLength(low)} to ${showLength(high)})`;
}
