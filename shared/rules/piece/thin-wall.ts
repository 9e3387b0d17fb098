import { intersect } from '../../geometry/boolean';
import { type Approach, approach } from '../../geometry/distance';
import { area, bounds } from '../../geometry/measure';
import type { Bounds } from '../../geometry/region';
import { isOpenPocket } from '../../piece/column';
import { boxed, boxesMeet } from '../../piece/partition';
import { keptFor, nameOf as keyOf } from '../../plan/kept';
import type { LaserPlan } from '../../plan/laser-plan';
import type { BlankPlan, Plan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import { roundLength } from '../helpers/ask-depth';
import { faceAfter, faceBefore, negligible, sizeOfMet } from '../helpers/face-at';
import { leastBridge, leastWall, noWall } from '../helpers/least-wall';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Shallower than this nothing stands that could break, mm. @commonPractice */
const shallow = 0.25;

const page: Page = {
    id: 'thin-wall',
    title: 'Wall too thin',
    severities: ['warning'],
    condition:
        'Between open pockets of two steps less wood is left than six tenths of the depth; towards a cut or the blank’s edge, nine tenths (more in soft or ring-porous wood). Between two cuts less is left than a fifth of the board’s thickness.',
    why: 'So thin a wall chars through, breaks off under a press or a thumb, and lets resin through.',
    mend: 'Move them apart, engrave less deep, or fill and sand the one before the other is burnt.',
    source: commonPractice,
};

export const thinWall: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        for (const blank of plan.blanks) {
            if (blank.size === undefined || blank.blank.sheet?.kind === 'veneer') continue;
            yield* bridges(plan, blank);
            const here = plan.steps.flatMap(({ laser, blank: on }) => (laser !== undefined && on === blank.name ? [laser] : []));
            // Deeper than the blank there is no pocket: deeper-than-blank says so.
            const pockets = here.filter(
                (laser) => isPocket(laser) && !((laser.depth?.value ?? 0) > (blank.thickness?.low ?? Infinity)),
            );
            for (const [index, pocket] of pockets.entries()) {
                const rim = rimOf(pocket, blank);
                if (rim !== undefined) yield said(pocket, 'the edge of the blank', rim, blank, 'rim');
                const cuts = here.filter(({ step }) => step.kind === 'cut');
                for (const other of [...pockets.slice(index + 1).filter((later) => areBothOpen(plan, pocket, later)), ...cuts]) {
                    const beside = other.step.kind === 'cut' ? 'rim' : 'pocket';
                    const depth = Math.max(pocket.depth?.value ?? 0, beside === 'rim' ? 0 : (other.depth?.value ?? 0));
                    const least = leastWall(depth, blank.blank.sheet, beside);
                    const wall = wallBetween(pocket, other, least);
                    const later = other.step.index > pocket.step.index ? other : pocket;
                    const earlier = later === other ? pocket : other;
                    if (wall === undefined || wall.distance <= noWall || overlap(plan, earlier, later)) continue;
                    yield said(later, earlier.step.name, wall, blank, beside, { depth, earlier });
                }
            }
        }
    },
};

/** Wood between two cuts: a hole and an outline, or two holes. */
function* bridges(plan: Plan, blank: BlankPlan) {
    const cuts = plan.steps.flatMap(({ laser, blank: on }) => (laser?.step.kind === 'cut' && on === blank.name ? [laser] : []));
    const { thickness } = blank;
    if (thickness === undefined) return;
    const least = leastBridge(thickness.value, blank.blank.sheet);
    for (const [index, later] of cuts.entries()) {
        const nearest = cuts
            .slice(0, index + 1)
            .flatMap((earlier) => {
                const wall = earlier === later ? wallWithin(later, least) : wallBetween(earlier, later, least);
                return wall === undefined || wall.distance <= noWall ? [] : [{ earlier, wall }];
            })
            .toSorted((a, b) => a.wall.distance - b.wall.distance)[0];
        if (nearest === undefined || overlapsCut(nearest.earlier, later)) continue;
        const { earlier, wall } = nearest;
        const wanted = roundLength(least, 'mm', 'up');
        const between = earlier === later ? `Within ${later.step.name}` : `Between ${later.step.name} and ${earlier.step.name}`;
        yield finding(page, {
            severity: 'warning',
            message: `${between} only ${showLength(wall.distance)} of wood is left in a board of ${showLength(thickness.value)}: it chars through or snaps. Leave ${showLength(wanted)}.`,
            where: later.step.where,
            step: later.step.index,
            spots: [{ blank: blank.name, x: wall.x, y: wall.y, size: 2 }],
            related: earlier === later ? [] : [{ message: `${earlier.step.name} is cut here.`, where: earlier.step.where }],
        });
    }
}

/** Holes that cross an outline are notches. */
function overlapsCut(earlier: LaserPlan, later: LaserPlan): boolean {
    if (earlier === later) return false;
    const common = area(intersect(earlier.region, later.region));
    return common > negligible && common < Math.min(area(earlier.region), area(later.region)) - negligible;
}

/** More shapes in one cut than this are a pattern, whose bars are drawn as they are. */
const mostShapes = 60;

/** The nearest that two closed lines of one cut come to each other, mm. */
function wallWithin({ region }: LaserPlan, least: number): Approach | undefined {
    if (region.rings.length < 2 || region.rings.length > mostShapes) return undefined;
    return keptFor(region, `bridge ${least}`, () => {
        const rings = region.rings.flatMap((ring) => boxed({ rings: [ring] }) ?? []);
        const walls = rings.flatMap((one, i) =>
            rings
                .slice(i + 1)
                .flatMap((other) =>
                    boxesMeet(one.box, other.box, least) ? (approach(one.region, other.region, least) ?? []) : [],
                ),
        );
        return walls.filter(({ distance }) => distance > noWall).toSorted((a, b) => a.distance - b.distance)[0];
    });
}

function said(
    laser: LaserPlan,
    beside: string,
    wall: Approach,
    blank: BlankPlan,
    kind: 'pocket' | 'rim',
    other?: { readonly depth: number; readonly earlier: LaserPlan },
) {
    const depth = other?.depth ?? laser.depth?.value ?? 0;
    const least = roundLength(leastWall(depth, blank.blank.sheet, kind), 'mm', 'up');
    return finding(page, {
        severity: 'warning',
        message: `Between ${laser.step.name} and ${beside} only ${showLength(wall.distance)} of wood is left, ${showLength(depth)} high: leave ${showLength(least)}, so move them ${showLength(roundLength(least - wall.distance, 'mm', 'up'))} apart.`,
        where: laser.step.where,
        step: laser.step.index,
        spots: [{ blank: blank.name, x: wall.x, y: wall.y, size: 2 }],
        related:
            other === undefined
                ? []
                : [{ message: `${other.earlier.step.name} is burnt here.`, where: other.earlier.step.where }],
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
    if (earlier.step.kind === 'cut') return later.area - sizeOfMet(met).area > negligible;
    return met.some(({ column }) => column.digs.some(({ step }) => step === earlier.step.index));
}

function boxOf({ region }: LaserPlan): Bounds | undefined {
    return keptFor(region, 'box', () => bounds(region));
}

/** The blank is a plain rectangle: what is nearest to its edge is a side of the box around the art. */
function rimOf(pocket: LaserPlan, { size, blank }: BlankPlan): Approach | undefined {
    const box = boxOf(pocket);
    if (box === undefined || size === undefined) return undefined;
    const least = leastWall(pocket.depth?.value ?? 0, blank.sheet, 'rim');
    const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    const sides: Approach[] = [
        { distance: box.minX, x: 0, y: middle.y },
        { distance: size.width - box.maxX, x: size.width, y: middle.y },
        { distance: box.minY, x: middle.x, y: 0 },
        { distance: size.height - box.maxY, x: middle.x, y: size.height },
    ];
    const nearest = sides.reduce((a, b) => (b.distance < a.distance ? b : a));
    return nearest.distance > noWall && nearest.distance < least ? nearest : undefined;
}

function wallBetween(a: LaserPlan, b: LaserPlan, least: number): Approach | undefined {
    const [one, other] = [boxOf(a), boxOf(b)];
    if (one === undefined || other === undefined || !boxesMeet(one, other, least)) return undefined;
    return keptFor(a.region, `wall ${keyOf(b.region)} ${least}`, () => approach(a.region, b.region, least));
}
