/** A text with one keystroke too many, too few or beside the right one. */
export interface Slip {
    readonly what: string;
    readonly offset: number;
    readonly text: string;
}

const besides = ['x', '7', ' ', '{', '}', '"', '/', '*', '#', '.', ',', '-', '\n'];

/**
 * Every kind of slip at every `step`th character, the kinds in turn: the same ones each time. A slip that changes nothing is left out.
 */
export function* slips(text: string, step: number, from = 0): Iterable<Slip> {
    for (let offset = from, count = 0; offset < text.length; offset += step, count++) {
        const [before, here, after] = [text.slice(0, offset), text[offset]!, text.slice(offset + 1)];
        const kind = count % 4;
        if (kind === 0) yield { what: `without ${shown(here)}`, offset, text: before + after };
        if (kind === 1) {
            const put = besides[Math.floor(count / 4) % besides.length]!;
            yield { what: `${shown(put)} before ${shown(here)}`, offset, text: before + put + here + after };
        }
        if (kind === 2 && after !== '' && after[0] !== here) {
            yield {
                what: `${shown(here)} and ${shown(after[0]!)} swapped`,
                offset,
                text: before + after[0]! + here + after.slice(1),
            };
        }
        if (kind === 3) yield { what: `${shown(here)} twice`, offset, text: before + here + here + after };
    }
}

function shown(character: string): string {
    return JSON.stringify(character);
}
