import { phrase } from '../../recipe/phrase';
import type { Peel } from '../../recipe/step';
import { faceAfter, sizeOfMet } from '../helpers/face-at';
import { peelFirst } from '../helpers/peel-first';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'laser-on-foil',
    title: 'Laser on the backing of a laid veneer',
    severities: ['error'],
    quickFix: 'always',
    condition: 'The beam runs over a veneer half that was laid in and whose foil or tape has not been peeled.',
    error: 'Always: the beam is thrown back.',
    why: 'Bare foil throws the beam back at the machine and at people, and nothing below it is burnt.',
    mend: 'Peel the veneer half first, once its glue is dry.',
    source: commonPractice,
};

export const laserOnFoil: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank } of plan.steps) {
            if ((step.kind !== 'engrave' && step.kind !== 'cut') || blank === undefined) continue;
            const met = (faceAfter(plan, step.index, blank)?.met ?? []).filter(({ column }) =>
                column.layers.some(({ kind }) => kind === 'foil'),
            );
            const half = met[0]?.column.layers.find(({ kind }) => kind === 'foil')?.name;
            const { matters, shown } = sizeOfMet(met);
            if (half === undefined || !matters) continue;
            const later = plan.steps
                .map((other) => other.step)
                .find((other): other is Peel => other.kind === 'peel' && other.blank.value === half && other.index > step.index);
            yield finding(page, {
                severity: 'error',
                message: phrase`${step.name} runs over ${shown} of the backing of ${half}, which is still on: peel ${half} first.`,
                where: step.where,
                step: step.index,
                spots: spotsOf(
                    blank,
                    met.map(({ region }) => region),
                ),
                fixes: [{ title: phrase`Peel ${half} first`, preferred: true, changes: peelFirst(plan, half, step, later) }],
            });
        }
    },
};
