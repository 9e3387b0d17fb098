import { holes, islands } from '../geometry/islands';
import { area, isEmpty, perimeter } from '../geometry/measure';
import { grow } from '../geometry/offset';
import { emptyRegion, type Region, tangledRegion } from '../geometry/region';
import { reversed } from '../geometry/reverse';
import { contentKey } from './content-key';
import { type CutSides, cutSides } from './freed-parts';
import type { CutLine, LaserPlan } from './laser-plan';
import { machineWork } from './machine-work';
import type { Memo } from './memo';
import type { StepPlan } from './plan';
import type { Bench } from './plan-step';
import { stepTimes } from './step-times';
import { burningsOf } from './toolpaths';

/**
 * Moves the line of every cut out into the waste by half of the kerf, and says how long each takes. Comes after all steps are
 * planned: which side is waste follows from what is burnt beside and inside of a cut, by later steps too.
 */
export function layCutLines(steps: StepPlan[], { recipe, blanks, memo }: Bench): void {
    const lines = steps.map(({ laser, blank }) =>
        laser?.step.kind === 'cut'
            ? cutLineOf(laser, cutSides(laser, blanks.get(blank ?? '')?.size, steps, memo), memo)
            : undefined,
    );
    for (const [index, plan] of steps.entries()) {
        if (plan.laser?.step.kind !== 'cut') continue;
        const line = lines[index];
        const laser = { ...plan.laser, ...(line === undefined ? {} : { cutLine: line }) };
        const work = machineWork(burningsOf(laser, recipe.laser), blanks.get(laser.blank)?.size, memo);
        steps[index] = { ...plan, laser: { ...laser, ...work }, times: stepTimes(plan.step, work.machine) };
    }
}

function cutLineOf({ step, region, kerf }: LaserPlan, sides: CutSides, memo: Memo): CutLine | undefined {
    if (step.kind !== 'cut' || step.kerfOff !== undefined || kerf === undefined || isEmpty(region)) return undefined;
    const shift = kerf.face.value / 2;
    const names = [sides.parts, sides.openings].map((some) => some.map((one) => memo.keyOf(one)));
    return memo.get('cut-line', contentKey(memo.keyOf(region), names, shift), () => besideEdges(sides, shift));
}

/**
 * The way of a beam beside the edges of what is kept: round the outside of parts and on the inside of openings (own derivation:
 * the edge of a kerf of even width is the line moved by half of it). What is narrower than the kerf is followed along its
 * middle. Undefined where shapes cross too often.
 */
export function besideEdges({ parts, openings }: CutSides, shift: number): CutLine | undefined {
    const lines: Region[] = [];
    const centred = (shape: Region): Region => {
        lines.push(shape);
        return alongMiddle(shape);
    };
    const around = parts.map((part): Region => {
        if (isNarrow(part, shift)) return centred(part);
        const grown = grow(part, shift);
        if (grown === tangledRegion) return grown;
        const lost = holes(part).filter((hole) => isNarrow(hole, shift));
        return { rings: [...grown.rings, ...lost.flatMap((hole) => turned(centred(hole)).rings)] };
    });
    const inside = openings.map((opening) => (isNarrow(opening, shift) ? centred(opening) : grow(opening, -shift)));
    if ([...around, ...inside].includes(tangledRegion)) return undefined;
    const kept = asOne(around);
    const out = asOne(inside);
    return {
        encloses: asOne([kept, out]),
        followed: asOne([kept, turned(out)]),
        parts: asOne(parts),
        openings: asOne(openings),
        shift,
        lines: asOne(lines),
    };
}

/** Nothing is left of it when each edge gives way by so much: the largest disc in it is smaller, which is never less than area over edge. */
function isNarrow(shape: Region, shift: number): boolean {
    if (area(shape) / perimeter(shape) > shift) return false;
    const shrunk = grow(shape, -shift);
    return shrunk !== tangledRegion && isEmpty(shrunk);
}

/** How near to its middle a narrow line is followed, so that the ring of it stays one. */
const NEAR_MIDDLE = 0.9;

/** Half of the mean width of something long and narrow is its area over its edge. */
function alongMiddle(shape: Region): Region {
    const [, ...more] = islands(shape);
    const narrow = more.length > 0 ? shape : grow(shape, (-NEAR_MIDDLE * area(shape)) / perimeter(shape));
    return isEmpty(narrow) ? shape : narrow;
}

function turned({ rings }: Region): Region {
    return { rings: rings.map(reversed) };
}

function asOne(regions: readonly Region[]): Region {
    const rings = regions.flatMap((region) => region.rings);
    return rings.length === 0 ? emptyRegion : { rings };
}
