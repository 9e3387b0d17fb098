import { area, bounds } from '../../geometry/measure';
import { narrow, narrowGaps } from '../../geometry/narrow';
import type { NarrowPlace } from '../../geometry/narrow-place';
import { grow } from '../../geometry/offset';
import { keptFor } from '../../plan/kept';
import type { LaserPlan } from '../../plan/laser-plan';
import type { BlankPlan } from '../../plan/plan';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import { lengthWithin } from './length-within';

/** More than the narrowest slot, as a part of the limit, since widths are good to a fiftieth of it. */
const sure = 0.03;
/** More than is needed that a round length may take, mm. */
const mostMore = 0.05;

/** An offset that opens every slot, where it runs no lines together, leaves no rib too thin to stand and stays on the blank. */
export function widenSlots(
    pocket: Engrave,
    laser: LaserPlan,
    places: readonly NarrowPlace[],
    limit: number,
    blank?: BlankPlan,
): Fix[] {
    if (laser.pictures !== undefined || (pocket.offset === undefined && pocket.offsetWhere !== undefined)) return [];
    const was = pocket.offset?.value ?? 0;
    const needed = was + (limit * (1 + sure) - Math.min(...places.map(({ width }) => width))) / 2;
    const found = lengthWithin({ low: needed, high: needed + mostMore, best: needed }, pocket.offset?.unit ?? 'mm');
    if (found === undefined) return [];
    const by = found.mm - was;
    if (
        !keptFor(laser.region, `wider ${by} ${limit} ${blank?.size?.width} ${blank?.size?.height}`, () =>
            opens(laser, by, limit, blank),
        )
    )
        return [];
    return [
        {
            title: phrase`Give ${pocket.name} an offset of ${found.text}, which widens all its lines`,
            changes: [
                pocket.offset === undefined
                    ? { do: 'add', block: pocket.whole, statement: `offset ${found.text}` }
                    : { do: 'replace', where: pocket.offset.where, text: found.text },
            ],
        },
    ];
}

function opens({ region, finest }: LaserPlan, by: number, limit: number, blank: BlankPlan | undefined): boolean {
    const wider = grow(region, by);
    if (wider.rings.length !== region.rings.length || lostIn(narrow(wider, limit)) > 0) return false;
    if (finest !== undefined && lostIn(narrowGaps(wider, finest.rib)) > lostIn(narrowGaps(region, finest.rib))) return false;
    const box = bounds(wider);
    if (box === undefined || !(area(wider) > 0)) return false;
    const size = blank?.size;
    return size === undefined || (box.minX >= 0 && box.minY >= 0 && box.maxX <= size.width && box.maxY <= size.height);
}

function lostIn(places: readonly NarrowPlace[]): number {
    return places.filter(({ kind }) => kind !== 'tip').length;
}
