import { intersect } from '../../geometry/boolean';
import { type Approach, approach } from '../../geometry/distance';
import { area, bounds, signedArea } from '../../geometry/measure';
import { type Bounds, emptyRegion, type Ring } from '../../geometry/region';
import { isOpenPocket } from '../../piece/column';
import { boxed, boxesMeet } from '../../piece/partition';
import { beyondLine } from '../../plan/freed-parts';
import { keptFor, nameOf as keyOf } from '../../plan/kept';
import type { LaserPlan } from '../../plan/laser-plan';
import { seenAs } from '../../plan/lies';
import type { BlankPlan, Plan } from '../../plan/plan';
import { faceAfter, faceBefore, negligible, sizeOfMet } from './face-at';
import { noWall } from './least-wall';
import { isSideBySide } from './side-by-side';

/** Shallower than this nothing stands that could break, mm. @commonPractice */
export const shallow = 0.25;

/** What a wall stands between: two open pockets, a pocket and a cut or the blank's edge, or two cuts. */
export type WallKind = 'pocket' | 'rim' | 'bridge';

/** Wood that is left beside what a step burns, where it is thinnest: its width at the face, as the beam leaves it, and its place, mm. */
export interface Wall extends Approach {
    readonly kind: WallKind;
    /** The later of the two, by which the wall comes about. */
    readonly later: LaserPlan;
    /** The other one; the same where two lines of one cut come near each other. */
    readonly earlier: LaserPlan | 'edge';
    /** How high it stands, mm; of a bridge, the whole board. */
    readonly depth: number;
}

/**
 * The walls on a board that are thinner than `reach` says for their height and kind, mm. Where they lie in each other, or nearer
 * than what chars anyway, there is no wall. O(n log n) in the corners of each pair whose boxes come that near.
 */
export function wallsOf(plan: Plan, blank: BlankPlan, reach: (depth: number, kind: WallKind) => number): Wall[] {
    if (blank.size === undefined || blank.blank.sheet?.kind === 'veneer') return [];
    const here = plan.steps.flatMap(({ laser, blank: on }) => (laser !== undefined && on === blank.name ? [laser] : []));
    const cuts = here.filter(({ step }) => step.kind === 'cut');
    // Deeper than the blank there is no pocket: deeper-than-blank says so.
    const pockets = here.filter((laser) => isPocket(laser) && !((laser.depth?.value ?? 0) > (blank.thickness?.low ?? Infinity)));
    return [
        ...bridges(plan, cuts, blank, reach),
        ...pockets.flatMap((pocket, index): Wall[] => {
            const high = pocket.depth?.value ?? 0;
            const edge = edgeOf(pocket, blank, reach(high, 'rim'));
            const open = pockets.slice(index + 1).filter((later) => areBothOpen(plan, pocket, later));
            return [
                ...(edge === undefined ? [] : [{ ...edge, kind: 'rim', later: pocket, earlier: 'edge', depth: high } as const]),
                ...[...open, ...cuts].flatMap((other): Wall[] => {
                    const kind = other.step.kind === 'cut' ? 'rim' : 'pocket';
                    const depth = Math.max(high, kind === 'rim' ? 0 : (other.depth?.value ?? 0));
                    const [made, later] = other.step.index > pocket.step.index ? [pocket, other] : [other, pocket];
                    const earlier = seenAs(made, later, plan);
                    const wall = wallBetween(earlier, later, reach(depth, kind));
                    if (wall === undefined || overlap(plan, earlier, later)) return [];
                    return [{ ...wall, kind, later, earlier, depth }];
                }),
            ];
        }),
    ];
}

/** Wood between two cuts: a hole and an outline, or two holes. */
function bridges(
    plan: Plan,
    cuts: readonly LaserPlan[],
    { thickness }: BlankPlan,
    reach: (depth: number, kind: WallKind) => number,
): Wall[] {
    if (thickness === undefined) return [];
    const within = reach(thickness.value, 'bridge');
    return cuts.flatMap((later, index) =>
        cuts.slice(0, index + 1).flatMap((made): Wall[] => {
            const earlier = seenAs(made, later, plan);
            if (earlier !== later && isWasteBetween(earlier, later)) return [];
            const wall = earlier === later ? wallWithin(later, within) : wallBetween(earlier, later, within);
            if (wall === undefined || isNotch(earlier, later)) return [];
            return [{ ...wall, kind: 'bridge', later, earlier, depth: thickness.value }];
        }),
    );
}

/** Holes that cross an outline are notches. */
function isNotch(earlier: LaserPlan, later: LaserPlan): boolean {
    if (earlier === later) return false;
    const common = area(intersect(earlier.region, later.region));
    return common > negligible && common < Math.min(area(earlier.region), area(later.region)) - negligible;
}

/** Between parts side by side lies waste: narrower-than-kerf speaks of it. */
function isWasteBetween({ cutLine: one }: LaserPlan, { cutLine: other }: LaserPlan): boolean {
    if (one === undefined || other === undefined) return false;
    if (one.openings.rings.length > 0 || other.openings.rings.length > 0) return false;
    return isSideBySide(one.parts, other.parts);
}

/** More shapes in one cut than this are a pattern, whose bars are drawn as they are. */
const mostShapes = 60;

/** The nearest that two closed lines of one cut come to each other with wood between them that is kept, mm. */
function wallWithin(laser: LaserPlan, within: number): Approach | undefined {
    const { region, cutLine } = laser;
    const taken = 2 * beyondEdge(laser);
    const least = within + taken;
    if (region.rings.length < 2 || region.rings.length > mostShapes) return undefined;
    const parts = cutLine?.parts ?? emptyRegion;
    return keptFor(region, `bridge ${least} ${keyOf(parts)}`, () => {
        const outlines = new Set<Ring>(parts.rings.filter((ring) => signedArea(ring) > 0));
        const all = cutLine === undefined ? region.rings : [...parts.rings, ...cutLine.openings.rings];
        const rings = all.flatMap((ring) => {
            const one = boxed({ rings: [ring] });
            return one === undefined ? [] : [{ ...one, isPart: outlines.has(ring) }];
        });
        const walls = rings.flatMap((one, i) =>
            rings
                .slice(i + 1)
                .flatMap((other) =>
                    boxesMeet(one.box, other.box, least) && !(one.isPart && other.isPart)
                        ? (approach(one.region, other.region, least) ?? [])
                        : [],
                ),
        );
        const thinnest = walls.filter(({ distance }) => distance > noWall).toSorted((a, b) => a.distance - b.distance)[0];
        return lessTaken(thinnest, taken);
    });
}

function isPocket({ step, depth, through, tone, pictures }: LaserPlan): boolean {
    return step.kind === 'engrave' && !through && tone === undefined && pictures === undefined && (depth?.value ?? 0) > shallow;
}

/** When the later is burnt, the earlier is still an empty pocket: full of cured resin it holds the wall from behind. */
function areBothOpen(plan: Plan, earlier: LaserPlan, later: LaserPlan): boolean {
    const face = faceBefore(plan, later.step.index, later.blank);
    return (
        face?.cells.some(({ column }) => isOpenPocket(column) && column.digs.some(({ step }) => step === earlier.step.index)) ===
        true
    );
}

/** They lie in each other: there is no wall, and other rules speak. */
function overlap(plan: Plan, earlier: LaserPlan, later: LaserPlan): boolean {
    const met = faceAfter(plan, later.step.index, later.blank)?.met ?? [];
    if (earlier.step.kind === 'cut') return later.area - sizeOfMet(met).area > negligible || crosses(later, earlier);
    if (met.some(({ column }) => column.digs.some(({ step }) => step === earlier.step.index))) return true;
    // Across what was laid and sanded nothing is met of the earlier pocket any more.
    return later.step.kind !== 'cut' && area(intersect(earlier.region, later.region)) > negligible;
}

/** A pocket that lies on both sides of a cut whose part is still held. */
function crosses(pocket: LaserPlan, cut: LaserPlan): boolean {
    const common = area(intersect(pocket.region, cut.region));
    return common > negligible && area(pocket.region) - common > negligible;
}

function boxOf({ region }: LaserPlan): Bounds | undefined {
    return keptFor(region, 'box', () => bounds(region));
}

/** The blank is a plain rectangle: what is nearest to its edge is a side of the box around the art. */
function edgeOf(pocket: LaserPlan, { size }: BlankPlan, least: number): Approach | undefined {
    const box = boxOf(pocket);
    if (box === undefined || size === undefined) return undefined;
    const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    const sides: Approach[] = [
        { distance: box.minX, x: 0, y: middle.y },
        { distance: size.width - box.maxX, x: size.width, y: middle.y },
        { distance: box.minY, x: middle.x, y: 0 },
        { distance: size.height - box.maxY, x: middle.x, y: size.height },
    ];
    const nearest = lessTaken(
        sides.reduce((a, b) => (b.distance < a.distance ? b : a)),
        beyondEdge(pocket),
    );
    return nearest !== undefined && nearest.distance < least ? nearest : undefined;
}

function wallBetween(a: LaserPlan, b: LaserPlan, least: number): Approach | undefined {
    const [one, other] = [boxOf(a), boxOf(b)];
    const taken = beyondEdge(a) + beyondEdge(b);
    const reach = least + taken;
    if (one === undefined || other === undefined || !boxesMeet(one, other, reach)) return undefined;
    return lessTaken(
        keptFor(a.region, `wall ${keyOf(b.region)} ${reach}`, () => approach(a.region, b.region, reach)),
        taken,
    );
}

/** How far the beam takes wood beyond the edge that it is planned by, mm; negative where it does not reach it. */
function beyondEdge(laser: LaserPlan): number {
    return laser.step.kind === 'cut' ? beyondLine(laser) : laser.growth;
}

/** What is drawn to touch has no wall between; what only the beam's width joins has one of no width. */
function lessTaken(wall: Approach | undefined, taken: number): Approach | undefined {
    return wall === undefined || wall.distance <= noWall ? undefined : { ...wall, distance: Math.max(0, wall.distance - taken) };
}
