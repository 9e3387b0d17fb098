import type { Plan, StepPlan } from '../plan/plan';
import type { Placement, Point } from '../recipe/step';

/** Something that a step lays on its blank and that lies elsewhere now. Lengths in mm, y points down. */
export interface Shift {
    /** The art's name, or the kind of shape. */
    readonly what: string;
    readonly blank: string;
    readonly right: number;
    readonly down: number;
}

/** Less than this is rounding, mm. */
const least = 0.005;

/** What a step of both versions lays elsewhere, though it is the same: matched by what it is and by order, as far as both have one place. */
export function shiftsOf(before: StepPlan, after: StepPlan, plans: { readonly before: Plan; readonly after: Plan }): Shift[] {
    const old = placementsOf(before);
    const shifts: Shift[] = [];
    for (const now of placementsOf(after)) {
        const what = nameOf(now);
        const at = old.findIndex((each) => nameOf(each) === what);
        if (at < 0) continue;
        const [was] = old.splice(at, 1);
        // What lies in the middle of its blank stays there when the blank grows.
        if (was!.at === undefined && now.at === undefined) continue;
        const [from, to] = [middleOf(was!, before, plans.before), middleOf(now, after, plans.after)];
        if (from === undefined || to === undefined) continue;
        const shift = { what, blank: after.blank ?? '', right: to.x - from.x, down: to.y - from.y };
        if (Math.hypot(shift.right, shift.down) >= least) shifts.push(shift);
    }
    return shifts;
}

function placementsOf({ step }: StepPlan): Placement[] {
    return step.kind === 'engrave' || step.kind === 'cut' ? [...step.placements] : [];
}

function nameOf(placement: Placement): string {
    if (placement.kind === 'shape') return placement.outline.kind;
    const picks = placement.picks.map(({ value }) => value).join(', ');
    return `${placement.art.value}${picks === '' ? '' : ` ${picks}`}`;
}

function middleOf({ at, places, repeat }: Placement, { blank }: StepPlan, plan: Plan): { x: number; y: number } | undefined {
    if (places !== undefined || repeat !== undefined) return undefined;
    if (at !== undefined) return inMillimetres(at);
    const size = plan.blanks.find(({ name }) => name === blank)?.size;
    return size === undefined ? undefined : { x: size.width / 2, y: size.height / 2 };
}

function inMillimetres({ x, y }: Point): { x: number; y: number } {
    return { x: x.value, y: y.value };
}

/** "5 mm to the right and 2 mm up" in parts that a caller joins: each a length in mm and its direction. */
export function directions({ right, down }: Shift): { readonly by: number; readonly where: string }[] {
    return [
        ...(Math.abs(right) < least ? [] : [{ by: Math.abs(right), where: right > 0 ? 'to the right' : 'to the left' }]),
        ...(Math.abs(down) < least ? [] : [{ by: Math.abs(down), where: down > 0 ? 'down' : 'up' }]),
    ];
}
