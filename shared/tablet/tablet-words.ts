import { phrase } from '../recipe/phrase';

/** What the page's script says, so that one catalogue holds it with all else that is written for the bench. {0} and {1} are put in by the script. */
export function tabletWords() {
    return {
        done: phrase`{0} of {1} done`,
        onceTicked: phrase`{0} once it is ticked`,
        left: phrase`{0} left`,
        over: phrase`The wait is over`,
        waitOver: phrase`{0}: the wait is over.`,
        noNumber: phrase`A number, such as 0.52`,
        less: phrase`Less than it should be ({0})`,
        more: phrase`More than it should be ({0})`,
        kept: phrase`Ticks and figures are kept in this browser.`,
        notKept: phrase`This browser keeps nothing for this page: save the run before you close it.`,
        saved: phrase`Saved as {0}.`,
        savedOnce: phrase`Saved as {0}. Saving again writes the same run.`,
        again: phrase`Take every tick, figure and note away? A run that was saved stays.`,
        photos: phrase`{0}, photos`,
    } as const;
}

export type TabletWords = { readonly [Word in keyof ReturnType<typeof tabletWords>]: string };

/** Puts values into the places of a text that are numbered for them. */
export function filled(text: string, ...values: readonly (string | number)[]): string {
    return text.replaceAll(/\{(\d)\}/g, (place, number: string) => String(values[Number(number)] ?? place));
}
