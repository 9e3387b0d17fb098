import { type Message, phrase } from '../../shared/recipe/phrase';
import type { WritingReport } from './write-made';

/** How a person gets what was held back: by an option, or by a button of the message. */
export interface Ways {
    readonly force: string;
    readonly clean: string;
}

export const optionWays: Ways = { force: ' (--force writes over it)', clean: ' (--clean takes it away)' };
export const buttonWays: Ways = { force: '', clean: '' };

/** What was not simply written, a sentence each. @param shown a file of the folder as a person knows it */
export function tellReport(
    { beside, filledIn, stale, staleByHand }: Pick<WritingReport, 'stale' | 'staleByHand'> & Partial<WritingReport>,
    shown: (path: string) => string,
    ways: Ways,
): Message[] {
    return [
        ...(beside ?? []).map(
            (each) =>
                phrase`${shown(each.path)} was changed by hand and is kept; the new one is ${shown(each.beside)}${ways.force}.`,
        ),
        ...(filledIn ?? []).map((path) => phrase`${shown(path)} is left as it is, since figures may stand in it${ways.force}.`),
        ...stale.map((path) => phrase`${shown(path)} is left from an earlier writing${ways.clean}.`),
        ...staleByHand.map(
            (path) =>
                phrase`${shown(path)} is left from an earlier writing and was changed by hand: take it away yourself if it is not needed.`,
        ),
    ];
}
