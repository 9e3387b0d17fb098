import { intersect } from '../geometry/boolean';
import { area, bounds } from '../geometry/measure';
import { grow } from '../geometry/offset';
import { type Region, tangledRegion } from '../geometry/region';
import { type Column, floorOf, ownLayer } from '../piece/column';
import type { Cell, Face } from '../piece/face';
import { boxesMeet } from '../piece/partition';
import { type Interval, subtract } from '../quantity/interval';
import type { LaserPlan } from './laser-plan';
import type { Memo } from './memo';

/** A veneer half as the steps before the inlay have left it. Lengths mm, regions as it lies under the laser. */
export interface VeneerHalf {
    /** What stands of it, from its backing up; absent where its thickness is not known. */
    readonly veneer?: Interval;
    /** How far that rises above what is left around it; absent where nothing is left there. */
    readonly rise?: Interval;
    /** Where what is burnt lies deeper below what stands than the half's own burn leaves it; negative where it lies less deep. */
    readonly lower: readonly LowerPlace[];
    /** Steps that took down what stands, all of it. */
    readonly dugBy: readonly number[];
    /** Hollows in the side of what stands that goes down. */
    readonly hollows: readonly LowerPlace[];
}

export interface LowerPlace {
    readonly region: Region;
    readonly more: number;
}

/** Less than this of a veneer neither carries it nor holds it up, mm2. */
const LEAST_PLACE = 1;
/** A strip that is narrower than this carries nothing either, mm. */
const WIDEST_RIM = 0.2;
/** Heights that differ by less are one, mm. */
const SAME_HEIGHT = 0.005;

/** The half as its own burn alone leaves it. */
export function halfAsBurnt({ depth, through, tone }: LaserPlan, veneer: Interval | undefined): VeneerHalf {
    return {
        ...(veneer === undefined ? {} : { veneer }),
        ...(through || tone !== undefined || depth === undefined ? {} : { rise: depth }),
        lower: [],
        dugBy: [],
        hollows: [],
    };
}

/**
 * The half as its blank's face says; undefined where nothing is known of that.
 *
 * @param standing what the half's burn leaves of the veneer within its boundary
 */
export function halfOn(face: Face | undefined, laser: LaserPlan, standing: Region, memo: Memo): VeneerHalf | undefined {
    const box = bounds(standing);
    if (face === undefined || face.unknownSince !== undefined || box === undefined) return undefined;
    const near = face.cells.filter((cell) => boxesMeet(cell.box, box));
    const isBurnt = ({ column }: Cell): boolean => column.digs.some(({ step }) => step === laser.step.index);
    const stands = near.flatMap((cell) => {
        if (isBurnt(cell)) return [];
        const key = `${memo.keyOf(cell.region)} ${memo.keyOf(standing)}`;
        const size = memo.get('stands', key, () => area(intersect(cell.region, standing)));
        return size < LEAST_PLACE ? [] : [{ ...cell, size }];
    });
    const whole = memo.get('area', memo.keyOf(standing), () => area(standing));
    const bare = stands.reduce((left, { size }) => left - size, whole);
    const columns = [...stands.map(({ column }) => column), ...(bare >= LEAST_PLACE ? [face.bare] : [])];
    const top = highestOf(columns.map(ownTop));
    const back = face.bare.layers[ownLayer(face.bare)]?.down;
    if (top === undefined || back === undefined || !Number.isFinite(back.value)) return undefined;
    const veneer = subtract(back, top);
    const alone = laser.settings?.gives.value ?? laser.depth?.value ?? 0;
    const burnt = near.filter((cell) => isBurnt(cell) && area(cell.region) >= LEAST_PLACE);
    const skin = highestOf(
        burnt.flatMap((cell) => (ownTop(cell.column) && isWide(cell.region, memo) ? ownTop(cell.column) : [])),
    );
    const lower = burnt.map(({ region, column }): LowerPlace => {
        const floor = ownTop(column);
        return { region, more: floor === undefined ? Math.max(0, veneer.value - alone) : floor.value - top.value - alone };
    });
    const hollows = stands.map(({ region, column }) => ({ region, more: (ownTop(column) ?? back).value - top.value }));
    return {
        veneer,
        ...(skin === undefined ? {} : { rise: subtract(skin, top) }),
        dugBy: columns.find((column) => ownTop(column)?.value === top.value)!.digs.map(({ step }) => step),
        lower: lower.filter(({ more }) => Math.abs(more) > SAME_HEIGHT),
        hollows: hollows.filter(({ more }) => more > SAME_HEIGHT),
    };
}

function isWide(region: Region, memo: Memo): boolean {
    return memo.get('wider-than-rim', memo.keyOf(region), () => isWiderThanRim(region));
}

/** Whether more of it is left than a rim along an edge, as two burns with other clearances leave it. */
export function isWiderThanRim(region: Region): boolean {
    const inner = grow(region, -WIDEST_RIM / 2);
    return inner === tangledRegion || inner.rings.length > 0;
}

/** The upper side of the blank's own wood, below all that lies on it; undefined where none is left. */
function ownTop(column: Column): Interval | undefined {
    if (floorOf(column) === undefined) return undefined;
    const at = ownLayer(column);
    return at === 0 ? column.top : column.layers[at - 1]!.down;
}

function highestOf(tops: readonly (Interval | undefined)[]): Interval | undefined {
    return tops.reduce((a, b) => (a === undefined || (b !== undefined && b.value < a.value) ? b : a), undefined);
}
