import { approach } from '../../geometry/distance';
import { area, perimeter } from '../../geometry/measure';
import { isOpenPocket } from '../../piece/column';
import { type Cell, type Face, isMasked } from '../../piece/face';
import { boxesMeet } from '../../piece/partition';
import type { FillPlan, Plan } from '../../plan/plan';
import { usualOverfill } from '../../plan/plan-fill';
import { showLength, showNumber } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Fill } from '../../recipe/step';
import { roundLength } from '../helpers/ask-depth';
import { blankOf } from '../helpers/blank-names';
import { contentOf, faceBefore, nameOf, negligible } from '../helpers/face-at';
import { leastWall, noWall } from '../helpers/least-wall';
import { shallow } from '../helpers/walls';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** How thick resin stands on tape that it has run over, mm. @commonPractice */
const film = 0.2;
/** Further than this nobody lets it run, mm. @commonPractice */
const farthest = 3;
/** Lower than this below the face nothing runs into it, mm. */
const brim = 0.05;

const page: Page = {
    id: 'mask-burnt-open',
    title: 'Mask burnt open beside a pour',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: `A masked blank is filled higher than its face, and beside the pocket the tape is burnt open for something that stays empty, nearer than the resin runs: what stands above the face, spread ${film} mm thick around the pocket, ${farthest} mm at most.`,
    why: 'The tape keeps the face clean, but not what was burnt through it: resin runs in there, and no sanding takes it out.',
    mend: 'Pour no higher than the face, leave more room, or burn the other one once the resin is cured and the tape is off.',
    source: commonPractice,
};

export const maskBurntOpen: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { step, blank, fill } = stepPlan;
            const face = fill === undefined ? undefined : faceBefore(plan, step.index, blank);
            if (step.kind !== 'fill' || fill === undefined || blank === undefined || face === undefined) continue;
            const over = step.overfill?.value ?? usualOverfill;
            if (!isMasked(face) || !(over > 0) || fill.layer.number < fill.layer.of) continue;
            const own = face.cells.filter(({ column }) => column.digs.some((dig) => dig.step === fill.pocket.index));
            const reach = reachOf(own, face, over);
            const said = new Set<number>();
            for (const cell of face.cells) {
                const open = openedBy(cell, face, plan, fill);
                if (open === undefined || said.has(open)) continue;
                const near = nearest(own, cell, reach);
                const least = leastWallOf(cell, fill, face, blankOf(plan, stepPlan)?.blank.sheet);
                // Nearer than that, thin-wall and fill-runs-over speak.
                if (near === undefined || near.distance < least) continue;
                said.add(open);
                const other = plan.steps[open]?.step;
                if (other === undefined) continue;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${step.resin?.name ?? phrase`The fill`} is poured ${showNumber(100 * over, 0)} % too high and runs over ${showLength(near.distance)} of tape into ${nameOf(other)}, which is burnt open and stays empty. Leave ${showLength(roundLength(reach, 'mm', 'up'))} between them, pour it level, or burn ${nameOf(other)} once the tape is off.`,
                    where: step.overfill?.where ?? step.where,
                    step: step.index,
                    spots: [{ blank, x: near.x, y: near.y, size: 2 }],
                    related: [{ message: phrase`${nameOf(other)} is burnt through the tape here.`, where: other.where }],
                    fixes: pourLevel(step),
                });
            }
        }
    },
};

/** How far resin that stands above the face runs from its pocket, mm. */
function reachOf(own: readonly Cell[], { level }: Face, over: number): number {
    const sum = (of: (cell: Cell) => number): number => own.reduce((all, cell) => all + of(cell), 0);
    const volume = sum(({ region, column }) => area(region) * Math.max(0, column.top.value - level.value));
    const around = sum(({ region }) => perimeter(region));
    return around > 0 ? Math.min(farthest, (over * volume) / (around * film)) : 0;
}

/** The step that burnt a place open through the tape, if that stays empty. */
function openedBy({ column, region }: Cell, { level }: Face, plan: Plan, { pocket }: FillPlan): number | undefined {
    const last = column.digs.findLast(({ depth }) => depth.value > 0)?.step;
    if (last === undefined || !isOpenPocket(column) || column.digs.some(({ step }) => step === pocket.index)) return undefined;
    if (column.top.value - level.value < brim || area(region) <= negligible) return undefined;
    return contentOf(plan, last) === undefined ? last : undefined;
}

function nearest(own: readonly Cell[], other: Cell, reach: number) {
    return own
        .filter(({ box }) => boxesMeet(box, other.box, reach))
        .flatMap(({ region }) => approach(region, other.region, reach) ?? [])
        .toSorted((a, b) => a.distance - b.distance)[0];
}

function leastWallOf({ column }: Cell, { depth }: FillPlan, { level }: Face, sheet: Parameters<typeof leastWall>[1]): number {
    const other = column.top.value - level.value;
    return other > shallow && depth.value > shallow ? leastWall(Math.max(depth.value, other), sheet, 'pocket') : noWall;
}

function pourLevel({ overfill, whole }: Fill): Fix[] {
    const text = '0 %';
    return [
        {
            title: phrase`Pour it level`,
            changes: [
                overfill === undefined
                    ? { do: 'add', block: whole, statement: `overfill ${text}` }
                    : { do: 'replace', where: overfill.where, text },
            ],
        },
    ];
}
