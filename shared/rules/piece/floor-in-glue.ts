import { area } from '../../geometry/measure';
import { type Column, type Layer, thicknessAt } from '../../piece/column';
import type { Cell, Face, Met } from '../../piece/face';
import { clearOfGlue, mayEndInGlue, type NearGlue } from '../../piece/glue-line';
import type { Plan } from '../../plan/plan';
import type { Interval } from '../../quantity/interval';
import { showArea, showLength } from '../../quantity/show';
import type { Finding } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import { atItsWord, type Figures } from '../figures';
import { askDepth, depthUnit, isSaidAs, roundLength } from '../helpers/ask-depth';
import { contentOf, faceAfter, isProudVeneer, nameOf, negligible } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** A skin of veneer thinner than this comes off with what is glued or poured on it, mm. @commonPractice */
const leastSkin = 0.1;
const page: Page = {
    id: 'floor-in-glue',
    title: 'Pocket ends in a glue line',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: `A pocket is dug into a laid veneer, and its floor lies in the glue below it, or leaves less than ${leastSkin} mm of the veneer. Or an engraving that stays open ends so little below the glue that it may well end in it.`,
    why: 'Burnt glue holds nothing, and a skin of veneer lifts with what is laid on it. The beam takes each wood by its own law, so the depth asked for is not the depth reached.',
    mend: 'Go through veneer and glue into the wood below, or stay well above the glue.',
    source: `${commonPractice} What is left follows from the layers and their depth curves.`,
};

export const floorInGlue: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, blank, laser } of plan.steps) {
            if (step.kind !== 'engrave' || laser?.depth === undefined || laser.through || laser.tone !== undefined) continue;
            const face = faceAfter(plan, step.index, blank);
            if (face === undefined || blank === undefined) continue;
            // Where the veneer still stands proud, burn-before-flush says why the floor is too high.
            if (face.met.some(({ column }) => isProudVeneer(face, column))) continue;
            const ends = face.cells.flatMap((cell) => endOf(cell, step) ?? []);
            const size = ends.reduce((sum, { cell }) => sum + area(cell.region), 0);
            const [first] = ends;
            if (first === undefined || size <= negligible) {
                if (contentOf(plan, step.index) === undefined) yield* perhaps(plan, step, laser.depth, face, blank, figures);
                continue;
            }
            const deep = throughTo(face.met, step, laser.depth, first.cell);
            const { text, fixes, instead } = askDepth(page.id, step, deep, plan, figures);
            const least = isSaidAs(deep, step, text) ? phrase`at least ` : '';
            const mend =
                text === undefined
                    ? phrase`: dig less deep, or go through it`
                    : phrase`: engrave it ${least}${text} deep, through veneer and glue`;
            const left =
                first.skin > 0
                    ? phrase`leaves only ${showLength(first.skin)} of ${first.name} above its glue`
                    : phrase`ends in the glue below ${first.name}`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`Over ${showArea(size)} ${step.name} ${left}${mend}.${instead}`,
                where: step.depth?.where ?? step.where,
                step: step.index,
                spots: spotsOf(
                    blank,
                    ends.map(({ cell }) => cell.region),
                ),
                related: gluedHere(plan, first.laid),
                fixes,
            });
        }
    },
};

/** What stays open and may well end in the glue, which then is seen. In a pocket it is advice, since there something covers it. */
function* perhaps(plan: Plan, step: Engrave, depth: Interval, face: Face, blank: string, figures: Figures): Iterable<Finding> {
    const near = mayEndInGlue(face, step.index, depth);
    const size = near.reduce((sum, { met }) => sum + met.area, 0);
    const [first] = near;
    if (first === undefined || size <= negligible) return;
    const { text, fixes, instead } = askDepth(page.id, step, clearDepth(first, step, depth), plan, figures);
    const mend = text === undefined ? phrase`dig less deep, or go farther through it` : phrase`engrave it ${text} deep`;
    yield finding(page, {
        severity: 'warning',
        message: phrase`Over ${showArea(size)} ${step.name} ends ${showLength(first.beyond)} below the glue of ${first.veneer.name}, give or take ${showLength(first.unsure)}: it may well end in the glue, which then is seen. To be clear of it, ${mend}.${instead}`,
        where: step.depth?.where ?? step.where,
        step: step.index,
        spots: spotsOf(
            blank,
            near.map(({ met }) => met.region),
        ),
        related: gluedHere(plan, first.glue.step!),
        fixes,
    });
}

/** The inlay that brought the glue along; nothing where it is no inlay. */
function gluedHere(plan: Plan, index: number): Finding['related'] {
    const laid = plan.steps[index];
    if (laid?.inlay === undefined) return [];
    return [{ message: phrase`${nameOf(laid.inlay.relief)} is glued in here.`, where: laid.step.where }];
}

/** The depth at which a floor lies clear of the glue, mm. */
function clearDepth({ beyond, met, glue }: NearGlue, step: Engrave, depth: Interval): number {
    // What the burn takes off here, as a part of what it takes off the board.
    const through = glue.down.value - met.column.top.value;
    return roundLength((depth.value * (through + clearOfGlue)) / (through + beyond), depthUnit(step), 'up');
}

interface End {
    readonly cell: Cell;
    /** Veneer left above the glue, mm; none where the floor lies in the glue itself. */
    readonly skin: number;
    /** The veneer's stock, and the step that laid it. */
    readonly name: string;
    readonly laid: number;
}

/** Where a burn stops just above a glue line or in it; undefined where it does not. */
function endOf(cell: Cell, { index }: Engrave): End | undefined {
    const { column } = cell;
    if (column.digs[column.digs.length - 1]?.step !== index) return undefined;
    const [first, second] = column.layers;
    if (first?.kind === 'glue' && first.step !== undefined) {
        return { cell, skin: 0, name: 'the veneer', laid: first.step };
    }
    if (first?.kind !== 'wood' || first.step === undefined || second?.kind !== 'glue') return undefined;
    const skin = thicknessAt(column, 0).value;
    return skin < leastSkin ? { cell, skin, name: first.name, laid: first.step } : undefined;
}

/** The depth to ask for so that the pocket goes through the veneer and its glue into the wood below, mm. */
function throughTo(met: readonly Met[], step: Engrave, depth: Interval, { column }: Cell): number | undefined {
    const glue = glueOf(column);
    const before = met.find((one) => glueOf(one.column)?.step === glue?.step)?.column;
    const dug = column.digs[column.digs.length - 1]!.depth.value;
    if (before === undefined || glue === undefined || !(dug > 0)) return undefined;
    // What the burn takes off the veneer, as a part of what it takes off the board: its glue burns as the veneer does.
    const share = dug / depth.value;
    return roundLength((glue.down.value - before.top.value) / share + clearOfGlue, depthUnit(step), 'up');
}

function glueOf({ layers }: Column): Layer | undefined {
    return layers.find(({ kind }) => kind === 'glue');
}
