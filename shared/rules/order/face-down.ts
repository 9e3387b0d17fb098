import { isSameLie, sideOf } from '../../piece/lie';
import { lieBefore, lieOf } from '../../plan/lies';
import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';
import { needs } from './out-of-order';

const page: Page = {
    id: 'face-down',
    title: 'On the face that is down',
    severities: ['error'],
    condition:
        'A fill, an inlay or a check is of something that was burnt into the face that lies on the bed, or that was turned by half a turn since.',
    error: 'Always: nobody can reach it there.',
    why: '`flip` turns the blank over: the steps behind it are done on its other face.',
    mend: 'Do it before the blank is flipped, or `flip` it back first, about the same line.',
    source: 'The order of the text is the order of the work.',
};

export const faceDown: Rule = {
    page,
    *examine(plan) {
        for (const { step, unplanned } of plan.steps) {
            if (unplanned !== undefined) continue;
            for (const { ref, said } of needs(step)) {
                const made = plan.steps.find(({ step: other }) => 'name' in other && other.name === ref.value);
                if (made?.laser === undefined || made.blank === undefined || made.step.index > step.index) continue;
                const then = lieOf(made.laser);
                const now = lieBefore(plan.recipe.steps, step.index, made.blank);
                if (isSameLie(then, now)) continue;
                const flip = plan.recipe.steps.findLast(
                    (other) => other.kind === 'flip' && other.blank.value === made.blank && other.index < step.index,
                );
                const isDown = sideOf(then) !== sideOf(now);
                const about = then.across === now.across ? 'level' : 'upright';
                const line = about === 'upright' ? '' : ' { about level }';
                yield finding(page, {
                    severity: 'error',
                    message: isDown
                        ? phrase`${ref.value} ${said} here, but it is on the ${sideOf(then)} of ${made.blank}, which lies on the bed now. Do it before ${made.blank} is flipped, or \`flip ${made.blank}${line}\` first.`
                        : phrase`${ref.value} ${said} here, but ${made.blank} has been turned by half a turn since: it was flipped once about an upright line and once about a level one. Flip it about the same line both times.`,
                    where: ref.where,
                    step: step.index,
                    related: flip === undefined ? [] : [{ message: phrase`${made.blank} is flipped here.`, where: flip.where }],
                });
            }
        }
    },
};
