/** Settings of an area pass: W, mm/s, mm between scan lines. */
export interface Settings {
    readonly power: number;
    readonly speed: number;
    readonly pitch: number;
    readonly passes: number;
}

/** The three numbers of the depth law: J/mm2, J/mm3, ratio. */
export interface LawNumbers {
    /** Dose below which nothing is taken off. */
    readonly threshold: number;
    /** Energy that takes off a unit of volume, above the threshold. */
    readonly energy: number;
    /** What a pass takes off, as a part of what the pass before it took. */
    readonly fade: number;
    /** Where a pass takes less off the stronger it is: it comes to one part in this at most (1/mm). Absent where depth goes with the dose. */
    readonly bend?: number;
    /** The fade is of the first pass to all later ones, which take alike. */
    readonly laterAlike?: true;
}

/** Energy on a unit of area in one pass (J/mm2). */
export function doseOf({ power, speed, pitch }: Omit<Settings, 'passes'>): number {
    return power / (speed * pitch);
}

/** 1 + r + r² + … over the passes, or 1 + r + r + … where all later ones take alike: how many first passes they are worth. */
export function passesWorth({ fade, laterAlike }: Pick<LawNumbers, 'fade' | 'laterAlike'>, passes: number): number {
    if (laterAlike === true) return 1 + fade * (passes - 1);
    return Math.abs(fade - 1) < 1e-9 ? passes : (1 - fade ** passes) / (1 - fade);
}

/** Depth (mm) that a dose gives, negative below the threshold: how far it is from digging at all. */
export function signedDepth(law: LawNumbers, dose: number, passes: number): number {
    return bent(law, (dose - law.threshold) / law.energy) * passesWorth(law, passes);
}

/** Depth (mm) of one pass from what it would take if depth went with the dose: x, or (1 − exp(−cx))/c with a bend c. */
export function bent({ bend = 0 }: Pick<LawNumbers, 'bend'>, straight: number): number {
    // Bends below nothing are only passed through while a fit looks for one.
    return bend !== 0 && straight > 0 ? -Math.expm1(-bend * straight) / bend : straight;
}

/** Depth (mm) that passes of a dose (J/mm2 each) take off. */
export function depthOf(law: LawNumbers, dose: number, passes: number): number {
    return Math.max(0, signedDepth(law, dose, passes));
}

/** Dose of each pass (J/mm2) that reaches a depth in so many passes. */
export function doseFor(law: LawNumbers, depth: number, passes: number): number {
    const each = depth / passesWorth(law, passes);
    const { bend = 0 } = law;
    // No dose makes a pass deeper than one part in the bend.
    const straight = bend > 0 ? (bend * each < 1 ? -Math.log1p(-bend * each) / bend : Number.POSITIVE_INFINITY) : each;
    return law.threshold + law.energy * straight;
}

/**
 * Amplitude of the ripple of parallel scan lines, as a part of their mean: the first harmonic of a row
 * of Gaussians of standard deviation `sigma`, 2·exp(−2π²σ²/p²) (Poisson's sum formula; own derivation).
 */
export function ripple(pitch: number, sigma: number): number {
    return 2 * Math.exp(-2 * (Math.PI * (sigma / pitch)) ** 2);
}

/** Standard deviation of the profile of a Gaussian spot of 1/e2 diameter d: exp(−2x²/w²) with w = d/2. */
export function sigmaOf(diameter: number): number {
    return diameter / 4;
}

/** Widest pitch whose ripple stays within `most` of the mean. */
export function pitchForRipple(sigma: number, most: number): number {
    return (sigma * Math.PI * Math.SQRT2) / Math.sqrt(Math.log(2 / most));
}
