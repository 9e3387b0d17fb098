import { poursFor } from '../../bench/pours';
import { showLength, showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Resin } from '../../recipe/stock';
import { timeText } from '../helpers/longer-wait';
import { statementBefore } from '../helpers/statement-before';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** More layers than this nobody would want written down: a figure is wrong, or the resin. */
const mostWritten = 12;

const page: Page = {
    id: 'deep-pour',
    title: 'Deeper than one pour',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'A pocket is filled in one step, and is deeper than the resin may be poured at once. Powder that is packed dry (`by volume`) is not poured: thin glue wicks into it, and how deep was not found.',
    why: 'Resin warms as it cures. Too much of it at once boils, yellows, shrinks off the walls or cracks.',
    mend: 'Pour in layers, each no deeper than the resin’s sheet says, and let each set before the next; or take a resin for deep pours.',
    source: 'The resin’s own figure. Layers of about 6 mm for coating epoxy are trade guidance (seen).',
};

export const deepPour: Rule = {
    page,
    *examine(plan) {
        for (const { fill, step } of plan.steps) {
            const deepest = step.kind === 'fill' && step.resin?.powderBy !== 'volume' ? step.resin?.deepestPour : undefined;
            if (fill === undefined || step.kind !== 'fill' || deepest === undefined || fill.layer.number > 1) continue;
            if (fill.pocket.depth !== undefined && 'through' in fill.pocket.depth) continue; // pocket-without-floor comes first
            const most = deepest.value + deepest.tolerance;
            const pours = poursFor(fill.depth.value, most);
            if (pours.count < 2) continue;
            if (fill.layer.of >= pours.count) continue;
            const { name } = step.resin!;
            const layer = `fill ${fill.pocket.name} with ${name}${waitBetween(step.resin!)}`;
            const more = Array<string>(pours.count - fill.layer.of)
                .fill(layer)
                .join('\n  ');
            yield finding(page, {
                severity: 'warning',
                message: phrase`${fill.pocket.name} is ${showLength(fill.depth.value)} deep; ${name} may be poured ${showLength(most)} at once: pour ${pours.count} layers of ${showLength(pours.each)}${apart(step.resin!)}.`,
                where: step.where,
                step: step.index,
                rests: [deepest.where],
                related: [
                    { message: phrase`The depth is asked for here.`, where: fill.pocket.depth?.where ?? fill.pocket.where },
                ],
                fixes:
                    pours.count > mostWritten
                        ? []
                        : [{ title: phrase`Pour ${pours.count} layers`, changes: [statementBefore(step, more)] }],
            });
        }
    },
};

/** How long after one layer the next may follow, for the message. */
function apart({ recoat, cure }: Resin): string {
    if (recoat !== undefined) {
        const from = showTime(Math.max(0, recoat.value - recoat.tolerance));
        return phrase`, each ${from} to ${showTime(recoat.value + recoat.tolerance)} after the one before`;
    }
    return cure === undefined ? '' : phrase`, each after the cure of the one before, ${showTime(cure.value)}`;
}

function waitBetween({ recoat, cure }: Resin): string {
    const time = recoat === undefined ? cure?.value : recoat.value - recoat.tolerance;
    return time === undefined || !(time > 0) ? '' : `\n  wait ${timeText(time)}`;
}
