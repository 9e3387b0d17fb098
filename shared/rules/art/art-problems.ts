import type { ArtProblem } from '../../art/art';
import type { Severity } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'art-problems',
    title: 'Parts of the art that are not used as drawn',
    severities: ['warning', 'info', 'error'],
    condition:
        'An art file holds something that cannot be burnt as it is seen: text that is not paths, filters, gradients (which burn where they look darker than the threshold), embedded pictures, references to other files, broken markup, or no physical size.',
    error: 'The file cannot be read, so there is nothing to burn.',
    why: 'What is not read is not burnt. Nothing is dropped without a word.',
    mend: 'Turn text into paths and flatten effects in the drawing program, and give the file a size in millimetres or the recipe a `width`.',
    source: 'SVG 1.1 (second edition) and SVG 2, W3C.',
};

const severities: Readonly<Record<ArtProblem['kind'], Severity>> = {
    unreadable: 'error',
    refused: 'warning',
    unsupported: 'warning',
    text: 'warning',
    'too-large': 'error',
    empty: 'error',
    'off-page': 'warning',
    'open-path': 'info',
    unsized: 'info',
};

/** At most this many of one art; the rest is counted. */
const most = 8;

export const artProblems: Rule = {
    page,
    *examine(plan) {
        for (const source of plan.recipe.arts) {
            const state = plan.arts.get(source.name);
            if (state?.kind !== 'art') continue;
            const sized = source.width !== undefined || source.height !== undefined;
            const problems = state.art.problems.filter(
                ({ kind }) => !(kind === 'unsized' && sized) && kind !== 'empty', // art-missing says it
            );
            const alike = byMessage(problems);
            for (const [first, ...others] of alike.slice(0, most)) {
                const { kind, message, line, column } = first;
                const place =
                    line === undefined ? '' : phrase`, line ${line}${column === undefined ? '' : phrase`, column ${column}`}`;
                const count = others.length + [first, ...others].reduce((sum, { more = 0 }) => sum + more, 0);
                const more = count === 0 ? '' : `, and ${count} more place${count === 1 ? '' : 's'}`;
                yield finding(page, {
                    severity: severities[kind],
                    message: phrase`${message} (${source.path.value}${place}${more})`,
                    where: source.path.where,
                });
            }
            if (alike.length > most) {
                const more = alike.length - most;
                yield finding(page, {
                    severity: 'info',
                    message: phrase`${source.path.value} has ${more} more such thing${more === 1 ? '' : 's'}.`,
                    where: source.path.where,
                });
            }
        }
    },
};

/** What is said in the same words is said once, with the places counted. */
function byMessage(problems: readonly ArtProblem[]): (readonly [ArtProblem, ...ArtProblem[]])[] {
    const groups = new Map<string, [ArtProblem, ...ArtProblem[]]>();
    for (const problem of problems) {
        const group = groups.get(problem.message);
        if (group === undefined) groups.set(problem.message, [problem]);
        else group.push(problem);
    }
    return [...groups.values()];
}
