import { showLength } from '../../quantity/show';
import { blankOf } from '../helpers/blank-names';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'skin-left',
    title: 'Veneer half not burnt through',
    severities: ['error', 'warning'],
    quickFix: 'always',
    condition: 'The depth of a veneer half leaves a skin of it, at the thick end of its tolerance.',
    why: 'Turned over, the skin lies on the board and holds the veneer out of its pocket.',
    mend: 'Write `depth through` in the veneer half.',
    source: 'Plain arithmetic.',
};

export const skinLeft: Rule = {
    page,
    *examine(plan) {
        const said = new Set<number>();
        for (const { inlay } of plan.steps) {
            if (inlay === undefined || said.has(inlay.relief.index)) continue;
            const stepPlan = plan.steps[inlay.relief.index];
            const { depth, through, tone, settings } = inlay.reliefLaser;
            const veneer = stepPlan === undefined ? undefined : blankOf(plan, stepPlan)?.thickness;
            const wish = inlay.relief.depth;
            if (through || depth === undefined || tone !== undefined || veneer === undefined || wish === undefined) continue;
            const skin = veneer.high - depth.value;
            if (!(skin > 0.005) || settings?.reached === false) continue; // depth-unreachable says it
            said.add(inlay.relief.index);
            const surely = veneer.value - depth.value > 0.005;
            yield finding(page, {
                severity: surely ? 'error' : 'warning',
                message: `${inlay.relief.name} leaves ${showLength(surely ? veneer.value - depth.value : skin)} of the ${showLength(veneer.value)} veneer standing${surely ? '' : ' where it is thickest'}: it has to go through.`,
                where: wish.where,
                step: inlay.relief.index,
                fixes: [
                    {
                        title: 'Burn it through',
                        preferred: true,
                        changes: [{ do: 'replace', where: wish.where, text: 'through' }],
                    },
                ],
            });
        }
    },
};
