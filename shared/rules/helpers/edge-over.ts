import type { LaserPlan } from '../../plan/laser-plan';

/** What an outline pass may be deeper than the rest by rounding, mm. */
const ROUNDING = 0.02;

/** How much deeper than the rest an outline pass digs along the edge, mm, where the laser holds no less power; 0 where it does not. */
export function edgeOver({ depth, outline }: Pick<LaserPlan, 'depth' | 'outline'>): number {
    const over = (outline?.deepest ?? 0) - (depth?.value ?? Number.POSITIVE_INFINITY);
    return over > ROUNDING ? over : 0;
}
