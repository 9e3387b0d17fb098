import { area } from '../../geometry/measure';
import type { Face } from '../../piece/face';
import type { Plan } from '../../plan/plan';
import { showTime } from '../../quantity/show';
import { atItsWord } from '../figures';
import { faceBefore, negligible } from '../helpers/face-at';
import { laidBy, refusalOf } from '../helpers/laid-over';
import { longerWait } from '../helpers/longer-wait';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'does-not-hold',
    title: 'Coat that does not hold',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'A sealer or finish goes over a coat on which the stock says that it never holds (`over wax never`), or that has had less time than it says (`over drying-oil after 7 d`).',
    why: 'On wax and mineral oil nothing holds; over oil that has not hardened a film stays soft, wrinkles or peels.',
    mend: 'Wait longer, sand the first coat off, or take a finish that belongs on it. The data sheets of both come first.',
    source: `${commonPractice} The times are the stock’s figures.`,
};

export const doesNotHold: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, blank } of plan.steps) {
            const top = step.kind === 'seal' || step.kind === 'finish' ? laidBy(step) : undefined;
            const face = top === undefined ? undefined : faceBefore(plan, step.index, blank);
            if (top === undefined || face === undefined) continue;
            for (const below of coatsOn(face, plan)) {
                const coat = laidBy(below);
                const refusal = refusalOf(plan, step, below);
                if (coat === undefined || refusal === undefined) continue;
                const { after, gone } = refusal;
                yield finding(page, {
                    severity: 'warning',
                    message:
                        after === undefined
                            ? `${top.name} does not hold on ${coat.name}. Sand ${coat.name} off before, or take a finish that belongs on it.`
                            : `${top.name} goes over ${coat.name} that has had ${showTime(gone)}: it holds after ${showTime(after.value)}.`,
                    where: step.where,
                    step: step.index,
                    related: [{ message: `${coat.name} goes on here.`, where: below.where }],
                    fixes: after === undefined ? [] : longerWait(page.id, plan, below, step, after.value - gone, figures),
                });
            }
        }
    },
};

/** The steps whose coats lie open on a face. */
function coatsOn(face: Face, { steps }: Plan) {
    const open = new Map<number, number>();
    for (const { column, region } of face.cells) {
        const [layer] = column.layers;
        if (layer?.kind === 'coat' && layer.step !== undefined) open.set(layer.step, (open.get(layer.step) ?? 0) + area(region));
    }
    const [bare] = face.bare.layers;
    if (bare?.kind === 'coat' && bare.step !== undefined) open.set(bare.step, Number.POSITIVE_INFINITY);
    return [...open].flatMap(([index, size]) => (size > negligible ? (steps[index]?.step ?? []) : []));
}
