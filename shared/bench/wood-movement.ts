import type { Sawn, Wood } from '../recipe/stock';

/**
 * Change of a width: D x C x dM (Wood Handbook, FPL-GTR-190, 2010, ch. 13; coefficients of its
 * Table 13-5, valid from 6 to 14 % moisture).
 *
 * @param width D, mm across the grain
 * @param coefficient C, fraction of the width for each per cent of moisture
 * @param change dM as a fraction of oven-dry mass (0.03 for three per cent)
 * @returns mm; negative when it shrinks
 */
export function movement(width: number, coefficient: number, change: number): number {
    return width * coefficient * change * 100;
}

/**
 * Coefficient of a face along a line that lies at `angle` (rad) to the grain. Wood hardly moves
 * along the grain, and as a strain turns with the square of the sine. Across a quarter-sawn face it moves
 * as it does along the rays, across a flat-sawn one as along the rings, across a rift-sawn one half by half (its rings lie at
 * 45 degrees). What is not said to be sawn otherwise is taken as flat; undefined when the wood has no figure.
 */
export function faceCoefficient(wood: Wood | undefined, angle: number, sawn: Sawn = 'flat'): number | undefined {
    const across = acrossFace(wood, sawn);
    // Of end grain no direction lies along the trunk: along the rings it moves most.
    if (sawn === 'end') return across === undefined || !(across >= 0) ? undefined : across;
    return across === undefined || !(across >= 0) ? undefined : across * Math.sin(angle) ** 2;
}

function acrossFace(wood: Wood | undefined, sawn: Sawn): number | undefined {
    const rings = wood?.tangential?.value ?? wood?.radial?.value;
    const rays = wood?.radial?.value ?? rings;
    if (rings === undefined || rays === undefined) return undefined;
    return sawn === 'quarter' ? rays : sawn === 'rift' ? (rings + rays) / 2 : rings;
}

/** One half of an inlay: its wood and the angle of its grain from the x axis as it lies in the piece, rad. */
export interface GrainedHalf {
    readonly wood: Wood | undefined;
    readonly grain: number;
    /** Flat where nothing is said. */
    readonly sawn?: Sawn;
}

/** Strain that glue and thin wood do not bear year after year: half of the one per cent at which wood parts across the grain. Own judgement, no source. */
export const mostStrain = 0.005;
/** Movement below which nothing shows, mm: own judgement, no source. */
export const leastMovement = 0.3;

/**
 * The part of a year's movement that strains a joint: it is without strain at the moisture at which it was made, and from there
 * goes as far as the drier or the damper end. All of it where that moisture is not known or lies outside of the year's.
 *
 * @param joined moisture at which both halves were glued, as a fraction
 */
export function strainedPart(joined: number | undefined, { low, high }: { readonly low: number; readonly high: number }): number {
    if (joined === undefined || joined <= low || joined >= high) return 1;
    return Math.max(high - joined, joined - low) / (high - low);
}

/**
 * How far a board bows across its width when its back is damper than its face: free strain that grows evenly through the
 * thickness bends it to a curvature of that strain over the thickness, and the middle stands off by width squared over 8 of it.
 *
 * @param width, thickness mm
 * @param coefficient fraction of the width for each per cent of moisture
 * @param difference of moisture between the faces, as a fraction
 * @returns mm between the middle and a straightedge over both edges
 */
export function cupping(width: number, thickness: number, coefficient: number, difference: number): number {
    return (movement(width, coefficient, difference) * width) / (8 * thickness);
}

/** How much a board and what is let into it part company. */
export interface DifferentialMovement {
    /** mm over the wider side that moves most. */
    readonly movement: number;
    /** The same as a fraction of that side: the strain that glue and wood have to bear. */
    readonly strain: number;
    readonly direction: 'width' | 'height';
}

/**
 * Movement of an inlay against its board over a change of moisture, along the piece's width and
 * height; the worse of the two. Undefined when a wood has no coefficients.
 *
 * @param size of the inlay, mm
 * @param change of moisture as a fraction
 */
export function differentialMovement(
    board: GrainedHalf,
    inlay: GrainedHalf,
    size: { readonly width: number; readonly height: number },
    change: number,
): DifferentialMovement | undefined {
    const along = (direction: 'width' | 'height'): DifferentialMovement | undefined => {
        const line = direction === 'width' ? 0 : Math.PI / 2;
        const of = faceCoefficient(board.wood, line - board.grain, board.sawn);
        const inside = faceCoefficient(inlay.wood, line - inlay.grain, inlay.sawn);
        if (of === undefined || inside === undefined) return undefined;
        const strain = Math.abs(movement(1, of - inside, change));
        return { movement: strain * size[direction], strain, direction };
    };
    const width = along('width');
    const height = along('height');
    if (width === undefined || height === undefined) return undefined;
    return height.movement > width.movement ? height : width;
}

/** The same with each half that does not say how it is sawn as flat or on the quarter, whichever is worst: unlike cuts differ most. */
export function worstMovement(
    board: GrainedHalf,
    inlay: GrainedHalf,
    size: { readonly width: number; readonly height: number },
    change: number,
): DifferentialMovement | undefined {
    const cuts = (half: GrainedHalf): GrainedHalf[] =>
        half.sawn === undefined ? (['flat', 'quarter'] as const).map((sawn) => ({ ...half, sawn })) : [half];
    return cuts(board)
        .flatMap((one) => cuts(inlay).flatMap((other) => differentialMovement(one, other, size, change) ?? []))
        .toSorted((a, b) => b.movement - a.movement)[0];
}
