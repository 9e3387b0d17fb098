import type { WallShape } from '../bench/press-fit';
import { FOOT, wallShape } from '../burn/wall';
import type { LaserPlan } from './laser-plan';
import type { VeneerHalf } from './veneer-half';

/**
 * How far the wall of a cut stands out from its edge on the face once the cut has gone through the sheet, mm: half of what the kerf
 * narrows by, (face - back) / 2 on either side (own derivation; the kerf is taken as a trapezium).
 */
export function leanOf({ kerf }: LaserPlan): number {
    return kerf === undefined ? 0 : (kerf.face.value - kerf.back.value) / 2;
}

/**
 * How much tighter a cut edge comes out than its kerf and its lean alone say, mm, as a clearance ladder found it; negative where
 * it goes in more easily. In a ladder both halves are cut, so each has half of it: a part drawn `fits` larger all round than its opening
 * goes in where the kerf is that wide in the middle of the sheet.
 */
export function tightnessOf({ kerf, fits }: LaserPlan): number {
    return kerf === undefined || fits === undefined ? 0 : ((kerf.face.value + kerf.back.value) / 2 - fits) / 2;
}

/** How much its wall lies inside of a pocket's mouth at a depth below the face: of a cut a straight line down to its back. */
export function openingWall(pocket: LaserPlan): WallShape {
    if (pocket.step.kind === 'cut') return cutWall(pocket, false);
    // Upright where settings or spot are not known.
    return pocket.wall === undefined ? () => 0 : wallShape(pocket.wall);
}

/** The wall of what goes in, from the side that goes in first: its face, or the back of a part that lies face up. */
export function halfWall(relief: LaserPlan, half: VeneerHalf, isFaceUp: boolean): WallShape {
    return relief.step.kind === 'cut' ? cutWall(relief, isFaceUp) : veneerWall(relief, half);
}

function cutWall(laser: LaserPlan, fromBack: boolean): WallShape {
    const lean = leanOf(laser);
    const own = tightnessOf(laser);
    const thickness = laser.depth?.value;
    if (thickness === undefined || !(thickness > 0)) return () => own;
    return (at) => {
        const part = Math.min(1, Math.max(0, at / thickness));
        return own + lean * (fromBack ? 1 - part : part);
    };
}

/**
 * What is left around a veneer's parts lies on the board: no clearance lets that in. Where other burns along the same edge have made
 * it deeper, the wall is as much steeper (own reasoning: shares of the dose are the same for all of them).
 */
export function veneerWall({ wall }: LaserPlan, { rise, veneer }: VeneerHalf): WallShape {
    const deep = (rise ?? veneer)?.value ?? 0;
    const inset = wall === undefined ? () => 0 : wallShape({ ...wall, depth: Math.max(wall.depth, deep) });
    const most = rise === undefined ? Number.POSITIVE_INFINITY : rise.value + FOOT;
    return (depth) => (depth > most ? Number.POSITIVE_INFINITY : inset(depth));
}
