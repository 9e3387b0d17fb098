import type { Region } from '../geometry/region';
import { firstLie, isSameLie, type Lie, regionAs, turnedLie } from '../piece/lie';
import type { Step } from '../recipe/step';
import { keptFor } from './kept';
import type { LaserPlan } from './laser-plan';
import type { Memo } from './memo';
import type { Plan } from './plan';

/** How a blank lies when a step is done: turned over by all the flips before it. */
export function lieBefore(steps: readonly Step[], index: number, blank: string): Lie {
    let lie = firstLie;
    for (const step of steps) {
        if (step.index >= index) break;
        if (step.kind === 'flip' && step.blank.value === blank) lie = turnedLie(lie, step.axis);
    }
    return lie;
}

export function lieOf({ lie }: Pick<LaserPlan, 'lie'>): Lie {
    return lie ?? firstLie;
}

/** A region of one laser step in the coordinates of the face that is up while another is burnt on the same blank. */
export function seenFrom(
    other: LaserPlan,
    { lie }: Pick<LaserPlan, 'lie'>,
    size: { readonly width: number; readonly height: number } | undefined,
    memo: Memo,
): Region {
    const [from, to] = [lieOf(other), lie ?? firstLie];
    if (size === undefined || isSameLie(from, to)) return other.region;
    const key = `${memo.keyOf(other.region)} ${from.across !== to.across} ${from.down !== to.down} ${size.width} ${size.height}`;
    return memo.get('turned-over', key, () => regionAs(other.region, from, to, size));
}

/** A laser step as it is seen from the face that is up while another step is done: the same where they lie alike. */
export function seenAs(laser: LaserPlan, { lie }: Pick<LaserPlan, 'lie'>, plan: Pick<Plan, 'blanks'>): LaserPlan {
    const [from, to] = [lieOf(laser), lie ?? firstLie];
    const size = plan.blanks.find(({ name }) => name === laser.blank)?.size;
    if (size === undefined || isSameLie(from, to)) return laser;
    return keptFor(laser.region, `seen ${from.across !== to.across} ${from.down !== to.down}`, () => {
        const over = (region: Region): Region => regionAs(region, from, to, size);
        const { cutLine } = laser;
        const line = cutLine && { ...cutLine, parts: over(cutLine.parts), openings: over(cutLine.openings) };
        return { ...laser, lie: to, region: over(laser.region), ...(line === undefined ? {} : { cutLine: line }) };
    });
}

/** Whether two steps of one blank are burnt while it lies the same way. */
export function lieAlike(one: Pick<LaserPlan, 'lie'>, other: Pick<LaserPlan, 'lie'>): boolean {
    return isSameLie(lieOf(one), lieOf(other));
}
