import { showLength } from '../quantity/show';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';

/** Least depth in which a fill holds, mm: common practice, no source. */
const leastDepth = 0.3;

const page: Page = {
    id: 'shallow-fill',
    title: 'No depth for the fill',
    condition: `A fill goes into an engraving that only colours the wood, or that is less than ${leastDepth} mm deep at worst.`,
    why: 'Resin needs depth to sit in. In a mere colour there is none, and the fill comes off with the first strokes of the sander.',
    mend: 'Give the engraving a depth, some tenths of a millimetre more than will be sanded off.',
    source: commonPractice,
};

export const shallowFill: Rule = {
    page,
    *examine(plan) {
        for (const { fill, step } of plan.steps) {
            if (fill === undefined || step.kind !== 'fill') continue;
            const toned = fill.pocket.depth === undefined && fill.pocket.tone !== undefined;
            if (!toned && fill.depth.low >= leastDepth) continue;
            const message = toned
                ? `${fill.pocket.name} only colours the wood: there is no depth for ${step.resin?.name ?? 'the fill'} to sit in.`
                : `${fill.pocket.name} is ${showLength(fill.depth.value)} deep, ${showLength(Math.max(0, fill.depth.low))} at its shallowest; a fill needs ${showLength(leastDepth)} to hold.`;
            const wish = fill.pocket.depth ?? fill.pocket.tone;
            yield finding(page, {
                severity: toned ? 'error' : 'warning',
                message,
                where: step.pocket.where,
                step: step.index,
                related: wish === undefined ? [] : [{ message: 'Its depth is asked for here.', where: wish.where }],
                fixes:
                    toned && fill.pocket.tone !== undefined
                        ? [
                              {
                                  title: `Engrave ${fill.pocket.name} 0.8 mm deep instead`,
                                  changes: [{ do: 'add', block: fill.pocket.whole, statement: 'depth 0.8 mm' }],
                              },
                          ]
                        : [],
            });
        }
    },
};
