import { type Column, isOpenPocket } from '../../piece/column';
import { type Cell, type Face, isMasked, type Met } from '../../piece/face';
import type { Plan, StepPlan } from '../../plan/plan';
import { showArea, showLength } from '../../quantity/show';
import type { Step } from '../../recipe/step';

/** The face of a blank just before a step; undefined where there is no such blank, or its shapes cross too often. */
export function faceBefore(plan: Plan, step: number, blank: string | undefined): Face | undefined {
    const face = plan.faces[step]?.find((one) => one.blank === blank);
    return face?.unknownSince === undefined ? face : undefined;
}

/** The same just after it, with what its beam came upon. */
export function faceAfter(plan: Plan, step: number, blank: string | undefined): Face | undefined {
    return faceBefore(plan, step + 1, blank);
}

/** Whether tape lies on a blank's face just before a step. */
export function isMaskedAt(plan: Plan, step: number, blank: string | undefined): boolean {
    const face = faceBefore(plan, step, blank);
    return face !== undefined && isMasked(face);
}

/** A blank as it is when all the work is done. */
export function faceAtEnd(plan: Plan, blank: string | undefined): Face | undefined {
    return faceBefore(plan, plan.steps.length, blank);
}

/** Overlap that is the edge of a neighbour and no work of its own, mm2. */
export const negligible = 1;

/** The step that fills or inlays what a step burns, after a step; undefined where none does. */
export function contentOf(plan: Plan, pocket: number, after = pocket): StepPlan | undefined {
    return plan.steps.find(
        ({ step, fill, inlay }) => step.index > after && (fill?.pocket.index === pocket || inlay?.pocket.index === pocket),
    );
}

/** Cells that a step has dug and that are open still. */
export function openCellsOf(face: Face, pocket: number): Cell[] {
    return face.cells.filter(({ column }) => isOpenPocket(column) && column.digs.some(({ step }) => step === pocket));
}

/** What stands less proud than this makes no difference to a depth, mm. @commonPractice */
export const levelEnough = 0.05;

/** Whether a laid veneer that has not been sanded flush lies on top here. Under its backing nothing is burnt, as laser-on-foil says. */
export function isProudVeneer({ level }: Face, { layers, top }: Column): boolean {
    const [first] = layers;
    return first?.kind === 'wood' && first.step !== undefined && level.value - top.value > levelEnough;
}

/** How much the beam came upon: area, mm2, and of a cut the length that runs there, mm. */
export interface MetSize {
    readonly area: number;
    readonly length: number;
    /** More than the edge of a neighbour. */
    readonly matters: boolean;
    /** Of a cut its length, else the area. */
    readonly shown: string;
}

export function sizeOfMet(met: readonly Met[]): MetSize {
    let area = 0;
    let length = 0;
    for (const one of met) {
        area += one.area;
        length += one.length ?? 0;
    }
    return {
        area,
        length,
        matters: length > 0 || area > negligible,
        shown: length > 0 ? showLength(length) : showArea(area),
    };
}

/** What a maker calls a step of the laser, or of an inlay what is let in. */
export function nameOf(step: Step | undefined): string {
    if (step?.kind === 'inlay') return step.relief.value ?? 'the inlay';
    return step !== undefined && 'name' in step ? step.name : 'a step';
}
