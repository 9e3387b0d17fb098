import { area } from '../../geometry/measure';
import { type Layer, layersAbove } from '../../piece/column';
import { showArea } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { faceBefore, nameOf, negligible } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'mask-under-pour',
    title: 'Tape over the pocket',
    severities: ['error'],
    quickFix: 'always',
    condition: 'A blank is masked after a pocket was burnt, which is filled or inlaid with the tape across it.',
    error: 'Always: what is poured or laid never touches the pocket.',
    why: 'The tape bridges the pocket: resin stands on it, and a veneer is glued to it.',
    mend: 'Mask before the pocket is burnt, or peel first.',
    source: commonPractice,
};

export const maskUnderPour: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, fill, inlay } of plan.steps) {
            const pocket = fill?.pocket ?? inlay?.pocket;
            const face = pocket === undefined ? undefined : faceBefore(plan, step.index, blank);
            if (pocket === undefined || face === undefined || blank === undefined) continue;
            const taped = face.cells.filter(
                ({ column }) => tapeIn(layersAbove(column)) !== undefined && column.digs.some((dig) => dig.step === pocket.index),
            );
            const size = taped.reduce((sum, { region }) => sum + area(region), 0);
            const mask = plan.steps[tapeIn(taped[0]?.column.layers ?? [])?.step ?? -1]?.step;
            if (size <= negligible || mask === undefined) continue;
            yield finding(page, {
                severity: 'error',
                message: phrase`Tape lies across ${showArea(size)} of ${nameOf(pocket)}: it was masked after the pocket was burnt. Peel ${blank} before it is ${fill === undefined ? 'inlaid' : 'filled'}.`,
                where: step.where,
                step: step.index,
                spots: spotsOf(
                    blank,
                    taped.map(({ region }) => region),
                ),
                related: [{ message: phrase`The tape goes on here.`, where: mask.where }],
                fixes: [
                    { title: phrase`Peel ${blank} first`, preferred: true, changes: [statementBefore(step, `peel ${blank}`)] },
                ],
            });
        }
    },
};

/** The tape in a column, also where a sealer or coat lies on it. */
function tapeIn(layers: readonly Layer[]): Layer | undefined {
    return layers.find(({ kind }) => kind === 'tape');
}
