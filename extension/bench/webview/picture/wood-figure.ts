import type { GrainView } from '../../../../shared/view/round-view';

/** Width of a year's ring, mm. @commonPractice Drawn for the eye: boards of one tree have from half a millimetre to five. */
export const ringWidth = 2.2;

/** Where the heart of the log lies beside a board, by how it was sawn: across the face and below it, mm. @commonPractice Drawn for the eye. */
export const heart: Readonly<Record<GrainView['sawn'], readonly [number, number]>> = {
    flat: [0.15, -38],
    rift: [-45, -45],
    quarter: [-90, 0.5],
};

/** How much the pores of a wood show. @commonPractice Drawn for the eye. */
export const poreStrength: Readonly<Record<GrainView['pores'], number>> = {
    ring: 0.34,
    'semi-ring': 0.24,
    diffuse: 0.13,
    softwood: 0.04,
};

/** A number from 0 to 97 that a name always gives (FNV-1a). */
export function seedOf(name: string): number {
    let hash = 2166136261;
    for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 16777619);
    return ((hash >>> 0) / 4294967296) * 97;
}
