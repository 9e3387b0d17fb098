import { showNumber, showRatio } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Mix } from '../../recipe/stock';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Parts of hardener to one of resin beyond which the two were most likely swapped. @commonPractice */
const swapped = 1.4;
/** How far a mix may differ from that of its kind. @commonPractice */
const most = 0.1;

const page: Page = {
    id: 'mix-off-ratio',
    title: 'Resin and hardener in an unusual ratio',
    severities: ['warning', 'info'],
    quickFix: 'sometimes',
    condition: `A resin that is poured is mixed with ${showNumber(swapped)} times as much hardener as resin or more, or by a ratio that differs from that of its \`kind\` by more than ${showRatio(most)}.`,
    why: 'Hardener takes part in the cure: with too much or too little of it the fill stays soft or sticky for good. Volume and weight are not the same either, since the two weigh differently.',
    mend: 'Read the ratio on the product’s own sheet, and whether it is by volume or by weight. If it really is so, `allow mix-off-ratio because "…"` with that sheet’s date.',
    source: `${commonPractice} The product’s sheet comes first.`,
};

export const mixOffRatio: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            const mix = step.kind === 'fill' ? step.resin?.mix : undefined;
            if (step.kind !== 'fill' || mix === undefined) continue;
            const { name, usualMix, kind } = step.resin!;
            const base = { where: step.where, step: step.index };
            const related = [{ message: phrase`The mix is written here.`, where: mix.where }];
            if (mix.hardener >= swapped * mix.resin) {
                yield finding(page, {
                    ...base,
                    severity: 'warning',
                    message: phrase`${name} is mixed ${words(mix)}: more hardener than resin. The parts of resin come first.`,
                    related,
                    fixes: [swap(mix)],
                });
            } else if (usualMix !== undefined && differs(mix, usualMix)) {
                yield finding(page, {
                    ...base,
                    severity: 'info',
                    message: phrase`${name} is mixed ${words(mix)}; ${kind} is mixed ${words(usualMix)}.`,
                    related,
                });
            }
        }
    },
};

function differs(one: Mix, other: Mix): boolean {
    if (one.by !== other.by) return true;
    const [a, b] = [one.hardener / one.resin, other.hardener / other.resin];
    return Math.abs(a - b) > most * Math.max(a, b);
}

function words({ resin, hardener, by }: Mix): string {
    return phrase`${showNumber(resin)} : ${showNumber(hardener)} by ${by}`;
}

function swap(mix: Mix): Fix {
    const text = words({ ...mix, resin: mix.hardener, hardener: mix.resin });
    return { title: phrase`Mix ${text}`, changes: [{ do: 'replace', where: mix.where, text: `mix ${text}` }] };
}
