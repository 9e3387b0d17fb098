import { leastMovement, mostStrain } from '../bench/wood-movement';
import { type Face, isMasked } from '../piece/face';
import { mayEndInGlue } from '../piece/glue-line';
import { showLength, showTime } from '../quantity/show';
import { coatOf } from '../recipe/laid-by';
import type { Recipe } from '../recipe/recipe';
import type { LaserPlan } from './laser-plan';
import type { StepPlan } from './plan';
import { timeBetween } from './time-between';

/** What a finisher would say over one's shoulder: no fault of the recipe, so that it stands on the sheets and is no finding. */
export function withAdvice(steps: readonly StepPlan[], recipe: Recipe, faces: readonly (readonly Face[])[]): StepPlan[] {
    return steps.map((step, index) => {
        const advice = [
            ...soot(step, steps),
            ...wetJoint(step, steps),
            ...hardOverTape(step, steps),
            ...tapeSanded(step, faces[index] ?? []),
            ...nearGlueLine(step, steps, faces[index + 1] ?? []),
            ...toneUnderCoat(step, steps),
            ...oilOnSealer(step, steps),
            ...colourRuns(step, steps, recipe),
            ...banded(step, recipe),
            ...wicked(step),
            ...unlikeCuts(step),
            ...endGrain(step, recipe),
        ];
        return advice.length === 0 ? step : { ...step, advice };
    });
}

const cleaning = /\b(?:soot|char|brush|clean|vacuum|blow|wip)/i;

/** Resin, sealer or glue on what was just burnt. @commonPractice */
function soot({ step, face, fill, inlay }: StepPlan, steps: readonly StepPlan[]): string[] {
    const pocket = fill?.pocket ?? inlay?.pocket ?? (step.kind === 'seal' ? lastBurnt(steps, step.index, face) : undefined);
    if (pocket === undefined) return [];
    const isClean = steps
        .slice(pocket.index + 1, step.index)
        .some((other) => (other.step.kind === 'do' ? cleaning.test(other.step.text) : other.face === face && isOver(other)));
    if (isClean) return [];
    return [`brush the soot out of ${pocket.name} first: what goes on it holds no better than the soot does`];
}

/** The last pocket that was burnt into a blank before a step. */
function lastBurnt(steps: readonly StepPlan[], before: number, face: string | undefined): LaserPlan['step'] | undefined {
    const burnt = steps
        .slice(0, before)
        .findLast((other) => other.step.kind === 'engrave' && other.laser?.tone === undefined && other.face === face);
    return burnt?.laser?.step;
}

/** Whether the soot has gone, or something lies on it already. */
function isOver({ step: { kind } }: StepPlan): boolean {
    return kind === 'seal' || kind === 'fill' || kind === 'inlay' || kind === 'sand' || kind === 'finish';
}

/**
 * That a joint sinks where it was sanded while the water of its glue was still in the wood beside it was seen in a trade column on
 * raised and sunken joints; until when was not: the whole cure is our own judgement.
 */
function wetJoint({ step, face }: StepPlan, steps: readonly StepPlan[]): string[] {
    if (step.kind !== 'sand' || !step.flush) return [];
    const glued = steps.slice(0, step.index).findLast((other) => other.inlay !== undefined && other.face === face);
    const glue = glued?.step.kind === 'inlay' ? glued.step.glue : undefined;
    if (glued === undefined || glue?.setsBy !== 'water' || glue.cure === undefined) return [];
    if (timeBetween(steps, glued.step.index, step.index) >= glue.cure.value * asGood) return [];
    return [
        `${glue.name} still holds water: sanded flush now, its joints sink a little as they dry; after ${showTime(glue.cure.value)} they stay flat`,
    ];
}

/** A wait that falls short by less than this part is as good as kept. */
const asGood = 0.95;

/** Tape under a pour that has become hard. @commonPractice */
function hardOverTape({ step, face }: StepPlan, steps: readonly StepPlan[]): string[] {
    if (step.kind !== 'peel') return [];
    const masked = steps.slice(0, step.index).findLast((other) => other.step.kind === 'mask' && other.face === face);
    const poured = steps
        .slice(masked?.step.index ?? step.index, step.index)
        .findLast((other) => other.fill !== undefined && other.face === face);
    const cure = poured?.step.kind === 'fill' ? poured.step.resin?.cure : undefined;
    if (poured === undefined || cure === undefined) return [];
    if (timeBetween(steps, poured.step.index, step.index) < cure.value / 2) return [];
    return ['what ran over the tape is hard by now: cut along its edge before you pull, or peel while the resin still gives'];
}

/** Tape that lies on the face when the paper comes. @commonPractice */
function tapeSanded({ step, blank }: StepPlan, faces: readonly Face[]): string[] {
    const face = faces.find((one) => one.blank === blank);
    if (step.kind !== 'sand' || face === undefined || !isMasked(face)) return [];
    return [`the tape is still on ${face.blank}: peel it first, since it clogs the paper, and its glue is rubbed into the wood`];
}

/** A pocket that may well end in a glue line, which char and glue make a poor floor. @commonPractice */
function nearGlueLine({ step, blank, laser }: StepPlan, steps: readonly StepPlan[], faces: readonly Face[]): string[] {
    const face = faces.find((one) => one.blank === blank);
    const depth = laser?.through === true || laser?.tone !== undefined ? undefined : laser?.depth;
    if (step.kind !== 'engrave' || face === undefined || depth === undefined) return [];
    // What stays open is a finding.
    if (!steps.some(({ fill, inlay }) => fill?.pocket === step || inlay?.pocket === step)) return [];
    const [near] = mayEndInGlue(face, step.index, depth);
    if (near === undefined) return [];
    return [
        `its floor is to lie ${showLength(near.beyond)} below the glue under ${near.veneer.name}, give or take ${showLength(near.unsure)}: look before you go on, and where glue shows burn it once more`,
    ];
}

/** That wetting deepens wood, dark hardwoods most, was seen in the abstract of a paper on the colour of 24 species. */
function toneUnderCoat({ step, face }: StepPlan, steps: readonly StepPlan[]): string[] {
    if (step.kind !== 'finish' || step.coat === undefined || step.coat.kinds.includes('wax')) return [];
    const before = steps.slice(0, step.index).filter((other) => other.face === face);
    const toned = before.find(({ laser }) => laser?.tone !== undefined)?.laser;
    if (toned === undefined || before.some((other) => other.step.kind === 'finish')) return [];
    return [
        `bare wood gets darker under ${step.coat.name}, burnt wood hardly: judge the tone of ${toned.step.name} on an offcut with a coat on it`,
    ];
}

/**
 * That oil does not soak in through shellac and stays soft on it was seen in three forums of finishers; disputed: a restorer and two pages
 * on padauk oil on a thin, dewaxed coat.
 */
function oilOnSealer({ step, face }: StepPlan, steps: readonly StepPlan[]): string[] {
    if (step.kind !== 'finish' || step.coat === undefined || !step.coat.kinds.includes('drying-oil')) return [];
    const before = steps.slice(0, step.index).filter((other) => other.face === face);
    const last = before.findLast((other) => /^(?:seal|sand|finish)$/.test(other.step.kind))?.step;
    if (last?.kind !== 'seal' || last.sealer === undefined) return [];
    return [
        `${last.sealer.name} keeps ${step.coat.name} out of the wood: wipe all of it off again after a quarter of an hour, or it stays soft on the face`,
    ];
}

/** That spirit makes the colour of padauk run was seen in a page on it; two others begin with shellac all the same. */
function colourRuns({ step, blank }: StepPlan, steps: readonly StepPlan[], { blanks }: Recipe): string[] {
    const coat = coatOf(step);
    if (coat?.setsBy !== 'solvent') return [];
    const laid = steps.slice(0, step.index).filter((other) => other.inlay !== undefined && other.blank === blank);
    const names = [blank, ...laid.map(({ inlay }) => inlay?.reliefLaser.blank)];
    const woods = blanks.filter(({ name }) => names.includes(name)).flatMap(({ sheet }) => sheet?.wood ?? []);
    const runs = woods.find(({ dustStains }) => dustStains === true);
    if (runs === undefined || woods.every(({ dustStains }) => dustStains === true)) return [];
    return [
        `the spirit of ${coat.name} dissolves the colour of ${runs.name}: spray or pad the first coat on thin, and brush nothing across the joint`,
    ];
}

/** An eighth of an inch, mm: as deep as turners and a maker of glue wet powder from above (seen); deeper was not seen. */
const wetThrough = 3.2;

/** That thin glue wicks in and thick stays for the rest, and that too fine a powder keeps it out, was seen in a glue maker's guide and a course. */
function wicked({ step, fill }: StepPlan): string[] {
    if (step.kind !== 'fill' || step.resin?.powderBy !== 'volume' || fill === undefined) return [];
    const layers = fill.depth.value > wetThrough ? `; pack and wet it ${showLength(wetThrough)} at a time` : '';
    return [
        `let thin glue, hardly thicker than water, run in from one edge until the powder stays dark: thick glue stays on top${layers}`,
    ];
}

/** That end grain drinks the glue out of a joint, and is sized with thin glue first. @commonPractice */
function endGrain({ step, inlay }: StepPlan, { blanks }: Recipe): string[] {
    const name = inlay?.pocketLaser.blank;
    const isEnd = blanks.some((blank) => blank.name === name && blank.sheet?.sawn?.value === 'end');
    if (step.kind !== 'inlay' || !isEnd || step.glue === undefined) return [];
    return [`end grain drinks ${step.glue.name}: brush a thin coat in, let it draw in for some minutes, and glue then`];
}

/** Of two woods that lie alike in the grain, what differs in how the rings lie moves apart most (ΔD = D·C·ΔM, as the rule on it). */
function unlikeCuts({ wood }: StepPlan): string[] {
    const { movement, movementAtMost: most } = wood ?? {};
    if (movement === undefined || most === undefined || most.strain < mostStrain || most.movement < leastMovement) return [];
    if (most.movement < movement.movement * 1.2) return [];
    return [
        `how both are sawn is not written: with one of them on the quarter they move ${showLength(most.movement)} apart over a year in place of ${showLength(movement.movement)}; look at the end grain, and write \`sawn\``,
    ];
}

/** That greys fail on wood of uneven density, and that soft woods take black and white alone, was seen in two guides to burning pictures. */
function banded({ laser, blank }: StepPlan, { blanks }: Recipe): string[] {
    const wood = laser?.pictures === undefined ? undefined : blanks.find(({ name }) => name === blank)?.sheet?.wood;
    const rings = wood?.pores === 'softwood' ? 'a softwood' : wood?.pores === 'ring' ? 'ring-porous' : undefined;
    if (wood === undefined || rings === undefined) return [];
    return [
        `${wood.name} is ${rings}: early and late wood take the beam unlike, and greys come out in bands; try a strip of it first`,
    ];
}
