/** What is not known of several places together, as a normal state: how far each may be off, and how they go together. */
export interface Unknown {
    /** Row by row, symmetric. */
    readonly covariance: readonly Float64Array[];
    /** Half the logarithm of the determinant of what the readings so far were expected to scatter by: what they have told, in nats. */
    readonly told: number;
}

/**
 * What is left unknown once a place has been read: the update of a normal state by one measurement, C − c c′ / (c + noise). What is read
 * does not come into it, so that readings can be planned (own derivation; it is one step of a Cholesky factorisation).
 *
 * @param noise variance of a single reading there
 */
export function afterReading({ covariance, told }: Unknown, at: number, noise: number): Unknown {
    const row = covariance[at]!;
    const scatter = row[at]! + noise;
    if (!(scatter > 0)) return { covariance, told };
    return {
        covariance: covariance.map((each, i) => each.map((value, j) => value - (row[i]! * row[j]!) / scatter)),
        told: told + Math.log(scatter / noise) / 2,
    };
}

/** The same after several of them, each of which may come more than once. */
export function afterReadings(state: Unknown, places: readonly number[], noise: (place: number) => number): Unknown {
    return places.reduce((known, place) => afterReading(known, place, noise(place)), state);
}
