import type { BlankPlan, Plan, StepPlan } from '../../plan/plan';
import type { Finding, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { blankOf } from '../helpers/blank-names';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'grain-unknown',
    title: 'Nobody says how the grain runs',
    severities: ['hint', 'warning'],
    quickFix: 'always',
    condition: 'A step is scanned by the grain, or an inlay joins two woods, and a blank does not say how its grain runs.',
    why: 'Wood moves across its grain, and scan lines along it show as stripes. Without the grain neither can be judged: `scan across grain` then runs along the width, whatever the wood does.',
    mend: 'Write `grain along width` or `grain along height` in the blank.',
    source: commonPractice,
};

export const grainUnknown: Rule = {
    page,
    *examine(plan) {
        const told = new Set<string>();
        for (const stepPlan of plan.steps) yield* [...scanned(plan, stepPlan, told), ...joined(plan, stepPlan, told)];
    },
};

function* scanned(plan: Plan, stepPlan: StepPlan, told: Set<string>): Iterable<Finding> {
    const { step } = stepPlan;
    const blank = blankOf(plan, stepPlan);
    const direction = step.kind === 'engrave' ? step.scan?.direction : undefined;
    if (step.kind !== 'engrave' || blank === undefined || (direction !== 'across' && direction !== 'along')) return;
    if (blank.grain !== undefined || told.has(blank.name)) return;
    told.add(blank.name);
    yield finding(page, {
        severity: 'warning',
        message: phrase`${step.name} is scanned ${direction} the grain, but ${blank.name} does not say how that runs: the lines go along the width.`,
        where: step.scan!.where,
        step: step.index,
        related: [{ message: phrase`This blank does not say it.`, where: blank.blank.where }],
        fixes: fixes(blank, undefined),
    });
}

function* joined(plan: Plan, { inlay, step }: StepPlan, told: Set<string>): Iterable<Finding> {
    if (inlay === undefined) return;
    const named = (name: string) => plan.blanks.find((blank) => blank.name === name);
    const halves = [named(inlay.pocketLaser.blank), named(inlay.reliefLaser.blank)];
    for (const [index, blank] of halves.entries()) {
        if (blank === undefined || blank.grain !== undefined || told.has(blank.name) || !hasGrain(blank)) continue;
        told.add(blank.name);
        yield finding(page, {
            severity: 'hint',
            message: phrase`${blank.name} does not say how its grain runs: whether board and inlay move together cannot be judged.`,
            where: blank.blank.where,
            step: step.index,
            related: [{ message: phrase`They are joined here.`, where: step.where }],
            fixes: fixes(blank, halves[1 - index]?.blank.grain),
        });
    }
}

/** Boards of crossed or crushed wood have none to speak of. */
function hasGrain({ blank: { sheet } }: BlankPlan): boolean {
    const made = sheet?.madeOf?.value;
    return made === undefined || made === 'solid' || made === 'bamboo';
}

/** Both ways, the likelier first: an inlay is best laid along with its board. */
function fixes({ blank }: BlankPlan, other: 'width' | 'height' | undefined): Fix[] {
    const ways = other === 'height' ? (['height', 'width'] as const) : (['width', 'height'] as const);
    return ways.map((way) => ({
        title: phrase`Say that the grain of ${blank.name} runs along its ${way}`,
        ...(way === other ? { preferred: true } : {}),
        changes: [{ do: 'add', block: blank.whole, statement: `grain along ${way}` }],
    }));
}
