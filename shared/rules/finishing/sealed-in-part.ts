import { area } from '../../geometry/measure';
import { bareArea, type Face } from '../../piece/face';
import type { Plan } from '../../plan/plan';
import { showArea } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Finish, Seal, Step } from '../../recipe/step';
import { faceAfter, faceBefore, negligible } from '../helpers/face-at';
import { timeText } from '../helpers/longer-wait';
import { spotsOf } from '../helpers/spots';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** A smaller part of the wood that stays sealed is not seen. @commonPractice */
const seenShare = 0.1;
/** Finishes that have to soak in. */
const oils = new Set(['drying-oil', 'mineral-oil']);

const page: Page = {
    id: 'sealed-in-part',
    title: 'Sealer sanded off in part',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: `An oil goes on a face from which a sanding has taken the sealer, while what lies lower, a tenth of the wood or more, is sealed still.`,
    why: 'Oil soaks into bare wood and not into sealed wood: the one turns dark, and on the other it stays pale and sticky.',
    mend: 'Seal the whole face again before the oil, or mask the face while the pockets are sealed and sand what is to be bare before; or take a varnish, which lies on both.',
    source: commonPractice,
};

export const sealedInPart: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank } of plan.steps) {
            if (step.kind !== 'finish' || !isOil(step) || blank === undefined) continue;
            const face = faceBefore(plan, step.index, blank);
            const sealed = face === undefined ? [] : sealedCells(face, plan);
            const seal = sealed[0]?.by;
            const sand = seal === undefined ? undefined : sandingOff(plan, seal, step.index, blank);
            if (face === undefined || seal === undefined || sand === undefined) continue;
            const kept = sealed.reduce((sum, { region }) => sum + area(region), 0);
            const bare = bareWood(face);
            if (kept <= negligible || kept < seenShare * (kept + bare)) continue;
            const name = seal.sealer?.name ?? phrase`the sealer`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`Sanding takes ${name} off ${showArea(bare)} of ${blank} and leaves it on ${showArea(kept)} that lies lower: ${step.coat?.name ?? phrase`the oil`} soaks in only where it is bare. Seal ${blank} again first.`,
                where: step.where,
                step: step.index,
                spots: spotsOf(
                    blank,
                    sealed.map(({ region }) => region),
                ),
                related: [
                    { message: phrase`It is sealed here.`, where: seal.where },
                    { message: phrase`It is sanded off here.`, where: sand.where },
                ],
                fixes: sealAgain(seal, blank, step),
            });
        }
    },
};

function isOil({ coat }: Finish): boolean {
    return coat?.kinds.some((kind) => oils.has(kind)) === true;
}

/** Cells of the blank's own wood on which a sealer lies open. */
function sealedCells({ cells }: Face, plan: Plan) {
    return cells.flatMap(({ region, column: { layers } }) => {
        const [top] = layers;
        const under = layers.find(({ kind }) => kind !== 'coat');
        const by = plan.steps[top?.step ?? -1]?.step;
        return top?.kind === 'coat' && by?.kind === 'seal' && under?.kind === 'wood' ? [{ region, by }] : [];
    });
}

/** Wood that lies open without any coat, mm2; none where the face itself is coated. */
function bareWood(face: Face): number {
    if (face.bare.layers[0]?.kind !== 'wood') return 0;
    const open = face.cells.filter(({ column }) => column.layers[0]?.kind === 'wood');
    return open.reduce((sum, { region }) => sum + area(region), bareArea(face));
}

/** The sanding that takes a sealer off the face itself; undefined where it never lay there, or lies there still. */
function sandingOff(plan: Plan, { index }: Seal, before: number, blank: string): Step | undefined {
    const isOn = (face: Face | undefined): boolean => face?.bare.layers.some(({ step }) => step === index) === true;
    return plan.steps.find(
        ({ step }) =>
            step.kind === 'sand' &&
            step.index > index &&
            step.index < before &&
            isOn(faceBefore(plan, step.index, blank)) &&
            !isOn(faceAfter(plan, step.index, blank)),
    )?.step;
}

function sealAgain({ sealer }: Seal, blank: string, finish: Finish): Fix[] {
    if (sealer === undefined) return [];
    const dry = sealer.dry === undefined ? '' : `\n  wait ${timeText(sealer.dry.value)}`;
    return [
        { title: phrase`Seal ${blank} again`, changes: [statementBefore(finish, `seal ${blank} with ${sealer.name}${dry}`)] },
    ];
}
