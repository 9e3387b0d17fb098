import { pressFit } from '../../bench/press-fit';
import { intersect, subtract } from '../../geometry/boolean';
import { approach } from '../../geometry/distance';
import { area } from '../../geometry/measure';
import { grow } from '../../geometry/offset';
import { type Region, tangledRegion } from '../../geometry/region';
import { halfWall } from '../../plan/cut-half';
import { keptFor, nameOf as keyOf } from '../../plan/kept';
import type { InlayPlan, Plan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Inlay } from '../../recipe/step';
import { roundLength } from '../helpers/ask-depth';
import { negligible } from '../helpers/face-at';
import { clearanceFix, offsetsOf } from '../helpers/mend-gap';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';
import { widestSeam } from './wide-seam';

/** Veneers that are drawn further apart are not meant to meet, mm. @commonPractice */
export const meetWithin = 1;
/** A shorter seam than this is no seam but a corner, mm. @commonPractice */
const shortest = 5;
/** More than the walls need, so that rounding does not stop it, mm. */
const ease = 0.005;
/** Width of the strip by which the length of a seam is measured, mm. */
const strip = 0.1;

const page: Page = {
    id: 'veneers-meet',
    title: 'Seam between two veneers',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: `Two veneer halves lie side by side in one pocket, and the gap between them is less than their leaning walls take up, or leaves a seam of more than ${widestSeam} mm once the face is sanded.`,
    why: 'Turned over, a veneer is wider at its face than below. Where two of them come too near, the second stands on the edge of the first and does not come down to the glue. Too far apart, a dark line of glue shows between them.',
    mend: 'Give both inlays more or less clearance, or draw the edges further apart or nearer.',
    source: 'Own derivation: the gap is what both halves were drawn smaller, less what both walls take up at the same height, as in the press of a half and its pocket.',
};

export const veneersMeet: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        for (const pair of pairsOf(plan)) {
            const seam = seamOf(pair);
            if (seam === undefined) continue;
            const { gap, fit } = seam;
            const isWide = fit.bottoms && fit.seam > widestSeam;
            if ((fit.bottoms && !isWide) || (isWide && isFilledLater(plan, pair))) continue;
            const [a, b] = [pair.first.inlay, pair.second.inlay];
            const names = phrase`${b.relief.name} and ${a.relief.name}`;
            const by = isWide ? fit.seam - widestSeam : fit.leastClearance + ease - gap;
            if (!Number.isFinite(by)) continue;
            const fixes = clearances(pair, isWide ? -by : by);
            const draw = phrase`draw their edges ${showLength(roundLength(by, 'mm', 'up'))} ${isWide ? 'nearer' : phrase`further apart`}`;
            const cure =
                fixes.length > 0 ? phrase`Give both ${isWide ? 'less' : 'more'} clearance, or ${draw}.` : `${capital(draw)}.`;
            yield finding(page, {
                severity: 'warning',
                message: isWide
                    ? phrase`Between ${names} a seam of ${showLength(fit.seam)} stays open in ${b.pocket.name}; more than ${showLength(widestSeam)} shows. ${cure}`
                    : phrase`${capital(names)} lie ${showLength(gap)} apart in ${b.pocket.name}, and their walls need ${showLength(fit.leastClearance)}: ${b.relief.name} stands on the edge of ${a.relief.name}. ${cure}`,
                where: pair.second.step.where,
                step: pair.second.step.index,
                spots: seam.spots(pair.second.blank),
                related: [{ message: phrase`${a.relief.name} is glued in here.`, where: pair.first.step.where }],
                fixes,
            });
        }
    },
};

interface Laid {
    readonly inlay: InlayPlan;
    readonly step: Inlay;
    readonly blank: string;
}

interface Pair {
    readonly first: Laid;
    readonly second: Laid;
}

/** Inlays that go into one pocket, each of which goes in well by itself. */
function pairsOf({ steps }: Plan): Pair[] {
    const laid = steps.flatMap(({ inlay, step, blank }): Laid[] =>
        step.kind === 'inlay' && blank !== undefined && inlay?.fit?.bottoms === true && inlay.fit.seam <= widestSeam
            ? [{ inlay, step, blank }]
            : [],
    );
    return laid.flatMap((second, i) =>
        laid.slice(0, i).flatMap((first) => (first.inlay.pocket.index === second.inlay.pocket.index ? [{ first, second }] : [])),
    );
}

/** The seam where two veneers meet; undefined where they do not. */
function seamOf({ first, second }: Pair) {
    const [a, b] = [outlineOf(first.inlay), outlineOf(second.inlay)];
    if (a === undefined || b === undefined) return undefined;
    const near = keptFor(a, `meets ${keyOf(b)}`, () => findContact(a, b, second.inlay.pocketLaser.region));
    if (near === undefined) return undefined;
    const { inlay } = second;
    const seat = inlay.fit!.insertion;
    const [ofFirst, ofSecond] = [first.inlay, inlay].map(({ reliefLaser, half, turnedOver }) =>
        halfWall(reliefLaser, half, !turnedOver),
    );
    const thick = ({ veneer }: InlayPlan): number => veneer?.value ?? Number.POSITIVE_INFINITY;
    const fit = pressFit(
        near.distance,
        { seat, thickness: thick(inlay), sanded: inlay.below.value },
        { pocket: (depth) => ofFirst!(Math.min(Math.max(0, seat - depth), thick(first.inlay))), veneer: ofSecond! },
    );
    return { gap: near.distance, fit, spots: (blank: string) => [{ blank, x: near.x, y: near.y, size: 2 }] };
}

/** What stays of a veneer at the face that the beam met: what is painted, less what its width takes. */
function outlineOf({ fits, reliefLaser: { growth } }: InlayPlan): Region | undefined {
    return keptFor(fits, `without ${growth}`, () => {
        const left = growth === 0 ? fits : grow(fits, -growth);
        return left === tangledRegion || left.rings.length === 0 ? undefined : left;
    });
}

/** Where two outlines run along each other, and how near; undefined where they only touch at a corner, or wood stands between. */
function findContact(a: Region, b: Region, pocket: Region) {
    // One lies on the other: pocket-taken says so.
    if (area(intersect(a, b)) > negligible) return undefined;
    const near = approach(a, b, meetWithin);
    if (near === undefined) return undefined;
    const reach = near.distance + strip;
    const [grownA, grownB] = [grow(a, reach), grow(b, reach)];
    if (grownA === tangledRegion || grownB === tangledRegion) return undefined;
    if (area(intersect(grownA, b)) / strip < shortest) return undefined;
    const between = subtract(subtract(intersect(grownA, grownB), a), b);
    return area(intersect(between, pocket)) < 0.5 * area(between) ? undefined : near;
}

/** Resin that is poured on the pocket once the veneers lie in it fills what is open. */
function isFilledLater({ steps }: Plan, { second: { inlay, step } }: Pair): boolean {
    return steps.some(({ fill, step: other }) => fill?.pocket.index === inlay.pocket.index && other.index > step.index);
}

/** Other clearances for both, by so much each, where both still go in and leave no wide seam around them. */
function clearances({ first, second }: Pair, by: number): Fix[] {
    const changed = [first, second].map(({ inlay, step }) => {
        const { leastClearance, closing } = inlay.fit!;
        const offsets = offsetsOf(inlay);
        const wanted = inlay.clearance + by;
        const low = by > 0 ? Math.max(wanted, leastClearance - offsets) : leastClearance - offsets;
        const most = closing + widestSeam - offsets;
        const high = by > 0 ? most : Math.min(wanted, most);
        return low > high ? [] : clearanceFix(step, { low, high, best: wanted });
    });
    if (changed.some((fixes) => fixes.length === 0)) return [];
    const changes = changed.flatMap(([fix]) => fix?.changes ?? []);
    return [{ title: phrase`Give both ${by > 0 ? 'more' : 'less'} clearance`, changes }];
}

function capital(text: string): string {
    return text.charAt(0).toUpperCase() + text.slice(1);
}
