import { contrast, hardlyShows } from '../../bench/contrast';
import type { Plan } from '../../plan/plan';
import type { Finding } from '../../recipe/finding';
import { laidBy } from '../../recipe/laid-by';
import { phrase } from '../../recipe/phrase';
import type { Finish, Sand, Seal, Step } from '../../recipe/step';
import type { Wood } from '../../recipe/stock';
import { woodOf } from '../helpers/blank-names';
import { statementBefore } from '../helpers/statement-before';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'dust-stains',
    title: 'Colour of one wood in another',
    severities: ['warning', 'info'],
    quickFix: 'sometimes',
    condition:
        'An inlay joins a wood of which the dust stains (`dust stains`, as padauk’s) with a paler one and is sanded, also through a coat, and the next coat goes on without a step that blows or draws the dust out; or oil goes on both while they are bare.',
    why: 'Spirit, oil and varnish dissolve the colour of that wood and carry it into the pores of the pale one, where no sanding gets it out.',
    mend: 'Blow the dust off with dry air or draw it out, wipe nothing wet across the joint, and close both woods with a first coat that is sprayed or padded on thin before varnish. Oil is wiped from the pale wood to the dark one.',
    source: 'Of padauk: that spirit makes its colour run, and oil less so, was seen in a maker’s page on it; disputed: two pages on finishing it begin with dewaxed shellac, one of them to keep oil from it. The rest is common practice, no source.',
};

const statement = 'do "blow the dust out of the pale wood with dry air, wipe nothing wet across it" for 3 min';

export const dustStains: Rule = {
    page,
    *examine(plan) {
        const told = new Set<number>();
        for (const { step, blank, inlay } of plan.steps) {
            const pair = inlay === undefined ? undefined : stained(plan, blank, inlay.reliefLaser.blank);
            if (pair === undefined) continue;
            for (const [sand, coat] of coatsOnSanded(plan, blank, step.index)) {
                if (told.has(coat.index)) continue;
                const clean = plan.steps.some(({ step: other }) => isBetween(other, sand, coat) && takesDust(other));
                if (clean && !isOil(coat)) continue;
                told.add(coat.index);
                yield clean ? runs(pair, coat) : dusty(pair, sand, coat);
            }
        }
    },
};

function dusty({ dark, pale }: Pair, sand: Sand, coat: CoatStep): Finding {
    return finding(page, {
        severity: 'warning',
        message: phrase`The dust of ${dark} stains ${pale}: no step takes it out between the sanding and this coat.`,
        where: coat.where,
        step: coat.index,
        related: [{ message: phrase`It is sanded here.`, where: sand.where }],
        fixes: [
            { title: phrase`Add a step that blows the dust out`, preferred: true, changes: [statementBefore(coat, statement)] },
        ],
    });
}

function runs({ dark, pale }: Pair, coat: CoatStep): Finding {
    return finding(page, {
        severity: 'info',
        message: phrase`${laidBy(coat)?.name} can carry the colour of bare ${dark} into ${pale}: wipe from the pale wood to the dark one, with a clean rag each time, and try it on an offcut.`,
        where: coat.where,
        step: coat.index,
    });
}

type CoatStep = Seal | Finish;

const drawsDust = /\b(?:dust|blow|vacuum|extract|brush)/i;

function takesDust(step: Step): boolean {
    return step.kind === 'do' && drawsDust.test(step.text);
}

/** What hardens by oxygen takes its time to soak in. */
function isOil(coat: CoatStep): boolean {
    return laidBy(coat)?.setsBy === 'oxygen';
}

function isBetween(step: Step, from: Step, to: Step): boolean {
    return step.index > from.index && step.index < to.index;
}

/** Each sanding of a face down to its wood after a step, with the coat that is the first on it. */
function coatsOnSanded(plan: Plan, blank: string | undefined, after: number): [Sand, CoatStep][] {
    const found: [Sand, CoatStep][] = [];
    let sanded: Sand | undefined;
    for (const { step, blank: of } of plan.steps.slice(after + 1)) {
        if (of !== blank) continue;
        if (step.kind === 'sand' && (step.flush || (step.take?.value ?? 0) > 0)) sanded = step;
        if ((step.kind !== 'seal' && step.kind !== 'finish') || sanded === undefined) continue;
        found.push([sanded, step]);
        sanded = undefined;
    }
    return found;
}

interface Pair {
    readonly dark: string;
    readonly pale: string;
}

/** Which of the two woods stains the other; undefined where neither does, or they are alike. */
function stained(plan: Plan, board: string | undefined, veneer: string): Pair | undefined {
    const [one, other] = [woodOf(plan, board), woodOf(plan, veneer)];
    if (one === undefined || other === undefined) return undefined;
    const [dark, pale] = one.dustStains === true ? [one, other] : [other, one];
    if (dark.dustStains !== true || pale.dustStains === true) return undefined;
    return isPaler(pale, dark) ? { dark: dark.name, pale: pale.name } : undefined;
}

function isPaler(pale: Wood, dark: Wood): boolean {
    const toWhite = (wood: Wood) => contrast(wood.colour, '#ffffff') ?? 0;
    return toWhite(dark) - toWhite(pale) > hardlyShows;
}
