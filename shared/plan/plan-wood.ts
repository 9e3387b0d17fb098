import { blend, contrast } from '../bench/contrast';
import { keptMoisture } from '../bench/moisture';
import { resinOver } from '../bench/resin-look';
import { type DifferentialMovement, differentialMovement, type GrainedHalf, worstMovement } from '../bench/wood-movement';
import { bounds } from '../geometry/measure';
import type { BlankPlan, Contrast, StepPlan } from './plan';

/** Adds what the woods say to the steps that make something to be seen. */
export function withWood(steps: readonly StepPlan[], blanks: readonly BlankPlan[]): StepPlan[] {
    const byName = new Map(blanks.map((blank) => [blank.name, blank]));
    return steps.map((step) => {
        const movement = movementOf(step, byName, differentialMovement);
        const movementAtMost = movementOf(step, byName, worstMovement);
        const seen = contrastOf(step, byName);
        if (movement === undefined && seen === undefined) return step;
        const wood = {
            ...(movement === undefined ? {} : { movement }),
            ...(movementAtMost === undefined ? {} : { movementAtMost }),
            ...(seen === undefined ? {} : { contrast: seen }),
        };
        return { ...step, wood };
    });
}

function movementOf(
    { inlay }: StepPlan,
    blanks: ReadonlyMap<string, BlankPlan>,
    movementOfHalves: typeof differentialMovement,
): DifferentialMovement | undefined {
    const board = blanks.get(inlay?.pocketLaser.blank ?? '');
    const veneer = blanks.get(inlay?.reliefLaser.blank ?? '');
    const box = inlay === undefined ? undefined : bounds(inlay.turned);
    if (board?.grain === undefined || veneer?.grain === undefined || box === undefined) return undefined;
    const { low, high } = keptMoisture[board.blank.kept?.value ?? 'indoors'];
    return movementOfHalves(
        halfOf(board, board.grain),
        halfOf(veneer, veneer.grain),
        { width: box.maxX - box.minX, height: box.maxY - box.minY },
        high - low,
    );
}

function halfOf({ blank: { sheet } }: BlankPlan, grain: number): GrainedHalf {
    return { wood: sheet?.wood, grain, ...(sheet?.sawn === undefined ? {} : { sawn: sheet.sawn.value }) };
}

function contrastOf(plan: StepPlan, blanks: ReadonlyMap<string, BlankPlan>): Contrast | undefined {
    const { step, inlay, laser, fill } = plan;
    const wood = blanks.get(plan.blank ?? '')?.blank.sheet?.wood;
    if (wood === undefined) return undefined;
    const against = (figure: string, colour: string): Contrast | undefined => {
        const difference = contrast(colour, wood.colour);
        return difference === undefined ? undefined : { figure, ground: wood.name, difference };
    };
    if (step.kind === 'fill' && step.resin !== undefined) {
        return against(step.resin.name, resinOver(step.resin, wood.burnt, fill?.layer.depth ?? 1));
    }
    if (inlay !== undefined) {
        const other = blanks.get(inlay.reliefLaser.blank)?.blank.sheet?.wood;
        return other && against(other.name, other.colour);
    }
    if (step.kind === 'engrave' && laser?.tone !== undefined) {
        return against(step.name, blend(wood.colour, wood.burnt, laser.tone));
    }
    return undefined;
}
