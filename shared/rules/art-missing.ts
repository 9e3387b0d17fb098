import { burnsFaintly } from '../plan/paint-of';
import type { Page } from './page';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'art-missing',
    title: 'Art missing or unreadable',
    severities: ['error'],
    condition: 'An art file is not there, lies outside the workspace, is too large, or cannot be read; or nothing in it burns.',
    why: 'Without the art nothing of its steps can be worked out.',
    mend: 'Correct the path (it counts from the recipe’s own file), or put the file there. Art is never read from outside the workspace or from an address.',
    source: 'Plain fact of the files.',
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
            if (burnsFaintly(state.art, source)) continue;
            if (state.art.parts.length === 0 && state.art.problems.every((problem) => problem.kind !== 'unreadable')) {
                yield finding(page, {
                    severity: 'error',
                    message: `Nothing is painted in ${source.path.value}.`,
                    where: source.path.where,
                });
            }
        }
    },
};
