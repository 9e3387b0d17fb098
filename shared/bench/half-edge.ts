import { normalCumulative, normalQuantile } from '../burn/distributions';
import { depthOf } from '../burn/dose';
import { depthAtShare, type EdgeBurn } from '../burn/outline-pass';
import { DEEP } from '../burn/wall';
import { bracket } from '../quantity/bracket';

/** How the laser burns one half. */
export interface Burning extends EdgeBurn {
    /** Standard deviation of the beam's profile, mm. */
    readonly sigma: number;
    /** Tangent by which the wall leans below `DEEP` beyond what the beam's width makes of it. */
    readonly deep?: number;
}

/** The edge of a half that is cut out, or of an opening: a wall that leans in a straight line from face to back. Lengths mm. */
export interface CutEdge {
    readonly thickness: number;
    /** How far the back stands out beyond the face: of a part outwards, of an opening inwards. */
    readonly lean: number;
    /** How much tighter the edge comes out than it is drawn. */
    readonly tight: number;
    /** It is a part that goes in with its back first. */
    readonly faceUp: boolean;
    /** Standard deviation over which the edge is spread to find the distance from it. */
    readonly sigma: number;
}

export type HalfEdge = Burning | CutEdge;

/** Depth along the share of a wide area's dose. */
export interface DepthByShare {
    /** The share up to which nothing is dug. */
    readonly rim: number;
    at(share: number): number;
}

/** Shares between which the depth is taken as straight, where a line along the edge bends it. */
const SHARES = 4096;
/** Places across the edge between which that of a wall that leans further down is. */
const PLACES = 512;
/** Sigmas within which a spread edge tells how far it is. */
const REACH = 3.5;

export function cutEdge(edge: Omit<CutEdge, 'sigma'>, sigma: number): CutEdge {
    return { ...edge, sigma: Math.max(sigma, (Math.abs(edge.lean) + Math.abs(edge.tight)) / REACH) };
}

export function isSound(edge: HalfEdge): boolean {
    const figures = [edge.sigma, 'lean' in edge ? edge.thickness : edge.dose];
    return figures.every((value) => value > 0 && value < 1e6);
}

/** Of a wide area, mm. */
export function deepestOf(edge: HalfEdge): number {
    return 'lean' in edge ? edge.thickness : depthOf(edge.law, edge.dose, edge.passes);
}

/** How deep it is where the edge, spread by its sigma, has a share: exact along straight edges. */
export function depthByShare(edge: HalfEdge): DepthByShare {
    return 'lean' in edge ? cutDepth(edge) : burntDepth(edge);
}

/** A share is the distance from the edge, in sigmas, of a normal distribution: along it the wall of a cut is straight. */
function cutDepth({ thickness, lean, tight, faceUp, sigma }: CutEdge): DepthByShare {
    const begins = tight + (faceUp ? Math.max(0, lean) : 0);
    const over = faceUp ? 0 : Math.max(0, lean);
    return {
        rim: 0,
        at(share) {
            const beyond = sigma * normalQuantile(Math.min(1, Math.max(0, share))) - begins;
            if (!(beyond > 0)) return 0;
            return beyond < over ? (thickness * beyond) / over : thickness;
        },
    };
}

function burntDepth(burning: Burning): DepthByShare {
    const byBeam = beamDepth(burning);
    const { deep = 0, sigma } = burning;
    const full = byBeam.at(1);
    if (deep <= 0 || !(full > DEEP)) return byBeam;
    // A place x inside of the edge is as deep as the beam alone makes one that lies nearer by what the wall leans down to there.
    const depthFrom = (x: number): number => {
        const byBeamAlone = byBeam.at(normalCumulative(x / sigma));
        if (byBeamAlone <= DEEP) return byBeamAlone;
        const isDug = (depth: number): boolean => byBeam.at(normalCumulative((x - deep * (depth - DEEP)) / sigma)) >= depth;
        return bracket(DEEP, byBeamAlone, isDug, 1e-5).last;
    };
    const end = REACH * sigma;
    const depths = Float64Array.from({ length: PLACES + 1 }, (_, k) => depthFrom(end * ((2 * k) / PLACES - 1)));
    return {
        rim: byBeam.rim,
        at(share) {
            const x = normalQuantile(Math.min(1, Math.max(0, share))) / REACH;
            // Further in the spread edge tells no distance: a wall that leans on beyond ends there.
            if (!(x < 1)) return full;
            const place = Math.max(0, ((x + 1) / 2) * PLACES);
            const k = Math.min(PLACES - 1, Math.floor(place));
            return depths[k]! + (place - k) * (depths[k + 1]! - depths[k]!);
        },
    };
}

function beamDepth(burning: Burning): DepthByShare {
    const { law, dose, passes, line } = burning;
    const full = depthOf(law, dose, passes);
    const rim = full > 0 ? law.threshold / dose : 1;
    const slope = full > 0 ? full / (1 - rim) : 0;
    if (line === undefined) return { rim, at: (share) => slope * Math.max(0, share - rim) };
    const depths = Float64Array.from({ length: SHARES + 2 }, (_, k) => depthAtShare(burning, Math.min(1, k / SHARES)));
    return {
        rim: Math.max(0, depths.findIndex((depth) => depth > 0) - 1) / SHARES,
        at(share) {
            const place = Math.min(1, Math.max(0, share)) * SHARES;
            const k = Math.floor(place);
            return depths[k]! + (place - k) * (depths[k + 1]! - depths[k]!);
        },
    };
}
