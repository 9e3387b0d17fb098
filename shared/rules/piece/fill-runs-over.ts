import { approach } from '../../geometry/distance';
import { area } from '../../geometry/measure';
import { isOpenPocket } from '../../piece/column';
import type { Cell, Face } from '../../piece/face';
import { boxesMeet } from '../../piece/partition';
import type { Plan, StepPlan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { roundLength } from '../helpers/ask-depth';
import { blankOf } from '../helpers/blank-names';
import { faceBefore, nameOf, negligible, openCellsOf } from '../helpers/face-at';
import { leastWall, noWall } from '../helpers/least-wall';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** Lower than this below the face nothing runs into it, mm. */
const brim = 0.05;

const page: Page = {
    id: 'fill-runs-over',
    title: 'Fill runs into what touches it',
    severities: ['warning'],
    condition: `A pocket is filled, or an inlay glued into it, while another that is open touches it, with less than ${noWall} mm of wall between them, and gets another fill or none.`,
    why: 'Resin runs into all that is open beside it, and wet colours blend. Glue is pressed out into it, and the resin poured on it does not hold.',
    mend: 'Leave a wall between them, or fill, cure and sand the one before the other is burnt.',
    source: 'Plain fact; the width of the wall is common practice, no source.',
};

export const fillRunsOver: Rule = {
    page,
    *examine(plan) {
        const said = new Set<string>();
        for (const stepPlan of plan.steps) {
            const { step, blank, fill, inlay } = stepPlan;
            const pocket = (fill ?? inlay)?.pocket;
            const face = pocket === undefined ? undefined : faceBefore(plan, step.index, blank);
            const runs = runsOut(step);
            if (runs === undefined || pocket === undefined || face === undefined) continue;
            const own = openCellsOf(face, pocket.index);
            for (const other of face.cells) {
                const { column } = other;
                const last = openBurn(other, face, pocket.index);
                const touched = last === undefined ? undefined : plan.steps[last]?.step;
                if (last === undefined || touched === undefined) continue;
                if (said.has(pairOf(pocket.index, last)) || isMeantToTouch(plan, last, stepPlan)) continue;
                const place = own
                    .filter((cell) => boxesMeet(cell.box, other.box, noWall))
                    .map((cell) => approach(cell.region, other.region, noWall))
                    .find((found) => found !== undefined);
                if (place === undefined || blank === undefined) continue;
                said.add(pairOf(pocket.index, last));
                const later = fillOf(plan, last, step.index);
                const into =
                    later?.resin === undefined ? phrase`which stays open` : phrase`which is meant for ${later.resin.name}`;
                const wall = roundLength(
                    leastWall(
                        Math.max(fill?.depth.value ?? inlay?.pocketLaser.depth?.value ?? 0, column.top.value),
                        blankOf(plan, stepPlan)?.blank.sheet,
                        'pocket',
                    ),
                    'mm',
                    'up',
                );
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${runs.what} ${pocket.name} into ${nameOf(touched)}, ${into}: no wall is between them. Leave ${showLength(wall)} of wood, or ${runs.first} ${pocket.name} before ${nameOf(touched)} is burnt.`,
                    where: step.where,
                    step: step.index,
                    spots: [{ blank, x: place.x, y: place.y, size: 2 }],
                    related: [{ message: phrase`${nameOf(touched)} is burnt here.`, where: touched.where }],
                });
            }
        }
    },
};

/** The step that dug an open pocket beside one, deep enough that something runs into it. */
function openBurn({ column, region }: Cell, { level }: Face, pocket: number): number | undefined {
    const last = column.digs.findLast(({ depth }) => depth.value > 0)?.step;
    if (!isOpenPocket(column) || column.digs.some(({ step }) => step === pocket)) return undefined;
    return column.top.value - level.value < brim || area(region) <= negligible ? undefined : last;
}

/** Nothing is spoilt: it was full before, or the same comes into both. */
function isMeantToTouch(plan: Plan, pocket: number, { step, inlay }: StepPlan): boolean {
    return (
        holdsSomething(plan, pocket, step.index) ||
        isFilledAlike(plan, pocket, step) ||
        (inlay !== undefined && isInlaidToo(plan, pocket))
    );
}

/** What comes out of a pocket when it is filled or laid full, and what has to be done with it first; undefined for other steps. */
function runsOut(step: Step): { readonly what: string; readonly first: string } | undefined {
    if (step.kind === 'fill') return { what: `${step.resin?.name ?? 'The fill'} runs from`, first: 'fill, cure and sand' };
    if (step.kind === 'inlay') return { what: `${step.glue?.name ?? 'Glue'} is pressed out of`, first: 'lay, press and sand' };
    return undefined;
}

/** Glue that is pressed out into the pocket of another inlay is glue where glue belongs. */
function isInlaidToo(plan: Plan, pocket: number): boolean {
    return plan.steps.some(({ inlay }) => inlay?.pocket.index === pocket);
}

function pairOf(a: number, b: number): string {
    return a < b ? `${a} ${b}` : `${b} ${a}`;
}

/** What a veneer leaves open around itself is its clearance, and glue has filled it. */
function holdsSomething(plan: Plan, pocket: number, before: number): boolean {
    return plan.steps.some(
        ({ step, fill, inlay }) => step.index < before && (inlay?.pocket.index === pocket || fill?.pocket.index === pocket),
    );
}

function fillOf(plan: Plan, pocket: number, after: number): Extract<Step, { kind: 'fill' }> | undefined {
    const found = plan.steps.find(({ step, fill }) => step.index > after && fill?.pocket.index === pocket)?.step;
    return found?.kind === 'fill' ? found : undefined;
}

/** The same resin goes into both, one after the other. */
function isFilledAlike(plan: Plan, pocket: number, fill: Step): boolean {
    const later = fillOf(plan, pocket, fill.index);
    return fill.kind === 'fill' && later !== undefined && later.resin?.name === fill.resin?.name;
}
