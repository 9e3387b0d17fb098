import { intersect, subtract } from '../../geometry/boolean';
import { area } from '../../geometry/measure';
import { grow } from '../../geometry/offset';
import type { Region } from '../../geometry/region';
import { isGone } from '../../piece/column';
import type { Face } from '../../piece/face';
import { boxed, boxesMeet } from '../../piece/partition';
import { keptFor, nameOf as keyOf } from '../../plan/kept';
import type { Plan } from '../../plan/plan';
import { showArea, showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { faceBefore, nameOf, negligible } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** A cut that runs shorter through a pocket only touches its edge, mm. */
const leastLength = 1;

const page: Page = {
    id: 'hole-in-pocket',
    title: 'Pocket that opens into a hole',
    severities: ['warning'],
    condition:
        'A pocket that is filled or inlaid is burnt across a hole, or over the edge of a part, that was cut before; or one that is filled across the line of a cut whose part is still held.',
    why: 'Resin runs out below or at the edge, through a kerf as through a hole, and a veneer has nothing to lie on there.',
    mend: 'Cut the hole or the outline once the fill or the inlay is sanded, or keep the pocket off it.',
    source: 'Plain arithmetic of areas.',
};

export const holeInPocket: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, fill, inlay } of plan.steps) {
            const pocket = (fill ?? inlay)?.pocket;
            const burnt = plan.steps[pocket?.index ?? -1];
            if (pocket === undefined || burnt?.laser === undefined || blank === undefined) continue;
            const lost = missing(plan, blank, pocket.index, burnt.laser.whole ?? burnt.laser.region);
            const size = areaOf(lost);
            if (size <= negligible) {
                const kerf = step.kind === 'fill' ? kerfUnder(plan, blank, pocket.index, burnt.laser.region) : undefined;
                if (kerf === undefined) continue;
                const cut = plan.steps[kerf.step]?.step;
                const resin = step.kind === 'fill' ? step.resin?.name : undefined;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${pocket.name} lies across ${showLength(kerf.length)} of what ${nameOf(cut)} has cut: ${resin ?? phrase`the fill`} runs out through the kerf. Cut it once the face is sanded, or keep the pocket off it.`,
                    where: step.where,
                    step: step.index,
                    spots: spotsOf(blank, [kerf.region]),
                    related: [
                        ...(cut === undefined ? [] : [{ message: phrase`${nameOf(cut)} is cut here.`, where: cut.where }]),
                        { message: phrase`${pocket.name} is burnt here.`, where: pocket.where },
                    ],
                });
                continue;
            }
            const cut = openedBy(plan, blank, pocket.index, lost);
            const what =
                step.kind === 'fill'
                    ? phrase`${step.resin?.name ?? phrase`the fill`} runs out there`
                    : phrase`the veneer has no floor there`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${showArea(size)} of ${pocket.name} ${size > 1 ? 'lie' : 'lies'} where ${cut === undefined ? 'nothing' : phrase`${nameOf(cut)} has left nothing`} of ${blank}: ${what}. Cut it once the face is sanded, or keep the pocket off it.`,
                where: step.where,
                step: step.index,
                spots: spotsOf(blank, lost),
                related: [
                    ...(cut === undefined ? [] : [{ message: phrase`${nameOf(cut)} is cut here.`, where: cut.where }]),
                    { message: phrase`${pocket.name} is burnt here.`, where: pocket.where },
                ],
            });
        }
    },
};

/** The longest stretch of a cut made before a pocket that runs through what the pocket was burnt into; undefined below `leastLength`. */
function kerfUnder(
    plan: Plan,
    blank: string,
    pocket: number,
    region: Region,
): { readonly step: number; readonly length: number; readonly region: Region } | undefined {
    const face = faceBefore(plan, pocket, blank);
    const box = boxed(region)?.box;
    if (face === undefined || box === undefined) return undefined;
    const found = face.kerfs.flatMap(({ step, region: line, width }) => {
        const way = boxed(line);
        if (way === undefined || !(width > 0) || !boxesMeet(way.box, box, width)) return [];
        const crossed = keptFor(region, `kerf ${keyOf(line)} ${width} ${keyOf(face.body.region)}`, () =>
            intersect(intersect(region, face.body.region), subtract(grow(line, width / 2), grow(line, -width / 2))),
        );
        return [{ step, length: area(crossed) / width, region: crossed }];
    });
    const longest = found.toSorted((a, b) => b.length - a.length)[0];
    return longest !== undefined && longest.length > leastLength ? longest : undefined;
}

/** Where a pocket was to be burnt and nothing was left of its blank by then, of what there was at first. */
function missing(plan: Plan, blank: string, pocket: number, region: Region): Region[] {
    const first = faceBefore(plan, 0, blank);
    const face = faceBefore(plan, pocket, blank);
    if (first === undefined || face === undefined) return [];
    const body =
        face.body.region === first.body.region
            ? []
            : [
                  keptFor(region, `beyond ${keyOf(face.body.region)}`, () =>
                      subtract(intersect(region, first.body.region), face.body.region),
                  ),
              ];
    return [...body, ...goneIn(face, region)].filter(({ rings }) => rings.length > 0);
}

function goneIn({ cells }: Face, region: Region): Region[] {
    const box = boxed(region)?.box;
    return cells.flatMap((cell) =>
        box === undefined || !isGone(cell.column) || !boxesMeet(cell.box, box)
            ? []
            : [keptFor(cell.region, `in ${keyOf(region)}`, () => intersect(cell.region, region))],
    );
}

/** The step before a pocket that took away most of what is missing in it. */
function openedBy(plan: Plan, blank: string, pocket: number, lost: readonly Region[]): Step | undefined {
    const left = (step: number): number => {
        const face = faceBefore(plan, step, blank);
        if (face === undefined) return 0;
        const gone = lost.flatMap((region) => goneIn(face, region));
        return areaOf(lost.map((region) => intersect(region, face.body.region))) - areaOf(gone);
    };
    const taken = plan.steps
        .filter(({ laser, step, blank: on }) => laser !== undefined && on === blank && step.index < pocket)
        .map(({ step }) => ({ step, size: left(step.index) - left(step.index + 1) }));
    const most = taken.reduce((a, b) => (b.size > a.size ? b : a), { step: undefined as Step | undefined, size: 0 });
    return most.step;
}

function areaOf(regions: readonly Region[]): number {
    return regions.reduce((sum, region) => sum + area(region), 0);
}
