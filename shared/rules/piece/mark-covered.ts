import { area } from '../../geometry/measure';
import type { Cell } from '../../piece/face';
import type { Plan, StepPlan } from '../../plan/plan';
import { showArea } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { faceBefore, negligible } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Through more than that nobody reads a colour below. */
const opaque = 0.8;
/** Part of a colour that has to go under for it to be more than an edge. */
const mostOfIt = 0.5;

const page: Page = {
    id: 'mark-covered',
    title: 'A mark under what is poured',
    severities: ['warning'],
    condition: `Most of what only colours the wood lies on the floor of a pocket and is poured over with resin that hides ${opaque * 100} % or more.`,
    why: 'A colour on the floor is seen through clear or tinted resin only.',
    mend: 'Pour a clear or tinted resin, or burn the mark beside the pocket, on the face.',
    source: commonPractice,
};

export const markCovered: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { step, blank, fill } = stepPlan;
            if (step.kind !== 'fill' || fill === undefined || blank === undefined) continue;
            if (!((step.resin?.opacity?.value ?? 0) >= opaque)) continue;
            for (const [index, cells] of covered(plan, stepPlan)) {
                const toned = plan.steps[index]?.step;
                const under = cells.filter(({ column }) => column.digs.some((dig) => dig.step === fill.pocket.index));
                const size = areaOf(under);
                if (toned?.kind !== 'engrave' || size <= negligible || size < mostOfIt * areaOf(cells)) continue;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${step.resin?.name ?? phrase`The fill`} covers ${showArea(size)} of ${toned.name}, which only colours the floor of ${fill.pocket.name}: nobody sees it then. Pour a clear resin, or move ${toned.name} off ${fill.pocket.name}.`,
                    where: step.where,
                    step: step.index,
                    spots: spotsOf(
                        blank,
                        under.map(({ region }) => region),
                    ),
                    related: [{ message: phrase`${toned.name} is coloured here.`, where: toned.where }],
                });
            }
        }
    },
};

/** Where colours lie on a face before a step, by the step that burnt them. */
function covered(plan: Plan, { step, blank }: StepPlan): Map<number, Cell[]> {
    const found = new Map<number, Cell[]>();
    for (const cell of faceBefore(plan, step.index, blank)?.cells ?? []) {
        const { tone } = cell.column;
        if (tone !== undefined) found.set(tone, [...(found.get(tone) ?? []), cell]);
    }
    return found;
}

function areaOf(cells: readonly Cell[]): number {
    return cells.reduce((sum, { region }) => sum + area(region), 0);
}
