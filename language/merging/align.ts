import type { Piece } from './pieces';

/** For each piece of the base its counterpart in another version, and the pieces of that version that have none. */
export interface Alignment {
    /** By the index in the base; undefined where it is gone. */
    readonly counterparts: readonly (number | undefined)[];
    readonly added: readonly number[];
}

/**
 * Finds the pieces of a base again in a later version: those that are the same, then those known by the same key, by a looser one,
 * and last those that were renamed. Of several the likest. O(n) but for pieces of one key: those are compared each with each.
 */
export function align(base: readonly Piece[], later: readonly Piece[]): Alignment {
    const counterparts = new Array<number | undefined>(base.length).fill(undefined);
    const taken = new Array<boolean>(later.length).fill(false);
    const pair = (from: number, to: number): void => {
        counterparts[from] = to;
        taken[to] = true;
    };
    const byKey = (key: (piece: Piece) => string | undefined): void => {
        const left = (pieces: readonly Piece[], isDone: (index: number) => boolean) => {
            const groups = new Map<string, number[]>();
            for (const [index, piece] of pieces.entries()) {
                const name = isDone(index) ? undefined : key(piece);
                if (name === undefined) continue;
                const group = groups.get(name);
                if (group === undefined) groups.set(name, [index]);
                else group.push(index);
            }
            return groups;
        };
        const now = left(later, (index) => taken[index]!);
        for (const [name, from] of left(base, (index) => counterparts[index] !== undefined)) {
            const candidates = now.get(name);
            if (candidates !== undefined) for (const [one, other] of likest(from, candidates, base, later)) pair(one, other);
        }
    };
    byKey(({ key, text }) => `${key}\n${text}`);
    byKey(({ key }) => key);
    byKey(({ looseKey }) => looseKey);
    for (const [to, { type, was }] of later.entries()) {
        const from = base.findIndex(
            (piece, index) => counterparts[index] === undefined && piece.type === type && was.includes(piece.name ?? ''),
        );
        if (!taken[to] && from >= 0) pair(from, to);
    }
    byKey(withoutName);
    return { counterparts, added: [...later.keys()].filter((index) => !taken[index]) };
}

/** A named block with its name left out: the same under another name was renamed. */
function withoutName({ type, name, text, block }: Piece): string | undefined {
    return name === undefined || block === undefined || block.body.length === 0 ? undefined : `${type} ${text.replace(name, '')}`;
}

/** Pairs of two groups, the likest first; as they stand where all are alike. */
function likest(
    from: readonly number[],
    to: readonly number[],
    base: readonly Piece[],
    later: readonly Piece[],
): [number, number][] {
    if (from.length === 1 && to.length === 1) return [[from[0]!, to[0]!]];
    const isSame = base[from[0]!]!.text === later[to[0]!]!.text;
    if (isSame) return from.slice(0, to.length).map((index, nth) => [index, to[nth]!]);
    const rated = from.flatMap((one) =>
        to.map((other) => ({ one, other, likeness: likeness(base[one]!.text, later[other]!.text) })),
    );
    const pairs: [number, number][] = [];
    const used = new Set<string>();
    for (const { one, other } of rated.toSorted((a, b) => b.likeness - a.likeness)) {
        if (used.has(`from ${one}`) || used.has(`to ${other}`)) continue;
        used.add(`from ${one}`).add(`to ${other}`);
        pairs.push([one, other]);
    }
    return pairs;
}

/** Words in both of those in either, 0 to 1. */
function likeness(a: string, b: string): number {
    const [one, other] = [new Set(a.split(/\s+/)), new Set(b.split(/\s+/))];
    const shared = [...one].filter((word) => other.has(word)).length;
    return shared / (one.size + other.size - shared);
}
