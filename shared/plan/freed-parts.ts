import { islands } from '../geometry/islands';
import { area, bounds, contains, signedArea } from '../geometry/measure';
import { grow } from '../geometry/offset';
import { type Bounds, emptyRegion, type Region, tangledRegion } from '../geometry/region';
import { reversed } from '../geometry/reverse';
import { boxed, boxesMeet } from '../piece/partition';
import { KeptOn } from './kept';
import type { LaserPlan } from './laser-plan';
import { seenFrom } from './lies';
import type { Memo } from './memo';
import type { StepPlan } from './plan';

/** mm */
interface Size {
    readonly width: number;
    readonly height: number;
}

/** What a cut leaves of its blank. */
export interface CutOutcome {
    /** What falls out of it as waste, with what rings enclose. */
    readonly holes: Region;
    /** What stays when the rest of the sheet falls away, by this cut and those before it; absent while more is to be cut out of it. */
    readonly keeps?: Region;
}

/** Part of the work on a blank that has to lie inside a cut for the inside to be a piece. */
const mostOfIt = 0.5;
/** Part of it that may do for a large one, since a pattern may run out over the edge of what is cut, and what counts as large. */
const someOfIt = 0.1;
const largeShare = 0.1;

/**
 * Whether the inside of a cut is a piece or a hole, and when the rest of the sheet is waste. A piece is what carries work, for the most part or as one of many shapes of a cut; a hole
 * carries none and lies within another cut, or in a sheet that carries work beside it. A sheet without any work is cut for the
 * shapes themselves (own reasoning; nobody writes down which side is kept). What an inlay lets in is a piece, and what it is let into a hole.
 */
export function cutOutcome(laser: LaserPlan, size: Size, steps: readonly StepPlan[], memo: Memo): CutOutcome {
    const { works, key, judged } = workOn(laser, steps, size, memo);
    const cuts = steps.flatMap((step) => (step.laser?.step.kind === 'cut' && step.blank === laser.blank ? [step.laser] : []));
    const taken = new Map(cuts.map((cut) => [cut.step.index, beyondLine(cut)]));
    return memo.get('cut-outcome', `${key} ${laser.step.index} ${[...taken.values()].join(' ')}`, () =>
        outcomeOf(laser, judged(), works, taken),
    );
}

/** What a cut takes off both sides of the line that is drawn, mm: nothing where its way lies beside that, in the waste. */
export function beyondLine({ cutLine, kerf }: LaserPlan): number {
    return cutLine === undefined ? (kerf?.face.value ?? 0) / 2 : 0;
}

/** What each cut takes beyond its line, by its step, mm. */
type Taken = ReadonlyMap<number, number>;

/** The shapes of a cut by which side of their edge is kept. */
export interface CutSides {
    /** Kept inside, waste around them. */
    readonly parts: readonly Region[];
    /** Waste inside. */
    readonly openings: readonly Region[];
}

/** Which side of a cut's edges is waste: judged as what it frees, so that both say the same. */
export function cutSides(laser: LaserPlan, size: Size | undefined, steps: readonly StepPlan[], memo: Memo): CutSides {
    const { key, judged } = workOn(laser, steps, size, memo);
    return memo.get('cut-sides', `${key} ${laser.step.index}`, () => {
        const own = judged().filter(({ step }) => step === laser.step.index);
        const regions = (isPiece: boolean): Region[] => own.filter((one) => one.isPiece === isPiece).map(({ region }) => region);
        return { parts: regions(true), openings: regions(false) };
    });
}

/** What is engraved on the blank of a cut, on both faces as seen from its own, its cuts judged by that, and a name for all of it. */
function workOn(laser: LaserPlan, steps: readonly StepPlan[], size: Size | undefined, memo: Memo) {
    const sheet = size === undefined ? Infinity : size.width * size.height;
    const here = steps.flatMap((step) => {
        if (step.laser === undefined || step.blank !== laser.blank) return [];
        return [{ ...step.laser, region: seenFrom(step.laser, laser, size, memo) }];
    });
    const cuts = here.filter(({ step }) => step.kind === 'cut');
    const said = saidByInlays(steps);
    const works = here.filter(({ step, through }) => step.kind === 'engrave' && !through).map(({ region }) => region);
    const names = [
        ...cuts.map(({ region, step }) => `${memo.keyOf(region)} ${step.index} ${said.get(step.name) ?? ''}`),
        ...works.map((work) => memo.keyOf(work)),
    ];
    const key = `${names.join(' ')} ${sheet}`;
    return { works, key, judged: () => memo.get('cuts-judged', key, () => judge(cuts, works, sheet, said)) };
}

/** Which cuts the inlays of a recipe name, by whether their inside is the piece that is let in. */
function saidByInlays(steps: readonly StepPlan[]): ReadonlyMap<string, boolean> {
    const said = new Map<string, boolean>();
    for (const { step } of steps) {
        if (step.kind !== 'inlay') continue;
        said.set(step.pocket.value ?? '', false);
        said.set(step.relief.value ?? '', true);
    }
    return said;
}

interface Enclosed {
    readonly step: number;
    readonly region: Region;
    readonly box: Bounds;
    readonly size: number;
    readonly isPiece: boolean;
}

function outcomeOf(laser: LaserPlan, all: readonly Enclosed[], works: readonly Region[], taken: Taken): CutOutcome {
    const pieces = all.filter(({ isPiece }) => isPiece);
    const own = all.filter(({ step }) => step === laser.step.index);
    const holes = own.filter(({ isPiece }) => !isPiece);
    const uncovered = works.some(
        (work) => work.rings.length > 0 && pieces.reduce((sum, piece) => sum + shareInside(work, piece), 0) < someOfIt,
    );
    const last = own.some(({ isPiece }) => isPiece) && !pieces.some(({ step }) => step > laser.step.index);
    return {
        holes: asOne(withInsides(holes, works), taken),
        // Cut again in several steps, the smaller ones lie in the larger: what is left is in each that is cut last.
        ...(last && !uncovered
            ? {
                  keeps: asOne(
                      pieces.filter((piece) => !pieces.some((other) => other.size > piece.size && isInside(piece, other))),
                      taken,
                  ),
              }
            : {}),
    };
}

/** A ring that falls out takes what it encloses along, unless that carries work: then it is a part by itself. */
function withInsides(fallen: readonly Enclosed[], works: readonly Region[]): Enclosed[] {
    const filled = fallen.map((one): Enclosed => {
        const rings = one.region.rings.filter((ring) => {
            if (signedArea(ring) > 0) return true;
            const inside = boxed({ rings: [reversed(ring)] });
            return inside !== undefined && works.some((work) => shareInside(work, inside) >= someOfIt);
        });
        return rings.length === one.region.rings.length ? one : { ...one, region: { rings } };
    });
    return filled.filter((one) => !filled.some((other) => other.size > one.size && isInside(one, other)));
}

/** As they come out: a piece is smaller, and a hole larger, by what the beam takes beyond the line. */
function asOne(parts: readonly Enclosed[], taken: Taken): Region {
    const rings = parts.flatMap(({ region, step, isPiece }) => {
        const by = taken.get(step) ?? 0;
        const cut = by === 0 ? region : grow(region, isPiece ? -by : by);
        return (cut === tangledRegion ? region : cut).rings;
    });
    return rings.length === 0 ? emptyRegion : { rings };
}

function judge(
    cuts: readonly LaserPlan[],
    works: readonly Region[],
    sheet: number,
    said: ReadonlyMap<string, boolean>,
): Enclosed[] {
    const found = cuts.flatMap(({ region, step }) =>
        islands(region).flatMap((island) => {
            const box = bounds(island);
            return box === undefined
                ? []
                : [{ step: step.index, said: said.get(step.name), region: island, box, size: area(island) }];
        }),
    );
    const each = found.map((one) => works.map((work) => shareInside(work, one)));
    const shares = each.map((all) => Math.max(0, ...all));
    // Work that is spread over many pieces lies in no single one for the most part, but in all of one cut together.
    const together = new Map(cuts.map(({ step }) => [step.index, works.map((_, k) => sharesOf(found, each, step.index, k))]));
    const carriesPart = found.map(({ step }, i) => each[i]!.some((share, k) => share > 0 && together.get(step)![k]! >= mostOfIt));
    const around = found.map((one) => found.some((other) => other.size > one.size && isInside(one, other)));
    const carries = found.map(
        (one, i) =>
            carriesPart[i]! || shares[i]! >= mostOfIt || (!around[i] && shares[i]! >= someOfIt && one.size >= largeShare * sheet),
    );
    const beside = works.some((work) => !found.some((one, i) => carries[i] && shareInside(work, one) >= someOfIt));
    return found.map((one, i) => ({
        ...one,
        isPiece: one.said ?? (carries[i]! || (!around[i] && !beside && works.length === 0)),
    }));
}

/** Part of a work that lies in all shapes of one cut. */
function sharesOf(
    found: readonly { readonly step: number }[],
    each: readonly (readonly number[])[],
    step: number,
    work: number,
): number {
    return found.reduce((sum, one, i) => (one.step === step ? sum + each[i]![work]! : sum), 0);
}

/** Places asked across a shape each way, and how many of its corners. */
const across = 16;
const enough = 200;

/** Part of a region that lies inside of another, of places in it. */
function shareInside(region: Region, { region: whole, box }: Pick<Enclosed, 'region' | 'box'>): number {
    const own = bounds(region);
    if (own === undefined || !boxesMeet(own, box)) return 0;
    const places = placesIn.getOr(region, () => spread(region, own));
    let inside = 0;
    for (let i = 0; i < places.length; i += 2) if (contains(whole, places[i]!, places[i + 1]!)) inside++;
    return places.length === 0 ? 0 : (2 * inside) / places.length;
}

const placesIn = /* @__PURE__ */ new KeptOn<Region, readonly number[]>();

/** Places of a region on a grid over it, and of its corners, since lines may slip through a grid; x and y in turn, mm. */
function spread(region: Region, own: Bounds): number[] {
    const places: number[] = [];
    for (let i = 0; i < across * across; i++) {
        const x = own.minX + (((i % across) + 0.5) / across) * (own.maxX - own.minX);
        const y = own.minY + ((Math.floor(i / across) + 0.5) / across) * (own.maxY - own.minY);
        if (contains(region, x, y)) places.push(x, y);
    }
    const corners = region.rings.reduce((sum, ring) => sum + ring.length / 2, 0);
    const stride = 2 * Math.max(1, Math.floor(corners / enough));
    for (const ring of region.rings) for (let i = 0; i + 1 < ring.length; i += stride) places.push(ring[i]!, ring[i + 1]!);
    return places;
}

function isInside(one: Pick<Enclosed, 'region'>, other: Pick<Enclosed, 'region' | 'box'>): boolean {
    return shareInside(one.region, other) > mostOfIt;
}
