import { outputOf } from '../burn/output';
import type { Memo } from '../plan/memo';
import { originOn } from '../plan/origin';
import type { Plan } from '../plan/plan';
import { burningsOf, motionOf, toolpaths } from '../plan/toolpaths';
import type { Work } from '../toolpath/job';
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
    /** Energy that all passes give where the head has its set speed, J/mm2: over the pitch of an area, over the beam's width of a line. */
    readonly dose: number;
    /** A digit a place: tenths of the set speed with which the head came there burning, 9 for all of it. */
    readonly pace: string;
    /** A digit a place: fifths of that dose that the way there got, 5 for just as much; 9 for that and more. */
    readonly shade: string;
}

/** Undefined where the step is none of the laser's, or could not be planned. */
export function toolpathView(plan: Plan, index: number, memo: Memo): ToolpathView | undefined {
    const laser = plan.steps[index]?.laser;
    if (laser === undefined) return undefined;
    const machine = plan.recipe.laser;
    const blank = plan.blanks.find(({ name }) => name === laser.blank);
    const work = burningsOf(laser, machine).flatMap((burning) => toolpaths(burning, memo));
    const traces = traceOfJob({ work, motion: motionOf(machine), origin: originOn(blank?.size, machine) });
    const isEven = outputOf(machine).followsSpeed;
    const breadth = machine?.spot?.value ?? laser.settings?.pitch ?? usualSpot;
    const last = traces.at(-1);
    return {
        step: index,
        blank: laser.blank,
        total: last === undefined ? 0 : last.start + last.pass * last.work.passes + last.back * (last.work.passes - 1),
        works: traces.map(({ work, start, pass, back, points, lit, pace, share }) => ({
            name: work.name,
            kind: work.kind === 'area' ? 'scan' : laser.step.kind === 'cut' ? 'cut' : 'outline',
            passes: work.passes,
            start,
            pass,
            back,
            points: points.map((value) => Math.round(value * 1000) / 1000),
            lit: lit.join(''),
            dose: doseOf(work, breadth),
            pace: pace.map((part) => Math.min(9, Math.floor(part * 10 + 1e-6))).join(''),
            // A machine whose power follows the speed gives the same dose everywhere.
            shade: share.map((part, i) => Math.min(9, Math.round(5 * (isEven ? 1 : part / Math.max(pace[i]!, 1e-3))))).join(''),
        })),
    };
}

/** Of a laser that does not say its spot, mm. @commonPractice Only for the shades of the picture. */
const usualSpot = 0.1;

/** J/mm2 of all passes at the set speed. */
function doseOf(work: Work, breadth: number): number {
    const { power, speed, passes } = work;
    return (power * passes) / (speed * (work.kind === 'area' ? work.hatch.pitch / work.hatch.every : breadth));
}
