import type { Change } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { ArtSource } from '../../recipe/recipe';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'tones-unused',
    title: 'Words for greys where there are none',
    severities: ['warning'],
    quickFix: 'always',
    condition: 'A drawing has `dither` or `curve`, which are for pictures; or a picture has `dither` and `threshold` at once.',
    why: 'A drawing has edges, and what is darker than its threshold burns whole. A picture in dots burns all its greys, so no threshold has a say.',
    mend: 'Take the line out, or use a picture (PNG or JPEG).',
    source: commonPractice,
};

export const tonesUnused: Rule = {
    page,
    *examine(plan) {
        for (const source of plan.recipe.arts) {
            const state = plan.arts.get(source.name);
            if (state?.kind !== 'art') continue;
            for (const [word, where, why] of idle(source, state.art.kind === 'bitmap')) {
                const changes: Change[] = [{ do: 'remove', where }];
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`\`${word}\` does nothing here: ${why}.`,
                    where,
                    fixes: [{ title: phrase`Leave \`${word}\` out`, preferred: true, changes }],
                });
            }
        }
    },
};

type Idle = readonly [word: string, where: NonNullable<ArtSource['dither']>['where'], why: string];

function idle({ name, dither, curve, threshold, thresholdWhere }: ArtSource, picture: boolean): Idle[] {
    const drawing = `${name} is a drawing, and a drawing has no greys to spread`;
    return [
        ...(dither === undefined || picture ? [] : [['dither', dither.where, drawing] as const]),
        ...(curve === undefined || picture ? [] : [['curve', curve.where, drawing] as const]),
        ...(dither === undefined || threshold === undefined || !picture
            ? []
            : [['threshold', thresholdWhere ?? threshold.where, `${name} is burnt as dots, all its greys`] as const]),
    ];
}
