import { type Alignment, align } from './align';
import type { Block, Piece } from './pieces';

export interface Merged {
    readonly text: string;
    /** Places that a person has to settle, each between markers. */
    readonly conflicts: number;
}

/** How many signs a marker has, and what the sides are called behind it. */
export interface Markers {
    readonly size: number;
    readonly ours: string;
    readonly theirs: string;
}

/** Three versions of the same thing: the common one, and what became of it on either side. */
interface Three<T> {
    readonly base: T;
    readonly ours: T;
    readonly theirs: T;
}

/**
 * Merges two versions of a file statement by statement. What both have added stands in the order ours, theirs.
 * Undefined where a conflict cannot be marked on lines of its own.
 */
export function mergeBlocks(files: Three<Block>, markers: Markers): Merged | undefined {
    const merge = new Merge(markers);
    try {
        const text = merge.body(files, '') + merge.atom(files.base.tail, files.ours.tail, files.theirs.tail);
        return { text, conflicts: merge.conflicts };
    } catch (error) {
        if (error instanceof Unmarkable) return undefined;
        throw error;
    }
}

/** A conflict that cannot be marked where it is: it shares a line with something else, or the order of all steps is open. */
class Unmarkable extends Error {}

/** What comes out of a piece, or the two sides of a conflict. */
interface Part {
    readonly text: string;
    readonly startsLine: boolean;
    readonly isAdded?: boolean;
}

/** What a version has between two pieces that all versions have: one that it added, or one of the base that the other side took away. */
interface Slot {
    readonly base?: Piece;
    readonly piece: Piece;
}

/** Additions of both sides that have to do with each other. */
interface Meeting {
    /** Of ours, what theirs put in its place. */
    readonly rivals: ReadonlyMap<Piece, Piece>;
    /** Of ours, what theirs has just the same. */
    readonly shared: ReadonlySet<Piece>;
    /** Of theirs, what is settled together with one of ours. */
    readonly settled: ReadonlySet<Piece>;
}

class Merge {
    conflicts = 0;

    constructor(private readonly markers: Markers) {}

    /** The statements of three blocks as one text behind a head. @throws Unmarkable */
    body({ base, ours, theirs }: Three<Block>, head: string): string {
        const [toOurs, toTheirs] = [align(base.body, ours.body), align(base.body, theirs.body)];
        const isKept = (at: number): boolean => toOurs.counterparts[at] !== undefined && toTheirs.counterparts[at] !== undefined;
        const common = [...base.body.keys()].filter(isKept);
        const meeting = meet(
            toOurs.added.map((index) => ours.body[index]!),
            toTheirs.added.map((index) => theirs.body[index]!),
        );
        const [oursBehind, theirsBehind] = [
            gaps(base.body, ours.body, toOurs, common),
            gaps(base.body, theirs.body, toTheirs, common),
        ];
        const parts: Part[] = [];
        for (const at of [undefined, ...orderOf(common, toOurs, toTheirs, base.body)]) {
            if (at !== undefined) {
                const [one, other] = [ours.body[toOurs.counterparts[at]!]!, theirs.body[toTheirs.counterparts[at]!]!];
                parts.push(this.piece({ base: base.body[at]!, ours: one, theirs: other }));
            }
            parts.push(...this.gap(oursBehind.get(at) ?? [], theirsBehind.get(at) ?? [], meeting));
        }
        return joined(parts, head);
    }

    private gap(ours: readonly Slot[], theirs: readonly Slot[], { rivals, shared, settled }: Meeting): Part[] {
        const parts: Part[] = [];
        // What the other side took away goes where this side left it as it was.
        for (const { base, piece } of ours) if (base !== undefined && differs(base, piece)) parts.push(this.sides([piece], []));
        for (const { base, piece } of theirs) if (base !== undefined && differs(base, piece)) parts.push(this.sides([], [piece]));
        const added = addedIn(ours);
        const others = addedIn(theirs).filter((piece) => !settled.has(piece));
        const isStep = (piece: Piece): boolean => piece.isOrdered && !shared.has(piece);
        if (added.some(isStep) && others.some(isStep)) {
            // Which step comes first only a person knows.
            const mine = added.filter((piece) => !shared.has(piece));
            const both = added.filter((piece) => shared.has(piece)).map(asAdded);
            const opposite = mine.flatMap((piece) => rivals.get(piece) ?? []);
            return [...parts, ...both, this.sides(mine, [...opposite, ...others])];
        }
        for (const piece of added) {
            const rival = rivals.get(piece);
            parts.push(rival === undefined ? asAdded(piece) : this.sides([piece], [rival]));
        }
        return [...parts, ...others.map((piece) => asAdded(withoutLeadOf(added, piece)))];
    }

    private piece(three: Three<Piece>): Part {
        const before = this.conflicts;
        try {
            return { text: this.text(three), startsLine: three.ours.startsLine };
        } catch (error) {
            if (!(error instanceof Unmarkable)) throw error;
            this.conflicts = before;
            return this.sides([three.ours], [three.theirs]);
        }
    }

    /** @throws Unmarkable for a conflict of the whole statement */
    private text({ base, ours, theirs }: Three<Piece>): string {
        const lead = this.atom(base.lead, ours.lead, theirs.lead);
        const trail = this.atom(base.trail, ours.trail, theirs.trail);
        const plain = either(base.text, ours.text, theirs.text);
        if (plain !== undefined) return lead + plain + trail;
        if (base.block === undefined || ours.block === undefined || theirs.block === undefined) throw new Unmarkable();
        const blocks = { base: base.block, ours: ours.block, theirs: theirs.block };
        const tail = this.atom(base.block.tail, ours.block.tail, theirs.block.tail);
        const head = either(base.block.head, ours.block.head, theirs.block.head);
        if (head !== undefined) return this.body(blocks, lead + head) + tail + trail;
        // Two titles, say: the first line alone is marked.
        const areLines = [ours, theirs].every((piece) => piece.startsLine && piece.block!.head.endsWith('\n'));
        if (!areLines) throw new Unmarkable();
        const above = lead.slice(0, lead.lastIndexOf('\n') + 1);
        const indent = lead.slice(above.length);
        const heads = this.between(indent + ours.block.head, indent + theirs.block.head);
        return this.body(blocks, above + heads) + tail + trail;
    }

    /** Blanks and comments: where one side changed only blanks, those of the other count. @throws Unmarkable */
    atom(base: string, ours: string, theirs: string): string {
        const plain = either(base, ours, theirs);
        if (plain !== undefined) return plain;
        const [was, one, other] = [base, ours, theirs].map((text) => text.replaceAll(/\s+/g, ' ').trim());
        if (one === other || other === was) return ours;
        if (one === was) return theirs;
        throw new Unmarkable();
    }

    /** Statements of one side against those of the other. @throws Unmarkable where they do not stand on lines of their own */
    private sides(ours: readonly Piece[], theirs: readonly Piece[]): Part {
        if (![...ours, ...theirs].every(({ startsLine, endsLine }) => startsLine && endsLine)) throw new Unmarkable();
        const [first, second] = [linesOf(ours), linesOf(theirs)];
        // Empty lines that both begin with stand above the marker.
        const blank = /^(?:[ \t]*\n)*/.exec(first || second)?.[0] ?? '';
        const within = (text: string): string => (text.startsWith(blank) ? text.slice(blank.length) : text);
        return { text: blank + this.between(within(first), within(second)), startsLine: true };
    }

    private between(first: string, second: string): string {
        this.conflicts++;
        const { size, ours, theirs } = this.markers;
        const mark = (sign: string, label: string): string => `${sign.repeat(size)}${label === '' ? '' : ` ${label}`}\n`;
        return mark('<', ours) + first + mark('=', '') + second + mark('>', theirs);
    }
}

/** What one side changed; undefined where both did, and not alike. */
function either(base: string, ours: string, theirs: string): string | undefined {
    if (ours === theirs || theirs === base) return ours;
    return ours === base ? theirs : undefined;
}

/** Whether anything but blanks around it is unlike. */
function differs(one: Piece, other: Piece): boolean {
    const words = ({ lead, text, trail }: Piece): string => [lead.trim(), text, trail.trim()].join('\n');
    return words(one) !== words(other);
}

function linesOf(pieces: readonly Piece[]): string {
    return pieces
        .map(({ lead, text, trail }) => lead + text + trail)
        .map((lines) => (lines.endsWith('\n') ? lines : `${lines}\n`))
        .join('');
}

function addedIn(slots: readonly Slot[]): Piece[] {
    return slots.flatMap(({ base, piece }) => (base === undefined ? [piece] : []));
}

function asAdded({ lead, text, trail, startsLine }: Piece): Part {
    return { text: lead + text + trail, startsLine, isAdded: true };
}

/** A comment that stood there before counts as that of whichever comes first behind it; it is not said twice. */
function withoutLeadOf(before: readonly Piece[], piece: Piece): Piece {
    const words = piece.lead.trim();
    if (words === '' || !before.some(({ lead }) => lead.trim() === words)) return piece;
    return { ...piece, lead: piece.lead.slice(piece.lead.indexOf(words) + words.length).replace(/^[ \t]*\n/, '') };
}

function meet(ours: readonly Piece[], theirs: readonly Piece[]): Meeting {
    const rivals = new Map<Piece, Piece>();
    const shared = new Set<Piece>();
    const settled = new Set<Piece>();
    const left = (): Piece[] => theirs.filter((piece) => !settled.has(piece));
    for (const piece of ours) {
        const same = left().find((other) => other.key === piece.key && !differs(piece, other));
        if (same === undefined) continue;
        shared.add(piece);
        settled.add(same);
    }
    for (const piece of ours) {
        // A board of one name, a depth of one step: both cannot stand.
        if (shared.has(piece) || piece.isRepeatable) continue;
        const rival = left().find(({ key }) => key === piece.key);
        if (rival === undefined) continue;
        rivals.set(piece, rival);
        settled.add(rival);
    }
    return { rivals, shared, settled };
}

/** By the common piece before them, what one version has between two of those. */
function gaps(
    base: readonly Piece[],
    later: readonly Piece[],
    { counterparts }: Alignment,
    common: readonly number[],
): Map<number | undefined, Slot[]> {
    const origin = new Map([...counterparts.entries()].flatMap(([at, to]) => (to === undefined ? [] : [[to, at] as const])));
    const isCommon = new Set(common);
    const found = new Map<number | undefined, Slot[]>();
    let behind: number | undefined;
    for (const [index, piece] of later.entries()) {
        const at = origin.get(index);
        if (at !== undefined && isCommon.has(at)) {
            behind = at;
            continue;
        }
        const slots = found.get(behind) ?? [];
        found.set(behind, slots);
        slots.push({ piece, ...(at !== undefined && { base: base[at]! }) });
    }
    return found;
}

/** The order of what both kept: that of the side which changed it. @throws Unmarkable where both moved steps, each otherwise */
function orderOf(common: readonly number[], ours: Alignment, theirs: Alignment, base: readonly Piece[]): readonly number[] {
    const inOrder = ({ counterparts }: Alignment): number[] => common.toSorted((a, b) => counterparts[a]! - counterparts[b]!);
    const [one, other] = [inOrder(ours), inOrder(theirs)];
    const chosen = changedOrder(common, one, other);
    if (chosen !== undefined) return chosen;
    // Of what else stands there the order says nothing.
    const steps = (order: readonly number[]): number[] => order.filter((at) => base[at]!.isOrdered);
    const moved = changedOrder(steps(common), steps(one), steps(other));
    if (moved === undefined) throw new Unmarkable();
    return isSameOrder(moved, steps(one)) ? one : other;
}

function changedOrder(
    common: readonly number[],
    ours: readonly number[],
    theirs: readonly number[],
): readonly number[] | undefined {
    if (isSameOrder(ours, theirs) || isSameOrder(theirs, common)) return ours;
    return isSameOrder(ours, common) ? theirs : undefined;
}

function isSameOrder(one: readonly number[], other: readonly number[]): boolean {
    return one.every((each, at) => each === other[at]);
}

/** Pieces laid end to end behind a head, none on the line of a comment before it. */
function joined(parts: readonly Part[], head: string): string {
    let out = head;
    for (const { text, startsLine, isAdded = false } of parts) {
        if (startsLine && out !== '' && !out.endsWith('\n')) out += '\n';
        else if (/[^\s{]$/.test(out) && /^[^\s}]/.test(text)) out += ' ';
        // Two declarations that were added at one place had nothing between them.
        if (head === '' && isAdded && /\}[ \t]*\n$/.test(out) && !/^[ \t]*\n/.test(text)) out += '\n';
        out += text;
    }
    return out;
}
