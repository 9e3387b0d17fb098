import { partitionPoint } from '../../quantity/partition-point';

/**
 * Attribute values as long as path data, taken out before the XML reader goes over every character,
 * which would take longer than all the rest. They hold neither markup nor references, so there
 * is nothing in them for it to find.
 */
export interface ShortenedText {
    readonly text: string;
    /** Puts the values back into something the XML reader has read. */
    restore(read: string): string;
    /** The place in the whole text of a place in the shortened one. */
    original(offset: number): number;
}

/** From the private use area; a text that holds it already is left as it is. */
const mark = '\uE001';

/** Shorter values are read as fast as they are taken out. */
const leastLength = 500;

const marked = /\uE001(\d+);/g;

export function shortenValues(whole: string): ShortenedText {
    const held: string[] = [];
    /** Where each value's place in the shortened text ends, and how much is missing up to there. */
    const ends: number[] = [];
    const missing: number[] = [];
    const pieces: string[] = [];
    let from = 0;
    let length = 0;
    let sum = 0;
    for (const [start, end] of longValues(whole)) {
        const value = whole.slice(start, end);
        const stand = `${mark}${held.length};`;
        pieces.push(whole.slice(from, start), stand);
        held.push(value);
        length += start - from + stand.length;
        sum += value.length - stand.length;
        ends.push(length);
        missing.push(sum);
        from = end;
    }
    pieces.push(whole.slice(from));
    return {
        text: held.length === 0 ? whole : pieces.join(''),
        restore: (read) =>
            held.length > 0 && read.includes(mark) ? read.replace(marked, (_, index) => held[index] ?? '') : read,
        original: (offset) => offset + (missing[lastAtMost(ends, offset)] ?? 0),
    };
}

/** From where to where long values without markup stand. A regular expression for it would run out of stack. */
function* longValues(whole: string): Generator<readonly [start: number, end: number]> {
    if (whole.includes(mark)) return;
    const quotes = [new Finder(whole, '"'), new Finder(whole, "'")] as const;
    const [tag, reference] = [new Finder(whole, '<'), new Finder(whole, '&')];
    for (let at = whole.indexOf('='); at >= 0; at = whole.indexOf('=', at)) {
        at++;
        const quote = whole[at] === '"' ? quotes[0] : whole[at] === "'" ? quotes[1] : undefined;
        const end = quote?.from(at + 1) ?? 0;
        if (end - at <= leastLength || tag.from(at) < end || reference.from(at) < end) continue;
        if (end === Number.POSITIVE_INFINITY) return;
        yield [at + 1, end];
        at = end;
    }
}

/** Finds a character from rising places on, without looking at anything twice. */
class Finder {
    private next = -1;

    constructor(
        private readonly text: string,
        private readonly character: string,
    ) {}

    from(place: number): number {
        if (this.next < place) {
            const found = this.text.indexOf(this.character, place);
            this.next = found < 0 ? Number.POSITIVE_INFINITY : found;
        }
        return this.next;
    }
}

/** The index of the last of rising values that is at most `value`; -1 if none is. */
function lastAtMost(rising: readonly number[], value: number): number {
    return partitionPoint(rising.length, (index) => rising[index]! <= value) - 1;
}
