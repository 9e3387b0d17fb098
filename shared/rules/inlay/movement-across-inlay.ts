import { keptMoisture } from '../../bench/moisture';
import { leastMovement, mostStrain, strainedPart } from '../../bench/wood-movement';
import type { BlankPlan } from '../../plan/plan';
import { showLength, showRatio } from '../../quantity/show';
import type { Where } from '../../quantity/where';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { blankOf } from '../helpers/blank-names';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'movement-across-inlay',
    title: 'Board and inlay move apart',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'Over a year indoors, board and inlay would move against each other by more than 0.3 mm and, from the moisture at which they are glued (`moisture` in the stock), by more than half a per cent: mostly where their grains cross.',
    why: 'Wood moves across its grain and hardly along it. Glued crosswise, one of the two is stretched every winter until the joint opens or the thin piece splits.',
    mend: 'Lay the inlay’s grain along the board’s, let in smaller pieces, or choose woods that move alike.',
    source: 'ΔD = D·C·ΔM (Wood Handbook, FPL-GTR-190, ch. 13) for wood as it is sawn, flat where nothing is said, over the moisture between 30 % and 60 % humidity at 20 °C (its Eq. 4-5). The limits are our own judgement.',
};

export const movementAcrossInlay: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { inlay, step, wood } = stepPlan;
            const board = blankOf(plan, stepPlan);
            const veneer = plan.blanks.find((blank) => blank.name === inlay?.reliefLaser.blank);
            const apart = wood?.movement;
            if (board?.grain === undefined || veneer?.grain === undefined) continue;
            if (apart === undefined || apart.movement < leastMovement) continue;
            if (
                apart.strain * strainedPart(joinedAt(board, veneer), keptMoisture[board.blank.kept?.value ?? 'indoors']) <
                mostStrain
            )
                continue;
            const crossed = Math.abs(Math.sin(board.grain - veneer.grain)) > Math.SQRT1_2;
            yield finding(page, {
                severity: 'warning',
                message: phrase`Over a year indoors ${board.name} and ${veneer.name} move ${showLength(apart.movement)} against each other across the ${apart.direction} of the inlay (${showRatio(apart.strain)})${crossed ? phrase`: their grains cross` : ''}; pieces of at most ${showLength(Math.floor(leastMovement / apart.strain))} move too little to matter.`,
                where: step.where,
                step: step.index,
                rests: [...movingBy(board), ...movingBy(veneer)],
                fixes: crossed ? turned(veneer) : [],
                related: [
                    { message: phrase`The board’s grain is written here.`, where: board.blank.where },
                    { message: phrase`The veneer’s grain is written here.`, where: veneer.blank.where },
                ],
            });
        }
    },
};

/** The coefficients of a blank's wood that count as it is sawn. */
function movingBy({ blank: { sheet } }: BlankPlan): (Where | undefined)[] {
    const { radial, tangential } = sheet?.wood ?? {};
    const sawn = sheet?.sawn?.value ?? 'flat';
    return [
        ...(sawn === 'quarter' ? [] : [tangential?.where]),
        ...(sawn === 'quarter' || sawn === 'rift' ? [radial?.where] : []),
    ];
}

/** The moisture at which two halves are glued: that of the one half way to that of the other; undefined where one is not written. */
function joinedAt({ blank: board }: BlankPlan, { blank: veneer }: BlankPlan): number | undefined {
    const [a, b] = [board.sheet?.moisture, veneer.sheet?.moisture];
    return a === undefined || b === undefined ? undefined : (a.value + b.value) / 2;
}

function turned({ blank: { grain, grainWhere, name } }: BlankPlan): Fix[] {
    if (grainWhere === undefined) return [];
    const text = phrase`grain along ${grain === 'width' ? 'height' : 'width'}`;
    return [
        {
            title: phrase`Lay the grain of ${name} along the board’s (${text})`,
            changes: [{ do: 'replace', where: grainWhere, text }],
        },
    ];
}
