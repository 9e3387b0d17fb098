import type { Memo } from '../plan/memo';
import { originOn } from '../plan/origin';
import type { Plan } from '../plan/plan';
import { burningsOf, motionOf, toolpaths } from '../plan/toolpaths';
import { traceOfJob } from '../toolpath/trace';

export type WayKind = 'scan' | 'outline' | 'cut';

/** The head's way through one laser step, in order, for drawing and replaying. Lengths mm, times s. */
export interface ToolpathView {
    readonly step: number;
    readonly blank: string;
    readonly total: number;
    readonly works: readonly WayView[];
}

/** One pass of it; further passes repeat it after the way back. */
export interface WayView {
    readonly name: string;
    readonly kind: WayKind;
    readonly passes: number;
    readonly start: number;
    readonly pass: number;
    readonly back: number;
    /** x, y and seconds since the pass began of every place, one after another. */
    readonly points: readonly number[];
    /** A letter a place: 1 if the head burnt on its way there, 0 if it travelled. */
    readonly lit: string;
}

/** Undefined where the step is none of the laser's, or could not be planned. */
export function toolpathView(plan: Plan, index: number, memo: Memo): ToolpathView | undefined {
    const laser = plan.steps[index]?.laser;
    if (laser === undefined) return undefined;
    const machine = plan.recipe.laser;
    const blank = plan.blanks.find(({ name }) => name === laser.blank);
    const work = burningsOf(laser, machine).flatMap((burning) => toolpaths(burning, memo));
    const traces = traceOfJob({ work, motion: motionOf(machine), origin: originOn(blank?.size, machine) });
    const last = traces.at(-1);
    return {
        step: index,
        blank: laser.blank,
        total: last === undefined ? 0 : last.start + last.pass * last.work.passes + last.back * (last.work.passes - 1),
        works: traces.map(({ work: { name, kind, passes }, start, pass, back, points, lit }) => ({
            name,
            kind: kind === 'area' ? 'scan' : laser.step.kind === 'cut' ? 'cut' : 'outline',
            passes,
            start,
            pass,
            back,
            points: points.map((value) => Math.round(value * 1000) / 1000),
            lit: lit.join(''),
        })),
    };
}
