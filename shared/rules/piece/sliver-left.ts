import { subtract } from '../../geometry/boolean';
import { islands } from '../../geometry/islands';
import { area } from '../../geometry/measure';
import { grow } from '../../geometry/offset';
import { emptyRegion, type Region, tangledRegion } from '../../geometry/region';
import type { Face } from '../../piece/face';
import { keptFor } from '../../plan/kept';
import { showArea, showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { faceAfter, faceBefore, nameOf, negligible } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Narrower strips of a laid veneer break off, mm. @commonPractice */
const leastStrip = 0.5;

const page: Page = {
    id: 'sliver-left',
    title: 'Sliver of veneer left',
    severities: ['warning'],
    condition: `A burn into a laid veneer leaves a strip of it that is narrower than ${leastStrip} mm.`,
    why: 'So narrow a strip is held by little glue and charred from the side: it breaks off under the sander.',
    mend: 'Keep the burn further inside the veneer, or let it run over the veneer’s edge.',
    source: commonPractice,
};

export const sliverLeft: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (laser === undefined || blank === undefined || laser.tone !== undefined) continue;
            const after = faceAfter(plan, step.index, blank);
            const before = faceBefore(plan, step.index, blank);
            if (after === undefined || before === undefined || step.kind !== 'engrave') continue;
            const burnt = new Set(after.met.flatMap(({ column }) => laidOnTop(column.layers) ?? []));
            for (const laid of burnt) {
                const left = slivers(veneerOf(after, laid));
                if (left.length === 0) continue;
                const known = grow({ rings: slivers(veneerOf(before, laid)).flatMap(({ rings }) => rings) }, alike);
                const made = left.filter((sliver) => area(subtract(sliver, known)) > negligible);
                const size = made.reduce((sum, sliver) => sum + area(sliver), 0);
                const inlay = plan.steps[laid];
                if (made.length === 0 || inlay?.inlay === undefined) continue;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${step.name} leaves ${showArea(size)} of ${nameOf(inlay.inlay.relief)} in strips narrower than ${showLength(leastStrip)}, which break off: keep ${showLength(2 * leastStrip)} of veneer beside it, or run over its edge.`,
                    where: step.where,
                    step: step.index,
                    spots: spotsOf(blank, made),
                    related: [{ message: phrase`${nameOf(inlay.inlay.relief)} is glued in here.`, where: inlay.step.where }],
                });
            }
        }
    },
};

/** Edges that an engine moved are the same, mm. */
const alike = 0.05;

/** The step that laid the veneer which lies open on top; undefined where something else does. */
function laidOnTop(layers: Face['bare']['layers']): number | undefined {
    const top = layers.find(({ kind }) => kind !== 'coat' && kind !== 'tape');
    return top?.kind === 'wood' ? top.step : undefined;
}

function veneerOf({ cells }: Face, laid: number): Region {
    const here = cells.filter(({ column }) => laidOnTop(column.layers) === laid);
    return here.length === 1 ? here[0]!.region : { rings: here.flatMap(({ region }) => region.rings) };
}

/** What of a region is lost when it is shrunk and grown again: its narrow strips. */
function slivers(region: Region): readonly Region[] {
    return keptFor(region, 'slivers', () => {
        const core = grow(region, -leastStrip / 2);
        if (core === tangledRegion) return [];
        const kept = core.rings.length === 0 ? emptyRegion : grow(core, leastStrip / 2 + alike);
        if (kept === tangledRegion) return [];
        return islands(subtract(region, kept)).filter((sliver) => area(sliver) > negligible);
    });
}
