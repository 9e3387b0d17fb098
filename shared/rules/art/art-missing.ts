import { isBitmapArt } from '../../art/bitmap';
import { phrase } from '../../recipe/phrase';
import { type Page, plainFact } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'art-missing',
    title: 'Art missing or unreadable',
    severities: ['error'],
    condition:
        'An art file is not there, lies outside the workspace, is too large, or cannot be read; or nothing is painted in it.',
    error: 'Always: there is nothing to burn.',
    why: 'Without the art nothing of its steps can be worked out.',
    mend: 'Correct the path (it counts from the recipe’s own file), or put the file there. Art is never read from outside the workspace or from an address.',
    source: plainFact,
};

export const artMissing: Rule = {
    page,
    *examine(plan) {
        for (const source of plan.recipe.arts) {
            const state = plan.arts.get(source.name);
            if (state === undefined) continue;
            if (state.kind !== 'art') {
                yield finding(page, { severity: 'error', message: state.message, where: source.path.where });
                continue;
            }
            if (isBitmapArt(state.art) && state.art.raster.darkness.length > 0) continue; // nothing-burns says it
            const empty = state.art.problems.find(({ kind }) => kind === 'empty');
            const unread = state.art.problems.some(({ kind }) => kind === 'unreadable');
            if (empty !== undefined || (state.art.parts.length === 0 && !unread)) {
                yield finding(page, {
                    severity: 'error',
                    message: phrase`${empty?.message ?? phrase`Nothing is painted in it.`} (${source.path.value})`,
                    where: source.path.where,
                });
            }
        }
    },
};
