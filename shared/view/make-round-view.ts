import { wallShape } from '../burn/wall';
import { intersect } from '../geometry/boolean';
import { area, vertexCount } from '../geometry/measure';
import type { Region } from '../geometry/region';
import { triangulate } from '../geometry/triangulate';
import { type Column, hair, hollowFloor, isGone } from '../piece/column';
import type { Face } from '../piece/face';
import { TooTangled } from '../piece/partition';
import type { Memo } from '../plan/memo';
import type { BlankPlan, Plan } from '../plan/plan';
import type { Hideable } from './hideable';
import { looksOn, toneOpacity } from './looks';
import { type Edge, edgesBetween } from './round-edges';
import { type Patch, patchesOf } from './round-patches';
import type { LeanView, LookView, PaintView, RoundView, SurfaceView, WallView } from './round-view';
import { roundWords } from './round-words';
import { uncovered } from './uncovered';
import { unknownWood } from './unknown-wood';

/**
 * A piece in the round at a moment of its work: surfaces at the heights that the model of the piece gives, and walls between them.
 *
 * @param frame as in `plan.faces`: 0 is the start, i + 1 follows step i
 * @returns why not, in words, where the blank has no size or nothing is known of it
 */
export function makeRoundView(
    plan: Plan,
    frame: number,
    name: string,
    memo: Memo,
    { hidden = [], checkpoint = () => {} }: RoundWishes = {},
): RoundView | string {
    const face = plan.faces[frame]?.find((candidate) => candidate.blank === name);
    const blank = plan.blanks.find((candidate) => candidate.name === name);
    if (face === undefined || blank === undefined) return `There is no ${name} at this step.`;
    if (face.unsized === true || blank.size === undefined)
        return `${name} has no size, so that it cannot be shown in the round: write \`size\`.`;
    if (face.unknownSince !== undefined)
        return `Nothing is known of ${name} since ${plan.steps[face.unknownSince]?.title ?? 'an earlier step'}: its shapes cross too often.`;
    try {
        return new RoundMaker(plan, face, blank, memo, new Set(hidden), checkpoint).view(frame, blank.size);
    } catch (error) {
        if (error instanceof TooTangled) return `The shapes on ${name} cross too often to be shown in the round.`;
        throw error;
    }
}

/** How a piece in the round is wanted. */
export interface RoundWishes {
    /** What is left out of it. */
    readonly hidden?: readonly Hideable[];
    /** Called often while it is made; may throw to give it up. */
    readonly checkpoint?: () => void;
}

/** What stays below the deepest place of a board whose thickness is not written, mm. @commonPractice Only for the picture. */
const assumedRest = 3;
/** Places on walls that lean, as parts of their depth. */
const leanParts = [0, 0.1, 0.3, 0.6, 0.85, 1];
/** A picture of more corners than this is one even tone in the round. */
const mostOfPicture = 60_000;

class RoundMaker {
    private readonly looks: LookView[] = [];
    private readonly lookIds = new Map<string, number>();
    /** A wall's shape takes a while, and hundreds of edges lead into one pocket. */
    private readonly leans = new Map<Column, readonly number[] | undefined>();
    private readonly sides = new Map<Column, Map<string, number>>();
    private readonly patches: readonly Patch[];
    private readonly thickness: number;
    private readonly on: ReturnType<typeof looksOn>;

    constructor(
        private readonly plan: Plan,
        private readonly face: Face,
        private readonly blank: BlankPlan,
        private readonly memo: Memo,
        private readonly hidden: ReadonlySet<Hideable>,
        private readonly checkpoint: () => void,
    ) {
        const patches = patchesOf(face, memo);
        const open = new Map(patches.map(({ column }) => [column, uncovered(column, hidden)]));
        this.patches = hidden.size === 0 ? patches : patches.map((patch) => ({ ...patch, column: open.get(patch.column)! }));
        const deepest = Math.max(0, ...this.patches.map(({ column }) => (isGone(column) ? 0 : column.top.value)));
        this.thickness = blank.thickness?.value ?? deepest + assumedRest;
        this.on = looksOn(plan, face, blank, !hidden.has('char'));
    }

    view(frame: number, size: { readonly width: number; readonly height: number }): RoundView {
        const surfaces = this.patches.flatMap((patch) => this.surfacesOf(patch));
        const walls = this.walls(size);
        return {
            blank: this.blank.name,
            frame,
            ...size,
            thickness: this.thickness,
            ...(this.blank.thickness === undefined ? { assumed: true as const } : {}),
            looks: this.looks,
            surfaces,
            walls,
            paints: this.hidden.has('char') ? [] : [...this.patches.flatMap((patch) => this.tonesOf(patch)), ...this.marks()],
            words: roundWords(this.plan, this.face, this.blank, this.patches),
        };
    }

    /** Height of a depth below the blank's first face. */
    private z(depth: number): number {
        return Math.max(0, this.thickness - (Number.isFinite(depth) ? depth : this.thickness));
    }

    private topOf(column: Column): number {
        return isGone(column) ? 0 : this.z(column.top.value);
    }

    private bottomOf({ layers }: Column): number {
        return layers.length === 0 ? 0 : this.z(layers.at(-1)!.down.value);
    }

    private surfacesOf({ region, column }: Patch): SurfaceView[] {
        this.checkpoint();
        const shape = flat(region);
        if (isGone(column)) return [{ look: this.idOf(this.on.openBacking), z: 0, ...shape }];
        const look = this.on.top(column);
        if (look === undefined) return [];
        return [
            { look: this.idOf(look), z: this.topOf(column), ...shape },
            { look: this.idOf(this.on.back(column)), z: this.bottomOf(column), down: true, ...shape },
        ];
    }

    private walls(size: { readonly width: number; readonly height: number }): WallView[] {
        const drafts = new WallDrafts();
        for (const edge of edgesBetween(this.patches.map(({ region }) => region))) {
            this.checkpoint();
            const { column } = this.patches[edge.of]!;
            if (isGone(column)) continue;
            const beyond = edge.beyond === undefined ? undefined : this.patches[edge.beyond]!.column;
            const isOpen = beyond === undefined || isGone(beyond);
            const floor = isOpen ? this.bottomOf(column) : this.topOf(beyond);
            // Where the other face was dug beyond the edge, a wall stands there as well.
            const roof = isOpen ? Number.NEGATIVE_INFINITY : this.bottomOf(beyond);
            const byBeam = beyond === undefined ? !isOnRim(edge, size) : isGone(beyond) || beyond.digs.length > 0;
            const profile = beyond === undefined ? undefined : this.leanInto(beyond);
            column.layers.forEach((_, index) => {
                const high = index === 0 ? this.topOf(column) : this.z(column.layers[index - 1]!.down.value);
                const foot = this.z(column.layers[index]!.down.value);
                if (column.layers[index]!.kind === 'air') return;
                const raise = (low: number, top: number, lean: readonly number[] | undefined): void => {
                    if (top - low < hair) return;
                    drafts.raise(this.sideId(column, index, byBeam), lean, edge, low, top);
                };
                raise(Math.max(floor, foot), high, column.layers[index]!.kind === 'wood' ? profile : undefined);
                raise(foot, Math.min(roof, high), undefined);
            });
        }
        return drafts.walls;
    }

    private sideId(column: Column, index: number, byBeam: boolean): number {
        const known = this.sides.get(column) ?? new Map<string, number>();
        this.sides.set(column, known);
        const key = `${index} ${byBeam}`;
        const id = known.get(key) ?? this.idOf(this.on.side(column, index, byBeam));
        known.set(key, id);
        return id;
    }

    /** How a wall runs out into a pocket: below the rim of its burn, in pairs of depth and inset. */
    private leanInto(column: Column): readonly number[] | undefined {
        if (!this.leans.has(column)) this.leans.set(column, this.leanOf(column));
        return this.leans.get(column);
    }

    private leanOf(column: Column): readonly number[] | undefined {
        const dig = column.digs.findLast(({ depth }) => depth.value > hair);
        const profile = this.plan.steps[dig?.step ?? -1]?.laser?.wall;
        if (dig === undefined || profile === undefined) return undefined;
        const inset = wallShape(profile);
        // Heights of the wall count from where its foot is.
        const rim = this.z(hollowFloor(column).value) + profile.depth;
        return leanParts.flatMap((part) => [fine(rim - part * profile.depth), fine(inset(part * profile.depth))]);
    }

    /** Greys of a picture that was burnt as dots. */
    private tonesOf({ region, column }: Patch): PaintView[] {
        const laser = this.plan.steps[column.tone ?? -1]?.laser;
        if (laser?.pictures === undefined || isGone(column)) return [];
        const full = laser.tone === undefined ? 1 : toneOpacity(laser.tone);
        return laser.pictures.flatMap(({ tones }) => {
            const corners = tones.reduce((sum, part) => sum + vertexCount(part), 0);
            const shown = corners > mostOfPicture ? tones.slice(0, 1) : tones;
            return shown.flatMap((part, k) => {
                const n = tones.length;
                const before = 1 - (full * k) / n;
                const opacity = shown.length < n ? full / 2 : before <= 0 ? 1 : 1 - (1 - (full * (k + 1)) / n) / before;
                const within = this.memo.get('within', `${this.memo.keyOf(part)} ${this.memo.keyOf(region)}`, () =>
                    intersect(part, region),
                );
                return this.paint(within, opacity, column.top.value);
            });
        });
    }

    /** Marks that only colour; those that go through are holes. */
    private marks(): PaintView[] {
        return this.face.marks.flatMap(({ region, through, level, step }) =>
            through ? [] : this.paint(region, toneOpacity(this.plan.steps[step]?.laser?.marks?.[0]?.tone ?? 1), level.value),
        );
    }

    private paint(region: Region, opacity: number, depth: number): PaintView[] {
        this.checkpoint();
        if (!(area(region) > 0)) return [];
        const colour = this.blank.blank.sheet?.wood?.burnt ?? unknownWood.burnt;
        return [{ colour, opacity, z: this.z(depth), ...flat(region) }];
    }

    private idOf(look: LookView): number {
        const key = JSON.stringify(look);
        const known = this.lookIds.get(key) ?? this.looks.push(look) - 1;
        this.lookIds.set(key, known);
        return known;
    }
}

/** Walls of one look and one lean together. */
class WallDrafts {
    private readonly drafts = new Map<
        string,
        { look: number; bands: number[]; lean?: { profile: readonly number[]; ways: number[] } }
    >();

    raise(look: number, profile: readonly number[] | undefined, { from, to }: Edge, low: number, high: number): void {
        const key = profile === undefined ? `${look}` : `${look} ${profile.join(' ')}`;
        let draft = this.drafts.get(key);
        if (draft === undefined) {
            draft = { look, bands: [], ...(profile === undefined ? {} : { lean: { profile, ways: [] } }) };
            this.drafts.set(key, draft);
        }
        draft.bands.push(...[from.x, from.y, to.x, to.y, low, high].map(fine));
        draft.lean?.ways.push(...[from.outX, from.outY, to.outX, to.outY].map(fine));
    }

    get walls(): WallView[] {
        return [...this.drafts.values()].map(({ look, bands, lean }) => ({
            look,
            bands,
            ...(lean === undefined ? {} : { lean: lean as LeanView }),
        }));
    }
}

/** Tenths of a micron, as the corners are. */
function fine(mm: number): number {
    return Math.round(mm * 1e4) / 1e4;
}

function flat(region: Region): { points: number[]; corners: number[] } {
    const { points, corners } = triangulate(region);
    return { points: Array.from(points, fine), corners: [...corners] };
}

/** The edge of the blank as it was sawn. */
function isOnRim({ from, to }: Edge, { width, height }: { readonly width: number; readonly height: number }): boolean {
    const on = (a: number, b: number, at: number): boolean => Math.abs(a - at) < 1e-3 && Math.abs(b - at) < 1e-3;
    return on(from.x, to.x, 0) || on(from.x, to.x, width) || on(from.y, to.y, 0) || on(from.y, to.y, height);
}
