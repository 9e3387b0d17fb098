import { islands } from '../geometry/islands';
import { area, bounds } from '../geometry/measure';
import { showArea } from '../quantity/show';
import { blankOf } from './blank-names';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'no-backing',
    title: 'Loose pieces without backing',
    condition: 'A step burns through a sheet and leaves pieces standing free, and the blank has no backing.',
    why: 'The pieces drop, tilt or fly off with the exhaust while the laser still works on their neighbours.',
    mend: 'Stick the sheet to foil tape first: write `backing foil` in the blank.',
    source: commonPractice,
};

export const noBacking: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { laser, step } = stepPlan;
            if (step.kind !== 'engrave' || laser === undefined || !laser.through) continue;
            const blank = blankOf(plan, stepPlan);
            if (blank === undefined || blank.blank.backing !== 'none') continue;
            const loose = looseIn(laser.region);
            if (loose.length === 0) continue;
            const spots = loose.flatMap((piece) => {
                const box = bounds(piece);
                return box === undefined
                    ? []
                    : [
                          {
                              blank: blank.name,
                              x: (box.minX + box.maxX) / 2,
                              y: (box.minY + box.maxY) / 2,
                              size: Math.max(box.maxX - box.minX, box.maxY - box.minY),
                          },
                      ];
            });
            yield finding(page, {
                severity: 'error',
                message: `${step.name} leaves ${loose.length} loose piece${loose.length === 1 ? '' : 's'} (${showArea(loose.reduce((sum, piece) => sum + area(piece), 0))}) with nothing behind ${loose.length === 1 ? 'it' : 'them'}.`,
                where: step.blank.where,
                step: step.index,
                spots: spots.slice(0, 50),
                related: [{ message: `${blank.name} has no backing.`, where: blank.blank.where }],
                fixes: [
                    {
                        title: `Back ${blank.name} with foil`,
                        preferred: true,
                        changes: [{ do: 'add', block: blank.blank.whole, statement: 'backing foil' }],
                    },
                ],
            });
        }
    },
};

/** Pieces of the sheet that a burnt-through region encloses: what fills its holes. */
function looseIn(burnt: { readonly rings: readonly Float64Array[] }) {
    return islands({ rings: burnt.rings.filter((ring) => isHole(ring)).map(reversed) });
}

function isHole(ring: Float64Array): boolean {
    return area({ rings: [ring] }) < 0;
}

function reversed(ring: Float64Array): Float64Array {
    const out = new Float64Array(ring.length);
    for (let i = 0; i + 1 < ring.length; i += 2) {
        out[i] = ring[ring.length - 2 - i]!;
        out[i + 1] = ring[ring.length - 1 - i]!;
    }
    return out;
}
