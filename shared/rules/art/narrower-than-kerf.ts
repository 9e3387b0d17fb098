import { approach } from '../../geometry/distance';
import { bounds } from '../../geometry/measure';
import { narrow, narrowGaps } from '../../geometry/narrow';
import type { NarrowPlace } from '../../geometry/narrow-place';
import type { Region } from '../../geometry/region';
import { keptFor, nameOf } from '../../plan/kept';
import type { CutLine, LaserPlan } from '../../plan/laser-plan';
import { seenAs } from '../../plan/lies';
import type { Plan, StepPlan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import type { Finding, MarkedSpot } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { blankOf } from '../helpers/blank-names';
import { isSideBySide } from '../helpers/side-by-side';
import { narrowSpots } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** Narrower than this part of the kerf a shape is a line that is meant to be one cut. @commonPractice */
const MOST_OF_LINE = 0.5;
/** Closer to the blank's edge than this nothing is left of the board there, and the cut lies on its edge on purpose, mm. */
const ON_EDGE = 1e-3;

const page: Page = {
    id: 'narrower-than-kerf',
    title: 'Waste narrower than the kerf',
    severities: ['warning'],
    condition:
        'A slot, a notch or the waste between two parts, or between a part and the edge of the blank, is narrower than the kerf of the cut. Corners and lines thinner than half the kerf are not meant.',
    why: 'The beam takes its whole width: the slot comes out as wide as the kerf, a notch stays uncut, and parts that lie nearer to each other lose some of their edge. At the edge of the blank the beam runs half beside the board, and no waste holds the part.',
    mend: 'Draw slots at least as wide as the kerf and move parts that far apart and off the edge. Measure the kerf with a cut test (`cut 95 % at 8 mm/s gives through kerf 0.24 mm`), or write `kerf 0.24 mm` in the cut.',
    source: 'Own reasoning: the area that a beam of even width parts. The width is that of the coupon’s cut tests; without any a guess from spot and dose.',
};

export const narrowerThanKerf: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { laser } = stepPlan;
            const line = laser?.cutLine;
            if (laser === undefined || line === undefined) continue;
            const kerf = 2 * line.shift;
            const width = phrase`the kerf (${showLength(kerf)}${laser.kerf?.basis === 'guess' ? phrase`, a guess` : ''})`;
            yield* slots(stepPlan, laser, line, width);
            const beside = nextPart(plan, laser, kerf) ?? edge(plan, stepPlan, line, kerf);
            if (beside !== undefined) yield said(stepPlan, laser, beside, width, kerf);
        }
    },
};

/** Waste within the shapes of one cut: in openings, and in and between parts. */
function* slots(stepPlan: StepPlan, laser: LaserPlan, { parts, openings, shift }: CutLine, width: string): Iterable<Finding> {
    const kerf = 2 * shift;
    const places = [...narrowIn(openings, kerf, narrow), ...narrowIn(parts, kerf, narrowGaps)].toSorted(
        (a, b) => a.width - b.width,
    );
    const [narrowest] = places;
    if (narrowest === undefined) return;
    const many = places.length > 1;
    yield finding(page, {
        severity: 'warning',
        message: phrase`In ${laser.step.name} the waste is narrower than ${width} in ${places.length} place${many ? 's' : ''}, ${showLength(narrowest.width)} at the narrowest (near ${showLength(narrowest.x)}, ${showLength(narrowest.y)}): slots come out wider, notches stay uncut, parts lose up to ${showLength(kerf - narrowest.width)}. Leave ${showLength(kerf)}.`,
        where: stepPlan.step.where,
        step: stepPlan.step.index,
        spots: narrowSpots(laser.blank, places),
    });
}

function narrowIn(region: Region, kerf: number, find: typeof narrow): NarrowPlace[] {
    if (region.rings.length === 0) return [];
    return keptFor(region, `narrower than kerf ${kerf}`, () =>
        find(region, kerf * (1 - 1e-6)).filter(
            ({ kind, width }) => kind !== 'tip' && !(kind === 'whole' && width < MOST_OF_LINE * kerf),
        ),
    );
}

interface Beside {
    readonly to: string;
    readonly distance: number;
    readonly spot: MarkedSpot;
    readonly related: Finding['related'];
    readonly loss: string;
}

/** A part of an earlier cut on the same blank that is nearer than the kerf. */
function nextPart(plan: Plan, laser: LaserPlan, kerf: number): Beside | undefined {
    for (const { step, laser: other } of plan.steps) {
        const line = other && seenAs(other, laser, plan).cutLine;
        if (other === undefined || line === undefined || other.blank !== laser.blank || step.index >= laser.step.index) continue;
        const own = laser.cutLine!.parts;
        const near = keptFor(own, `near ${nameOf(line.parts)} ${kerf}`, () => apart(own, line.parts, kerf));
        if (near === undefined) continue;
        return {
            to: `the part of ${other.step.name}`,
            distance: near.distance,
            spot: { blank: laser.blank, x: near.x, y: near.y, size: 2 },
            related: [{ message: phrase`${other.step.name} is cut here.`, where: step.where }],
            loss: `each loses up to ${showLength(kerf - near.distance)} there`,
        };
    }
    return undefined;
}

/** Those in each other have wood between them that is kept. */
function apart(one: Region, other: Region, within: number): ReturnType<typeof approach> {
    return isSideBySide(one, other) ? approach(one, other, within) : undefined;
}

function edge(plan: Plan, stepPlan: StepPlan, { parts }: CutLine, kerf: number): Beside | undefined {
    const blank = blankOf(plan, stepPlan);
    const box = bounds(parts);
    if (blank?.size === undefined || box === undefined) return undefined;
    const { width, height } = blank.size;
    const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    const [nearest] = [
        { distance: box.minX, x: 0, y: middle.y },
        { distance: width - box.maxX, x: width, y: middle.y },
        { distance: box.minY, x: middle.x, y: 0 },
        { distance: height - box.maxY, x: middle.x, y: height },
    ]
        .filter(({ distance }) => distance > ON_EDGE && distance < kerf)
        .toSorted((a, b) => a.distance - b.distance);
    if (nearest === undefined) return undefined;
    return {
        to: `the edge of ${blank.name}`,
        distance: nearest.distance,
        spot: { blank: blank.name, x: nearest.x, y: nearest.y, size: 2 },
        related: [],
        loss: 'the beam runs half beside the board, and no waste holds the part there',
    };
}

function said(
    { step }: StepPlan,
    laser: LaserPlan,
    { to, distance, spot, related, loss }: Beside,
    width: string,
    kerf: number,
): Finding {
    return finding(page, {
        severity: 'warning',
        message: phrase`${laser.step.name} leaves ${showLength(distance)} to ${to}, less than ${width}: ${loss}. Leave ${showLength(kerf)}.`,
        where: step.where,
        step: step.index,
        spots: [spot],
        related,
    });
}
