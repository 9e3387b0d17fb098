import type { InlayPlan } from '../../plan/plan';
import type { Interval } from '../../quantity/interval';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'skin-left',
    title: 'Veneer half not burnt through',
    severities: ['error', 'warning'],
    quickFix: 'always',
    condition: 'All burns of a veneer half together leave a skin of it, at the thick end of its tolerance.',
    error: 'At the depth that is expected a skin is left, and the veneer cannot come down. Where only the thick end of the tolerance leaves one, it is a warning.',
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
            const skin = skinOf(inlay);
            if (skin === undefined) continue;
            const { relief, veneer } = inlay;
            const wish = relief.kind === 'engrave' ? relief.depth : undefined;
            said.add(inlay.relief.index);
            const surely = skin.value > least;
            yield finding(page, {
                severity: surely ? 'error' : 'warning',
                message: phrase`${relief.name} leaves ${showLength(surely ? skin.value : skin.high)} of the ${showLength(veneer!.value)} veneer standing${surely ? '' : phrase` where it is thickest`}: it has to go through.`,
                where: wish?.where ?? relief.where,
                step: relief.index,
                fixes: [
                    {
                        title: phrase`Burn it through`,
                        preferred: true,
                        changes: [
                            wish === undefined
                                ? { do: 'add', block: relief.whole, statement: 'depth through' }
                                : { do: 'replace', where: wish.where, text: 'through' },
                        ],
                    },
                ],
            });
        }
    },
};

/** Thinner than this it is no skin, mm. */
const least = 0.005;

/** What of a veneer half is left around what stands, mm; undefined where nothing is, or another rule says why. */
export function skinOf({ half, veneer, reliefLaser }: InlayPlan): Pick<Interval, 'value' | 'high'> | undefined {
    const { through, depth, tone, settings } = reliefLaser;
    if (veneer === undefined || tone !== undefined || settings?.reached === false) return undefined; // depth-unreachable says it
    // Gone at its usual thickness, by this burn alone: where it is thickest it may still be there.
    const rise = half.rise ?? (through || half.lower.length > 0 ? undefined : depth);
    const skin = rise === undefined ? 0 : veneer.high - rise.value;
    return skin > least ? { value: veneer.value - rise!.value, high: skin } : undefined;
}
